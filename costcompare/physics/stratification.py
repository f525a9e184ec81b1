"""Warm air under the ceiling: what it costs, and what a sensor up there reads.

T(z) = T(1.1 m) + g (z - 1.1 m). Gradients: 0.2 to 0.5 K/m with mixing or radiant heat, 0.5
to 2 K/m typical, 1 to 2 K/m under a high wall head at low fan (from memory, low confidence;
the radiant figure was read of apartments).
"""

from __future__ import annotations

SITTING_HEIGHT = 1.1
"""[m] at which the model's room temperature holds"""
GRADIENT = {"ducted": 0.5, "heater": 0.7, "head": 1.0}
"""[K/m] by what warms the room: floor registers, baseboards, a wall head (judgement)"""
USUAL_DIFFERENCE = 20.0
"""[K] rooms over outdoors at which the gradients above are taken to hold; they are taken to
grow with the heat the room needs, so with the difference (judgement)"""
COMFORT_LIMIT = 3.0
"""[K] between head and ankles: ASHRAE 55 and ISO 7730 category B (from memory)"""


def excess_at(height: float, gradient: float) -> float:
    """How much warmer the air is at a height [m] than at sitting height [K]."""
    return gradient * (height - SITTING_HEIGHT)


def ceiling_factor(low: float, high: float, gradient: float) -> float:
    """Heat loss of a ceiling between two heights [m] over that of one at room temperature."""
    return 1.0 + excess_at(0.5 * (low + high), gradient) / USUAL_DIFFERENCE
