"""Bills that can be worked out by hand, and what must hold for every tariff."""

from __future__ import annotations

from datetime import date

import numpy as np
import pandas as pd
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from costcompare.billing.tariff import (
    REST,
    YearBill,
    bill,
    period_of_hour,
    rounded,
    year_bill,
)
from costcompare.case.facts import Period, Season, Tariff, Tier
from costcompare.errors import TariffError

ZONE = "America/New_York"
INDEX = pd.date_range("2027-01-01", periods=8760, freq="h", tz="-05:00")
ALL_YEAR = (True,) * 12
WINTER = tuple(month in (1, 2, 3, 11, 12) for month in range(1, 13))
SUMMER = tuple(not winter for winter in WINTER)
ALL_DAY = (True,) * 24
DAYTIME = tuple(7 <= hour < 19 for hour in range(24))

TWO_TIERS = Tariff("two tiers", 12.5, (Tier(800.0, 0.112), Tier(None, 0.139)), tax=0.03)
PEAK = Period("peak", ALL_YEAR, "weekdays", DAYTIME, 0.30)
TIME_OF_USE = Tariff("time of use", 10.0, (Tier(None, 0.08),), periods=(PEAK,))
SEASONAL = Tariff(
    "seasons",
    9.0,
    (Tier(None, 0.10),),
    seasons=(Season("winter", WINTER, (Tier(500.0, 0.12), Tier(None, 0.18))),),
    minimum_bill=15.0,
)
DAY_AND_NIGHT = Tariff(
    "day and night",
    0.0,
    (),
    periods=(
        Period("day", ALL_YEAR, "all", DAYTIME, 0.2),
        Period("night", ALL_YEAR, "all", ALL_DAY, 0.1),
    ),
    holidays=(date(2027, 1, 1),),
)
EVERY_TARIFF = (TWO_TIERS, TIME_OF_USE, SEASONAL, DAY_AND_NIGHT)


def flat(kwh: float) -> np.ndarray:
    return np.full(8760, kwh)


def test_the_lines_of_a_two_tier_month() -> None:
    month = bill(TWO_TIERS, 1000.0)
    assert [(line.name, line.kwh) for line in month.lines] == [
        ("first 800 kWh", 800.0),
        ("above 800 kWh", 200.0),
        ("customer charge", None),
        ("tax", None),
    ]
    assert month.energy_usd == pytest.approx(800 * 0.112 + 200 * 0.139)
    assert month.fixed_usd == 12.5
    assert month.tax_usd == pytest.approx(0.03 * (117.4 + 12.5))
    assert month.total_usd == pytest.approx(1.03 * (117.4 + 12.5))


def test_a_saving_is_worth_the_difference_of_two_bills_not_the_average_price() -> None:
    tariff = Tariff("t", 0.0, (Tier(1000.0, 0.11), Tier(None, 0.145)))
    before = bill(tariff, 2600.0).total_usd
    assert before == pytest.approx(342.0)
    assert before - bill(tariff, 1500.0).total_usd == pytest.approx(159.5)
    assert before - bill(tariff, 800.0).total_usd == pytest.approx(254.0)
    assert 1100 * before / 2600 == pytest.approx(144.69, abs=0.01)


def test_tiers_are_counted_month_by_month_in_a_year() -> None:
    tariff = Tariff("t", 0.0, (Tier(720.0, 0.1), Tier(None, 0.2)))
    year = year_bill(tariff, flat(1.0), INDEX, ZONE)
    # One kWh an hour: above the first tier lie 24 kWh of a 31-day month, 23 of March (743 h),
    # 1 of November (721 h), 25 of none: July to October and May keep their hours.
    above = {m.month: sum(x.kwh or 0 for x in m.lines if "above" in x.name) for m in year.months}
    assert above == {
        1: 24,
        2: 0,
        3: 23,
        4: 0,
        5: 24,
        6: 0,
        7: 24,
        8: 24,
        9: 0,
        10: 24,
        11: 1,
        12: 24,
    }
    assert year.total_usd == pytest.approx(8760 * 0.1 + sum(above.values()) * 0.1)


