"""How numbers are written."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor
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
        (numbers.dollars_in_a_range(4388.0), "$4,400"),
        (numbers.dollars_in_a_range(12650.0), "$13,000"),
        (numbers.dollars_in_a_range(-162.0), "\N{MINUS SIGN}$160"),
        (numbers.dollars_in_a_range(98.0), "$100"),
        (numbers.dollars_in_a_range(0.0), "$0"),
        (numbers.dollars_in_a_range(None), "never"),
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


def test_figures_can_be_written_in_si_units() -> None:
    with numbers.written("si"):
        assert numbers.degrees(68.0) == "20 °C"
        assert numbers.degrees(-4.0) == "−20 °C"
        assert numbers.degrees_of_difference(9.0) == "5.0 °C"
        assert numbers.btu_h(3412.142) == "1.0 kW"
        assert numbers.btu_h(1000.0) == "290 W"
        assert (numbers.heat(3412.142), numbers.heat_unit()) == ("1,000", "W")
        assert numbers.nominal(12.0) == "3.5 kW"
        assert numbers.square_feet(1076.391) == "100 m²"
        assert numbers.feet(7.0) == "2.1 m"
        assert numbers.wind(9.0) == "4.0 m/s"
        assert numbers.heat_per_area(10.0) == "32 W a square metre"
        # 660 Btu/h F is 660 * 1.8 / 3.412 = 348 W/K.
        assert numbers.heat_per_degree(660.0) == "350 W for each °C"
        assert numbers.degree_days(4500.0) == "2,500 heating degree days (18.3 °C)"
        assert numbers.shown_degree_degf() == 1.8
    assert numbers.degrees(68.0) == "68 °F"
    assert numbers.wind(9.4) == "9 mph"
    assert numbers.heat_per_degree(663.7) == "660 Btu/h for each °F"
    assert numbers.heat(8863.0) == "8,860"
    assert numbers.degree_days(4500.0) == "4,500 heating degree days (65 °F)"


def test_money_can_carry_any_sign() -> None:
    with numbers.written(currency="€"):
        assert numbers.dollars_a_year(-1234.0) == "−€1,230"
    with numbers.written(currency="CHF"):
        assert numbers.dollars(1234.0) == "CHF\N{NO-BREAK SPACE}1,234"
        with numbers.written(currency="£"):
            assert numbers.dollars_and_cents(1.005) == "£1.01"
        assert numbers.currency() == "CHF"
    assert numbers.dollars(1234.0) == "$1,234"


def test_another_thread_writes_as_before() -> None:
    with numbers.written("si", "€"), ThreadPoolExecutor(1) as pool:
        assert pool.submit(numbers.degrees, 68.0).result() == "68 °F"
        assert pool.submit(numbers.dollars, 5.0).result() == "$5"
