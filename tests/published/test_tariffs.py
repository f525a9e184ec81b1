"""Totals that utilities print beside their own tariffs, reproduced to the cent.

Sources: example bills and rate comparison sheets of North American municipal utilities and
cooperatives, read from their published pages; the names are left out. Figures called "worked
out by hand" are no published totals: somebody reckoned them from the stated prices. Agreement
reached: every printed total, and every line where lines are printed, to the cent.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Any

import numpy as np
import pandas as pd
import pytest

from costcompare.billing.tariff import (
    REST,
    Usage,
    bill,
    dated_bill,
    period_of_hour,
    rounded,
    year_bill,
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
)
from costcompare.case.tariff_facts import HOLIDAY_SETS

ALL_YEAR = (True,) * 12
DAYTIME = tuple(7 <= hour < 19 for hour in range(24))


def cents(tariff: Tariff, usage: float | dict[str, float], months: float = 1.0) -> float:
    return rounded(bill(tariff, usage, months=months).total_usd)


def test_declining_blocks_with_power_cost_and_tax() -> None:
    """Example bill of a municipal utility's winter tariff, 1,200 kWh: every printed line.

    Lines 16.00, 22.05, 22.30, 102.00, 7.50; together 169.85; tax 1.70; total 171.55.
    """
    tariff = Tariff(
        "winter",
        7.50,
        (Tier(250.0, 0.064), Tier(700.0, 0.049), Tier(None, 0.0446)),
        riders=(Rider("power cost", per_kwh=0.085),),
        tax=0.01,
        conventions=Conventions(rounding="lines"),
    )
    month = bill(tariff, 1200.0)
    assert [line.usd for line in month.lines] == [16.00, 22.05, 22.30, 102.00, 7.50, 1.70]
    assert rounded(month.total_usd - month.tax_usd) == 169.85
    assert rounded(month.total_usd) == 171.55


def test_a_demand_charge() -> None:
    """Example of a municipal utility's demand rate, 1,000 kWh and 10 kW: total 200.00."""
    charge = DemandCharge("demand", 9.50)
    tariff = Tariff("demand", 15.00, (Tier(None, 0.0900),), demand=(charge,))
    month = bill(tariff, Usage(1000.0, demand_kw=10.0))
    assert rounded(month.total_usd) == 200.00
    assert [line.usd for line in month.lines] == pytest.approx([90.0, 95.0, 15.0])


STANDARD = Tariff("standard", 14.00, (Tier(None, 0.1110),))
"""The fixed charge of 14.00 is inferred from the printed totals."""
TIME_OF_DAY = Tariff(
    "time of day",
    14.00,
    (Tier(None, 0.0660),),
    periods=(Period("on-peak", ALL_YEAR, "weekdays", DAYTIME, 0.1910),),
)
USE = 675.54


def split(on_peak_share: float) -> dict[str, float]:
    return {"on-peak": on_peak_share * USE, REST: (1.0 - on_peak_share) * USE}


@pytest.mark.parametrize(
    ("shifted", "total"), [(0.0, 96.58), (0.10, 88.14), (0.15, 83.92), (0.20, 79.70)]
)
def test_time_of_day_against_standard(shifted: float, total: float) -> None:
    """Rate comparison sheet of a municipal utility: 675.54 kWh, 45 % of it on peak.

    The sheet says "10 % of your on-peak energy", but its totals are reproduced by points of
    the total use alone.
    """
    assert cents(STANDARD, USE) == 88.98
    assert cents(TIME_OF_DAY, split(0.45 - shifted)) == total


def test_break_even_share_on_peak() -> None:
    """Both tariffs cost the same with 36 % of the energy on peak."""
    even = bill(TIME_OF_DAY, split(0.36)).total_usd
    assert even == pytest.approx(bill(STANDARD, USE).total_usd, abs=1e-9)


def test_flat_price_with_a_meter_charge() -> None:
    """Example of a municipal utility: 1,000 kWh at 12.7 cents and 15.00 are 142.00."""
    assert cents(Tariff("flat", 15.00, (Tier(None, 0.127),)), 1000.0) == 142.00