def test_peak_hours_skip_weekends_and_holidays() -> None:
    holidays = (date(2026, 1, 1),)
    tariff = Tariff("t", 0.0, (Tier(None, 0.1),), periods=(PEAK,), holidays=holidays)
    index = pd.date_range("2026-01-01", periods=8760, freq="h", tz="-05:00")
    peak = period_of_hour(tariff, index, ZONE)[:744] == 0
    assert peak.sum() == 252
    weekends = Tariff(
        "t",
        0.0,
        (Tier(None, 0.1),),
        periods=(Period("quiet", ALL_YEAR, "weekends", ALL_DAY, 0.05),),
        holidays=holidays,
    )
    quiet = period_of_hour(weekends, index, ZONE)[:744] == 0
    # Five Saturdays, four Sundays and New Year's Day of January 2026.
    assert quiet.sum() == 10 * 24


def test_peak_hours_follow_daylight_saving_time() -> None:
    numbers = period_of_hour(TIME_OF_USE, INDEX, ZONE)
    winter = INDEX.get_loc(pd.Timestamp("2027-01-05 06:00", tz="-05:00"))
    summer = INDEX.get_loc(pd.Timestamp("2027-07-06 06:00", tz="-05:00"))
    assert numbers[winter] == 1  # six in the morning: no period
    assert numbers[summer] == 0  # seven on the wall: peak


def test_the_first_period_that_matches_prices_the_hour() -> None:
    year = year_bill(DAY_AND_NIGHT, flat(1.0), INDEX, ZONE)
    january = {line.name: line.kwh for line in year.months[0].lines}
    assert january["day"] == january["night"] == 372
    assert year.total_usd == pytest.approx(4380 * 0.2 + 4380 * 0.1)


def test_what_no_period_prices_goes_through_the_tiers() -> None:
    month = bill(TIME_OF_USE, {"peak": 100.0, REST: 300.0})
    assert month.total_usd == pytest.approx(100 * 0.30 + 300 * 0.08 + 10.0)


def test_seasons_hold_in_their_months_only() -> None:
    assert bill(SEASONAL, 600.0, month=1).total_usd == pytest.approx(500 * 0.12 + 18.0 + 9.0)
    assert bill(SEASONAL, 600.0, month=7).total_usd == pytest.approx(69.0)
    names = [line.name for line in bill(SEASONAL, 600.0, month=1).lines]
    assert names[:2] == ["winter, first 500 kWh", "winter, above 500 kWh"]


def test_the_minimum_bill_tops_up_before_tax() -> None:
    tariff = Tariff("t", 9.0, (Tier(None, 0.10),), tax=0.1, minimum_bill=15.0)
    small = bill(tariff, 20.0)
    assert small.lines[-2].name == "top-up to the minimum bill"
    assert small.lines[-2].usd == pytest.approx(4.0)
    assert small.fixed_usd == pytest.approx(13.0)
    assert small.total_usd == pytest.approx(16.5)
    assert bill(tariff, 60.0).total_usd == pytest.approx(16.5)
    assert bill(tariff, 61.0).total_usd == pytest.approx(16.61)


def test_an_empty_month_still_owes_the_customer_charge() -> None:
    month = bill(TWO_TIERS, 0.0)
    assert [line.name for line in month.lines] == ["customer charge", "tax"]
    assert month.total_usd == pytest.approx(12.875)


@pytest.mark.parametrize(
    ("usd", "cents"), [(2.675, 2.68), (92.61499999999999, 92.62), (-1.005, -1.01), (0.004, 0.0)]
)
def test_half_a_cent_is_rounded_away_from_nothing(usd: float, cents: float) -> None:
    assert rounded(usd) == cents


@pytest.mark.parametrize("tariff", EVERY_TARIFF, ids=lambda t: t.name)
@settings(max_examples=15, deadline=None)
@given(seed=st.integers(0, 2**31), scale=st.floats(0.0, 20.0))
def test_every_year_adds_up_and_more_energy_never_costs_less(
    tariff: Tariff, seed: int, scale: float
) -> None:
    kwh = scale * np.random.default_rng(seed).random(8760)
    year = year_bill(tariff, kwh, INDEX, ZONE)
    assert adds_up(year)
    assert sum(month.kwh for month in year.months) == pytest.approx(kwh.sum(), abs=1e-6)
    more = year_bill(tariff, kwh + 0.01, INDEX, ZONE)
    assert more.total_usd >= year.total_usd - 1e-9


