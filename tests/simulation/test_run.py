"""What must hold for every home and every system, on the built-in examples."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from costcompare import typical_year
from costcompare.case import example_names, example_path, read_case
from costcompare.case.facts import Case, Home, System
from costcompare.simulation import (
    HourlyResult,
    assembly,
    setpoints_as_lived,
    setpoints_as_wanted,
    simulate_home,
)
from costcompare.simulation.hour import HELD
from costcompare.weather import Weather


@cache
def case_of(name: str) -> Case:
    return read_case(example_path(name))


@cache
def weather_of(name: str) -> Weather:
    site = case_of(name).home.site
    return typical_year(site.latitude, site.longitude, site.elevation)


@cache
def run(name: str, number: int) -> tuple[Home, System, HourlyResult]:
    """Today (number -1) or an option of an example, at the wanted warmth."""
    case = case_of(name)
    home, system = case.home, case.today
    if number >= 0:
        home, system = case.options[number].home, case.options[number].system
    return home, system, simulate_home(home, system, weather_of(name), setpoints_as_wanted(home))


RUNS = [
    (name, number) for name in example_names() for number in range(-1, len(case_of(name).options))
]


@pytest.mark.parametrize(("name", "number"), RUNS)
def test_energy_closes_and_all_is_finite(name: str, number: int) -> None:
    _home, _system, year = run(name, number)
    assert year.energy_balance_error < 1e-6
    frame = year.frame()
    assert len(frame) == 8760
    assert np.isfinite(frame.to_numpy()).all()
    for column in ("heating_kwh", "cooling_kwh", "fan_kwh", "standby_kwh", "backup_kwh"):
        assert (frame[column] >= 0.0).all()
    assert (year.backup <= year.heating + 1e-9).all()


@pytest.mark.parametrize(("name", "number"), RUNS)
def test_loads_less_gains_are_the_heat_of_the_equipment(name: str, number: int) -> None:
    """Hour by hour, where nothing cools: an identity of the rooms' balance."""
    _home, _system, year = run(name, number)
    loads = year.loads
    called = (
        loads.walls_and_glass
        + loads.floor
        + loads.air_leaking
        + loads.stored
        - loads.sun
        - loads.inside_gains
    )
    if year.ducts is not None:
        ducts = year.ducts
        called = called + ducts.conduction + ducts.supply_leak + ducts.return_leak
        called = called + ducts.induced_infiltration
    warm = year.cooling <= 0.0
    assert np.abs(called - year.equipment_heat)[warm].max() < 1e-6 * year.equipment_heat.max()


@pytest.mark.parametrize(("name", "number"), RUNS)
def test_no_heating_when_nothing_is_colder_than_its_setpoint(name: str, number: int) -> None:
    home, _system, year = run(name, number)
    lowest = min(home.thermostat.wanted, home.thermostat.wanted_night)
    warm = (
        year.room_temperature.min(axis=1)
        > max(lowest, home.thermostat.wanted, home.thermostat.wanted_night) + 0.5
    )
    assert warm.any()
    assert year.equipment_heat[warm].max() < 1.0


@pytest.mark.parametrize("name", example_names())
def test_the_thermostat_is_held_while_the_furnace_can(name: str) -> None:
    home, system, year = run(name, -1)
    room = year.room_names.index(system.thermostat_room or "")
    held = (year.run_fraction > 0.0) & (year.run_fraction < 0.999) & (year.cooling <= 0.0)
    setting = {home.thermostat.wanted, home.thermostat.wanted_night}
    nearest = np.min([np.abs(year.room_temperature[held, room] - s) for s in setting], axis=0)
    assert nearest.max() < HELD


@pytest.mark.parametrize("name", ["demo", "summer_peak"])
def test_what_was_before_the_warm_up_is_forgotten(
    name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The lightest and the heaviest of the examples."""
    home, system, year = run(name, -1)
    monkeypatch.setattr(assembly, "WARM_UP_DAYS", 60)
    assembly._shell.cache_clear()
    later = simulate_home(home, system, weather_of(name), setpoints_as_wanted(home))
    assembly._shell.cache_clear()
    assert year.heating.sum() == pytest.approx(later.heating.sum(), rel=1e-4)
    assert year.heating[:24].sum() == pytest.approx(later.heating[:24].sum(), rel=1e-2)
    assert np.abs(year.room_temperature - later.room_temperature)[:24].max() < 0.05


@pytest.mark.parametrize("name", example_names())
def test_a_higher_setting_never_costs_less(name: str) -> None:
    home, system, wanted = run(name, -1)
    lived = simulate_home(home, system, weather_of(name), setpoints_as_lived(home))
    assert home.thermostat.wanted > home.thermostat.day
    assert wanted.heating.sum() > lived.heating.sum()


@pytest.mark.parametrize("name", example_names())
def test_ducts_inside_the_rooms_lose_nothing(name: str) -> None:
    home, system, outside = run(name, -1)
    assert system.ducts is not None
    inside = replace(system, ducts=replace(system.ducts, location="inside"))
    year = simulate_home(home, inside, weather_of(name), setpoints_as_wanted(home))
    assert year.ducts is not None
    for lost in (year.ducts.conduction, year.ducts.supply_leak, year.ducts.return_leak):
        assert np.abs(lost).max() < 1e-6
    assert year.heating.sum() < outside.heating.sum()


@pytest.mark.parametrize("name", example_names())
def test_the_same_run_twice_gives_the_same_digits(name: str) -> None:
    home, system, year = run(name, -1)
    again = simulate_home(home, system, weather_of(name), setpoints_as_wanted(home))
    assert np.array_equal(year.room_temperature, again.room_temperature)
    assert np.array_equal(year.electricity, again.electricity)


def test_a_setting_as_warm_as_the_cooling_opens_no_window() -> None:
    """Windows that are opened on warm days stay shut while the house is heated that warm."""
    case = case_of("demo")
    lived = setpoints_as_lived(case.home)
    bought = [
        simulate_home(
            case.home,
            case.today,
            weather_of("demo"),
            replace(lived, house=np.full(24, lived.cooling + apart)),
        ).heating.sum()
        for apart in (-2.0, -1.0, 0.0)
    ]
    first, second = np.diff(bought)
    assert 0.0 < second < 1.2 * first


def test_the_same_home_gives_the_same_digits_wherever_its_arrays_lie() -> None:
    home, weather = case_of("new_mover").home, weather_of("new_mover")
    setpoints = setpoints_as_wanted(home)
    kept, found = [], set()
    for number in range(40):
        kept.append(np.zeros(8760 + 97 * number))  # so that the next arrays lie elsewhere
        year = simulate_home(replace(home), System("ideal"), weather, setpoints)
        found.add(year.room_temperature.tobytes() + year.room_heat.tobytes())
    assert len(found) == 1
