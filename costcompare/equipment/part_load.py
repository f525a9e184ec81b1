"""Frost, part load and cycling of an air-source heat pump.

Arrays in, arrays out; shapes are those of the first argument.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]

FROST_LOW, FROST_PEAK, FROST_HIGH = (17.0 - 32.0) / 1.8, (35.0 - 32.0) / 1.8, (47.0 - 32.0) / 1.8
"""[degC] 17, 35 and 47 F"""
FROST_CAPACITY = 0.10
FROST_POWER = 0.015
"""Loss of capacity and of power at 35 F: 10 CFR 430 subpart B appendix M1, the default of
the full-speed frost point; the shape on both sides and the effect of humidity are judgement."""
LOWEST_PART_LOAD_FACTOR = 0.5
"""Cycling never more than doubles the power per heat (judgement)"""


def frost_factors(outdoor: Array, relative_humidity: Array) -> tuple[Array, Array]:
    """Factors on capacity and on power for frost and defrost.

    ``outdoor`` [degC], ``relative_humidity`` 0 to 1 (nan: humid). Test points at 47, 17 and 5 F are
    nearly without frost; the factors are 1 there and lowest at 35 F in humid air.
    """
    rising = (outdoor - FROST_LOW) / (FROST_PEAK - FROST_LOW)
    falling = (FROST_HIGH - outdoor) / (FROST_HIGH - FROST_PEAK)
    depth = np.clip(np.minimum(rising, falling), 0.0, 1.0)
    humid = np.clip((relative_humidity - 0.5) / 0.35, 0.0, 1.3)
    humid = np.where(np.isnan(relative_humidity), 1.0, humid)
    return 1.0 - FROST_CAPACITY * depth * humid, 1.0 - FROST_POWER * depth * humid


def part_load_power(  # one column per speed, as in a submittal sheet
    load: Array, capacity: Array, power: Array, cycling: float
) -> Array:
    """Compressor power [W] at a load [W].

    ``capacity`` and ``power`` [W], shape (hours, 3): minimum, rated, maximum speed. Below
    the minimum the machine cycles with the degradation coefficient ``cycling``; between
    speeds the COP is linear in the load; above the maximum the load must not be asked for.
    """
    result = np.zeros_like(load)
    runs = np.flatnonzero(load > 0.0)
    if not len(runs):
        return result
    load, capacity, power = load[runs], capacity[runs], power[runs]
    cop = capacity / np.maximum(power, 1e-9)
    lowest = capacity[:, 0]
    with np.errstate(divide="ignore", invalid="ignore"):
        share = np.clip(load / lowest, 0.0, 1.0)
        factor = np.maximum(1.0 - cycling * (1.0 - share), LOWEST_PART_LOAD_FACTOR)
        below = share * power[:, 0] / factor
        lower = load / (cop[:, 0] + (cop[:, 1] - cop[:, 0]) * _position(load, capacity, 0))
        upper = load / (cop[:, 1] + (cop[:, 2] - cop[:, 1]) * _position(load, capacity, 1))
    between = np.where(load <= capacity[:, 1], lower, upper)
    result[runs] = np.where(load <= lowest, below, between)
    return result


def _position(load: Array, capacity: Array, speed: int) -> Array:
    width = np.maximum(capacity[:, speed + 1] - capacity[:, speed], 1e-9)
    return np.clip((load - capacity[:, speed]) / width, 0.0, 1.0)
