"""docs/case-file.md names every key that a case may hold, and what it says is true."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any, get_args

import pytest
from pydantic import BaseModel

from costcompare.case import document, money_document, tariff_document, tariff_facts
from costcompare.case.document import DuctCondition
from costcompare.case.facts import (
    DoorwayState,
    DuctLocation,
    Foundation,
    SystemKind,
    VentState,
)
from costcompare.case.faults import keys_at, keys_of, model_in
from costcompare.case.money_facts import FinanceKind, IncentiveKind, IncomeTest
from costcompare.case.overriding import REPLACES, SETTABLE
from costcompare.case.table import Table
from costcompare.case.tariff_facts import HOLIDAY_NAMES, HOLIDAY_SETS

WORDS_OF_TARIFFS = (
    *("DayKind", "LineGroup", "MidBillSplit", "Netting", "Observed", "Overlaps"),
    *("Proration", "ReadingTime", "Rounding", "Unused"),
)
PAGE = Path(__file__).parents[2] / "docs" / "case-file.md"
TEXT = PAGE.read_text(encoding="utf-8")
TABLES = [
    table
    for table in {**vars(document), **vars(tariff_document), **vars(money_document)}.values()
    if isinstance(table, type) and issubclass(table, Table) and table is not Table
]
SECTIONS = {
    "SiteTable": "### `[site]`",
    "WeatherTable": "### `[weather]`",
    "FanTable": "### `[house]`",
    "FireplaceTable": "### `[fireplace]`",
    "HouseTable": "### `[house]`",
    "ConstructionTable": "### `[constructions]`",
    "ConstructionsTable": "### `[constructions]`",
    "LayerTable": "### `[constructions]`",
    "OtherUseTable": "### `[other_use]`",
    "WallLengths": "### `[[rooms]]`",
    "WindowAreas": "### `[[rooms]]`",
    "RoomTable": "### `[[rooms]]`",
    "DoorwayTable": "### `[[doorways]]`",
    "CrawlspaceTable": "### `[crawlspace]`",
    "ThermostatTable": "### `[thermostat]`",
    "ComfortTable": "### `[comfort]`",
    "BlowerTable": "### `[today]`",
    "DuctsTable": "### `[today]`",
    "HeaterTable": "### `[today]`",
    "UnitTable": "### `[today]`",
    "PointTable": "### `[today]`",
    "HeadTable": "### `[today]`",
    "EquipmentTable": "### `[equipment]`",
    "BackupTable": "### `[today]`",
    "SystemTable": "### `[today]`",
    "TodayTable": "### `[today]`",
    "TierTable": "### `[tariff]`",
    "SeasonTable": "### `[tariff]`",
    "PeriodTable": "### `[tariff]`",
    "DemandTable": "### `[tariff]`",
    "RiderTable": "### `[tariff]`",
    "TaxTable": "### `[tariff]`",
    "ExportTable": "### `[tariff]`",
    "PricesTable": "### `[tariff]`",
    "ChangeTable": "### `[tariff]`",
    "TariffTable": "### `[tariff]`",
    "IncentiveTable": "### `[money]`",
    "MoneyTable": "### `[money]`",
    "OldSystemTable": "### `[money]`",
    "FinanceTable": "### `[money]`",
    "EmissionsTable": "### `[money]`",
    "BillTable": "### `[bills]`",
    "Document": "### Top of the file",
}


def section(heading: str) -> str:
    """The part of the page under a heading."""
    start = TEXT.index(heading)
    end = TEXT.find("\n### ", start + 1)
    return TEXT[start : end if end > 0 else len(TEXT)]


def documented() -> Iterator[tuple[str, str]]:
    for table in TABLES:
        if table.__name__ == "OptionTable":
            inherited = set(document.SystemTable.model_fields)
            own = [key for key in keys_of(table) if key not in inherited]
            yield from (("### `[[options]]`", key) for key in own)
        elif table.__name__ == "BillsTable":
            yield "### `[bills]`", "file"
        else:
            yield from ((SECTIONS[table.__name__], key) for key in keys_of(table))


@pytest.mark.parametrize(("heading", "key"), sorted(set(documented())))
def test_every_key_is_documented_under_its_table(heading: str, key: str) -> None:
    assert f"`{key}`" in section(heading)


def reachable(table: type[BaseModel]) -> set[type[BaseModel]]:
    found = {table}
    for field in table.model_fields.values():
        inner = model_in(field.annotation)
        if inner is not None:
            found |= reachable(inner)
    return found


def test_no_table_is_left_out_of_the_document() -> None:
    bases = {document.SystemTable, tariff_document.PricesTable}
    assert reachable(document.Document) | bases == set(TABLES)


def test_a_documented_row_is_a_key() -> None:
    known = {key for table in TABLES for key in keys_of(table)}
    for row in re.findall(r"^\| (`.*?) \|", TEXT, re.MULTILINE):
        for key in re.findall(r"`(\w+)`", row):
            assert key in known, key


@pytest.mark.parametrize(
    "words",
    [
        SystemKind,
        Foundation,
        DuctLocation,
        DoorwayState,
        VentState,
        DuctCondition,
        IncentiveKind,
        IncomeTest,
        FinanceKind,
    ],
)
def test_every_choice_is_documented(words: Any) -> None:
    for choice in get_args(words):
        assert choice in TEXT


@pytest.mark.parametrize("kind", WORDS_OF_TARIFFS)
def test_every_word_of_a_tariff_is_documented(kind: str) -> None:
    for word in get_args(getattr(tariff_facts, kind)):
        assert word in section("### `[tariff]`")


def test_every_holiday_is_documented() -> None:
    assert all(name in section("### `[tariff]`") for name in (*HOLIDAY_NAMES, *HOLIDAY_SETS))


def test_what_a_change_may_touch_is_documented() -> None:
    options = section("### `[[options]]`")
    assert all(name in options for name in SETTABLE)
    changing = TEXT[TEXT.index("## Changing a value") : TEXT.index("## Keys")]
    named = {"today.ducts.condition", "house.window_panes", "house.air_changes", "tariff.price"}
    assert named <= set(REPLACES)
    assert all(f"`{path}`" in changing for path in named)


def test_paths_replaced_by_a_change_are_keys_of_a_case() -> None:
    for path, outdated in REPLACES.items():
        for item in (path, *outdated):
            *place, key = item.split(".")
            assert key in keys_at(tuple(place)), item
