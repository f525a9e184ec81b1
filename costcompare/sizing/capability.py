"""What machines can give at single outdoor temperatures, and where that meets a load."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from costcompare.case.facts import HeatPumpUnit, Home, System
from costcompare.equipment import Installation, heating_year
from costcompare.equipment.machine import W_PER_KBTU_H, celsius, rows
from costcompare.simulation.machines import Weathered, machine_of
from costcompare.weather import Weather

Floats = NDArray[np.float64]

AT_47_F = celsius(47.0)
"""[degC] of the rating test whose minimum is held against the load"""
SMALLEST_CLASS = "single-zone cold-climate"
"""Class of the smallest head: its minimum is the lowest of the classes"""
NEAR = 2.0
"""[K] round a temperature whose hours give its humidity (judgement)"""
SCAN_STEP = 0.25
"""[K] between the temperatures at which a crossing is looked for"""
CLOSE_ENOUGH = 1e-3
"""[K] to which a balance point is found"""


@dataclass(frozen=True)
class Outdoors:
    """What a machine needs to know of the place to be asked at single temperatures."""

    temperature: Floats
    """[degC] of the hours of the year"""
    humidity: Floats
    altitude: float
    """[m]"""

    def at(self, outdoor: Floats) -> Weathered:
        """These temperatures [degC] as a machine feels them, humidity as near them in the year."""
        humidity = np.array([self._humidity(level) for level in outdoor])
        return Weathered(outdoor, humidity, np.zeros(len(outdoor), dtype=np.int64), self.altitude)

    def _humidity(self, level: float) -> float:
        near = np.abs(self.temperature - level) <= NEAR
        return float(self.humidity[near].mean()) if near.any() else float("nan")


def outdoors_of(home: Home, weather: Weather) -> Outdoors:
    """The place of a home."""
    stated = home.site.elevation
    return Outdoors(
        weather.column("temperature_degc"),
        weather.column("relative_humidity"),
        weather.elevation if stated is None else stated,
    )


@dataclass(frozen=True)
class Ability:
    """A machine at single outdoor temperatures [W], shape (temperatures,)."""

    least: Floats
    most: Floats


def ability(
    unit: HeatPumpUnit, room: float, outdoor: Floats, place: Outdoors, field_factor: float
) -> Ability:
    """What a heat pump gives at these temperatures [degC], the rooms at ``room`` [degC].

    Frost and defrost are taken off; 0 where it is cut out or not rated. The temperatures are
    taken as hours one after the other, as far as a cut-out goes: give them falling.
    """
    felt = place.at(outdoor)
    heating = heating_year(
        machine_of(unit),
        felt.outdoor,
        felt.humidity,
        room=room,
        installed=Installation(unit.line_set, felt.altitude),
        field_factor=field_factor,
    )
    return Ability(heating.least, heating.most)


def smallest_head(home: Home, place: Outdoors) -> tuple[float, float]:
    """Nominal size of the smallest head of the size table and its minimum at 47 F [W]."""
    sizes = [
        float(r["nominal_cooling_kbtu_h"])
        for r in rows("equipment_sizes.csv")
        if r["ducted"] == "no"
    ]
    nominal = min(sizes) * W_PER_KBTU_H
    unit = HeatPumpUnit(SMALLEST_CLASS, nominal, home.rooms[0].name)
    system = System("ductless heat pump")
    wanted = home.thermostat.wanted
    least = ability(unit, wanted, np.array([AT_47_F]), place, system.field_factor).least
    return nominal, float(least[0])


def balance_point(
    most: Callable[[Floats], Floats], load: Callable[[Floats], Floats], *, warm: float, cold: float
) -> float | None:
    """Outdoor temperature [degC] at which the most that machines give meets the load.

    Looked for from ``warm`` down to ``cold`` [degC] and found by bisection: the warmest
    temperature below which they fall short. None where they cover the load down to ``cold``.
    """

    def spare(level: float) -> float:
        """[W] beyond the load; the level above it decides whether a cut-out has come."""
        steps = np.array([max(level + 30.0, warm), level])
        return float((most(steps) - load(steps))[1])

    levels = np.arange(warm, cold, -SCAN_STEP)
    short = (most(levels) - load(levels)) < 0.0
    if not short.any():
        return None if spare(cold) >= 0.0 else cold
    first = int(np.argmax(short))
    if first == 0:
        return warm
    enough, lacking = float(levels[first - 1]), float(levels[first])
    while enough - lacking > CLOSE_ENOUGH:
        middle = 0.5 * (enough + lacking)
        if spare(middle) < 0.0:
            lacking = middle
        else:
            enough = middle
    return 0.5 * (enough + lacking)
