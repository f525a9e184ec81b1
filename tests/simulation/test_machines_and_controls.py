"""Heads on one outdoor unit, strips behind a gap, recovery, lockouts."""

from __future__ import annotations

import copy
from dataclasses import replace
from functools import cache
from typing import Any

import numpy as np
import pytest

from costcompare import typical_year
from costcompare.case import case_from_document
from costcompare.case.facts import Case, HeatPumpUnit, System
from costcompare.errors import CaseError
from costcompare.simulation import (
    HourlyResult,
    Setpoints,
    setpoints_as_wanted,
    simulate_home,
)
from costcompare.simulation.schedules import recovered
from costcompare.simulation.surfaces import ceiling_factors
from costcompare.weather import Weather

PLACE = {"latitude": 44.5, "longitude": -73.2}
DOCUMENT: dict[str, Any] = {
    "site": PLACE,
    "house": {
        "floor_area": "1500 ft2",
        "storeys": 1,
        "bedrooms": 3,
        "built": 1985,
        "foundation": "vented crawlspace",
        "people": 3,
    },
    "thermostat": {"day": "68 F", "night": "68 F", "wanted": "68 F", "cooling": "76 F"},
    "today": {"kind": "electric furnace", "output": "20 kW"},
    "tariff": {"price": "0.12 $/kWh"},
    "options": [
        {
            "name": "one for all",
            "kind": "ductless heat pump",
            "installed_cost": "12000 $",
            "units": [
                {
                    "class": "multi-zone cold-climate",
                    "size": "30 kBtu/h",
                    "heads": [
                        {"room": "living room", "size": "15 kBtu/h"},
                        {"room": "bedroom 1", "size": "9 kBtu/h"},
                        {"room": "bedroom 2", "size": "9 kBtu/h"},
                    ],
                }
            ],
        },
        {
            "name": "one each",
            "kind": "ductless heat pump",
            "installed_cost": "12000 $",
            "units": [
                {
                    "class": "single-zone cold-climate",
                    "size": f"{size} kBtu/h",
                    "room": room,
                }
                for room, size in (("living room", 15), ("bedroom 1", 9), ("bedroom 2", 9))
            ],
        },
    ],
}


@cache
def case() -> Case:
    return case_from_document(DOCUMENT)


@cache
def weather() -> Weather:
    return typical_year(PLACE["latitude"], PLACE["longitude"])


@cache
def option(number: int) -> HourlyResult:
    chosen = case().options[number]
    return simulate_home(chosen.home, chosen.system, weather(), setpoints_as_wanted(chosen.home))


def test_a_group_gives_no_more_than_its_outdoor_unit_and_in_one_mode() -> None:
    shared = option(0)
    heat = shared.room_heat
    assert shared.energy_balance_error < 1e-6
    heating = (heat > 0.0).any(axis=1)
    cooling = (heat < 0.0).any(axis=1)
    assert not (heating & cooling).any()
    # maximum at 5 F of a 30 kBtu/h class unit: 0.93 of its rated 28.6 kBtu/h (table)
    cold = shared.outdoor_temperature < -15.0
    assert heat[cold].sum(axis=1).max() <= 0.94 * 28.6 * 293.08


def test_warm_air_rises_alike_in_every_room_with_a_head() -> None:
    """Whether the head shares its outdoor unit or has one of its own."""
    shared, own = (ceiling_factors(case().home, case().options[n].system) for n in (0, 1))
    assert shared == own
    assert shared["bedroom 2"] > shared["hall"] > 1.0


def test_resting_heads_let_a_little_heat_through() -> None:
    shared = option(0)
    number = shared.room_names.index("bedroom 1")
    small = shared.room_heat[:, number]
    assert ((small > 0.0) & (small < 61.0)).sum() > 100


def test_one_outdoor_unit_for_all_costs_more_than_one_each() -> None:
    """Common practice, no source: small calls make a large outdoor unit cycle."""
    shared, each = option(0), option(1)
    assert shared.electricity.sum() > each.electricity.sum()
    below = shared.machines[0]
    assert below.name == "living room, bedroom 1, bedroom 2"
    assert below.below_minimum_hours > 0.1 * below.heating_hours
    assert below.other_mode_hours >= 0


