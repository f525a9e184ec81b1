"""Least squares on points whose answer can be worked out by hand."""

from __future__ import annotations

import numpy as np
import pytest

from costcompare.billing.least_squares import solve

ONES = np.ones(4)
X = np.array([0.0, 1.0, 2.0, 3.0])


def test_a_line_through_points_on_it_is_exact() -> None:
    solved = solve(np.stack([ONES, X], axis=1), 2.0 + 3.0 * X)
    assert solved.coefficients == pytest.approx([2.0, 3.0])
    assert solved.r_squared == pytest.approx(1.0)
    assert solved.degrees_of_freedom == 2


def test_errors_of_a_mean() -> None:
    solved = solve(ONES[:, None], np.array([1.0, 2.0, 3.0, 4.0]))
    assert solved.coefficients == pytest.approx([2.5])
    # s2 = 5/3, its mean of four has s/2
    assert solved.residual_deviation == pytest.approx((5.0 / 3.0) ** 0.5)
    assert solved.standard_errors == pytest.approx([(5.0 / 3.0) ** 0.5 / 2.0])
    assert solved.r_squared == pytest.approx(0.0)


def test_a_weight_of_two_is_two_points() -> None:
    values = np.array([1.0, 3.0, 2.0, 6.0])
    weighted = solve(np.stack([ONES, X], axis=1), values, np.array([1.0, 1.0, 2.0, 1.0]))
    twice = np.array([0, 1, 2, 2, 3])
    doubled = solve(np.stack([np.ones(5), X[twice]], axis=1), values[twice])
    assert weighted.coefficients == pytest.approx(doubled.coefficients)
    assert weighted.sum_of_squares == pytest.approx(doubled.sum_of_squares)


def test_what_cannot_be_solved() -> None:
    with pytest.raises(ValueError, match="2 values cannot tell 2"):
        solve(np.ones((2, 2)), np.ones(2))
    with pytest.raises(ValueError, match="depend on each other"):
        solve(np.stack([ONES, 2.0 * ONES], axis=1), X)
