"""How high a head hangs, and how much warmer than where people sit the air is up there."""

from __future__ import annotations

import numpy as np

from costcompare.case.facts import Home
from costcompare.physics.stratification import GRADIENT, USUAL_DIFFERENCE, excess_at
from costcompare.sizing.design_weather import WINTER
from costcompare.weather import Weather

USUAL_HEIGHT = 2.1
"""[m] to the bottom of a head where nothing is stated: 1.8 to 2.3 m (from memory)"""
HIGH = 9.0 * 0.3048
"""[m] to the bottom above which a head is hung high: it can hardly be reached for cleaning and
stands in the warm air under the ceiling (common practice, no source)"""


def winter_difference(home: Home, weather: Weather) -> float:
    """Wanted warmth less the mean of December to February outdoors [K], never below 0."""
    index = weather.table.index
    winter = np.isin(index.month.to_numpy(), WINTER)  # type: ignore[attr-defined]
    outdoor = float(weather.column("temperature_degc")[winter].mean())
    return max(home.thermostat.wanted - outdoor, 0.0)


def hung_at(height: float | None) -> float:
    """Height of the bottom of a head [m]: as stated, else the usual one."""
    return USUAL_HEIGHT if height is None else height


def sensor_reads_over(height: float | None, difference: float) -> float:
    """How much warmer than at sitting height the air at a head is [K].

    ``height`` [m] to its bottom, None for the usual one; ``difference`` [K] between the rooms
    and outdoors: the air lies in layers as far as it must be heated (judgement).
    """
    return excess_at(hung_at(height), GRADIENT["head"]) * difference / USUAL_DIFFERENCE