def test_a_room_that_wants_cooling_while_others_heat_is_counted() -> None:
    """A bedroom full of sun and a cold north side, on one outdoor unit."""
    document = copy.deepcopy(DOCUMENT)
    document["thermostat"]["cooling"] = "72 F"
    document["thermostat"]["wanted"] = "70 F"
    changed = case_from_document(document)
    chosen = changed.options[0]
    sunny = tuple(
        replace(room, windows={"south": 12.0}) if room.name == "bedroom 1" else room
        for room in chosen.home.rooms
    )
    home = replace(chosen.home, rooms=sunny)
    year = simulate_home(home, chosen.system, weather(), setpoints_as_wanted(home))
    assert year.machines[0].other_mode_hours > 20


def test_a_multi_zone_unit_needs_its_heads() -> None:
    document = copy.deepcopy(DOCUMENT)
    unit = document["options"][0]["units"][0]
    unit["heads"] = [{"room": "attic den", "size": "60 kBtu/h"}]
    document["options"][1]["units"][0]["heads"] = [{"room": "hall", "size": "9 kBtu/h"}]
    with pytest.raises(CaseError) as caught:
        case_from_document(document)
    told = "\n".join(fault.sentence() for fault in caught.value.faults)
    assert "attic den" in told
    assert "0.5 to 1.5 times the outdoor unit" in told
    assert "belongs to a multi-zone class" in told


# ------------------------------------------------------------------ strips and thermostats


def heat_pump(**more: Any) -> System:
    today = case().today
    unit = HeatPumpUnit("ducted single-speed", 36 * 293.07, today.thermostat_room or "")
    return replace(
        today,
        kind="ducted heat pump",
        furnace_output=0.0,
        ducted_unit=unit,
        strip_output=15_000.0,
        **more,
    )


@cache
def backup(gap: float, lockout: float | None, compressor: float | None) -> tuple[float, float]:
    """Backup and all electricity of the year [kWh], the thermostat held."""
    home = case().home
    system = heat_pump(strip_gap=gap, strip_lockout=lockout, compressor_lockout=compressor)
    year = simulate_home(home, system, weather(), setpoints_as_wanted(home))
    assert year.energy_balance_error < 1e-6
    return float(year.backup.sum()) / 1000.0, float(year.electricity.sum()) / 1000.0


def test_strips_behind_a_gap_run_less() -> None:
    assert backup(2 / 1.8, None, None)[0] < backup(0.0, None, None)[0]


def test_a_lockout_keeps_strips_off_in_mild_weather() -> None:
    free, locked = backup(0.0, None, None), backup(0.0, -10.0, None)
    assert locked[0] < free[0]
    assert locked[1] <= free[1]


def test_a_compressor_locked_out_too_warm_is_a_costly_mistake() -> None:
    """Common practice, no source: strips then do the heat pump's work at a third of its COP."""
    right, wrong = backup(2 / 1.8, None, None), backup(2 / 1.8, None, 0.0)
    assert wrong[0] > 2.0 * right[0]
    assert wrong[1] > 1.1 * right[1]


def test_a_ramp_climbs_ahead_of_the_morning() -> None:
    """16 by night, 20 from 6 o'clock, three hours ahead: 17, 18, 19 at 3, 4, 5."""
    profile = np.full(24, 20.0)
    profile[:6] = 16.0
    profile[22:] = 16.0
    ramped = recovered(profile, 3)
    assert ramped[:7] == pytest.approx([16, 16, 16, 17, 18, 19, 20])
    assert recovered(profile, 0) == pytest.approx(profile)


def test_a_ramped_recovery_needs_fewer_strips() -> None:
    home = case().home
    night = np.array([hour >= 22 or hour < 6 for hour in range(24)])
    house = np.where(night, 20.0 - 8 / 1.8, 20.0)
    setpoints = Setpoints(house, 25.0, house)
    plain = simulate_home(home, heat_pump(strip_gap=2 / 1.8), weather(), setpoints)
    ramped = simulate_home(
        home, heat_pump(strip_gap=2 / 1.8, recovery_hours=4), weather(), setpoints
    )
    assert ramped.backup.sum() < 0.95 * plain.backup.sum()
