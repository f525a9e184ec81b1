"""Degree-day lines: a made-up year with a known answer, and what must not be called weather."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from itertools import pairwise

import numpy as np
import pytest

from costcompare.billing.balance_search import Search
from costcompare.billing.degree_days import DegreeDayFit, fit
from costcompare.billing.normal_year import year_use
from costcompare.billing.reading import read_bills
from costcompare.billing.reading.bills import Bill
from costcompare.errors import BillsError
from tests.billing.synthetic_year import (
    DEGF,
    FIRST,
    READS,
    TEMPERATURES,
    bills,
    degc,
    noisy,
    shifted,
    uses,
)


def found(line: DegreeDayFit) -> tuple[float | None, float, float | None]:
    return line.heating_balance_degf, line.base_kwh_per_day, line.heating_kwh_per_degf_day


def test_the_made_up_year_is_the_one_described() -> None:
    assert DEGF.mean() == pytest.approx(52.058295, abs=5e-7)
    for balance, degree_days in ((55, 2622.7246), (60, 3747.1055), (65, 5111.9246)):
        assert np.maximum(balance - DEGF, 0.0).sum() == pytest.approx(degree_days, abs=5e-5)
    assert sum(uses()) == pytest.approx(14395.8513, abs=5e-5)
    assert uses()[0] == pytest.approx(1904.8687, abs=5e-5)


def test_without_noise_the_answer_is_exact() -> None:
    line = fit(bills(uses()), TEMPERATURES)
    assert line.is_weather_driven
    assert line.form == "heating"
    assert line.heating_balance_degf == 57.0
    assert line.base_kwh_per_day == pytest.approx(24.0, abs=5e-7)
    assert line.heating_kwh_per_degf_day == pytest.approx(1.85, abs=5e-7)
    assert line.cv_rmse < 1e-9


def test_with_noise() -> None:
    line = fit(bills(noisy()), TEMPERATURES)
    assert line.heating_balance_degf == 56.5
    assert line.base_kwh_per_day == pytest.approx(24.119703, abs=5e-7)
    assert line.heating_kwh_per_degf_day == pytest.approx(1.914244, abs=5e-7)
    assert line.cv_rmse == pytest.approx(0.028894, abs=5e-7)
    assert line.r_squared == pytest.approx(0.995910, abs=5e-7)
    assert line.adjusted_r_squared == pytest.approx(0.995001, abs=5e-7)
    assert line.rmse == pytest.approx(34.7339, abs=5e-5)


def test_balance_points_in_a_range_explain_the_bills_as_well() -> None:
    line = fit(bills(noisy()), TEMPERATURES)
    assert (line.balance_low_degf, line.balance_high_degf) == (55.0, 58.0)
    for balance, base, slope in ((55.0, 24.72, 2.060), (58.0, 23.47, 1.791)):
        held = Search(lowest_degf=balance, highest_degf=balance)
        other = fit(bills(noisy()), TEMPERATURES, search=held, forms=("heating",))
        assert other.base_kwh_per_day == pytest.approx(base, abs=0.005)
        assert other.heating_kwh_per_degf_day == pytest.approx(slope, abs=0.0005)


def test_a_normal_year_is_far_surer_than_its_parts() -> None:
    year = year_use(fit(bills(noisy()), TEMPERATURES), shifted(-1.5))
    assert year is not None
    assert year.kwh == pytest.approx(15064.8909, abs=5e-5)
    clean = year_use(fit(bills(uses()), TEMPERATURES), shifted(-1.5))
    assert clean is not None
    assert clean.kwh == pytest.approx(15024.5390, abs=5e-5)
    assert year.low_kwh < 15024.5390 < year.high_kwh
    assert year.high_kwh - year.low_kwh < 0.05 * year.kwh
    assert year.base_kwh + year.heating_kwh + year.cooling_kwh == pytest.approx(year.kwh)


def test_an_estimated_read_spoils_the_line_and_merging_restores_it() -> None:
    moved = noisy()
    moved[1] -= 400.0
    moved[2] += 400.0
    spoilt = fit(bills(moved), TEMPERATURES)
    assert spoilt.heating_balance_degf == 59.5
    assert spoilt.heating_kwh_per_degf_day == pytest.approx(1.617, abs=0.0005)
    assert spoilt.cv_rmse == pytest.approx(0.1653, abs=0.00005)
    lines = [
        f"{bill.begins},{bill.ends},{bill.kwh!r},{'estimated' if i == 1 else 'actual'}"
        for i, bill in enumerate(bills(moved))
    ]
    read = read_bills("\n".join(["from,to,kwh,read", *lines]))
    restored = fit(read, TEMPERATURES)
    assert restored.bill_count == 11
    assert restored.heating_balance_degf == 56.5
    assert restored.base_kwh_per_day == pytest.approx(24.067, abs=0.0005)
    assert restored.heating_kwh_per_degf_day == pytest.approx(1.9208, abs=0.00005)


def test_the_mean_temperature_of_a_bill_is_a_biased_form_of_its_own() -> None:
    means = [float(TEMPERATURES.between(b.begins, b.ends).mean()) for b in bills(uses())]
    line = fit(bills(uses()), means, forms=("heating",))
    assert not line.is_daily
    assert line.heating_balance_degf == 57.5
    assert line.base_kwh_per_day == pytest.approx(24.7764, abs=5e-5)
    assert line.heating_kwh_per_degf_day == pytest.approx(1.75680, abs=5e-6)
    assert line.cv_rmse == pytest.approx(0.02596, abs=5e-6)


def test_cooling_is_found_where_it_is() -> None:
    daily = 20.0 + 1.5 * np.maximum(55.0 - DEGF, 0.0) + 1.1 * np.maximum(DEGF - 68.0, 0.0)
    at = [(read - FIRST).days for read in READS]
    amounts = [float(daily[a:b].sum()) for a, b in pairwise(at)]
    line = fit(bills(amounts), TEMPERATURES)
    assert line.form == "heating and cooling"
    assert (line.heating_balance_degf, line.cooling_balance_degf) == (55.0, 68.0)
    assert line.cooling_kwh_per_degf_day == pytest.approx(1.1, abs=1e-6)
    only = 20.0 + 1.1 * np.maximum(DEGF - 60.0, 0.0)
    amounts = [float(only[a:b].sum()) for a, b in pairwise(at)]
    assert fit(bills(amounts), TEMPERATURES).form == "cooling"


def test_a_season_of_noise_alone_is_no_cooling() -> None:
    assert fit(bills(noisy()), TEMPERATURES).form == "heating"


METER = [52.0, 42.0, 38.0, 33.0, 34.0, 35.0, 35.0, 54.0, 35.0, 37.0, 52.0, 45.0]
MEAN_DEGF = [30.0, 29.0, 35.0, 47.0, 57.0, 66.0, 70.0, 69.0, 63.0, 57.0, 42.0, 37.0]


def months(per_day: list[float]) -> list[Bill]:
    first, made = date(2025, 1, 1), []
    for use, days in zip(per_day, (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31), strict=True):
        made.append(Bill(first, first + timedelta(days=days), use * days))
        first += timedelta(days=days)
    return made


def test_twelve_rows_that_give_absurd_slopes_elsewhere_are_not_weather_driven() -> None:
    """A public set of rows, known for extreme cooling slopes where balance points run free."""
    line = fit(months(METER), list(degc(MEAN_DEGF)))
    assert not line.is_weather_driven
    assert line.cooling_kwh_per_degf_day is None
    assert line.heating_kwh_per_degf_day is None
    assert line.base_kwh_per_day == pytest.approx(sum(b.kwh for b in months(METER)) / 365.0)
    assert "the weather explains" in line.reason


def test_few_bills_make_no_line() -> None:
    line = fit(bills(uses())[:8], TEMPERATURES)
    assert not line.is_weather_driven
    assert line.reason == "8 bills are too few: a line needs 9"
    nine = fit(bills(uses())[:9], TEMPERATURES)
    assert nine.is_weather_driven
    assert any("less than a year" in text for text in nine.cautions)


def test_bills_without_temperatures_are_set_aside_and_told() -> None:
    late = replace(TEMPERATURES, first=date(2025, 2, 10), degc=TEMPERATURES.degc[40:])
    line = fit(bills(uses()), late)
    assert line.bill_count == 10
    assert "2 bills have no temperatures" in line.cautions[0]
    with pytest.raises(BillsError, match="hold nine tenths of the days of 0 of 12 bills"):
        fit(bills(uses(), later=5), TEMPERATURES)


def test_means_must_be_as_many_as_bills() -> None:
    with pytest.raises(ValueError, match="2 mean temperatures for 12 bills"):
        fit(bills(uses()), [3.0, 4.0])


def test_bills_that_are_all_the_same_are_not_weather_driven() -> None:
    assert not fit(months([30.0] * 12), TEMPERATURES).is_weather_driven


def test_the_parts_of_each_bill_add_up() -> None:
    for bill in fit(bills(noisy()), TEMPERATURES).bills:
        parts = bill.base_kwh + bill.heating_kwh + bill.cooling_kwh
        assert parts == pytest.approx(bill.computed_kwh)
        assert bill.computed_kwh == pytest.approx(bill.kwh, rel=0.05)
