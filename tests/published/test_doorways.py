"""Air through a doorway against the formula of Brown and Solvason 1962.

The figures (0.81 m by 2.03 m, discharge 0.6, 293 K) were computed from the published
formula; the form for small differences is that of Said, Barakat and Whidden 1993.
Agreement asked for: 1 %.
"""

from __future__ import annotations

import pytest

from costcompare.physics.doorways import exchange_flow


@pytest.mark.parametrize(
    ("difference", "flow", "heat"),
    [(1.0, 0.0857, 103), (2.0, 0.1212, 292), (3.0, 0.1485, 537), (5.0, 0.1917, 1156)],
)
def test_doorway_table(difference: float, flow: float, heat: float) -> None:
    found = exchange_flow(0.81, 2.03, difference)
    assert found == pytest.approx(flow, rel=0.01)
    assert 1206 * found * difference == pytest.approx(heat, rel=0.01)


def test_a_hall_between_two_rooms_passes_about_a_third() -> None:
    """Two doorways in series share the difference: heat goes with its power of 1.5, so .354."""
    through_one = exchange_flow(0.81, 2.03, 2.0) * 2.0
    through_two = exchange_flow(0.81, 2.03, 1.0) * 1.0
    assert through_two / through_one == pytest.approx(0.354, abs=0.001)
