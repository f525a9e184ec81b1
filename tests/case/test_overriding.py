"""Changing a value by its path: what is changed, what goes with it, what is refused."""

from __future__ import annotations

from copy import deepcopy
from datetime import date
from typing import Any

import pytest

from costcompare.case import override
from costcompare.case.overriding import with_changes
from costcompare.errors import CaseError

DOCUMENT: dict[str, Any] = {
    "house": {
        "built": 1968,
        "floor_insulation": "R-11",
        "floor_insulation_condition": "sagging",
        "air_leakage_at_50_pa": {"likely": "2000 cfm", "low": "1500 cfm"},
    },
    "rooms": [{"name": "living room", "floor_area": "300 ft2"}, {"name": "hall"}],
    "today": {
        "ducts": {
            "registers": {"hall": 0.5, "living room": 0.5},
            "supply_leakage": "18 %",
            "return_leakage": "9 %",
            "insulation": "R-4",
        },
    },
    "options": [{"name": "Two heads, no. 1", "installed_cost": "9000 $"}],
}


@pytest.mark.parametrize(
    ("assignment", "place", "value"),
    [
        ("house.built=1971", ("house", "built"), 1971),
        ("rooms.living room.floor_area=400 ft2", ("rooms", 0, "floor_area"), "400 ft2"),
        ('rooms."hall".storey = 2', ("rooms", 1, "storey"), 2),
        ("rooms.2.storey=2", ("rooms", 1, "storey"), 2),
        (
            'options."Two heads, no. 1".installed_cost=$9,500',
            ("options", 0, "installed_cost"),
            "$9,500",
        ),
        ("today.ducts.share_outside=0.5", ("today", "ducts", "share_outside"), 0.5),
        ("thermostat.day=64 F", ("thermostat", "day"), "64 F"),
        ("money.installed_on=2027-03-01", ("money", "installed_on"), date(2027, 3, 1)),
        ("crawlspace.ground_cover=true", ("crawlspace", "ground_cover"), True),
        (
            "house.built={ likely = 1970, low = 1965 }",
            ("house", "built"),
            {"likely": 1970, "low": 1965},
        ),
        (
            'rooms.hall.ceiling_height={ low = "8 ft", high = "12 ft" }',
            ("rooms", 1, "ceiling_height"),
            {"low": "8 ft", "high": "12 ft"},
        ),
        ("title=A = B", ("title",), "A = B"),
    ],
)
def test_one_value_is_changed(assignment: str, place: tuple[Any, ...], value: Any) -> None:
    before = deepcopy(DOCUMENT)
    changed: Any = override(DOCUMENT, assignment)
    for step in place:
        changed = changed[step]
    assert changed == value
    assert before == DOCUMENT


@pytest.mark.parametrize(
    ("assignment", "sentence"),
    [
        ("house.built", "house.built: must be path=value. Write rooms.hall.floor_area=400 ft2."),
        (
            "rooms.hal.storey=1",
            'rooms.hal: must name one of: living room; hall (given: hal). Write "hall".',
        ),
        ("house.built.year=1", "house.built.year: house.built is a single value, not a table."),
        (
            "doorways.1.state=open",
            "doorways: the case lists no doorways of its own."
            " Write the doorways into the case first.",
        ),
        (
            "a..b=1",
            "a..b: has an empty part between dots (given: a..b)."
            " Write for example rooms.hall.floor_area.",
        ),
    ],
)
def test_what_cannot_be_changed_is_said(assignment: str, sentence: str) -> None:
    with pytest.raises(CaseError) as caught:
        override(DOCUMENT, assignment)
    assert str(caught.value) == sentence


def test_a_new_condition_takes_measured_leaks_away() -> None:
    ducts = override(DOCUMENT, "today.ducts.condition=sealed and tested")["today"]["ducts"]
    ducts.pop("registers")
    assert ducts == {"condition": "sealed and tested", "insulation": "R-4"}


def test_new_floor_insulation_takes_the_sagging_away() -> None:
    house = override(DOCUMENT, "house.floor_insulation=R-25")["house"]
    assert "floor_insulation_condition" not in house


def test_a_measured_exchange_takes_the_place_of_the_blower_door() -> None:
    house = override(DOCUMENT, "house.air_changes=0.4 1/h")["house"]
    assert "air_leakage_at_50_pa" not in house


def test_changes_may_be_nested_or_dotted() -> None:
    dotted = {"today.ducts.condition": "average", "today.ducts.supply_leakage": "12 %"}
    nested = {"today": {"ducts": {"supply_leakage": "12 %", "condition": "average"}}}
    for changes in (dotted, nested):
        changed, faults = with_changes(DOCUMENT, changes)
        assert not faults
        ducts = {"condition": "average", "supply_leakage": "12 %", "insulation": "R-4"}
        changed["today"]["ducts"].pop("registers")
        assert changed["today"]["ducts"] == ducts


def test_registers_are_replaced_not_merged() -> None:
    changed, _ = with_changes(DOCUMENT, {"today.ducts.registers": {"hall": 1.0}})
    assert changed["today"]["ducts"]["registers"] == {"hall": 1.0}
