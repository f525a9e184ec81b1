"""A year of weather with all that is worked out from it once, for every home that stands in it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from costcompare.simulation.clock import Same
from costcompare.simulation.surfaces import Sky
from costcompare.weather import Sun, Weather, sun_on, through_glass

Floats = NDArray[np.float64]


OUTDOOR, SKY, WALLS, ROOF, MEAN = 0, 1, slice(2, 6), 6, 7
"""Columns of :attr:`Environment.mixed`"""


@dataclass(frozen=True, eq=False)
class Environment:
    """A year of weather with its sun, worked out once for all runs on it."""

    weather: Weather
    sun: Sun
    index: pd.DatetimeIndex
    outdoor: Floats
    """[degC]"""
    humidity: Floats
    wind: Floats
    """[m/s]"""
    pressure: float
    """Mean of the year [Pa]"""
    mixed: Floats
    """Outdoor air, sky, sun on the four walls and on a roof, and the year's mean outdoors,
    shape (hours, 8). Every boundary temperature is a mixture of these."""

    @property
    def hours(self) -> int:
        return len(self.outdoor)

    @property
    def shares(self) -> Sky:
        """Outdoors, sky and sun as mixtures: what is worked out with them is a mixture too."""
        one = np.eye(self.mixed.shape[1])
        return Sky(one[OUTDOOR], one[SKY], one[:, WALLS], one[ROOF])

    @property
    def mean(self) -> Floats:
        """The year's mean outdoors as a mixture."""
        mixture: Floats = np.eye(self.mixed.shape[1])[MEAN]
        return mixture


def environment(weather: Weather) -> Environment:
    """The weather with what is worked out from it, once a table."""
    return _environment(Same(weather))


@lru_cache(maxsize=16)
def _environment(key: Same) -> Environment:
    weather = key.item
    assert isinstance(weather, Weather)
    index = weather.table.index
    assert isinstance(index, pd.DatetimeIndex)
    sun = sun_on(weather)
    outdoor = np.ascontiguousarray(weather.column("temperature_degc"))
    sky = weather.column("sky_temperature_degc")
    mean = np.full(outdoor.shape[0], float(outdoor.mean()))
    return Environment(
        weather,
        sun,
        index,
        outdoor,
        weather.column("relative_humidity"),
        np.ascontiguousarray(weather.column("wind_speed_m_s")),
        float(weather.column("pressure_pa").mean()),
        np.ascontiguousarray(np.column_stack([outdoor, sky, sun.walls, sun.roof, mean])),
    )


@lru_cache(maxsize=16)
def _glass(key: Same, panes: int) -> Floats:
    around = key.item
    assert isinstance(around, Environment)
    return through_glass(around.sun, panes)


def through_windows(around: Environment, panes: int) -> Floats:
    """Sun behind upright glass in the four walls [W/m2], shape (hours, 4), once a kind of glass."""
    return _glass(Same(around), panes)
