"""Air leaking through the envelope, driven by wind and by the warm column of air inside.

Coefficients: ASHRAE Handbook of Fundamentals, chapter 16 (2009 to 2017), tables of the
basic and the enhanced model, from memory; checked against each other and against the
worked example in tests/published.
"""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from costcompare.physics.compiled import compiled

# Enhanced model; rows: one, two, three storeys.
STACK_COEFFICIENT = np.array([0.054, 0.078, 0.098])  # [(Pa/K)^n], no flue
STACK_COEFFICIENT_FLUE = np.array([0.069, 0.089, 0.107])
WIND_COEFFICIENT_CRAWLSPACE = np.array([0.128, 0.142, 0.151])  # [(Pa s2/m2)^n], no flue
WIND_COEFFICIENT_CRAWLSPACE_FLUE = np.array([0.128, 0.142, 0.154])
WIND_COEFFICIENT_SLAB = np.array([0.156, 0.170, 0.170])  # slab or basement, no flue
WIND_COEFFICIENT_SLAB_FLUE = np.array([0.142, 0.156, 0.167])
SHELTER_FACTOR = np.array([1.00, 0.90, 0.70, 0.50, 0.30])  # class 1 to 5, no flue
SHELTER_FACTOR_FLUE = np.array(  # rows: storeys, columns: class; the flue stands in the wind
    [
        [1.10, 1.02, 0.86, 0.70, 0.54],
        [1.07, 0.98, 0.81, 0.64, 0.46],
        [1.06, 0.97, 0.79, 0.61, 0.43],
    ]
)
WIND_SPEED_MULTIPLIER = np.array([0.48, 0.59, 0.67])  # station wind to the house's wind

# Basic model; rows: storeys, columns: shelter class.
BASIC_STACK = np.array([0.000145, 0.000290, 0.000435])  # [(L/s)2/(cm4 K)]
BASIC_WIND = np.array(  # [(L/s)2/(cm4 (m/s)2)]
    [
        [0.000319, 0.000246, 0.000174, 0.000104, 0.000032],
        [0.000420, 0.000325, 0.000231, 0.000137, 0.000042],
        [0.000494, 0.000382, 0.000271, 0.000161, 0.000049],
    ]
)


@compiled
def leakage_coefficient(flow_at_50_pa: float, exponent: float) -> float:
    """Flow coefficient c [m3/(s Pa^n)] from a blower-door flow at 50 Pa [m3/s]."""
    return float(flow_at_50_pa / 50.0**exponent)


@compiled
def effective_leakage_area(coefficient: float, exponent: float) -> float:
    """Effective leakage area at 4 Pa [m2] (discharge coefficient 1, air of 1.204 kg/m3)."""
    return float(coefficient * 4.0**exponent / math.sqrt(2.0 * 4.0 / 1.204))


@compiled
def enhanced(
    coefficient: float, exponent: float, stack: float, wind: float, difference: float, speed: float
) -> float:
    """Flow through the envelope [m3/s] by the enhanced model.

    ``stack`` and ``wind`` are the model's coefficients; ``difference`` [K] inside to
    outside; ``speed`` [m/s] of the wind at the house, shelter included (station speed x
    multiplier x shelter factor).

    Source: Walker and Wilson, HVAC&R Research 4(2) 1998; coefficients as in this module.
    """
    by_stack = coefficient * stack * abs(difference) ** exponent
    by_wind = coefficient * wind * speed ** (2.0 * exponent)
    return together(by_stack, by_wind)


@compiled
def together(by_stack: float, by_wind: float) -> float:
    """Flow of the enhanced model from those of stack and wind alone [m3/s]."""
    return math.sqrt(by_stack * by_stack + by_wind * by_wind)


class Envelope(NamedTuple):
    """Where the leaks of a house lie, for the full form of the enhanced model."""

    height: float
    """Of the highest ceiling over the floor [m]"""
    ceiling_and_floor: float
    """R: share of all leaks that lies in ceiling and floor together"""
    ceiling_less_floor: float = 0.0
    """X: share in the ceiling less share in the floor"""
    flue: float = 0.0
    """Y: share in an open flue"""
    flue_height: float = 1.5
    """Top of the flue over the ceiling's height"""
    crawlspace: bool = True
    """False for a slab or a basement"""


