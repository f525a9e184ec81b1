"""Values that are right alone and wrong together: each refusal, in its words."""

from __future__ import annotations

from copy import deepcopy
from typing import Any

import pytest

from .cases import TWO_ROOMS, document, sentences

DUCTED = {
    "name": "heat pump",
    "kind": "ducted heat pump",
    "installed_cost": "$9,000",
    "units": [{"class": "ducted variable", "size": "3 tons"}],
}
DUCTLESS = {
    "name": "heads",
    "kind": "ductless heat pump",
    "installed_cost": "$9,000",
    "units": [{"class": "single-zone standard", "size": "12 kBtu/h", "room": "big room"}],
}
ROOMS = "big room; bedroom"


def rooms(**changes: Any) -> list[dict[str, Any]]:
    """Two rooms, the first with changes."""
    made = deepcopy(TWO_ROOMS)
    made[0].update(changes)
    return made


def option(base: dict[str, Any], **changes: Any) -> dict[str, Any]:
    """A document with two rooms and one option; None takes a key out."""
    made = {**deepcopy(base), **changes}
    kept = {key: value for key, value in made.items() if value is not None}
    return document(rooms=TWO_ROOMS, options=[kept])


def test_the_cases_that_the_faults_start_from_are_right() -> None:
    assert sentences(document(rooms=rooms())) == []
    assert sentences(option(DUCTED)) == []
    assert sentences(option(DUCTLESS)) == []


