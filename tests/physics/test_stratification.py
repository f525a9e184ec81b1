"""Warm air under the ceiling, by hand."""

from __future__ import annotations

import pytest

from costcompare.physics.stratification import USUAL_DIFFERENCE, ceiling_factor, excess_at


@pytest.mark.parametrize(
    ("gradient", "warmer", "heat"),
    [(0.5, 1.27, 26), (1.0, 2.55, 51), (1.5, 3.82, 76), (2.0, 5.10, 102)],
)
def test_vaulted_ceiling(gradient: float, warmer: float, heat: float) -> None:
    """2.4 to 4.9 m (mean 3.65 m), roof of 20 W/K: computed by a second hand from the formula."""
    assert excess_at(3.65, gradient) == pytest.approx(warmer, abs=0.006)
    more = (ceiling_factor(2.4, 4.9, gradient) - 1.0) * 20.0 * USUAL_DIFFERENCE
    assert more == pytest.approx(heat, abs=0.7)


def test_a_sensor_at_2_m_reads_high() -> None:
    """At 2.1 m and 1 K/m: 1.0 K over sitting height."""
    assert excess_at(2.1, 1.0) == pytest.approx(1.0)
