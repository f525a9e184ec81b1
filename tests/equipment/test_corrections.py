"""Room temperature, line set and altitude against answers worked out by hand."""

from __future__ import annotations

import numpy as np
import pytest

from costcompare.equipment import Installation, standby_power
from costcompare.equipment.classes import machine
from costcompare.equipment.corrections import installation_factors, room_factors
from costcompare.equipment.machine import celsius

FOOT = 0.3048


def test_a_cool_room_helps() -> None:
    """At 60 F: 3 % more capacity, 8 % less power; nothing at 70 F."""
    capacity, power = room_factors(np.array([celsius(60), celsius(70)]))
    assert capacity == pytest.approx([1.03, 1.0])
    assert power == pytest.approx([0.92, 1.0])


@pytest.mark.parametrize(
    ("feet", "capacity", "cop"), [(25, 1.0, 1.0), (50, 0.99, 0.995), (100, 0.97, 0.985)]
)
def test_a_long_line_set(feet: float, capacity: float, cop: float) -> None:
    """1 % of capacity and 0.5 % of COP for each 25 ft beyond the tested 25."""
    found, power = installation_factors(Installation(line_set=feet * FOOT), heating=True)
    assert found == pytest.approx(capacity)
    assert found / power == pytest.approx(cop)


def test_a_very_long_line_set_costs_five_percent_of_heat() -> None:
    found, _ = installation_factors(Installation(line_set=300 * FOOT), heating=True)
    assert found == pytest.approx(0.95)


def test_cooling_loses_more_in_the_line_set() -> None:
    assert installation_factors(Installation(line_set=75 * FOOT), heating=False) == pytest.approx(
        (0.97, 1.0)
    )


def test_thin_air() -> None:
    """About 2 % of capacity and 0.5 % of power for each 1,000 ft."""
    capacity, power = installation_factors(Installation(altitude=5000 * FOOT), heating=True)
    assert capacity == pytest.approx(0.35 + 0.65 * np.exp(-5000 / 27000))
    assert capacity == pytest.approx(0.89, abs=0.01)
    assert power == pytest.approx(0.975)


def test_heaters_that_are_not_for_the_room() -> None:
    """Crankcase heater when still and cold; pan heater a quarter of a cold heating hour."""
    unit = machine("single-zone cold-climate", 3517.0)
    still = np.array([True, True, False, False])
    outdoor = np.array([celsius(40), celsius(60), celsius(30), celsius(40)])
    found = standby_power(unit, still, ~still, outdoor) - unit.off_power
    assert found == pytest.approx([unit.crankcase_power, 0.0, 0.25 * unit.pan_power, 0.0])
