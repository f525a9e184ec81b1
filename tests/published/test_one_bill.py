"""A house fitted to one bill, and to a second one: a worked example of the method.

No published example was at hand: the figures were worked out apart from this program (a
plain Gauss-Newton iteration with exact slopes, and 400,000 weighted draws), from the degree-day
house below. Agreement reached: the most likely values within 1 % of theirs, the spreads
within 2 %; base load and heating after a second bill within 2 % of the weighted draws.

The house: E = B days + 24 UA sum(Ts - g - T)+ / (3412.142 eta) [kWh], the mean temperature of
day j being 38 + 6 sin(2 pi j / 9) + 3 sin(2 pi j / 4.3) F.
"""

from __future__ import annotations

import numpy as np
import pytest
from numpy.typing import NDArray

from costcompare.fitting.gauss_newton import MostLikely, most_likely

Floats = NDArray[np.float64]

DAYS = np.arange(31)
COLD = 38.0 + 6.0 * np.sin(2 * np.pi * DAYS / 9) + 3.0 * np.sin(2 * np.pi * DAYS / 4.3)
MIDDLE = np.array([np.log(450.0), np.log(0.70), np.log(22.0), 60.0, 4.0])
SPREAD = np.array([0.30, 0.15, 0.35, 1.5, 1.5])
BILL, ERROR = 3650.0, 3650.0 * np.hypot(0.03, 0.05)


def facts(z: Floats) -> Floats:
    """UA [Btu/h F], duct efficiency, base load [kWh/day], setting and free heat [F]."""
    moved = MIDDLE + SPREAD * z
    return np.concatenate([np.exp(moved[:3]), moved[3:]])


def winter_bill(z: Floats) -> float:
    ua, duct, base, setting, free = facts(z)
    degree_days = np.maximum(setting - free - COLD, 0.0).sum()
    return float(base * 31 + 24.0 * ua * degree_days / (3412.142 * duct))


def summer_bill(z: Floats) -> float:
    return float(facts(z)[2] * 30)


def fitted(bills: list[tuple[float, float]]) -> MostLikely:
    models = (winter_bill, summer_bill)[: len(bills)]

    def model(z: Floats) -> Floats:
        return np.array([one(z) for one in models])

    def slopes_at(z: Floats) -> Floats:
        step = 1e-4
        both = [(model(z + step * one) - model(z - step * one)) for one in np.eye(5)]
        return np.stack(both, axis=1) / (2 * step)

    measured, errors = np.array(bills).T
    zero = np.zeros(5)
    return most_likely(
        model,
        measured,
        errors,
        slopes=slopes_at(zero),
        start=model(zero),
        slopes_at=slopes_at,
    )


def test_the_house_as_it_is_said_to_be() -> None:
    assert COLD.mean() == pytest.approx(38.476167, abs=1e-6)
    assert winter_bill(np.zeros(5)) == pytest.approx(3138.3454, abs=1e-3)


def test_one_winter_bill() -> None:
    found = fitted([(BILL, ERROR)])
    assert facts(found.z) == pytest.approx([508.625, 0.678894, 22.9107, 60.1714, 3.82864], rel=0.01)
    assert found.explained == pytest.approx([3628.882], rel=0.002)
    spread = found.spread * SPREAD
    assert spread == pytest.approx([0.178318, 0.137340, 0.340756, 1.461521, 1.461521], rel=0.02)
    scale = np.outer(found.spread, found.spread)
    together = found.covariance / scale
    assert together[0, 1] == pytest.approx(0.594145, rel=0.02)
    assert together[0, 2] == pytest.approx(-0.317262, rel=0.02)


def test_a_summer_bill_tells_the_base_load() -> None:
    summer = 690.0
    one = fitted([(BILL, ERROR)])
    both = fitted([(BILL, ERROR), (summer, summer * np.hypot(0.03, 0.10))])
    base = facts(both.z)[2]
    assert base == pytest.approx(22.87, rel=0.02)
    assert base * both.spread[2] * SPREAD[2] == pytest.approx(2.31, rel=0.05)
    assert both.spread[2] < 0.35 * one.spread[2]
    heating = winter_bill(both.z) - 31 * base
    assert heating == pytest.approx(2904.0, rel=0.02)