def adds_up(year: YearBill) -> bool:
    total = year.energy_usd + year.fixed_usd + year.tax_usd
    months = sum(month.total_usd for month in year.months)
    lines = sum(line.usd for month in year.months for line in month.lines)
    return total == pytest.approx(year.total_usd) == pytest.approx(months) == pytest.approx(lines)


@pytest.mark.parametrize("tariff", EVERY_TARIFF, ids=lambda t: t.name)
def test_a_year_is_the_sum_of_its_months_worked_out_alone(tariff: Tariff) -> None:
    year = year_bill(tariff, flat(1.5), INDEX, ZONE)
    prices = {period.name for period in tariff.periods}
    for month in year.months:
        usage: dict[str, float] = {}
        for line in month.lines:
            name = line.name if line.name in prices else REST
            usage[name] = usage.get(name, 0.0) + (line.kwh or 0.0)
        assert bill(tariff, usage, month=month.month).total_usd == pytest.approx(month.total_usd)


def test_every_fault_of_a_tariff_is_reported_at_once() -> None:
    wrong = Tariff(
        "wrong",
        -1.0,
        (Tier(800.0, 0.1), Tier(500.0, -0.2)),
        seasons=(
            Season("winter", WINTER, (Tier(None, 0.1), Tier(None, 0.2))),
            Season("cold", WINTER, ()),
        ),
        periods=(PEAK, PEAK, Period("never", (False,) * 12, "all", (True,) * 23, 0.1)),
        tax=1.5,
        minimum_bill=float("nan"),
    )
    with pytest.raises(TariffError) as caught:
        year_bill(wrong, flat(1.0), INDEX, ZONE)
    paths = [fault.path for fault in caught.value.faults]
    assert paths[:3] == ["tariff.customer_charge", "tariff.minimum_bill", "tariff.tax"]
    assert set(paths[3:]) == {
        "tariff.tiers.2.price",
        "tariff.tiers.2.up_to",
        "tariff.seasons.winter.tiers.1.up_to",
        "tariff.seasons.cold.tiers",
        "tariff.seasons.cold.months",
        "tariff.periods.peak",
        "tariff.periods.never.months",
        "tariff.periods.never.hours",
    }


def test_the_sentence_about_a_missing_last_tier() -> None:
    with pytest.raises(TariffError) as caught:
        bill(Tariff("t", 0.0, (Tier(800.0, 0.1),)), 100.0)
    assert str(caught.value) == (
        "tariff.tiers.1.up_to: must be left out of the last tier, or energy above it has no "
        "price (given: 800 kWh/month). Write one more tier with a price alone, such as "
        '{ price = "0.14 $/kWh" }.'
    )


def test_a_tariff_without_any_price_is_refused() -> None:
    with pytest.raises(TariffError, match="must hold at least one price"):
        bill(Tariff("t", 5.0, ()), 100.0)


def test_hours_that_nothing_prices_are_refused() -> None:
    day_only = Tariff("t", 0.0, (), periods=(Period("day", ALL_YEAR, "all", DAYTIME, 0.2),))
    with pytest.raises(
        TariffError, match="no period prices: weekdays 19-7, weekends 19-7 all year"
    ):
        year_bill(day_only, flat(1.0), INDEX, ZONE)
    summer_only = Tariff("t", 0.0, (), seasons=(Season("summer", SUMMER, (Tier(None, 0.1),)),))
    with pytest.raises(TariffError, match=r"no period prices: .* in month 1, 2, 3, 11, 12"):
        bill(summer_only, 10.0)


def test_usage_by_a_wrong_name_is_refused() -> None:
    with pytest.raises(TariffError, match=r'usage.peek: .*Write "peak", "other hours"'):
        bill(TIME_OF_USE, {"peek": 1.0})
    with pytest.raises(TariffError, match="must be given by period"):
        bill(TIME_OF_USE, 100.0)


@pytest.mark.parametrize("kwh", [np.zeros(8759), np.full(8760, -1.0), np.full(8760, np.nan)])
def test_impossible_energy_is_refused(kwh: np.ndarray) -> None:
    with pytest.raises(ValueError, match=r"values for|at least 0 kWh"):
        year_bill(TWO_TIERS, kwh, INDEX, ZONE)
