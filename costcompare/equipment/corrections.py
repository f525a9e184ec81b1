"""What moves a map from the test room to a home: room temperature, line set, altitude."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from costcompare.equipment.machine import celsius

Array = NDArray[np.float64]

TEST_ROOM = celsius(70.0)
"""[degC] of the rooms of all heating tests"""
ROOM_LOW, ROOM_HIGH = celsius(50.0), celsius(85.0)
"""[degC] beyond which the correction is held (judgement)"""
CAPACITY_PER_KELVIN = -0.003 * 1.8
"""[1/K] of room temperature above 70 F (from memory and judgement)"""
POWER_PER_KELVIN = 0.008 * 1.8
"""[1/K] the same of power (from memory and judgement)"""

TESTED_LENGTH = 25.0 * 0.3048
"""[m] of line set in a test (from memory)"""
LENGTH_STEP = 25.0 * 0.3048
"""[m]"""
HEATING_PER_STEP, HEATING_MOST = 0.01, 0.05
"""Capacity lost a step of length beyond the tested one, and at most (from memory)"""
EFFICIENCY_PER_STEP = 0.005
"""COP lost a step (from memory)"""
COOLING_PER_STEP = 0.015
"""Cooling lost a step (from memory)"""

DENSITY_HEIGHT = 27000.0 * 0.3048
"""[m] over which the air thins to 1/e (from memory)"""
DENSITY_SHARE = 0.65
"""Share of the capacity that follows the density of the air (from memory)"""
POWER_PER_METRE = 0.005 / 304.8
"""[1/m] of altitude that the power falls (from memory)"""


@dataclass(frozen=True)
class Installation:
    """How a machine stands."""

    line_set: float | None = None
    """[m] one way between outdoor and indoor unit; None for the tested length"""
    altitude: float = 0.0
    """[m] above the sea"""


def room_factors(room: Array) -> tuple[Array, Array]:
    """Factors on heating capacity and power by room temperature [degC], shape (hours,)."""
    above = np.clip(room, ROOM_LOW, ROOM_HIGH) - TEST_ROOM
    return 1.0 + CAPACITY_PER_KELVIN * above, 1.0 + POWER_PER_KELVIN * above


def installation_factors(installed: Installation, *, heating: bool) -> tuple[float, float]:
    """Factors on capacity and power of a long line set and of thin air."""
    length = TESTED_LENGTH if installed.line_set is None else installed.line_set
    steps = max(length - TESTED_LENGTH, 0.0) / LENGTH_STEP
    lost = min(HEATING_PER_STEP * steps, HEATING_MOST) if heating else COOLING_PER_STEP * steps
    capacity = 1.0 - min(lost, 0.3)
    power = capacity / (1.0 - min(EFFICIENCY_PER_STEP * steps, 0.1)) if heating else 1.0
    height = max(installed.altitude, 0.0)
    thin = 1.0 - DENSITY_SHARE * (1.0 - np.exp(-height / DENSITY_HEIGHT))
    return float(capacity * thin), float(power * (1.0 - POWER_PER_METRE * height))
