"""Frost, part load and cycling against answers worked out by hand."""

from __future__ import annotations

import numpy as np
import pytest

from costcompare.equipment.part_load import frost_factors, part_load_power


def fahrenheit(value: float) -> np.ndarray:
    return np.array([(value - 32.0) / 1.8])


@pytest.mark.parametrize(
    ("outdoor", "capacity", "power"),
    [
        (41, 0.9500, 0.9925),
        (35, 0.9000, 0.9850),
        (30, 0.9278, 0.9892),
        (25, 0.9556, 0.9933),
        (20, 0.9833, 0.9975),
        (17, 1.0, 1.0),
        (47, 1.0, 1.0),
        (5, 1.0, 1.0),
    ],
)
def test_frost_between_17_and_47(outdoor: float, capacity: float, power: float) -> None:
    """10 CFR 430 subpart B appendix M1: 10 % and 1.5 % at 35 F; straight lines both ways."""
    on_capacity, on_power = frost_factors(fahrenheit(outdoor), np.array([0.85]))
    assert on_capacity[0] == pytest.approx(capacity, abs=5e-5)
    assert on_power[0] == pytest.approx(power, abs=5e-5)


def test_dry_air_frosts_nothing() -> None:
    on_capacity, _ = frost_factors(fahrenheit(35), np.array([0.5]))
    assert on_capacity[0] == 1.0


def test_cycling_below_the_minimum() -> None:
    """Half of the minimum with a coefficient of 0.2: 0.5 P / (1 - 0.2 x 0.5)."""
    capacity, power = np.array([[1000.0, 3000.0, 4000.0]]), np.array([[250.0, 900.0, 1400.0]])
    found = part_load_power(np.array([500.0]), capacity, power, 0.2)
    assert found[0] == pytest.approx(0.5 * 250.0 / 0.9)


def test_between_speeds_the_cop_is_linear_in_the_load() -> None:
    capacity, power = np.array([[1000.0, 3000.0, 4000.0]]), np.array([[250.0, 1000.0, 1600.0]])
    halfway = part_load_power(np.array([2000.0]), capacity, power, 0.2)
    assert halfway[0] == pytest.approx(2000.0 / 3.5)
    assert part_load_power(np.array([4000.0]), capacity, power, 0.2)[0] == pytest.approx(1600.0)
    assert part_load_power(np.array([0.0]), capacity, power, 0.2)[0] == 0.0
