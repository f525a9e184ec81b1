"""Air leaking through the envelope, driven by wind and by the warm column of air inside.

Coefficients: ASHRAE Handbook of Fundamentals, chapter 16 (2009 to 2017), tables of the
basic and the enhanced model, from memory; checked against each other and against the
worked example in tests/published.
"""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from costcompare.physics.compiled import compiled

# Enhanced model, no flue; rows: one, two, three storeys.
STACK_COEFFICIENT = np.array([0.054, 0.078, 0.098])  # [(Pa/K)^n]
WIND_COEFFICIENT_CRAWLSPACE = np.array([0.128, 0.142, 0.151])  # [(Pa s2/m2)^n]
WIND_COEFFICIENT_SLAB = np.array([0.156, 0.170, 0.170])  # slab or basement
SHELTER_FACTOR = np.array([1.00, 0.90, 0.70, 0.50, 0.30])  # class 1 to 5
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
    return math.sqrt(by_stack * by_stack + by_wind * by_wind)


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
