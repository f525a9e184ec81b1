"""Heat carried by moving air, and how an unbalanced fan changes what leaks in and out."""

from __future__ import annotations

from costcompare.physics.compiled import compiled
from costcompare.physics.lanes import where

AIR_HEAT_CAPACITY = 1207.19
"""[J/(m3 K)] at sea level: the trade's 1.08 Btu/h per cfm and F, exactly converted
(0.075 lb/ft3, 0.24 Btu/lb/F; common practice, no source)."""

SEA_LEVEL_PRESSURE = 101_325.0
"""[Pa] US Standard Atmosphere 1976"""


@compiled
def heat_capacity(pressure: float) -> float:
    """Volumetric heat capacity of air [J/(m3 K)] at a pressure [Pa]."""
    return AIR_HEAT_CAPACITY * pressure / SEA_LEVEL_PRESSURE


@compiled
def half_fan_inflow(natural: float, extraction: float) -> float:
    """Air that leaks in [m3/s] while a fan takes out more than it brings.

    ``natural`` [m3/s] leaks in and out without the fan; ``extraction`` [m3/s] is the net
    flow that the fan takes out (negative: brings in). The outflow is the inflow less the
    extraction, so that the mass balance holds exactly.

    Source: half-fan rule of Palmiter and Bond 1991 (from memory).
    """
    within = abs(extraction) < 2.0 * natural
    return where(within, natural + 0.5 * extraction, max(extraction, 0.0))
