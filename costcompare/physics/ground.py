"""Heat to the ground, as a steady conductance per square metre.

Source of every formula: ISO 13370:2017 (from memory), soil of 2.0 W/(m K).
"""

from __future__ import annotations

import math

SOIL_CONDUCTIVITY = 2.0
"""[W/(m K)] ISO 13370 default (from memory)"""
FOUNDATION_WALL = 0.2
"""Thickness of the foundation wall [m] (judgement)"""
FILM_DOWN = 0.17
FILM_LEVEL = 0.13
FILM_OUTSIDE = 0.04
"""Surface resistances [m2 K/W], ISO 6946:2017"""


def characteristic_dimension(area: float, perimeter: float) -> float:
    """Floor area over half its perimeter [m], from [m2] and [m]."""
    return area / (0.5 * perimeter)


def slab(area: float, perimeter: float, floor_resistance: float = 0.0) -> float:
    """U of a floor on the ground [W/(m2 K)], films included.

    ``floor_resistance`` [m2 K/W] is that of the floor build-up over the soil.
    """
    b = characteristic_dimension(area, perimeter)
    thickness = FOUNDATION_WALL + SOIL_CONDUCTIVITY * (FILM_DOWN + floor_resistance + FILM_OUTSIDE)
    if thickness < b:
        return (
            2.0
            * SOIL_CONDUCTIVITY
            / (math.pi * b + thickness)
            * math.log(math.pi * b / thickness + 1.0)
        )
    return SOIL_CONDUCTIVITY / (0.457 * b + thickness)


def basement_floor(area: float, perimeter: float, depth: float) -> float:
    """U of a bare basement floor [W/(m2 K)] at a depth [m] below grade."""
    b = characteristic_dimension(area, perimeter)
    thickness = FOUNDATION_WALL + SOIL_CONDUCTIVITY * (FILM_DOWN + FILM_OUTSIDE)
    effective = thickness + 0.5 * depth
    if effective < b:
        return (
            2.0
            * SOIL_CONDUCTIVITY
            / (math.pi * b + effective)
            * math.log(math.pi * b / effective + 1.0)
        )
    return SOIL_CONDUCTIVITY / (0.457 * b + effective)


def basement_wall(depth: float, wall_resistance: float) -> float:
    """U of a basement wall below grade [W/(m2 K)], wall resistance [m2 K/W] without films."""
    floor_thickness = FOUNDATION_WALL + SOIL_CONDUCTIVITY * (FILM_DOWN + FILM_OUTSIDE)
    wall = SOIL_CONDUCTIVITY * (FILM_LEVEL + wall_resistance + FILM_OUTSIDE)
    floor_thickness = min(floor_thickness, wall)
    return (
        2.0
        * SOIL_CONDUCTIVITY
        / (math.pi * depth)
        * (1.0 + 0.5 * floor_thickness / (floor_thickness + depth))
        * math.log(depth / wall + 1.0)
    )
