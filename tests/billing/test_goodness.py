"""Figures of goodness against values worked out by hand."""

from __future__ import annotations

import math

import pytest

from costcompare.billing.goodness import (
    cv_rmse,
    fractional_savings_uncertainty,
    k_of,
    nmbe,
)

MEASURED = [2450, 2100, 1800, 1200, 800, 650, 620, 640, 700, 1050, 1700, 2300]
COMPUTED = [2350, 2180, 1720, 1260, 830, 640, 600, 655, 735, 1000, 1780, 2240]


@pytest.mark.parametrize(
    ("parameters", "bias", "scatter"), [(0, 0.124922, 4.421071), (1, 0.136278, 4.617659)]
)
def test_nmbe_and_cv_of_twelve_months(parameters: int, bias: float, scatter: float) -> None:
    assert 100.0 * nmbe(MEASURED, COMPUTED, parameters) == pytest.approx(bias, abs=5e-7)
    assert 100.0 * cv_rmse(MEASURED, COMPUTED, parameters) == pytest.approx(scatter, abs=5e-7)


def test_the_uncertainty_of_a_saving() -> None:
    found = fractional_savings_uncertainty(0.10, 0.30, before=12, after=12)
    assert found == pytest.approx(0.240061, abs=5e-7)


@pytest.mark.parametrize(
    ("confidence", "by_guideline", "by_polynomial"),
    [(0.90, 0.104045, 0.107808), (0.68, 0.059739, 0.061900)],
)
def test_two_factors_and_two_confidences(
    confidence: float, by_guideline: float, by_polynomial: float
) -> None:
    assert k_of(12) == pytest.approx(1.305580, abs=5e-7)
    for k, expected in ((1.26, by_guideline), (k_of(12), by_polynomial)):
        found = fractional_savings_uncertainty(
            0.028894, 0.20, before=12, after=12, confidence=confidence, k=k
        )
        assert found == pytest.approx(expected, abs=1e-6)


def test_a_saving_of_nothing_has_no_certainty() -> None:
    assert math.isinf(fractional_savings_uncertainty(0.1, 0.0, before=12, after=12))
    assert math.isinf(fractional_savings_uncertainty(0.1, 0.3, before=3, after=12))
