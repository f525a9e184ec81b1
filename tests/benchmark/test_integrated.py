"""The network of the integrator: nothing moves where all is equally warm."""

from __future__ import annotations

import numpy as np
import pytest

from costcompare.benchmark.integrated import passive
from costcompare.case.facts import Layer
from costcompare.simulation.chains import ChainBuilder, Port
from costcompare.simulation.network import WALLS_AND_GLASS


def test_a_wall_between_a_room_and_outdoors_by_hand() -> None:
    """A room of 7.2 MJ/K behind 1 W/K in all loses 1/7200000 K a second per kelvin."""
    builder = ChainBuilder(3600.0)
    outside = builder.boundary(np.array([0.0]))
    ends = (
        Port(boundary=outside, boundary_conductance=3.0),
        Port(air=0, air_conductance=3.0),
    )
    builder.add((Layer(1.0 / 3.0),), 1.0, ends, WALLS_AND_GLASS)
    network = passive(builder, np.array([2000.0]), [], 1)
    assert network.states.shape == (1, 1)
    assert network.states[0, 0] == pytest.approx(-1.0 / 7.2e6)
    assert network.inputs[0] == pytest.approx(np.array([1.0, 0.0, 0.0, 1.0]) / 7.2e6)
