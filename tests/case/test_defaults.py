"""Default tables: every row sourced, every year covered, every value readable."""

from __future__ import annotations

from typing import get_args

import pytest

from costcompare.case.defaults import (
    Default,
    duct_default,
    house_default,
    material_layer,
    option_default,
    other_use_for,
    rows,
    time_zone_at,
    window_default,
)
from costcompare.case.document import DuctCondition, OptionKind
from costcompare.case.hours import hours_of_day
from costcompare.units import KINDS

TABLES = (
    "house_defaults.csv",
    "duct_conditions.csv",
    "window_defaults.csv",
    "materials.csv",
    "option_defaults.csv",
)
YEARS = (1850, 1939, 1940, 1955, 1968, 1975, 1980, 1989, 1990, 2004, 2005, 2010, 2030)
FACTS = sorted({row["fact"] for row in rows("house_defaults.csv")})


@pytest.mark.parametrize("table", TABLES)
def test_every_row_has_a_source_and_no_empty_cell(table: str) -> None:
    assert rows(table)
    for row in rows(table):
        assert all(value and value.strip() for value in row.values()), row
        assert len(row["source"]) >= 9


@pytest.mark.parametrize("fact", FACTS)
def test_a_fact_has_one_default_in_every_year(fact: str) -> None:
    for year in YEARS:
        of_year = [
            row
            for row in rows("house_defaults.csv")
            if row["fact"] == fact and int(row["from_year"]) <= year <= int(row["to_year"])
        ]
        assert len(of_year) == 1, (fact, year)


@pytest.mark.parametrize("fact", FACTS)
def test_a_default_is_readable(fact: str) -> None:
    default: Default = house_default(fact, 1968)
    if default.kind in KINDS or default.kind == "count":
        assert default.number >= 0.0 or fact.endswith("_low")
    elif default.kind == "hours":
        assert len(hours_of_day(default.text)) == 24
    elif default.kind == "flag":
        assert default.text in {"true", "false"}
    else:
        assert default.kind == "words"


def test_conditions_of_ducts() -> None:
    # Shares of the blower's flow by the condition's words; R-3 before 1980 for old ducts.
    expected = {
        "fallen or open branch": (0.25, 0.15, 1.5),
        "old, never sealed": (0.15, 0.10, 3.0),
        "average": (0.10, 0.08, 4.0),
        "sealed and tested": (0.04, 0.03, 4.0),
    }
    assert set(expected) == set(get_args(DuctCondition))
    for words, (supply, back, r_value) in expected.items():
        default = duct_default(words, 1968)
        assert (default.supply_leakage, default.return_leakage) == pytest.approx((supply, back))
        assert default.resistance == pytest.approx(r_value * 0.1761102, rel=1e-6)
    assert duct_default("old, never sealed", 1985).resistance == pytest.approx(0.70444, rel=1e-5)


def test_every_kind_of_option_has_a_life() -> None:
    for kind in get_args(OptionKind):
        assert 10.0 <= option_default(kind).life <= 30.0


def test_newer_and_thicker_windows_lose_less() -> None:
    u_factors = [window_default(panes, 2010).u_factor for panes in (1, 2, 3, 4)]
    assert u_factors == sorted(u_factors, reverse=True)
    assert window_default(2, 1970).u_factor > window_default(2, 2010).u_factor


def test_other_use_grows_with_people() -> None:
    # 620 kWh a month for two people and 820 for four, hot water included.
    for people, expected in ((2, 350 + 200), (4, 500 + 320)):
        electricity, hot_water = other_use_for(people)
        watts = electricity.number + hot_water.number
        assert watts * 730.0 / 1000.0 == pytest.approx(expected)


@pytest.mark.parametrize(
    ("longitude", "zone"),
    [
        (-79.9, "America/New_York"),
        (-92.5, "America/Chicago"),
        (-105.0, "America/Denver"),
        (-122.5, "America/Los_Angeles"),
        (-150.0, "Etc/GMT+10"),
        (10.0, "Etc/GMT-1"),
        (0.0, "Etc/GMT"),
    ],
)
def test_a_clock_from_the_longitude(longitude: float, zone: str) -> None:
    assert time_zone_at(longitude).text == zone


def test_a_layer_of_a_material() -> None:
    # 12.7 mm of gypsum board: 0.0127/0.16 m2 K/W, 0.0127 x 800 x 1090 J/(m2 K)
    layer = material_layer("gypsum board", 0.0127)
    assert layer.resistance == pytest.approx(0.079375)
    assert layer.capacity == pytest.approx(11074.4)


def test_what_is_not_in_a_table_is_an_error() -> None:
    for look_up in (
        lambda: house_default("nothing", 1968),
        lambda: duct_default("nothing", 1968),
        lambda: window_default(9, 1968),
        lambda: option_default("nothing"),
        lambda: material_layer("nothing", 1.0),
    ):
        with pytest.raises(KeyError):
            look_up()