def test_flat_price_from_meter_readings() -> None:
    """Example bill of a cooperative: readings 9975 and 8865, 9.51 cents, availability 18.48.

    Printed energy 105.56, total 124.04.
    """
    month = bill(Tariff("flat", 18.48, (Tier(None, 0.0951),)), 9975.0 - 8865.0)
    assert rounded(month.energy_usd) == 105.56
    assert rounded(month.total_usd) == 124.04


RISING = Tariff(
    "rising blocks",
    12.70,
    (Tier(750.0, 0.05419), Tier(1500.0, 0.05887), Tier(None, 0.06962)),
    minimum_bill=12.70,
)


@pytest.mark.parametrize(
    ("kwh", "total"), [(0.0, 12.70), (100.0, 18.1190), (1000.0, 68.0600), (2400.0, 160.1530)]
)
def test_rising_blocks_with_a_minimum_bill(kwh: float, total: float) -> None:
    """A published tariff; the totals are worked out by hand from its prices."""
    assert bill(RISING, kwh).total_usd == pytest.approx(total, abs=5e-5)


@pytest.mark.parametrize(("month_days", "total"), [(30.0, 159.2283), (365 / 12, 159.3360)])
def test_a_bill_of_34_days(month_days: float, total: float) -> None:
    """2,400 kWh in 34 days, blocks and charge scaled by either convention in use."""
    owed = bill(RISING, 2400.0, months=34.0 / month_days).total_usd
    assert owed == pytest.approx(total, abs=5e-5)


def test_a_charge_for_29_days() -> None:
    """Printed: 29 days of a charge of 9.75 a month are 9.30 (9.2959)."""
    charge = bill(Tariff("charge", 9.75, (Tier(None, 0.1),)), 0.0, months=29 / (365 / 12))
    assert charge.total_usd == pytest.approx(9.2959, abs=5e-5)


@pytest.mark.parametrize(
    "free", [{"holidays": (date(2026, 1, 1),)}, {"holiday_names": HOLIDAY_SETS["usual six"]}]
)
def test_peak_hours_of_january_2026(free: dict[str, Any]) -> None:
    """Monday to Friday 7 to 19 h without New Year's Day: 252 of 744 hours, worked out by hand."""
    tariff = Tariff("t", 0.0, TIME_OF_DAY.tiers, periods=TIME_OF_DAY.periods, **free)
    index = pd.date_range("2026-01-01", periods=8760, freq="h", tz="-08:00")
    numbers = period_of_hour(tariff, index, "America/Los_Angeles")
    assert int((numbers[:744] == 0).sum()) == 252


def test_hours_of_the_months_in_which_the_clock_changes() -> None:
    """March and November 2026 in the United States, worked out by hand: 743 and 721 hours."""
    index = pd.date_range("2026-01-01", periods=8760, freq="h", tz="-08:00")
    year = year_bill(STANDARD, np.ones(8760), index, "America/Los_Angeles")
    assert [year.months[m - 1].kwh for m in (2, 3, 4, 11)] == [672.0, 743.0, 720.0, 721.0]


def test_a_charge_for_29_days_by_its_readings() -> None:
    """A utility's page on prorated bills: 29 days of 9.75 a month print as 9.30 (9.2959)."""
    rules = Conventions(proration="average month", reads="end of day")
    tariff = Tariff("t", 9.75, (Tier(None, 0.0),), conventions=rules)
    month = dated_bill(tariff, 600.0, date(2026, 12, 11), date(2027, 1, 9))
    assert month.fixed_usd == pytest.approx(9.2959, abs=5e-5)


def test_energy_of_29_days_over_a_new_year() -> None:
    """The same page: 600 kWh from 11 December to 9 January are 20.689655 a day.

    413.793103 kWh fall on 20 days of December and 186.206897 on 9 of January, so the day of
    a reading belongs to the bill that ends with it.
    """
    rules = Conventions(proration="average month", reads="end of day")
    winter = Season("January", tuple(m == 1 for m in range(1, 13)), (Tier(None, 0.1),))
    tariff = Tariff("t", 0.0, (Tier(None, 0.2),), seasons=(winter,), conventions=rules)
    month = dated_bill(tariff, 600.0, date(2026, 12, 11), date(2027, 1, 9))
    energy = [line.kwh for line in month.lines if line.kwh]
    assert energy == pytest.approx([413.793103, 186.206897], abs=5e-7)


