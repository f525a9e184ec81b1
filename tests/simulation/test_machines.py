"""Machines where they stand: points of a sheet, place and field factor, over a made year."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Any

import pytest

import costcompare
from costcompare.case import Case, case_from_document
from costcompare.simulation import HourlyResult, setpoints_as_wanted, simulate_home
from costcompare.weather import Weather
from tests.case.cases import TWO_ROOMS, document

SHEET = [
    {"at": "47 F", "speed": "rated", "capacity": "16 kBtu/h", "power": "1200 W"},
    {"at": "47 F", "speed": "minimum", "capacity": "4 kBtu/h", "power": "210 W"},
    {"at": "17 F", "speed": "maximum", "capacity": "15 kBtu/h", "power": "1750 W"},
]


def made(**unit: Any) -> Case:
    option = {
        "name": "head",
        "kind": "ductless heat pump",
        "units": [{"room": "big room", **unit}],
        "installed_cost": "5000 $",
    }
    return case_from_document(document(options=[option], rooms=TWO_ROOMS))


@cache
def weather() -> Weather:
    return costcompare.typical_year(45.8, -108.5)  # cold and dry


def year_of(
    case: Case, *, elevation: float = 0.0, field_factor: float | None = None
) -> HourlyResult:
    option = case.options[0]
    home = replace(option.home, site=replace(option.home.site, elevation=elevation))
    system = option.system
    if field_factor is not None:
        system = replace(system, field_factor=field_factor)
    return simulate_home(home, system, weather(), setpoints_as_wanted(home))


def test_points_stand_in_a_year_and_the_hours_add_up() -> None:
    year = year_of(made(points=SHEET))
    (hours,) = year.machines
    assert hours.name == "big room"
    assert 0 < hours.below_minimum_hours < hours.heating_hours < 8760
    assert year.energy_balance_error < 1e-6
    cold = int((year.outdoor_temperature < (2.0 - 32.0) / 1.8).sum())
    # Points down to 17 F reach down to 2 F; the class's cut-out of 0 F lies below that.
    assert cold > 0
    assert hours.not_rated_hours + hours.cut_out_hours == cold


def test_a_cut_out_stops_it_earlier() -> None:
    stopped = year_of(made(points=SHEET, cut_out="20 F", cut_in="25 F")).machines[0]
    cold = int((weather().column("temperature_degc") < (20.0 - 32.0) / 1.8).sum())
    assert stopped.cut_out_hours > cold  # it waits for 25 F
    assert stopped.not_rated_hours == 0  # they are among those of the cut-out


def test_a_lower_field_factor_takes_more_electricity() -> None:
    case = made(points=SHEET)
    usual, poor = year_of(case), year_of(case, field_factor=0.8)
    bare = year_of(case, field_factor=1.0)
    assert bare.heating.sum() < usual.heating.sum() < poor.heating.sum()
    mild = usual.room_heat.sum()
    assert poor.room_heat.sum() == pytest.approx(mild, rel=1e-6)  # the heat is the same


def test_thin_air_and_a_long_line_set_leave_more_heat_missing() -> None:
    low, high = year_of(made(points=SHEET)), year_of(made(points=SHEET), elevation=2500.0)
    long = year_of(made(points=SHEET, line_set="150 ft"))
    assert low.unmet_heat.sum() < high.unmet_heat.sum()
    assert low.unmet_heat.sum() < long.unmet_heat.sum()


def test_what_was_filled_and_what_is_too_cold_is_said() -> None:
    compared = costcompare.compare(made(points=SHEET), weather=weather())
    said = [line for line in compared.assumptions if "not on its sheet" in line]
    assert len(said) == 1
    assert "“head”, machine in the big room" in said[0]
    assert "rated at 17 F" in said[0]
    assert "rated at 47 F" not in said[0]
    cold = [caution for caution in compared.cautions if caution.topic == "Too cold for the machine"]
    assert len(cold) == 1
    assert "“head”, machine in the big room" in cold[0].because
