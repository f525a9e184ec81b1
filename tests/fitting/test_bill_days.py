"""Which days a bill holds, counted by hand; how its error grows."""

from __future__ import annotations

from datetime import date

import numpy as np
import pytest

from costcompare.billing.reading import Bill
from costcompare.fitting.bill_days import day_counts, errors


def test_the_day_of_the_last_read_belongs_to_the_next_bill() -> None:
    (days,) = day_counts([Bill(date(2025, 1, 30), date(2025, 2, 2), 1.0)])
    assert np.flatnonzero(days).tolist() == [29, 30, 31]
    assert days.sum() == 3.0


def test_a_bill_over_new_year_lies_at_both_ends() -> None:
    (days,) = day_counts([Bill(date(2025, 12, 30), date(2026, 1, 3), 1.0)])
    assert np.flatnonzero(days).tolist() == [0, 1, 363, 364]


def test_the_29th_of_february_is_another_28th() -> None:
    (days,) = day_counts([Bill(date(2024, 2, 27), date(2024, 3, 2), 1.0)])
    assert days[[57, 58, 59]].tolist() == [1.0, 2.0, 1.0]
    assert days.sum() == 4.0


def test_errors_add_as_squares() -> None:
    bill = Bill(date(2025, 1, 1), date(2025, 1, 31), 1000.0, read="actual")
    use, heating = np.array([1000.0]), np.array([800.0])
    # Read 2 %, a winter bill 5 %, the station 3 %.
    own = errors([bill], use, heating, by_degree=None)
    assert own == pytest.approx([np.sqrt(20.0**2 + 50.0**2 + 30.0**2)])
    # Read 2 %, 1.9 K off the typical month at 40 kWh/K.
    typical = errors([bill], use, heating, by_degree=np.array([40.0]))
    assert typical == pytest.approx([np.sqrt(20.0**2 + 50.0**2 + 76.0**2)])
    summer = errors([bill], use, np.array([100.0]), by_degree=None)
    assert summer == pytest.approx([np.sqrt(20.0**2 + 100.0**2 + 30.0**2)])


def test_a_bill_that_came_out_low_counts_for_no_more_than_one_that_came_out_high() -> None:
    days = date(2025, 1, 1), date(2025, 1, 31)
    bills = [Bill(*days, kwh, read="actual") for kwh in (800.0, 1200.0)]
    use, heating = np.array([1000.0, 1000.0]), np.array([800.0, 800.0])
    low, high = errors(bills, use, heating, by_degree=None)
    assert low == high


def test_a_little_more_heating_in_a_bill_changes_its_error_a_little() -> None:
    bill = Bill(date(2025, 4, 1), date(2025, 5, 1), 1000.0, read="actual")
    shares = np.linspace(0.0, 1.0, 101)
    found = np.array(
        [errors([bill], np.array([1000.0]), np.array([1e3 * s]), by_degree=None)[0] for s in shares]
    )
    assert (np.diff(found) <= 0.0).all()
    assert np.abs(np.diff(found)).max() < 0.02 * found[0]
    # Half heating lies in the middle of 5 and 10 %.
    assert found[50] == pytest.approx(np.sqrt(20.0**2 + 75.0**2 + 30.0**2))


def test_a_month_that_should_use_nothing_has_an_error_still() -> None:
    bill = Bill(date(2025, 7, 1), date(2025, 7, 31), 3.0, read="actual")
    nothing = np.zeros(1)
    assert errors([bill], nothing, nothing, by_degree=None) == pytest.approx([15.0])


def test_an_estimated_read_counts_for_less() -> None:
    days = date(2025, 1, 1), date(2025, 1, 31)
    use, heating = np.array([1000.0, 1000.0]), np.array([800.0, 800.0])
    bills = [Bill(*days, 1000.0, read="actual"), Bill(*days, 1000.0, read="estimated")]
    actual, estimated = errors(bills, use, heating, by_degree=None)
    assert estimated > 2.0 * actual
