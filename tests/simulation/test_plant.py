"""What a plant is made of, by hand."""

from __future__ import annotations

import numpy as np
import pytest

from costcompare.case.facts import Blower
from costcompare.equipment import Capability
from costcompare.simulation.plant import without_blower

NONE = np.zeros(1, dtype=bool)


def test_the_blower_of_the_points_is_taken_out() -> None:
    """Two speeds of 4 and 8 kW, a blower of 400 W that blows 0.6 of its air at the least.

    At the least speed it draws 400 x 0.6^2.5 = 111.5 W, which is part of heat and of power.
    """
    points = Capability(
        np.array([[4000.0, 8000.0, 8000.0]]), np.array([[1000.0, 2500.0, 2500.0]]), 0.2, NONE, NONE
    )
    net = without_blower(points, Blower(0.5, 400.0, variable=True), heats=True)
    small = 400.0 * 0.6**2.5
    assert net.capacity[0] == pytest.approx([4000.0 - small, 7600.0, 7600.0])
    assert net.power[0] == pytest.approx([1000.0 - small, 2100.0, 2100.0])
    cold = without_blower(points, Blower(0.5, 400.0, variable=True), heats=False)
    assert cold.capacity[0, 2] == pytest.approx(8400.0)


def test_a_machine_that_is_cut_out_gives_nothing() -> None:
    points = Capability(np.zeros((1, 3)), np.full((1, 3), 500.0), 0.2, ~NONE, NONE)
    assert not without_blower(points, Blower(0.5, 400.0), heats=True).capacity.any()
