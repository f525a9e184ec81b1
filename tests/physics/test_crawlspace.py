"""Air through crawlspace vents by hand."""

from __future__ import annotations

import numpy as np
import pytest

from costcompare.physics.crawlspace import follow_vapour, vent_flow


def test_half_blocked_vents_in_an_average_wind() -> None:
    """ISO 13370 (from memory): 1450 x 0.0095 x 3 x 0.05 x 24.4 W/K = 50.4 W/K of air."""
    assert vent_flow(0.0095, 0.05, 3.0, 48.8) * 1207.19 == pytest.approx(
        1450 * 0.0095 * 3 * 0.05 * 24.4
    )


def steady_vapour(outdoor: float, saturated: float, vents: float, soil: float) -> float:
    """Vapour pressure [Pa] after 400 hours of the same."""
    hours = np.ones(400)
    inside = np.zeros(400)
    follow_vapour(outdoor * hours, saturated * hours, vents * hours, soil, 80.0, inside)
    return float(inside[-1])


def test_vapour_settles_where_vents_and_soil_balance() -> None:
    """600 Pa outdoors, 1,000 Pa at saturation, 0.06 m3/s of each: half way between."""
    assert steady_vapour(600.0, 1000.0, 0.06, 0.06) == pytest.approx(800.0)
    assert steady_vapour(600.0, 1000.0, 0.06, 0.0) == pytest.approx(600.0)
    assert steady_vapour(600.0, 1000.0, 0.0, 0.01) == pytest.approx(1000.0)


def test_vapour_over_saturation_condenses() -> None:
    assert steady_vapour(2000.0, 1000.0, 0.06, 0.0) == 1000.0


def test_vapour_follows_within_hours() -> None:
    """80 m3 and 0.02 m3/s: after one hour 72 of 152 parts of the way, then on."""
    outdoor = np.concatenate([np.full(1, 500.0), np.full(99, 900.0)])
    inside = np.zeros(100)
    follow_vapour(outdoor, np.full(100, 2000.0), np.full(100, 0.02), 0.0, 80.0, inside)
    assert inside[1] == pytest.approx(500.0 + 400.0 * 72 / 152)
    assert inside[-1] == pytest.approx(900.0)
