"""Present values that can be worked out by hand."""

from __future__ import annotations

import pytest

from costcompare.money.factors import (
    present_value,
    present_value_growing,
    present_value_yearly,
    with_inflation,
)


def test_one_dollar_in_two_years_at_ten_percent() -> None:
    assert present_value(0.1, 2) == pytest.approx(1.0 / 1.21)
    assert present_value_yearly(0.1, 2) == pytest.approx(1.0 / 1.1 + 1.0 / 1.21)
    assert present_value_growing(0.1, 0.05, 2) == pytest.approx(1.05 / 1.1 + (1.05 / 1.1) ** 2)


def test_without_interest_years_are_counted() -> None:
    assert present_value_yearly(0.0, 7) == 7.0
    assert present_value(0.0, 7) == 1.0


def test_inflation_multiplies() -> None:
    assert with_inflation(0.03, 0.025) == pytest.approx(0.05575)
