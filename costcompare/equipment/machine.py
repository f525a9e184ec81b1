"""One machine: its map of capacity and power, and its steady draws."""

from __future__ import annotations

import csv
from dataclasses import dataclass
from functools import cache
from importlib import resources
from typing import Literal

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Mode = Literal["heating", "cooling"]
Speed = Literal["min", "rated", "max"]

W_PER_KBTU_H = 293.07107
"""[W] per thousand Btu (IT) an hour"""
SPEEDS: tuple[Speed, ...] = ("min", "rated", "max")
NEVER = -273.15
"""[degC] of a cut-out that a machine does not have"""
EXTENDED = 15.0 / 1.8
"""[K] below the coldest published point that the map is carried on (judgement)"""
WARM_SPAN = 30.0 / 1.8
"""[K] over which the slope above the warmest anchor is taken: from 47 to 17 F"""


@dataclass(frozen=True)
class Machine:
    """One machine: its map and its steady draws."""

    equipment_class: str
    ducted: bool
    nominal: float
    """Nominal cooling [W]"""
    heating_temperature: Array
    """Anchors, rising [degC], shape (n,)"""
    heating_capacity: Array
    """[W], shape (n, 3): minimum, rated, maximum"""
    heating_power: Array
    """[W], shape (n, 3)"""
    cooling_temperature: Array
    cooling_capacity: Array
    cooling_power: Array
    cycling: float
    """Degradation coefficient of cycling"""
    cut_out: float
    """[degC] outdoors below which it does not run"""
    off_power: float
    """[W] controls while plugged in"""
    crankcase_power: float
    """[W] while off and cold outside"""
    pan_power: float
    """[W] drain-pan heater while it is on"""
    fan_power: float
    """[W] of a head's fan at full output (counted in the rated power)"""
    fan_per_airflow: float
    """[W per m3/s] of a ducted machine's blower"""
    rated_down_to: float
    """[degC] outdoors below which nothing is known of it and nothing is given"""
    cut_in: float
    """[degC] outdoors from which it runs again after a cut-out; never below ``cut_out``"""
    frost: bool = True
    """False where its points hold frost and defrost already"""
    filled: tuple[str, ...] = ()
    """Points that were not published, such as ``minimum at 17 F``, each filled in"""


@cache
def rows(name: str) -> tuple[dict[str, str], ...]:
    """The rows of a table in costcompare/data."""
    text = (resources.files("costcompare") / "data" / name).read_text(encoding="utf-8")
    return tuple(csv.DictReader(text.splitlines()))


def celsius(fahrenheit: float) -> float:
    """[F] to [degC]"""
    return (fahrenheit - 32.0) / 1.8


def on_line(temperature: Array, anchors: Array, values: Array) -> Array:
    """Piecewise linear in temperature, carried on with the end slopes; shape (hours, 3).

    ``anchors`` [degC] rising, shape (n,), ``values`` shape (n, 3). Above the warmest anchor
    the slope is that from there to about 30 F below it: the last two points may lie close.
    """
    if len(anchors) == 1:
        return np.repeat(values, len(temperature), axis=0)
    coldest, warmest = anchors[0], anchors[-1]
    low, high = min(temperature.min(), coldest) - 1.0, max(temperature.max(), warmest) + 1.0
    far = int(np.argmin(np.abs(anchors[:-1] - (warmest - WARM_SPAN))))
    cold_slope = (values[1] - values[0]) / (anchors[1] - coldest)
    warm_slope = (values[-1] - values[far]) / (warmest - anchors[far])
    # With one more anchor at each end the whole line lies between anchors.
    places = np.array([low, *anchors, high])
    ends = values[0] + (low - coldest) * cold_slope, values[-1] + (high - warmest) * warm_slope
    line = np.vstack([ends[0], values, ends[1]])
    return np.column_stack([np.interp(temperature, places, column) for column in line.T])