@pytest.mark.parametrize(
    ("sections", "sentence"),
    [
        (
            {"site": {"time_zone": "America/New_Yrok"}},
            "site.time_zone: must be a time zone of the IANA list (given: America/New_Yrok)."
            ' Write "America/New_York".',
        ),
        (
            {"house": {"floor_area": None}},
            'house.floor_area: is needed. Write for example floor_area = "1850 ft2".',
        ),
        (
            {"house": {"air_changes": "0.4 1/h", "air_leakage_at_50_pa": "2000 cfm"}},
            "house.air_changes: give either air_changes or air_leakage_at_50_pa, not both.",
        ),
        (
            {"house": {"foundation": "slab"}, "today": {"ducts": None}, "crawlspace": {}},
            "crawlspace: a house on a slab has no crawlspace."
            " Write the foundation, or leave the table out.",
        ),
        (
            {"house": {"foundation": "basement"}},
            "today.ducts.location: ducts cannot run in the crawlspace: the house has none"
            " (given: the foundation is a basement).",
        ),
        (
            {"today": {"ducts": {"location": "basement"}}},
            "today.ducts.location: ducts cannot run in the basement: the house has none"
            " (given: the foundation is a vented crawlspace).",
        ),
        (
            {
                "rooms": rooms(above="roof")[:1],
                "house": {"floor_area": None},
                "today": {"ducts": {"location": "attic"}},
            },
            "today.ducts.location: ducts cannot run in the attic: the house has none"
            " (given: the foundation is a vented crawlspace).",
        ),
        (
            {"rooms": rooms(name="attic")},
            "rooms.attic: must not be the name of a place above or below the rooms."
            ' Write for example "attic room".',
        ),
        (
            {"rooms": rooms(below="celler")},
            "rooms.big room.below: must be one of: crawlspace; ground; basement; garage;"
            " belly; outdoors; bedroom (given: celler).",
        ),
        (
            {"rooms": rooms(below="basement")},
            "rooms.big room.below: a house on a vented crawlspace has no basement"
            " (given: basement).",
        ),
        (
            {"rooms": rooms(above="bedroom")},
            "rooms.big room.above: must be a room of another storey above (given: bedroom).",
        ),
        (
            {"rooms": rooms(windows={"east": "20 ft2"})},
            "rooms.big room.windows.east: a window to the east needs an outside wall to the"
            " east (given: 20 ft2).",
        ),
        (
            {"rooms": rooms(windows={"south": "241 ft2"}, ceiling_height="8 ft")},
            "rooms.big room.windows.south: must be less than the wall, 240 ft2 (given: 241 ft2).",
        ),
        (
            {"rooms": [{"name": "cell", "floor_area": "1500 ft2"}]},
            "rooms: at least one room must have an outside wall."
            ' Write for example outside_walls = { south = "24 ft" }.',
        ),
        (
            {"rooms": rooms(), "house": {"floor_area": "2500 ft2"}},
            "house.floor_area: the rooms add up to 1,500 ft2, more than 35 % away"
            " (given: 2,500 ft2). Write the sum of the rooms, or leave floor_area out.",
        ),
        (
            {"rooms": rooms(), "house": {"storeys": 2}},
            "house.storeys: the highest storey of the rooms is 1 (given: 2). Write 1.",
        ),
        (
            {"doorways": [{"between": ["hall", "kitchn"]}]},
            "doorways.1.between: must be a room of the house: living room; kitchen; hall;"
            ' bedroom 1; bedroom 2; bath; bedroom 3 (given: kitchn). Write "kitchen".',
        ),
        (
            {"doorways": [{"between": ["hall", "bath"]}, {"between": ["bath", "hall"]}]},
            "doorways.2: two rooms have one row of doorways only (given: bath and hall).",
        ),
        (
            {"doorways": [{"between": ["hall", "hall"]}]},
            "doorways.1: between must name two different rooms (given: a list of 2)."
            ' Write ["hall", "bath"].',
        ),
        (
            {"thermostat": {"cooling": "64 F"}},
            "thermostat.cooling: must be above the warmest heating setting, 64 F (given: 64 F).",
        ),
        (
            {"today": {"output": None}},
            'today.output: is needed for a furnace. Write for example output = "20 kW".',
        ),
        (
            {"today": {"thermostat_room": "attic"}},
            "today.thermostat_room: must be a room of the house: living room; kitchen; hall;"
            " bedroom 1; bedroom 2; bath; bedroom 3 (given: attic).",
        ),
        (
            {
                "rooms": rooms(),
                "today": {"ducts": {"registers": {"big room": 0.5, "bedroom": 0.4}}},
            },
            "today.ducts.registers: the shares of all registers must add up to 1"
            " (given: they add up to 0.9).",
        ),
        (
            {"rooms": rooms(), "today": {"ducts": {"registers": {"big room": 0.5, "bedrom": 0.5}}}},
            f"today.ducts.registers: must be a room of the house: {ROOMS} (given: bedrom)."
            ' Write "bedroom".',
        ),
        (
            {"today": {"heaters": [{"room": "hall"}]}},
            "today.heaters: heaters belong to the kind room heaters."
            ' Write backup = { kind = "room heaters" }.',
        ),
        (
            {"tariff": {"tiers": [{"price": "0.1 $/kWh"}]}},
            "tariff.price: give either price or tiers, not both.",
        ),
        (
            {"tariff": {"price": None}},
            'tariff.price: is needed. Write for example price = "0.125 $/kWh".',
        ),
        (
            {"tariff": {"price": None, "tiers": [{"price": "0.1 $/kWh"}, {"price": "1 $/kWh"}]}},
            'tariff.tiers: every tier but the last must have up_to. Write up_to = "800 kWh/month".',
        ),
        (
            {"tariff": {"price": None, "tiers": [{"up_to": "9 kWh", "price": "0.1 $/kWh"}]}},
            "tariff.tiers: the last tier must have no up_to: it holds all that is left.",
        ),
        (
            {
                "tariff": {
                    "price": None,
                    "tiers": [
                        {"up_to": "9 kWh", "price": "0.1 $/kWh"},
                        {"up_to": "8 kWh", "price": "0.1 $/kWh"},
                        {"price": "0.1 $/kWh"},
                    ],
                }
            },
            "tariff.tiers: every up_to must be above the one before.",
        ),
        (
            {
                "tariff": {
                    "seasons": [
                        {"name": "summer", "months": "6-9", "tiers": [{"price": "0.1 $/kWh"}]},
                        {"name": "fall", "months": "9-11", "tiers": [{"price": "0.1 $/kWh"}]},
                    ]
                }
            },
            "tariff.seasons.fall.months: month 9 is in the season summer already.",
        ),
        (
            {"tariff": {"riders": "1 %"}},
            'tariff.riders: must be a list (given: "1 %").',
        ),
        (
            {
                "money": {
                    "incentives": [
                        {"name": "r", "amount": "$5", "status": "unknown", "options": ["x"]}
                    ]
                }
            },
            "money.incentives.r.options: must be an option of the case: the case has none"
            " (given: x).",
        ),
        (
            {"money": {"incentives": [{"name": "r", "amount": "$5", "status": "hoped for"}]}},
            "money.incentives.r.status: must be one of: confirmed; applied for; unknown"
            ' (given: "hoped for"). Write "applied for".',
        ),
        (
            {"weather": {"source": "file"}},
            'weather.file: is needed where source is "file".'
            ' Write for example file = "my-year.csv".',
        ),
        (
            {"weather": {"file": "x.csv"}},
            "weather.source: a file is read only where source says so (given: nothing)."
            ' Write "file" or "measured".',
        ),
        (
            {"bills": [{"from": "2026-01-05", "to": "2026-01-05", "kwh": 4}]},
            "bills.1.to: must be after from (given: 2026-01-05).",
        ),
        (
            {"format": 2},
            "format: must be a whole number, 1 (given: 2).",
        ),
    ],
)
def test_a_case_that_contradicts_itself_is_refused(sections: dict[str, Any], sentence: str) -> None:
    assert sentences(document(**sections)) == [sentence]


