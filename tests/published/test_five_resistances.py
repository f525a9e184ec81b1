"""A second opinion on the hourly room: five resistances and one capacity.

Source: the simple hourly method of ISO 13790:2008, annex C (from memory), written out here
from the standard's equations. Geometry, U-values and lumped values (capacity and effective
mass area of the two cells) are those quoted publicly for the test cells. It knows one mass
and one surface temperature, so it may differ; agreement reached and asked for is stated.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import envelope_cells
import numpy as np
import pvlib
import pytest

from costcompare import read_weather, simulate
from costcompare.case import case_from_document
from costcompare.weather import Weather, sun_on, through_glass

FLOOR, GLASS, VOLUME = 48.0, 12.0, 129.6
WALLS = 63.6
U_WALL, U_ROOF, U_FLOOR = 0.534, 0.327, 0.0377
SETPOINT, COOLING, GAINS = 20.0, 27.0, 200.0
R_SE, H_R = 0.04, 4.6


@dataclass(frozen=True)
class Cell:
    mass: float
    """[J/(m2 K)] of floor area"""
    mass_area: float
    """Effective mass area over floor area"""


LIGHT, HEAVY = Cell(42_167.0, 2.95), Cell(307_750.0, 2.43)


def annual(cell: Cell, weather: Weather) -> tuple[float, float]:
    """Heating and cooling of the year [kWh] by the five-resistance room."""
    u_glass, solar_gain = envelope_cells.window()
    outdoor, sky = weather.column("temperature_degc"), weather.column("sky_temperature_degc")
    sun = sun_on(weather)
    through = through_glass(sun, 2)[:, 2] * solar_gain * GLASS
    areas = np.array([21.6, 16.2, 9.6, 16.2])  # north, east, south, west
    on_walls = sun.walls @ areas
    opaque = 0.6 * R_SE * (U_WALL * on_walls + U_ROOF * FLOOR * sun.roof)
    facing = U_WALL * WALLS * 0.354 + U_ROOF * FLOOR
    radiated = 0.9 * H_R * R_SE * facing * (outdoor - sky)
    solar = through + opaque - radiated
    total_area, mass_area = 4.5 * FLOOR, cell.mass_area * FLOOR
    h_is, h_ms = 3.45 * total_area, 9.1 * mass_area
    h_op = U_WALL * WALLS + U_ROOF * FLOOR + U_FLOOR * FLOOR
    h_em, h_w = 1.0 / (1.0 / h_op - 1.0 / h_ms), u_glass * GLASS
    pressure = float(weather.column("pressure_pa").mean())
    h_ve = 0.5 * VOLUME / 3600.0 * 1207.19 * pressure / 101_325.0
    h1 = 1.0 / (1.0 / h_ve + 1.0 / h_is)
    h2 = h1 + h_w
    h3 = 1.0 / (1.0 / h2 + 1.0 / h_ms)
    capacity = cell.mass * FLOOR / 3600.0
    share_mass = mass_area / total_area
    share_surface = 1.0 - share_mass - h_w / (9.1 * total_area)
    air_gain = 0.5 * GAINS

    def air_and_mass(mass: float, h: int, heat: float) -> tuple[float, float]:
        radiant = 0.5 * GAINS + solar[h]
        surface_gain, mass_gain = share_surface * radiant, share_mass * radiant
        outside = outdoor[h]
        supply = outside + (air_gain + heat) / h_ve
        driven = mass_gain + h_em * outside
        driven += h3 * (surface_gain + h_w * outside + h1 * supply) / h2
        after = (mass * (capacity - 0.5 * (h3 + h_em)) + driven) / (capacity + 0.5 * (h3 + h_em))
        mean = 0.5 * (mass + after)
        surface = h_ms * mean + surface_gain + h_w * outside + h1 * supply
        surface /= h_ms + h_w + h1
        air = (h_is * surface + h_ve * outside + air_gain + heat) / (h_is + h_ve)
        return air, after

    heating = cooling = 0.0
    mass = SETPOINT
    hours = len(outdoor)
    for step in range(-500, hours):
        h = step % hours
        free, after = air_and_mass(mass, h, 0.0)
        target = min(max(free, SETPOINT), COOLING)
        if target != free:
            trial, _ = air_and_mass(mass, h, 1000.0)
            heat = 1000.0 * (target - free) / (trial - free)
            _, after = air_and_mass(mass, h, heat)
            if step >= 0:
                heating += max(heat, 0.0) / 1000.0
                cooling += max(-heat, 0.0) / 1000.0
        mass = after
    return heating, cooling


@pytest.mark.parametrize(
    ("heavy", "cell", "slack"), [(False, LIGHT, 0.15), (True, HEAVY, 0.20)], ids=["600", "900"]
)
def test_both_rooms_tell_the_same_story(heavy: bool, cell: Cell, slack: float) -> None:
    """On the Greensboro typical year that pvlib carries."""
    weather = read_weather(Path(pvlib.__file__).parent / "data" / "723170TYA.CSV")
    year = simulate(case_from_document(envelope_cells.document(heavy=heavy)), weather=weather)
    heating, cooling = annual(cell, weather)
    assert year.heating.sum() / 1000.0 == pytest.approx(heating, rel=slack)
    assert year.cooling.sum() / 1000.0 == pytest.approx(cooling, rel=slack)
