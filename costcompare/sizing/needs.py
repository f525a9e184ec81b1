"""What a home and each of its rooms need: heat at the design temperature, cooling on a hot day.

The loads come from the hourly model itself. For heat it runs through weather that stands
still (:mod:`design_weather`), without sun, people, appliances, fans or fire, every room held
at the wanted warmth, until nothing changes any more. For cooling it runs through the year
with its sun and gains, windows shut, every room held at the cooling setting; the hottest day
is read. Cooling is sensible: drying the air comes on top.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import partial

import numpy as np
from numpy.typing import NDArray

from costcompare.case.facts import Home, RoomHeater, System
from costcompare.simulation import HourlyResult, Setpoints, setpoints_as_wanted, simulate_home
from costcompare.sizing.capability import AT_47_F
from costcompare.sizing.design_weather import StandingYear, standing_year
from costcompare.sizing.runs import Runs
from costcompare.weather import Weather

Floats = NDArray[np.float64]

AMPLE = 1.0e6
"""[W] of a heater that never falls short"""
NO_COOLING = 60.0
"""[degC] of a cooling setting that nothing reaches"""


@dataclass(frozen=True)
class Need:
    """What a home needs, in SI."""

    home: Home
    standing: StandingYear
    """The design weather"""
    design: float
    """[degC] outdoors"""
    outdoor: Floats
    """[degC] at which ``room_heat`` holds, rising; the last is the wanted warmth"""
    room_heat: Floats
    """[W], shape (temperatures, rooms); 0 at the last"""
    parts: tuple[float, float, float]
    """[W] at the design temperature: walls and glass, floor, air"""
    alone: Floats
    """[degC] of each room at the design temperature without heat of its own"""
    held: HourlyResult
    """The year with every room held by heat and cooling of its own"""
    hot_hours: slice
    """Hours of its hottest day"""
    uncooled: Floats
    """[degC] of each room in its warmest hour of that day with no cooling but open windows"""

    @property
    def cooling(self) -> Floats:
        """[W] of each room by hour of the hottest day, shape (24, rooms)."""
        return np.maximum(-self.held.room_heat[self.hot_hours], 0.0)

    def heat_at(self, outdoor: Floats, rooms: list[int] | None = None) -> Floats:
        """[W] of some rooms, or of all, at outdoor temperatures [degC]; linear between."""
        total = (self.room_heat if rooms is None else self.room_heat[:, rooms]).sum(axis=1)
        slope = (total[1] - total[0]) / (self.outdoor[1] - self.outdoor[0])
        colder = total[0] + (outdoor - self.outdoor[0]) * slope
        within = np.interp(outdoor, self.outdoor, total)
        result: Floats = np.where(outdoor < self.outdoor[0], colder, within)
        return result

    def at_design(self, rooms: list[int] | None = None) -> float:
        """[W] of some rooms, or of all, at the design temperature."""
        return float(self.heat_at(np.array([self.design]), rooms)[0])


def design_levels(design: float, wanted: float) -> tuple[float, ...]:
    """Temperatures [degC] at which loads are worked out, rising: design, 47 F, between them."""
    levels = {design, AT_47_F, 0.5 * (design + AT_47_F)}
    return tuple(sorted(level for level in levels if level < wanted - 1.0)) or (wanted - 1.0,)


def years_of_need(home: Home) -> int:
    """How many years :func:`need_of` runs."""
    return 3 + len(home.rooms)


def need_of(home: Home, weather: Weather, design: float, runs: Runs) -> Need:
    """What a home needs at a design temperature [degC] and on the hottest day of the year."""
    wanted = home.thermostat.wanted
    standing = standing_year(weather, design_levels(design, wanted))
    ideal, hot, uncooled, *alone = runs.all(
        "Working out what each room needs",
        [
            partial(standing_run, home, System("ideal"), standing),
            partial(_hot_run, home, weather),
            partial(_uncooled_run, home, weather),
            *(partial(standing_run, home, _all_but(home, r.name), standing) for r in home.rooms),
        ],
    )
    at = int(standing.last_hour[int(np.argmin(np.abs(standing.outdoor - design)))])
    loads, day = ideal.loads, hottest_day(hot)
    outdoor = np.append(standing.outdoor, wanted)
    room_heat = np.vstack([ideal.room_heat[standing.last_hour], np.zeros(len(home.rooms))])
    heat = float(np.interp(design, outdoor, room_heat.sum(axis=1)))
    return Need(
        home=home,
        standing=standing,
        design=design,
        outdoor=outdoor,
        room_heat=room_heat,
        parts=_shared_out(
            heat, (loads.walls_and_glass[at], loads.floor[at], loads.air_leaking[at])
        ),
        alone=np.array([year.room_temperature[at, n] for n, year in enumerate(alone)]),
        held=hot,
        hot_hours=day,
        uncooled=uncooled.room_temperature[day].max(axis=0),
    )


def _shared_out(heat: float, parts: tuple[float, float, float]) -> tuple[float, float, float]:
    """The parts of a loss brought to the heat [W] that makes up for it.

    They are equal but where it is hardly colder outdoors than in the rooms at the design
    temperature: the load then lies on the line, not at a temperature that was run.
    """
    total = sum(parts)
    if heat <= 0.0 or total <= 0.0:
        return 0.0, 0.0, 0.0
    walls, floor, air = (float(part) * heat / total for part in parts)
    return walls, floor, air


def still_home(home: Home) -> Home:
    """The home with nobody in it: no people, appliances, hot water, fans or fire."""
    return replace(
        home,
        house=replace(home.house, people=0.0, fans=()),
        other_use=replace(home.other_use, electricity=0.0, hot_water=0.0),
        fireplace=None,
    )


def standing_run(home: Home, system: System, standing: StandingYear) -> HourlyResult:
    """A system in the still home, held at the wanted warmth through weather that stands still."""
    warmth = np.full(24, home.thermostat.wanted)
    held = Setpoints(warmth, NO_COOLING, warmth)
    return simulate_home(still_home(home), system, standing.weather, held)


def hottest_day(year: HourlyResult) -> slice:
    """The hours of the day with the highest mean outdoor temperature."""
    days = year.outdoor_temperature.reshape(-1, 24).mean(axis=1)
    first = 24 * int(np.argmax(days))
    return slice(first, first + 24)


def _hot_run(home: Home, weather: Weather) -> HourlyResult:
    """Every room held through the year, windows shut."""
    shut = replace(home, house=replace(home.house, airing=0.0))
    return simulate_home(shut, System("ideal"), weather, setpoints_as_wanted(home))


def _uncooled_run(home: Home, weather: Weather) -> HourlyResult:
    """Every room held from below through the year; in summer there are the windows alone."""
    return simulate_home(home, _all_but(home, ""), weather, setpoints_as_wanted(home))


def _all_but(home: Home, name: str) -> System:
    """An ample heater in every room but one."""
    heaters = tuple(RoomHeater(room.name, AMPLE) for room in home.rooms if room.name != name)
    return System("room heaters", heaters=heaters)