CHANGED = Tariff(
    "changed",
    0.0,
    (Tier(None, 0.1320),),
    changes=(Change(date(2027, 1, 15), Tariff("changed", 0.0, (Tier(None, 0.1450),))),),
)


def test_a_price_that_changes_within_a_bill() -> None:
    """Worked out by hand: 2,300 kWh, 14 days at 13.2 and 17 at 14.5 cents, are 319.9968."""
    month = dated_bill(CHANGED, 2300.0, date(2027, 1, 1), date(2027, 2, 1))
    assert month.total_usd == pytest.approx(319.9968, abs=5e-5)


@pytest.mark.parametrize(("split", "total"), [("by days", 319.9968), ("by use", 321.3328)])
def test_a_price_that_changes_within_a_cold_month(split: Any, total: float) -> None:
    """Worked out by hand: the same, 20 kWh a day and the rest by 28, later 36 degree days."""
    tariff = replace(CHANGED, conventions=Conventions(split=split))
    slope = (2300.0 - 31 * 20.0) / (14 * 28 + 17 * 36)
    daily = np.array([20.0 + slope * 28] * 14 + [20.0 + slope * 36] * 17 + [0.0] * 334)
    index = pd.date_range("2027-01-01", periods=8760, freq="h", tz="-05:00")
    year = year_bill(tariff, np.repeat(daily / 24.0, 24), index, "America/New_York")
    assert year.total_usd == pytest.approx(total, abs=5e-5)


ORDER = Tariff("order", 12.0, (Tier(None, 0.1),))
RIDER, TAX = Rider("rider", share=0.035), Tax("tax", 0.06)


@pytest.mark.parametrize(
    ("rider", "tax", "total"),
    [
        (RIDER, TAX, 122.4300),
        (RIDER, replace(TAX, on=("energy", "percentages")), 121.7100),
        (replace(RIDER, on=("energy", "fixed")), TAX, 122.8752),
    ],
)
def test_the_order_of_rider_and_tax(rider: Rider, tax: Tax, total: float) -> None:
    """Energy 100, fixed 12, rider 3.5 %, tax 6 %, worked out by hand for three bases."""
    month = bill(replace(ORDER, riders=(rider,), taxes=(tax,)), 1000.0)
    assert month.total_usd == pytest.approx(total, abs=5e-5)


@pytest.mark.parametrize(
    ("netting", "bought", "sent", "total", "kept"),
    [
        ("month", 900.0, 350.0, 89.00, 0.0),
        ("none", 900.0, 350.0, 125.75, 0.0),
        ("month", 200.0, 600.0, 20.00, 400.0),
    ],
)
def test_export(netting: Any, bought: float, sent: float, total: float, kept: float) -> None:
    """Worked out by hand: 14 cents, 3.5 for export, fixed 12, minimum 20."""
    export = Export(netting, 0.035)
    tariff = Tariff("export", 12.0, (Tier(None, 0.14),), minimum_bill=20.0, export=export)
    month = bill(tariff, Usage(bought, exported_kwh=sent))
    assert rounded(month.total_usd) == total
    assert month.banked_kwh == pytest.approx(kept)


def test_a_saving_is_a_difference_of_bills() -> None:
    """Worked out by hand: 1,000 kWh at 11 cents, then 14.5."""
    tariff = Tariff("t", 0.0, (Tier(1000.0, 0.11), Tier(None, 0.145)))
    before = bill(tariff, 2600.0).total_usd
    assert before == pytest.approx(342.00)
    assert before - bill(tariff, 1500.0).total_usd == pytest.approx(159.50)
    assert before - bill(tariff, 800.0).total_usd == pytest.approx(254.00)
