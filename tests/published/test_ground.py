"""Heat to the ground against ISO 13370:2017 (formulas from memory).

The check value (139.35 m2 floor, 48.8 m perimeter, soil 2.0 W/(m K), wall 0.2 m: 0.7325)
was computed from the formula by a second hand.
"""

from __future__ import annotations

import math

import pytest

from costcompare.physics import ground


def test_bare_crawlspace_ground() -> None:
    assert ground.slab(139.3546, 48.8) == pytest.approx(0.7325, abs=5e-5)


def test_insulated_slab_uses_the_other_form() -> None:
    """With d_t above B' the standard turns to lambda / (0.457 B' + d_t)."""
    thickness = 0.2 + 2.0 * (0.17 + 3.0 + 0.04)
    b = 100.0 / 20.0
    assert thickness > b
    assert ground.slab(100.0, 40.0, 3.0) == pytest.approx(2.0 / (0.457 * b + thickness))


def test_basement_is_between_slab_and_wall_against_air() -> None:
    floor = ground.basement_floor(100.0, 40.0, 1.8)
    wall = ground.basement_wall(1.8, 0.12)
    assert floor < ground.slab(100.0, 40.0) < wall < 1 / (0.13 + 0.12 + 0.04)
    assert math.isfinite(wall)
