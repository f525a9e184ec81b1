"""Air through crawlspace vents by hand."""

from __future__ import annotations

import pytest

from costcompare.physics.crawlspace import vent_flow


def test_half_blocked_vents_in_an_average_wind() -> None:
    """ISO 13370 (from memory): 1450 x 0.0095 x 3 x 0.05 x 24.4 W/K = 50.4 W/K of air."""
    assert vent_flow(0.0095, 0.05, 3.0, 48.8) * 1207.19 == pytest.approx(
        1450 * 0.0095 * 3 * 0.05 * 24.4
    )
