"""Heat carried by air."""

from __future__ import annotations

import pytest

from costcompare.physics.air import heat_capacity


def test_the_trades_constant() -> None:
    """1.08 Btu/h per cfm and F (common practice, no source) at sea level."""
    cfm, btu_h = 4.719474e-4, 0.29307107
    assert heat_capacity(101_325.0) * cfm / 1.8 / btu_h == pytest.approx(1.08, abs=1e-3)


def test_thin_air_carries_less() -> None:
    assert heat_capacity(83_000.0) == pytest.approx(1207.19 * 83_000 / 101_325)
