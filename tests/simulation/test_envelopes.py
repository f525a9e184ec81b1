"""Foundations and envelopes beyond the usual: what must hold of each."""

from __future__ import annotations

import copy
from functools import cache
from typing import Any

import pytest

from costcompare import simulate, typical_year
from costcompare.case import case_from_document
from costcompare.simulation import HourlyResult
from costcompare.weather import Weather

PLAIN: dict[str, Any] = {
    "site": {"latitude": 44.5, "longitude": -73.2},
    "house": {
        "floor_area": "1200 ft2",
        "storeys": 1,
        "bedrooms": 2,
        "built": 1975,
        "foundation": "vented crawlspace",
        "people": 2,
        "floor_insulation": "R-11",
    },
    "thermostat": {"day": "68 F", "night": "68 F"},
    "today": {
        "kind": "electric furnace",
        "output": "20 kW",
        "ducts": {"condition": "old, never sealed"},
    },
    "tariff": {"price": "0.12 $/kWh"},
}


@cache
def weather() -> Weather:
    return typical_year(44.5, -73.2)


def run(**sections: dict[str, Any]) -> HourlyResult:
    document = copy.deepcopy(PLAIN)
    for name, values in sections.items():
        if name == "rooms":
            document["rooms"] = values
        else:
            document.setdefault(name, {}).update(values)
    return simulate(case_from_document(document), weather=weather())


@pytest.mark.parametrize(
    "foundation",
    ["vented crawlspace", "closed crawlspace", "basement", "slab", "manufactured home"],
)
def test_every_foundation_runs_and_closes(foundation: str) -> None:
    year = run(house={"foundation": foundation})
    assert year.energy_balance_error < 1e-6
    assert 5_000 < year.heating.sum() / 1000.0 < 60_000


def test_a_torn_belly_costs_more_than_a_whole_one() -> None:
    """Common practice, no source: ducts in a torn belly heat the ground under the home."""
    whole = run(house={"foundation": "manufactured home", "belly": "whole"})
    torn = run(house={"foundation": "manufactured home", "belly": "torn"})
    assert torn.heating.sum() > 1.03 * whole.heating.sum()
    assert torn.space_temperature["belly"].min() < whole.space_temperature["belly"].min()
    # the belly holds warm ducts: it stays far above outdoors
    cold = torn.outdoor_temperature < -10.0
    assert (torn.space_temperature["belly"] - torn.outdoor_temperature)[cold].mean() > 5.0


def test_vents_cost_heat() -> None:
    """Open vents cost more than closed ones (field: a fifth to a third with bare floors)."""
    open_vents = run(crawlspace={"vents": "open"}, house={"floor_insulation": "R-0"})
    closed = run(crawlspace={"vents": "closed"}, house={"floor_insulation": "R-0"})
    assert open_vents.heating.sum() > 1.03 * closed.heating.sum()


def test_thermal_bridges_cost_what_their_share_of_the_walls_does() -> None:
    plain, bridged = run(), run(house={"thermal_bridges": 1.3})
    more = bridged.heating.sum() - plain.heating.sum()
    assert 0.0 < more < 0.3 * plain.heating.sum()


def room(name: str, storey: int, **more: Any) -> dict[str, Any]:
    return {
        "name": name,
        "storey": storey,
        "floor_area": "600 ft2",
        "ceiling_height": "8 ft",
        "windows": {},
        **more,
    }


def test_a_heated_basement_loses_less_in_the_ground_than_in_the_open() -> None:
    upstairs = room("upstairs", 2, below="downstairs", above="attic")
    upstairs["outside_walls"] = {"north": "30 ft", "south": "30 ft", "east": "20 ft"}
    under = room("downstairs", 1, below="ground", above="upstairs")
    heat = []
    for walls in (
        {"walls_below_grade": "100 ft"},
        {"outside_walls": {"north": "30 ft", "south": "30 ft", "east": "20 ft", "west": "20 ft"}},
    ):
        year = run(
            rooms=[upstairs, {**under, **walls}],
            house={"foundation": "slab", "storeys": 2, "floor_area": "1200 ft2"},
            today={
                "kind": "room heaters",
                "heaters": [
                    {"room": "upstairs", "output": "15 kW"},
                    {"room": "downstairs", "output": "15 kW"},
                ],
                "ducts": None,
            },
        )
        assert year.energy_balance_error < 1e-6
        heat.append(year.heating.sum())
    assert heat[0] != heat[1]


def test_a_wing_with_its_own_heater_stays_as_it_is() -> None:
    """A furnace house whose one room has a heater of its own besides."""
    heater = {"kind": "room heaters", "rooms": ["bedroom 1"], "size": "1500 W"}
    year = run(today={"backup": {**heater, "setpoint": "70 F"}})
    number = year.room_names.index("bedroom 1")
    assert year.room_heat[:, number].sum() > 0.0
    winter = slice(0, 744)
    assert year.room_temperature[winter, number].mean() > 20.5
