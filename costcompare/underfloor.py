"""Under the floor: how cold and how damp the crawlspace gets, and how cold the floor feels."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from costcompare.billing.clock import WINTER, civil_hours, standard_hours
from costcompare.case.facts import Home, System
from costcompare.comparison import CrawlspaceYear
from costcompare.physics.crawlspace import BARE_SOIL_EXCHANGE, COVERED_SHARE, follow_vapour
from costcompare.physics.envelope import FILM_DOWN
from costcompare.simulation import HourlyResult
from costcompare.simulation.spaces import spaces_of, vent_flow
from costcompare.weather import Weather
from costcompare.weather.humidity import saturation_pressure

Floats = NDArray[np.float64]

FREEZING = 0.0
"""[degC]"""
PIPES_AT_RISK = (20.0 - 32.0) / 1.8
"""[degC] outdoors, from which pipes in an unheated, uninsulated space are at risk: Building
Research Council, University of Illinois (second-hand)"""
DAMP = 0.80
"""Relative humidity from which mould can grow on wood (from memory, common in the trade)"""
NIGHT_FROM, NIGHT_HOURS = 22, 8
AWAKE = (6, 22)
"""Hours of the local day in which bare feet feel the floor (judgement)"""


def crawlspace_year(
    home: Home, system: System, year: HourlyResult, weather: Weather
) -> CrawlspaceYear | None:
    """The year under the floor; None where the home has no crawlspace.

    ``weather`` is the year that ``year`` was run on.
    """
    air = year.space_temperature.get("crawlspace")
    if air is None or home.crawlspace is None:
        return None
    clock = civil_hours(year.index, home.site.time_zone)
    winter = np.isin(clock.month, WINTER)
    night = coldest_night(air, standard_hours(year.index).hour)
    floor = float(floor_face(home, year)[winter & _awake(clock.hour)].mean())
    coldest, mean = float(air.min()), float(air[winter].mean())
    return CrawlspaceYear(
        minimum_temperature_degf=_degf(coldest),
        minimum_temperature_degc=coldest,
        hours_below_freezing=int((air < FREEZING).sum()),
        hours_outdoors_below_20f=int((year.outdoor_temperature < PIPES_AT_RISK).sum()),
        coldest_night_degf=_degf(night),
        coldest_night_degc=night,
        winter_mean_degf=_degf(mean),
        winter_mean_degc=mean,
        damp_share=float((relative_humidity(home, system, air, weather) > DAMP).mean()),
        floor_winter_degf=_degf(floor),
        floor_winter_degc=floor,
    )


def coldest_night(air: Floats, hour: NDArray[np.int64]) -> float:
    """Lowest mean of the hours from 22:00 to 6:00 [degC]; ``hour`` is that of each value."""
    starts = np.flatnonzero(hour == NIGHT_FROM)
    starts = starts[starts + NIGHT_HOURS <= air.shape[0]]
    nights = air[starts[:, np.newaxis] + np.arange(NIGHT_HOURS)]
    return float(nights.mean(axis=1).min())


def floor_face(home: Home, year: HourlyResult) -> Floats:
    """Upper face of the floors over the crawlspace, weighed by area [degC], shape (hours,).

    From the air above and below by steady resistances; nan where no room lies over it.
    """
    area = np.array([r.floor_area if r.below == "crawlspace" else 0.0 for r in home.rooms])
    if area.sum() <= 0.0:
        return np.full(len(year.index), np.nan)
    above = year.room_temperature @ (area / area.sum())
    below = year.space_temperature["crawlspace"]
    resistance = FILM_DOWN + home.house.constructions.floor.resistance + FILM_DOWN
    face: Floats = above - (above - below) * FILM_DOWN / resistance
    return face


def relative_humidity(home: Home, system: System, air: Floats, weather: Weather) -> Floats:
    """Of the air under the floor, share, shape (hours,); see :func:`follow_vapour`."""
    outdoor = weather.column("temperature_degc")
    vapour = saturation_pressure(outdoor) * weather.column("relative_humidity")
    saturated = saturation_pressure(air)
    space = next(s for s in spaces_of(home, system) if s.name == "crawlspace")
    covered = home.crawlspace is not None and home.crawlspace.ground_cover
    soil = BARE_SOIL_EXCHANGE * space.area * (COVERED_SHARE if covered else 1.0)
    vents = vent_flow(home, space, weather.column("wind_speed_m_s"))
    inside = np.zeros_like(saturated)
    follow_vapour(vapour, saturated, vents, soil, space.volume, inside)
    share: Floats = inside / saturated
    return share


def _awake(hour: NDArray[np.int64]) -> NDArray[np.bool_]:
    awake: NDArray[np.bool_] = (hour >= AWAKE[0]) & (hour < AWAKE[1])
    return awake


def _degf(degc: float) -> float:
    return degc * 1.8 + 32.0
