"""How a machine spends its hours, counted by hand."""

from __future__ import annotations

import numpy as np

from costcompare.equipment import Capability
from costcompare.simulation.machines import machine_hours


def test_hours_are_counted_by_what_was_given() -> None:
    capacity = np.tile([1000.0, 3000.0, 4000.0], (6, 1))
    never = np.zeros(6, dtype=bool)
    capability = Capability(capacity, capacity / 3.0, 0.15, never, never)
    heat = np.array([0.0, 500.0, 1000.0, 2500.0, 4000.0, 4000.0 * (1.0 - 1e-9)])
    hours = machine_hours("den", capability, heat)
    assert (hours.name, hours.heating_hours) == ("den", 5)
    assert hours.below_minimum_hours == 1
    assert hours.at_maximum_hours == 2
