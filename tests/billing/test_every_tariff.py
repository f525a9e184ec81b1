"""What must hold for every kind of tariff, whatever the home uses."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, timedelta

import numpy as np
import pandas as pd
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from costcompare.billing.tariff import (
    MonthBill,
    Usage,
    bill,
    dated_bill,
    metered_bills,
    needs_hours,
    year_bill,
    year_bills,
)
from costcompare.case.facts import (
    Change,
    Conventions,
    DemandCharge,
    Export,
    Period,
    Rider,
    Season,
    Tariff,
    Tax,
    Tier,
    YearDays,
)
from costcompare.case.tariff_facts import ALL_MONTHS, HOLIDAY_SETS

ZONE = "America/Denver"
INDEX = pd.date_range("2027-01-01", periods=8760, freq="h", tz="-07:00")
SUMMER = tuple(6 <= month <= 9 for month in range(1, 13))
AFTERNOON = tuple(14 <= hour < 20 for hour in range(24))

FLAT = Tariff("flat", 12.0, (Tier(None, 0.12),), tax=0.03)
RISING = Tariff("rising", 9.0, (Tier(500.0, 0.10), Tier(1000.0, 0.13), Tier(None, 0.17)))
DECLINING = Tariff("declining", 9.0, (Tier(250.0, 0.12), Tier(700.0, 0.09), Tier(None, 0.07)))
ALLOWANCE = Tariff(
    "daily allowance", 0.0, (Tier(15.0, 0.09, daily=True), Tier(None, 0.2)), daily_charge=0.35
)
SEASONS = Tariff(
    "seasons between days",
    8.0,
    (Tier(None, 0.1),),
    seasons=(
        Season("hot", ALL_MONTHS, (Tier(400.0, 0.14), Tier(None, 0.2)), YearDays((6, 15), (9, 14))),
    ),
)
HOURS = Tariff(
    "time of use",
    10.0,
    (Tier(None, 0.08),),
    periods=(
        Period("summer peak", SUMMER, "weekdays", AFTERNOON, 0.32),
        Period("winter peak", tuple(not m for m in SUMMER), "weekdays", AFTERNOON, 0.16),
    ),
    holiday_names=HOLIDAY_SETS["us federal"],
)
DEMAND = Tariff(
    "demand",
    15.0,
    (Tier(None, 0.07),),
    demand=(
        DemandCharge("any time", 2.0, ratchet=0.7),
        DemandCharge("afternoon", 6.0, months=SUMMER, days="weekdays", hours=AFTERNOON),
    ),
)
RIDERS = Tariff(
    "riders and taxes",
    11.0,
    (Tier(None, 0.1),),
    riders=(
        Rider("fuel", per_kwh=0.006),
        Rider("refund", per_kwh=-0.01, months=SUMMER),
        Rider("fund", per_month=1.5),
        Rider("city", share=0.02, on=("energy", "fixed")),
        Rider("on the city", share=0.1, on=("percentages",)),
    ),
    taxes=(Tax("state", 0.04), Tax("town", 0.5, ("taxes",))),
    minimum_bill=40.0,
)
CHANGED = replace(
    HOURS,
    name="changed in July",
    changes=(Change(date(2027, 7, 11), replace(HOURS, customer_charge=12.0, tax=0.05)),),
)
BY_USE = replace(SEASONS, name="seasons by use", conventions=Conventions(split="by use"))
ROUNDED = replace(RIDERS, name="rounded lines", conventions=Conventions(rounding="lines"))
TOTALS = replace(RIDERS, name="rounded totals", conventions=Conventions(rounding="total"))
THIRTY = replace(RISING, name="thirty days", conventions=Conventions(proration="30 days"))
AVERAGE = replace(RIDERS, name="average", conventions=Conventions(proration="average month"))
NEVER = replace(RISING, name="no proration", conventions=Conventions(proration="none"))
PLAIN: Sequence[Tariff] = (FLAT, RISING, DECLINING, ALLOWANCE, SEASONS, RIDERS, THIRTY, AVERAGE)
EVERY: Sequence[Tariff] = (
    *PLAIN,
    *(HOURS, DEMAND, CHANGED, BY_USE, ROUNDED, TOTALS, NEVER),
    *(
        replace(CHANGED, name=f"{name} exported", export=Export(name, 0.03))
        for name in ("none", "hour", "month")
    ),
)
CENT = 0.0101
"""[$] what rounding may move one line"""


def year_of(seed: int, scale: float) -> np.ndarray:
    return scale * np.random.default_rng(seed).random(8760)


def lines_hold(month: MonthBill, *, rounds: bool) -> None:
    assert sum(line.usd for line in month.lines) == pytest.approx(month.total_usd)
    for line in month.lines:
        if line.amount is not None and line.price is not None:
            slack = CENT / 2 if rounds else 1e-9
            assert line.usd == pytest.approx(line.amount * line.price, abs=slack)
        if rounds and line.group is not None:
            assert line.usd == pytest.approx(round(line.usd, 2), abs=1e-9)


@pytest.mark.parametrize("tariff", EVERY, ids=lambda t: t.name)
@settings(max_examples=6, deadline=None)
@given(seed=st.integers(0, 2**31), scale=st.floats(0.0, 9.0))
def test_lines_add_up_and_more_never_costs_less(tariff: Tariff, seed: int, scale: float) -> None:
    kwh = year_of(seed, scale)
    year = year_bill(tariff, kwh, INDEX, ZONE)
    for month in year.months:
        lines_hold(month, rounds=tariff.conventions.rounding == "lines")
        energy = sum(line.kwh or 0.0 for line in month.lines)
        assert energy == pytest.approx(month.kwh, abs=1e-9)
    assert sum(month.total_usd for month in year.months) == pytest.approx(year.total_usd)
    assert sum(line.usd for line in year.lines) == pytest.approx(year.total_usd)
    assert sum(month.kwh for month in year.months) == pytest.approx(kwh.sum())
    rounds = 0.0 if tariff.conventions.rounding == "none" else 12 * 9 * CENT
    for month in range(12):
        more = kwh.copy()
        more[month * 730 : (month + 1) * 730] += 0.02
        assert year_bill(tariff, more, INDEX, ZONE).total_usd >= year.total_usd - 1e-9 - rounds


@pytest.mark.parametrize("tariff", EVERY, ids=lambda t: t.name)
@settings(max_examples=4, deadline=None)
@given(seed=st.integers(0, 2**31))
def test_many_homes_at_once_are_billed_as_one_by_one(tariff: Tariff, seed: int) -> None:
    homes = np.array([year_of(seed + n, scale) for n, scale in enumerate((0.0, 0.3, 2.0, 9.0))])
    bills = year_bills(tariff, homes, INDEX, ZONE)
    alone = [year_bill(tariff, kwh, INDEX, ZONE) for kwh in homes]
    assert bills.total_usd == pytest.approx([year.total_usd for year in alone], abs=1e-8)
    months = [[month.total_usd for month in year.months] for year in alone]
    assert bills.month_usd == pytest.approx(np.array(months), abs=1e-8)
    assert sum(bills.group_usd.values()) == pytest.approx(bills.month_usd)
    by_month = np.array([[month.kwh for month in year.months] for year in alone])
    if needs_hours(tariff):
        with pytest.raises(ValueError, match="every hour"):
            year_bills(tariff, by_month, INDEX, ZONE)
    else:
        again = year_bills(tariff, by_month, INDEX, ZONE)
        assert again.month_usd == pytest.approx(bills.month_usd, abs=1e-8)


def test_which_tariffs_ask_for_the_hour() -> None:
    asking = {tariff.name for tariff in EVERY if needs_hours(tariff)}
    exported = {f"{name} exported" for name in ("none", "hour", "month")}
    assert asking == {"time of use", "demand", "changed in July", "seasons by use", *exported}


@pytest.mark.parametrize("tariff", PLAIN, ids=lambda t: t.name)
@settings(max_examples=10, deadline=None)
@given(kwh=st.floats(0.0, 6000.0), days=st.integers(1, 14))
def test_two_halves_of_a_bill_are_the_whole(tariff: Tariff, kwh: float, days: int) -> None:
    """Half the energy in half the days of one month costs half, whatever the proration."""
    start = date(2027, 5, 1)
    middle, end = start + timedelta(days), start + timedelta(2 * days)
    whole = dated_bill(tariff, kwh, start, end)
    halves = [dated_bill(tariff, kwh / 2, *dates) for dates in ((start, middle), (middle, end))]
    assert sum(half.total_usd for half in halves) == pytest.approx(whole.total_usd)


@pytest.mark.parametrize(
    "tariff",
    [t for t in EVERY if t.conventions.proration == "calendar month"],
    ids=lambda t: t.name,
)
def test_read_on_the_first_of_each_month_a_year_is_the_same(tariff: Tariff) -> None:
    kwh = year_of(7, 3.0)
    reads = [date(2027, month, 1) for month in range(1, 13)] + [date(2028, 1, 1)]
    read = metered_bills(tariff, kwh, INDEX, ZONE, reads=reads)
    year = year_bill(tariff, kwh, INDEX, ZONE)
    assert [m.total_usd for m in read] == pytest.approx([m.total_usd for m in year.months])


def test_a_bill_by_hand_is_that_of_the_year() -> None:
    """January: its registers, its highest hour, its days."""
    kwh = year_of(3, 5.0)
    for tariff in (ALLOWANCE, RIDERS, SEASONS):
        january = year_bill(tariff, kwh, INDEX, ZONE).months[0]
        assert bill(tariff, kwh[:744].sum(), days=31).total_usd == pytest.approx(january.total_usd)
    flat = replace(DEMAND, demand=(replace(DEMAND.demand[0], ratchet=0.0),))
    january = year_bill(flat, kwh, INDEX, ZONE).months[0]
    usage = Usage(kwh[:744].sum(), demand_kw=kwh[:744].max())
    assert bill(flat, usage).total_usd == pytest.approx(january.total_usd)


def test_a_ratchet_holds_up_the_bills_of_the_other_months() -> None:
    kwh = np.ones(8760)
    kwh[4000] = 10.0  # in June
    year = year_bill(DEMAND, kwh, INDEX, ZONE)
    billed = {
        m.month: line.amount for m in year.months for line in m.lines if line.name == "any time"
    }
    assert billed == {month: 10.0 if month == 6 else pytest.approx(7.0) for month in range(1, 13)}


def test_a_demand_window_sees_its_own_hours_alone() -> None:
    """Hour 4788 begins on Monday 19 July 2027 at 12 standard time, 13 by the clock."""
    for place, seen in ((4788, 1.0), (4789, 10.0), (4789 - 24, 1.0)):
        kwh = np.ones(8760)
        kwh[place] = 10.0
        july = year_bill(DEMAND, kwh, INDEX, ZONE).months[6]
        assert next(line.amount for line in july.lines if line.name == "afternoon") == seen
    assert all(
        "afternoon" not in line.name for line in year_bill(DEMAND, kwh, INDEX, ZONE).months[0].lines
    )


def test_export_is_banked_until_the_true_up() -> None:
    """100 kWh each month bought; 500 exported in May: the bank pays until it is trued up."""
    tariff = replace(FLAT, tax=0.0, export=Export("month", 0.03, true_up=8, unused="paid"))
    clock = INDEX.tz_convert(ZONE).month.to_numpy()
    hours = np.bincount(clock, minlength=13)
    bought = 100.0 / hours[clock]
    sent = np.where(clock == 5, 500.0 / hours[5], 0.0)
    year = year_bill(tariff, bought, INDEX, ZONE, exported=sent)
    owed = {month.month: month.total_usd for month in year.months}
    assert [owed[m] for m in (4, 5, 6, 7, 9)] == pytest.approx([24.0, 12.0, 12.0, 12.0, 24.0])
    banked = [month.banked_kwh for month in year.months]
    assert banked == pytest.approx([0, 0, 0, 0, 400, 300, 200, 100, 0, 0, 0, 0])
    assert owed[8] == pytest.approx(12.0 - 100 * 0.03)
    lapsed = replace(tariff, export=replace(tariff.export, unused="lapses"))
    assert year_bill(lapsed, bought, INDEX, ZONE, exported=sent).months[7].total_usd == 12.0


def test_credit_does_not_pay_fixed_charges_unless_it_may() -> None:
    usage = Usage(100.0, exported_kwh=1000.0)
    tariff = replace(FLAT, tax=0.0, export=Export("none", 0.05))
    assert bill(tariff, usage, month=5).total_usd == pytest.approx(12.0)
    every = replace(tariff.export, offsets=("energy", "fixed"))
    assert bill(replace(tariff, export=every), usage, month=5).total_usd == pytest.approx(0.0)


def test_netting_by_the_hour_counts_what_meets_in_it() -> None:
    tariff = replace(FLAT, tax=0.0, customer_charge=0.0, export=Export("hour", 0.05))
    bought, sent = np.full(8760, 2.0), np.zeros(8760)
    sent[0], sent[1] = 1.5, 3.0
    year = year_bill(tariff, bought, INDEX, ZONE, exported=sent)
    assert year.total_usd == pytest.approx(0.12 * (8760 * 2.0 - 3.5) - 0.05 * 1.0)
