"""Balance points that can be worked out by hand, and machines at single temperatures."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.typing import NDArray

from costcompare.case.facts import Case, HeatPumpUnit
from costcompare.equipment.machine import W_PER_KBTU_H, celsius
from costcompare.sizing.capability import (
    Outdoors,
    ability,
    balance_point,
    outdoors_of,
    smallest_head,
)
from costcompare.weather import Weather

Floats = NDArray[np.float64]
DRY = Outdoors(np.array([celsius(47.0)]), np.array([0.3]), 0.0)


def load(outdoor: Floats) -> Floats:
    """200 W/K, rooms at 20 degC."""
    return 200.0 * (20.0 - outdoor)


def steady(watts: float, above: float = -100.0) -> object:
    return lambda outdoor: np.where(outdoor >= above, watts, 0.0)


@pytest.mark.parametrize(
    ("most", "expected"),
    [
        (steady(5000.0), -5.0),
        (steady(3210.0), 3.95),
        (steady(9000.0), None),  # covers it down to the coldest hour
        (steady(9000.0, above=-12.4), -12.4),  # cut out while it still has enough
        (steady(0.0), 20.0),
    ],
)
def test_balance_points_by_hand(most: object, expected: float | None) -> None:
    """Within 0.01 K of the crossing of two lines."""
    found = balance_point(most, load, warm=20.0, cold=-20.0)  # type: ignore[arg-type]
    if expected is None:
        assert found is None
    else:
        assert found == pytest.approx(expected, abs=0.01 if expected < 20.0 else 0.3)


def test_the_warmest_crossing_counts() -> None:
    """Frost at 0 to 2 degC: short there, enough below, short again from -10 on."""

    def most(outdoor: Floats) -> Floats:
        frosted = np.where((outdoor < 2.0) & (outdoor > 0.0), 3000.0, 6000.0)
        return np.asarray(frosted)

    assert balance_point(most, load, warm=20.0, cold=-20.0) == pytest.approx(2.0, abs=0.01)


def test_a_head_at_47_f_is_its_table() -> None:
    """9 kBtu/h nominal is rated 10.9 kBtu/h at 47 F; a quarter and 1.3 of it; 70 F rooms."""
    unit = HeatPumpUnit("single-zone cold-climate", 9.0 * W_PER_KBTU_H, "den")
    found = ability(unit, celsius(70.0), np.array([celsius(47.0)]), DRY, 0.88)
    assert found.least[0] / W_PER_KBTU_H == pytest.approx(0.25 * 10.9, rel=1e-6)
    assert found.most[0] / W_PER_KBTU_H == pytest.approx(1.30 * 10.9, rel=1e-6)


def test_frost_is_taken_off_in_humid_air() -> None:
    unit = HeatPumpUnit("single-zone standard", 9.0 * W_PER_KBTU_H, "den")
    at = np.array([celsius(35.0)])
    humid = Outdoors(at, np.array([0.95]), 0.0)
    dry = Outdoors(at, np.array([0.3]), 0.0)
    frosted = ability(unit, celsius(70.0), at, humid, 0.88).most[0]
    assert frosted < 0.95 * ability(unit, celsius(70.0), at, dry, 0.88).most[0]


def test_beyond_the_cut_out_it_gives_nothing() -> None:
    unit = HeatPumpUnit("ducted variable", 36.0 * W_PER_KBTU_H, "hall")
    found = ability(unit, celsius(70.0), np.array([celsius(-9.0), celsius(-12.0)]), DRY, 0.88)
    assert found.most[0] > 0.0
    assert found.most[1] == 0.0


def test_the_smallest_head_is_the_first_of_the_table(case: Case, weather: Weather) -> None:
    nominal, least = smallest_head(case.home, outdoors_of(case.home, weather))
    assert nominal / W_PER_KBTU_H == pytest.approx(6.0)
    assert least / W_PER_KBTU_H == pytest.approx(0.25 * 8.5, rel=0.05)  # 1,150 ft up
