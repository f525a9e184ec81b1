"""The most likely facts, against answers that can be worked out by hand."""

from __future__ import annotations

import numpy as np
import pytest

from costcompare.fitting.gauss_newton import Floats, covariance, most_likely


def test_a_linear_model_has_the_answer_of_the_normal_equations() -> None:
    slopes = np.array([[2.0, 1.0], [0.0, 3.0], [1.0, -1.0]])
    measured, errors = np.array([5.0, 2.0, 0.5]), np.array([1.0, 0.5, 2.0])
    weight = np.diag(errors**-2)
    spread = np.linalg.inv(np.eye(2) + slopes.T @ weight @ slopes)
    expected = spread @ slopes.T @ weight @ measured
    found = most_likely(lambda z: slopes @ z, measured, errors, slopes=slopes, start=np.zeros(3))
    assert found.settled
    assert found.z == pytest.approx(expected, abs=0.01)
    assert found.covariance == pytest.approx(spread)


def test_one_value_and_one_fact_share_by_their_variances() -> None:
    # y = 10 z with an error of 10: half of the way, and a variance of a half.
    found = most_likely(
        lambda z: 10.0 * z,
        np.array([20.0]),
        np.array([10.0]),
        slopes=np.array([[10.0]]),
        start=np.zeros(1),
    )
    assert found.z == pytest.approx([1.0], abs=0.01)
    assert found.spread == pytest.approx([np.sqrt(0.5)])


def test_a_fact_that_the_model_does_not_feel_stays_as_it_is() -> None:
    found = most_likely(
        lambda z: z[:1] * 4.0,
        np.array([4.0]),
        np.array([0.1]),
        slopes=np.array([[4.0, 0.0]]),
        start=np.zeros(1),
    )
    assert found.z[1] == 0.0
    assert found.spread[1] == pytest.approx(1.0)


def test_slopes_that_are_wrong_at_first_are_mended() -> None:
    found = most_likely(
        np.exp,
        np.array([np.exp(1.5)]),
        np.array([1e-3]),
        slopes=np.array([[1.0]]),
        start=np.ones(1),
    )
    assert found.settled
    assert found.z == pytest.approx([1.5], abs=0.02)


def test_errors_are_those_of_the_place_that_was_found() -> None:
    # y = 100 + 50 z measured as 200, with a tenth of what the model makes as its error.
    def model(z: Floats) -> Floats:
        return 100.0 + 50.0 * z

    found = most_likely(
        model,
        np.array([200.0]),
        np.array([10.0]),
        slopes=np.array([[50.0]]),
        start=np.array([100.0]),
        slopes_at=lambda _z: np.array([[50.0]]),
        errors_at=lambda z: 0.1 * model(z),
    )
    # First with an error of 10: z = 100 / 50 * 2500 / 2600, so 196.2; then with 19.6.
    error = 10.0 + 5.0 * 2.0 * 2500.0 / 2600.0
    assert found.errors == pytest.approx([error], rel=0.01)
    assert found.z == pytest.approx([2.0 * 2500.0 / (2500.0 + error**2)], abs=0.02)
    assert found.spread == pytest.approx([error / np.hypot(50.0, error)], rel=0.01)


def test_an_error_of_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="more than 0"):
        most_likely(lambda z: z, np.ones(1), np.zeros(1), slopes=np.eye(1), start=np.zeros(1))


def test_more_values_never_widen() -> None:
    slopes = np.array([[1.0, 2.0], [3.0, -1.0]])
    one = np.diag(covariance(slopes[:1], np.ones(1)))
    both = np.diag(covariance(slopes, np.ones(2)))
    assert (both <= one).all()
