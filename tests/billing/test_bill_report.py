"""What bills say alone, put together."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from costcompare.billing.bill_report import comparable, for_days_of, reported
from costcompare.billing.daily_temperatures import of_row
from costcompare.billing.reading.bills import Bill, Bills
from costcompare.errors import BillsError
from tests.billing.synthetic_year import FIRST, TEMPERATURES, bills, shifted, uses

MADE = Bills(tuple(bills(uses())))


def test_bills_of_days_that_are_there() -> None:
    report = reported(MADE, TEMPERATURES)
    assert report.is_own_weather
    assert report.bill_count == 12
    assert report.total_usd is None
    assert report.year is not None
    assert report.year.kwh == pytest.approx(MADE.kwh)
    assert reported(MADE, TEMPERATURES, shifted(-5.0)).year is not None


def test_a_whole_year_stands_for_days_that_are_not_there() -> None:
    later = Bills(tuple(bills(uses(), later=2)))
    report = reported(later, TEMPERATURES)
    assert not report.is_own_weather
    assert report.line.is_weather_driven
    part = of_row(FIRST, TEMPERATURES.degc[:200], "part of a year")
    with pytest.raises(BillsError):
        reported(later, part)
    assert for_days_of(later.bills, replace(TEMPERATURES, repeats=True))[1] is False


def test_the_last_bill_is_held_against_that_of_a_year_before() -> None:
    two = [*bills(uses()), *bills(uses(), later=1)]
    assert comparable(two) == (two[11], two[23])
    assert comparable(two[:5]) == (two[3], two[4])
    assert comparable([Bill(date(2026, 1, 1), date(2026, 2, 1), 5.0)]) is None