@pytest.mark.parametrize(
    ("base", "changes", "sentence"),
    [
        (
            DUCTED,
            {"kind": "ducted heat pmp"},
            "options.heat pump.kind: must be one of: improve; electric furnace; room heaters;"
            ' ducted heat pump; ductless heat pump; ideal (given: "ducted heat pmp").'
            ' Write "ducted heat pump".',
        ),
        (
            DUCTED,
            {"units": None},
            "options.heat pump.units: is needed for a heat pump."
            ' Write for example units = [{ class = "ducted variable", size = "24 kBtu/h" }].',
        ),
        (
            DUCTED,
            {"units": [{"class": "single-zone standard", "size": "3 tons"}]},
            "options.heat pump.units.1.class: is not a class of a ducted heat pump"
            " (given: single-zone standard).",
        ),
        (
            DUCTED,
            {"backup": {"kind": "keep furnace"}},
            "options.heat pump.backup.kind: does not go with the kind ducted heat pump"
            ' (given: keep furnace). Write "strips".',
        ),
        (
            DUCTED,
            {"backup": {"kind": "strips", "setpoint": "60 F"}},
            "options.heat pump.backup.setpoint: does not go with the backup strips.",
        ),
        (
            DUCTED,
            {"ducts": {"location": "basement"}},
            "options.heat pump.ducts.location: ducts cannot run in the basement: the house has"
            " none (given: the foundation is a vented crawlspace).",
        ),
        (
            DUCTLESS,
            {"backup": {"kind": "strips"}},
            "options.heads.backup.kind: does not go with the kind ductless heat pump"
            " (given: strips).",
        ),
        (
            DUCTLESS,
            {"units": [{"class": "multi-zone standard", "size": "3 tons", "room": "bedroom"}]},
            "options.heads.units.1.heads: is needed for a multi-zone class. Write for example"
            ' heads = [{ room = "hall", size = "9 kBtu/h" }, ...].',
        ),
        (
            DUCTLESS,
            {
                "units": [
                    {
                        "class": "single-zone standard",
                        "size": "1 ton",
                        "room": "bedroom",
                        "points": [],
                    }
                ]
            },
            "options.heads.units.1.points: must hold at least one heating point. Write for example"
            ' { at = "47 F", speed = "rated", capacity = "12 kBtu/h", cop = 3.9 }.',
        ),
        (
            DUCTLESS,
            {"units": [{"class": "single-zone standard", "size": "1 ton", "room": "bath"}]},
            f"options.heads.units.1.room: must be a room of the house: {ROOMS} (given: bath).",
        ),
        (
            DUCTLESS,
            {"units": [{"class": "single-zone standard", "size": "1 ton"}]},
            "options.heads.units.1.room: is needed: the room of the head.",
        ),
        (
            DUCTLESS,
            {"backup": {"kind": "room heaters", "rooms": ["bath"]}},
            f"options.heads.backup.rooms: must be a room of the house: {ROOMS} (given: bath).",
        ),
        (
            DUCTLESS,
            {"kind": "improve", "units": None, "output": "3 kW"},
            "options.heads.output: an improve option changes facts with set alone."
            ' Write set = { "today.output" = ... }.',
        ),
        (
            DUCTLESS,
            {"set": {"tariff.price": "0.1 $/kWh"}},
            "options.heads.set.tariff.price: an option can change: house, constructions,"
            " other_use, rooms, doorways, crawlspace, fireplace, thermostat, comfort, today"
            " (given: tariff).",
        ),
        (
            DUCTLESS,
            {"set": {"rooms.bath.storey": 1}},
            "options.heads.set.rooms.bath: must name one of: big room; bedroom (given: bath).",
        ),
        (
            DUCTLESS,
            {"set": {"house.foundation": "slab"}},
            "options.heads.set.today.ducts.location: ducts cannot run in the crawlspace: the"
            " house has none (given: the foundation is a slab).",
        ),
    ],
)
def test_an_option_that_cannot_be_is_refused(
    base: dict[str, Any], changes: dict[str, Any], sentence: str
) -> None:
    assert sentences(option(base, **changes)) == [sentence]


def test_two_options_cannot_share_a_name() -> None:
    twice = document(rooms=TWO_ROOMS, options=[DUCTLESS, DUCTLESS])
    assert "options.heads: must be the name of one row only (given: 2 rows)." in sentences(twice)


def test_no_furnace_no_furnace_to_keep() -> None:
    kept = {**DUCTLESS, "backup": {"kind": "keep furnace"}}
    made = document(
        rooms=TWO_ROOMS,
        today={"kind": "room heaters", "ducts": None, "output": None},
        options=[kept],
    )
    assert sentences(made) == [
        "options.heads.backup.kind: there is no furnace to keep: today's system is of another"
        " kind (given: room heaters)."
    ]
