"""Days of real years and of a year that stands for any."""

from __future__ import annotations

from datetime import date

import numpy as np
import pytest

from costcompare.billing.daily_temperatures import of_days, of_hours, of_row


def test_days_that_are_there_and_days_that_are_not() -> None:
    some = of_days({date(2026, 1, 1): 1.0, date(2026, 1, 3): 3.0}, "two days")
    found = some.between(date(2025, 12, 31), date(2026, 1, 5))
    assert np.isnan(found).tolist() == [True, False, True, False, True]
    assert some.last == date(2026, 1, 3)
    assert some.mean_year() is None


def test_a_year_of_hours_stands_for_any_year() -> None:
    year = of_hours(np.repeat(np.arange(365.0), 24), "a ramp")
    assert year.between(date(2024, 2, 27), date(2024, 3, 2)).tolist() == [57.0, 58.0, 58.0, 59.0]
    assert year.between(date(2025, 12, 31), date(2026, 1, 2)).tolist() == [364.0, 0.0]
    assert year.mean_year() is year


def test_the_mean_year_of_two_years() -> None:
    two = of_row(date(2025, 7, 1), [2.0] * 365 + [4.0] * 365, "two years")
    mean = two.mean_year()
    assert mean is not None
    assert mean.degc == pytest.approx(np.full(365, 3.0))
    assert mean.repeats
