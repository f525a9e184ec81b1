"""How numbers are written."""

from __future__ import annotations

from datetime import date

import pytest

from costcompare.views import numbers


@pytest.mark.parametrize(
    ("written", "expected"),
    [
        (numbers.dollars_a_year(1874.9), "$1,870"),
        (numbers.dollars_a_year(1875.0), "$1,880"),
        (numbers.dollars_a_year(-977.2), "\N{MINUS SIGN}$980"),
        (numbers.dollars_a_year(-4.9), "$0"),
        (numbers.dollars_a_month(452.4), "$450"),
        (numbers.dollars_a_month(452.6), "$455"),
        (numbers.dollars(11_200.4), "$11,200"),
        (numbers.dollars_and_cents(92.615), "$92.62"),
        (numbers.dollars_and_cents(-0.004), "$0.00"),
        (numbers.dollars_and_cents(-1234.5), "\N{MINUS SIGN}$1,234.50"),
        (numbers.about(numbers.dollars_a_year(1870.0)), "about $1,870"),
        (numbers.kwh(13_847.0), "13,850 kWh"),
        (numbers.btu_h(8864.0), "8,860 Btu/h"),
        (numbers.btu_h(40_467.0), "40,500 Btu/h"),
        (numbers.kilowatts(11.86), "11.9 kW"),
        (numbers.amperes(83.33), "83 A"),
        (numbers.degrees(67.5), "68 °F"),
        (numbers.degrees(-5.6), "\N{MINUS SIGN}6 °F"),
        (numbers.degrees(-0.4), "0 °F"),
        (numbers.degrees_of_difference(3.2), "3 °F"),
        (numbers.percent(0.256), "26 %"),
        (numbers.hours(1234.0), "1,234 hours"),
        (numbers.hours(1.0), "1 hour"),
        (numbers.years(9.73), "9.7 years"),
        (numbers.years(1.0), "1.0 year"),
        (numbers.years(9.96), "10 years"),
        (numbers.years(14.5), "15 years"),
        (numbers.years(None), "never"),
        (numbers.ratio(1.43), "1.4"),
        (numbers.ratio(None), numbers.MISSING),
        (numbers.count(8760), "8,760"),
        (numbers.quantity(0.0725), "0.0725"),
        (numbers.quantity(1850.4), "1,850"),
        (numbers.quantity(20.0), "20"),
        (numbers.quantity(100.0), "100"),
        (numbers.quantity(0.0), "0"),
        (numbers.quantity(-82.55), "\N{MINUS SIGN}82.55"),
        (numbers.quantity(float("nan")), numbers.MISSING),
        (numbers.month_name(1), "January"),
        (numbers.day_and_month(12, 31), "December 31"),
        (numbers.month_reached(date(2027, 3, 1), 8.0), "March 2035"),
        (numbers.month_reached(date(2027, 3, 1), 9.8), "December 2036"),
    ],
)
def test_a_number_is_written_so(written: str, expected: str) -> None:
    assert written == expected


@pytest.mark.parametrize("usd", [-5.0, -4.99, 0.0, 4.99, 5.0])
def test_what_rounds_to_nothing_is_written_as_nothing(usd: float) -> None:
    assert numbers.rounds_to_nothing(usd) == (numbers.dollars_a_year(usd) == "$0")
