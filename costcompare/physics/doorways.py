"""Air exchanged through an opening between two rooms of different temperature."""

from __future__ import annotations

import math

from costcompare.physics.compiled import compiled

DISCHARGE = 0.6
"""Discharge coefficient of a doorway (0.4 to 0.8 in the literature)"""
GRAVITY = 9.81  # [m/s2]
MEAN_TEMPERATURE = 293.15  # [K] of the air in the doorway

OPEN_SHARE = {"open": 1.0, "ajar": 0.3, "closed": 0.0}
"""Share of the width that is open; 0.3 for a door left ajar is judgement"""
CLOSED_GAP_CONDUCTANCE = 2.0
"""[W/K] through the gaps of a closed door: 1 to 3 (judgement)"""
STAIR_CONDUCTANCE_UP = 200.0
"""[W/K] one way, while the lower room is the warmer: 100 to 300 (judgement)"""
STAIR_CONDUCTANCE_DOWN = 10.0
"""[W/K] while the upper room is the warmer (judgement)"""


@compiled
def exchange_flow(width: float, height: float, difference: float) -> float:
    """Air that flows each way through an opening [m3/s].

    ``width`` and ``height`` [m] of what is open, ``difference`` [K] between the rooms.

    Source: Brown and Solvason 1962: (Cd W/3) sqrt(g H^3 dT/T).
    """
    return (
        DISCHARGE
        * width
        / 3.0
        * math.sqrt(GRAVITY * height**3 * abs(difference) / MEAN_TEMPERATURE)
    )