REFERENCE_DENSITY = 1.2041 * 293.15
"""[kg K/m3] density of air at sea level times its absolute temperature (from memory)"""
GRAVITY = 9.80665
"""[m/s2] standard gravity"""
INTERACTION = -1.0 / 3.0
"""Of stack and wind, which work against each other in part: Walker and Wilson (from memory)"""


def full_enhanced(
    coefficient: float,
    exponent: float,
    envelope: Envelope,
    *,
    inside: float,
    outside: float,
    speed: float,
) -> float:
    """Flow through the envelope [m3/s] by the full form of the enhanced model.

    ``coefficient`` [m3/(s Pa^n)] of all leaks with the flue, ``inside`` and ``outside``
    [degC], ``speed`` [m/s] of the wind at the house, shelter included. The hourly model uses
    the table form, :func:`enhanced`; this one shows what the tables rest on.

    Source: Walker and Wilson, HVAC&R Research 4(2) 1998 (from memory). Without a flue it is
    checked against a worked figure, with one against the tables only.
    """
    difference = abs(inside - outside)
    pressure = REFERENCE_DENSITY / (outside + 273.15) * GRAVITY * envelope.height
    pressure *= difference / (inside + 273.15)
    by_stack = coefficient * stack_factor(exponent, envelope) * pressure**exponent
    dynamic = 0.5 * REFERENCE_DENSITY / (outside + 273.15) * speed * speed
    by_wind = coefficient * wind_factor(exponent, envelope) * dynamic**exponent
    power = 1.0 / exponent
    both = by_stack**power + by_wind**power
    both += INTERACTION * (by_stack * by_wind) ** (0.5 * power)
    return float(both**exponent)


def stack_factor(exponent: float, envelope: Envelope) -> float:
    """f_s of the full form, dimensionless."""
    n, r, x, y = exponent, *envelope[1:4]
    middle = (x + (2.0 * n + 1.0) * y) ** 2 / (2.0 - r)
    walls = (1.0 + n * r) / (n + 1.0) * (0.5 - 0.5 * min(middle, 1.0) ** 1.25) ** (n + 1.0)
    if y <= 0.0:
        return float(walls)
    above = envelope.flue_height - 1.0
    balanced = r + 2.0 * (1.0 - r - y) / (n + 1.0) - 2.0 * y * above**n
    shape = 3.0 * (balanced - x) ** 2 * r ** (1.0 - n) / (2.0 * (envelope.flue_height + 1.0))
    return float(walls + n * y * above ** ((3.0 * n - 1.0) / 3.0) * (1.0 - shape))


def wind_factor(exponent: float, envelope: Envelope) -> float:
    """f_w of the full form, dimensionless."""
    n, r, x, y = exponent, *envelope[1:4]
    if envelope.crawlspace:
        level = (1.0 - r) / 5.0 - 1.5 * y
        offset = ((x - level) / (2.0 - level)) ** 2
        return float(
            0.19 * (2.0 - n) * (1.0 - offset**0.75) * (1.0 - r * (0.5 * n + 0.2)) * (1.0 - y / 4.0)
        )
    by_flue = 0.5 * (x + r + 2.0 * y)
    flue = 0.25 * y * (by_flue - 2.0 * y * by_flue**4)
    return float(0.19 * (2.0 - n) * (1.0 - (0.5 * (x + r)) ** 1.5) - flue)


def basic(
    leakage_area: float,
    stack: float,
    wind: float,
    difference: float,
    speed: float | NDArray[np.float64],
) -> NDArray[np.float64]:
    """Flow through openings [m3/s] by the basic model; the shape is that of ``speed``.

    ``leakage_area`` [m2] at 4 Pa, ``difference`` [K], ``speed`` [m/s] of the station wind.

    Source: Sherman and Grimsrud 1980, as in ASHRAE Fundamentals (from memory).
    """
    area_cm2 = leakage_area * 1.0e4
    flow = area_cm2 / 1000.0 * np.sqrt(stack * abs(difference) + wind * np.square(speed))
    return np.asarray(flow, dtype=np.float64)
