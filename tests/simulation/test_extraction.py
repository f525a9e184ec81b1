"""Fans and a fire: energy closes, more extraction never costs less, a fire without heat costs."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from itertools import pairwise
from typing import Any

import numpy as np
import pytest

from costcompare import typical_year
from costcompare.case import case_from_document
from costcompare.case.facts import Case, ExhaustFan, Fireplace, Home
from costcompare.physics.air import heat_capacity
from costcompare.simulation import HourlyResult, setpoints_as_wanted, simulate_home
from costcompare.simulation.exhaust import extraction, fire_heat
from costcompare.weather import Weather

CFM = 4.719474e-4
ALL_DAY, ALL_YEAR = (True,) * 24, (True,) * 12
EVENING = tuple(18 <= hour < 22 for hour in range(24))
SYSTEMS: dict[str, dict[str, Any]] = {
    "leaky ducts": {"output": "18 kW", "ducts": {"condition": "old, never sealed"}},
    "return leaks alone": {
        "output": "18 kW",
        "ducts": {"supply_leakage": "0 %", "return_leakage": "25 %"},
    },
    "room heaters": {"kind": "room heaters", "output": "25 kW"},
}


@cache
def weather() -> Weather:
    return typical_year(44.5, -73.2)


@cache
def case_of(system: str, foundation: str = "vented crawlspace") -> Case:
    return case_from_document(
        {
            "site": {"latitude": 44.5, "longitude": -73.2},
            "house": {
                "floor_area": "1500 ft2",
                "built": 1974,
                "foundation": foundation,
                "people": 3,
            },
            "thermostat": {"day": "68 F"},
            "today": SYSTEMS[system],
            "tariff": {"price": "0.125 $/kWh"},
        }
    )


def year_of(case: Case, home: Home) -> HourlyResult:
    return simulate_home(home, case.today, weather(), setpoints_as_wanted(home))


def with_fan(home: Home, cfm: float, room: str = "bath") -> Home:
    fan = ExhaustFan(room, cfm * CFM, ALL_DAY)
    return replace(home, house=replace(home.house, fans=(fan,)))


def with_fire(home: Home, cfm: float, heat: float) -> Home:
    fire = Fireplace("living room", EVENING, ALL_YEAR, cfm * CFM, heat)
    return replace(home, fireplace=fire)


def bought(year: HourlyResult) -> float:
    """Electricity for heating with the blower [kWh]."""
    return float((year.heating + year.fan).sum()) / 1000.0


def is_sound(year: HourlyResult) -> None:
    """Energy closes, and loads less gains are the heat of the equipment, hour by hour."""
    assert year.energy_balance_error < 1e-6
    loads, ducts = year.loads, year.ducts
    called = loads.walls_and_glass + loads.floor + loads.air_leaking + loads.stored
    called = called - loads.sun - loads.inside_gains
    if ducts is not None:
        called = called + ducts.conduction + ducts.supply_leak + ducts.return_leak
        called = called + ducts.induced_infiltration
    assert np.abs(called - year.equipment_heat).max() < 1e-6 * year.equipment_heat.max()


@pytest.mark.parametrize("system", SYSTEMS)
def test_more_extraction_never_costs_less(system: str) -> None:
    case = case_of(system)
    years = [year_of(case, with_fan(case.home, cfm)) for cfm in (0.0, 30.0, 100.0, 300.0)]
    for year in years:
        is_sound(year)
    energy = [bought(year) for year in years]
    assert all(more > less for less, more in pairwise(energy))


@pytest.mark.parametrize("room", ["bath", "hall", "kitchen", "bedroom 1"])
def test_it_costs_wherever_the_fan_stands(room: str) -> None:
    case = case_of("leaky ducts")
    year = year_of(case, with_fan(case.home, 100.0, room))
    is_sound(year)
    assert bought(year) > bought(year_of(case, case.home))


@pytest.mark.parametrize("system", SYSTEMS)
def test_an_open_fire_without_heat_costs_more_and_with_heat_less(system: str) -> None:
    case = case_of(system)
    cold = year_of(case, with_fire(case.home, 200.0, 0.0))
    warm = year_of(case, with_fire(case.home, 200.0, 1500.0))
    for year in (cold, warm):
        is_sound(year)
    assert bought(cold) > bought(year_of(case, case.home))
    assert bought(warm) < bought(cold)


def test_what_a_large_fan_takes_is_what_comes_in() -> None:
    """A fan far above the leaks: its flow comes in at the outdoor temperature, no more.

    With extraction over twice the natural flow nothing leaks out, so in a house on a slab with
    heaters the cost of air is the fan's flow times the difference to outdoors, hour by hour.
    """
    case = case_of("room heaters", "slab")
    home = with_fan(case.home, 2000.0, "hall")
    year = year_of(case, home)
    hall = year.room_names.index("hall")
    cold = year.outdoor_temperature < 0.0
    k = heat_capacity(float(weather().column("pressure_pa").mean()))
    expected = k * 2000 * CFM * (year.room_temperature[:, hall] - year.outdoor_temperature)
    assert year.loads.air_leaking[cold] == pytest.approx(expected[cold], rel=1e-9)


def test_hours_and_months_follow_the_local_clock() -> None:
    home = case_of("room heaters").home
    winter = tuple(month in (10, 11, 0, 1, 2) for month in range(12))
    fire = Fireplace("living room", EVENING, winter, 200 * CFM, 1000.0)
    index = weather().table.index
    burning = replace(home, fireplace=fire)
    heat = fire_heat(fire, home.site.time_zone, index)
    local = index.tz_convert(home.site.time_zone)
    on = heat > 0.0
    assert set(local.hour[on]) == {18, 19, 20, 21}
    assert set(local.month[on]) == {11, 12, 1, 2, 3}
    assert heat.sum() == pytest.approx(1000.0 * 4 * 151)
    taken = extraction(burning, index)
    assert taken.sum() == pytest.approx(200 * CFM * 4 * 151)
    cold = replace(fire, used=False)
    assert extraction(replace(home, fireplace=cold), index).sum() == 0.0
    assert fire_heat(cold, home.site.time_zone, index).sum() == 0.0


def test_a_flue_lets_more_air_through() -> None:
    case = case_of("room heaters")
    flue = replace(case.home, house=replace(case.home.house, flue=True))
    without, with_flue = year_of(case, case.home), year_of(case, flue)
    is_sound(with_flue)
    leaking = [float(y.loads.air_leaking.sum()) for y in (without, with_flue)]
    # one storey, shelter class 3: the stack part by 0.069/0.054, the wind part by (0.86/0.70)^1.3
    assert 1.2 < leaking[1] / leaking[0] < 1.35
