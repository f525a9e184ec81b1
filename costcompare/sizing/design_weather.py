"""A year of weather that stands still: constant cold for long enough to be steady.

The design year has no sun. It holds several stretches of constant temperature, one after
the other, each long enough for crawlspace, slab and contents to settle; in the rest of the
year it is so warm that the mean of the year is that of the real one, because the deep ground
follows that mean.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from costcompare.weather import Weather, mean_temperature
from costcompare.weather.table import checked

Floats = NDArray[np.float64]

STRETCH_DAYS = 20
"""Days at each temperature: the heat of a home over a vented crawlspace then changes by less
than 0.01 % in ten more days (measured on the example homes)"""
FIRST_DAY = 20
WARMEST_REST = 55.0
"""[degC] that the rest of the year may take"""
WINTER = (12, 1, 2)
COLDEST, WARMEST = -65.0, 45.0
"""[degC] that a stretch may have"""


@dataclass(frozen=True)
class StandingYear:
    """The design weather and the hours at whose ends it is steady."""

    weather: Weather
    outdoor: Floats
    """[degC] of each stretch, shape (stretches,)"""
    last_hour: NDArray[np.int64]
    """Number of the last hour of each stretch"""


def winter_wind(weather: Weather) -> float:
    """Mean wind of December to February [m/s]."""
    winter = np.isin(weather.table.index.month.to_numpy(), WINTER)  # type: ignore[attr-defined]
    return float(weather.column("wind_speed_m_s")[winter].mean())


def standing_year(weather: Weather, outdoor: Sequence[float]) -> StandingYear:
    """Design weather at each of these temperatures [degC], the place that of ``weather``.

    No sun; the sky as warm as the air (an overcast night); the wind of an average winter
    hour; humidity and pressure the means of the year.
    """
    levels = np.clip(np.asarray(outdoor, dtype=float), COLDEST, WARMEST)
    hours = len(weather.table)
    air = np.full(hours, np.nan)
    last = np.zeros(len(levels), dtype=np.int64)
    for number, level in enumerate(levels):
        start = 24 * (FIRST_DAY + STRETCH_DAYS * number)
        air[start : start + 24 * STRETCH_DAYS] = level
        last[number] = start + 24 * STRETCH_DAYS - 1
    rest = np.isnan(air)
    missing = mean_temperature(weather) * hours - float(np.nansum(air))
    air[rest] = min(missing / int(rest.sum()), WARMEST_REST)
    frame = pd.DataFrame(
        {
            "temperature_degc": air,
            "relative_humidity": float(weather.column("relative_humidity").mean()),
            "wind_speed_m_s": winter_wind(weather),
            "pressure_pa": float(weather.column("pressure_pa").mean()),
            "ghi_w_m2": 0.0,
            "dni_w_m2": 0.0,
            "dhi_w_m2": 0.0,
            "sky_temperature_degc": air,
        },
        index=weather.table.index,
    )
    standing = checked(
        frame,
        latitude=weather.latitude,
        longitude=weather.longitude,
        elevation=weather.elevation,
        source=weather.source,
        station=weather.station,
        note="constant design weather",
    )
    return StandingYear(standing, levels, last)
