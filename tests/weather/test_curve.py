"""Curves through means and lasting noise."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from costcompare.weather.curve import (
    DAYS_IN_MONTH,
    MONTH_OF_DAY,
    lasting_noise,
    month_means,
    month_means_of_hours,
    through_means,
)


@given(st.lists(st.floats(-40.0, 40.0), min_size=12, max_size=12))
def test_the_means_are_kept(means: list[float]) -> None:
    curve = through_means(np.array(means), DAYS_IN_MONTH)
    assert curve.shape == (365,)
    np.testing.assert_allclose(month_means(curve), means, atol=1e-9)


def test_equal_means_give_a_level_line() -> None:
    np.testing.assert_allclose(through_means(np.full(5, 3.0), 24), 3.0)


def test_parts_join_without_a_step() -> None:
    curve = through_means(np.array([0.0, 10.0, 4.0, -3.0]), 1000)
    steps = np.abs(np.diff(np.append(curve, curve[0])))
    assert steps.max() < 0.1


def test_months_are_those_of_the_calendar() -> None:
    assert MONTH_OF_DAY[[0, 30, 31, 58, 59, 364]].tolist() == [0, 0, 1, 1, 2, 11]
    hourly = np.repeat(MONTH_OF_DAY, 24).astype(float)
    np.testing.assert_allclose(month_means_of_hours(hourly), np.arange(12))


@pytest.mark.parametrize("persistence", [0.0, 0.4, 0.8])
def test_noise_has_mean_0_deviation_1_and_lasts(persistence: float) -> None:
    noise = lasting_noise(np.random.default_rng(5), 200_000, persistence)
    assert noise.mean() == pytest.approx(0.0, abs=0.02)
    assert noise.std() == pytest.approx(1.0, abs=0.02)
    assert np.corrcoef(noise[:-1], noise[1:])[0, 1] == pytest.approx(persistence, abs=0.02)
