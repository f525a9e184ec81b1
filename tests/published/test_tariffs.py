"""Totals that utilities print beside their own tariffs, reproduced to the cent.

Sources: example bills and rate comparison sheets of North American municipal utilities and
cooperatives, read from their published pages; the names are left out. Agreement reached:
every printed total to the cent, except the demand bill, which this tariff cannot express
(it has no price for a kilowatt).
"""

from __future__ import annotations

from datetime import date

import pandas as pd
import pytest

from costcompare.billing.tariff import REST, bill, period_of_hour, rounded
from costcompare.case.facts import Period, Tariff, Tier

ALL_YEAR = (True,) * 12
DAYTIME = tuple(7 <= hour < 19 for hour in range(24))


def cents(tariff: Tariff, usage: float | dict[str, float], months: float = 1.0) -> float:
    return rounded(bill(tariff, usage, months=months).total_usd)


def test_declining_blocks_with_power_cost_and_tax() -> None:
    """1,200 kWh: lines 16.00, 22.05, 22.30, 102.00, 7.50, tax 1.70, printed total 171.55.

    The power cost of 8.5 cents on every kWh is folded into the block prices, so the total
    is that of the sheet but the energy lines are not.
    """
    blocks = (Tier(250.0, 0.064 + 0.085), Tier(700.0, 0.049 + 0.085), Tier(None, 0.0446 + 0.085))
    tariff = Tariff("winter", 7.50, blocks, tax=0.01)
    assert cents(tariff, 1200.0) == 171.55
    month = bill(tariff, 1200.0)
    assert rounded(month.energy_usd) == 16.00 + 22.05 + 22.30 + 102.00
    assert rounded(month.tax_usd) == 1.70


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
    """675.54 kWh, 45 % of it on peak; the shifts are points of total use."""
    assert cents(STANDARD, USE) == 88.98
    assert cents(TIME_OF_DAY, split(0.45 - shifted)) == total


def test_break_even_share_on_peak() -> None:
    """Both tariffs cost the same with 36 % of the energy on peak."""
    even = bill(TIME_OF_DAY, split(0.36)).total_usd
    assert even == pytest.approx(bill(STANDARD, USE).total_usd, abs=1e-9)


def test_flat_price_with_a_meter_charge() -> None:
    """1,000 kWh at 12.7 cents and 15.00: printed total 142.00."""
    assert cents(Tariff("flat", 15.00, (Tier(None, 0.127),)), 1000.0) == 142.00


def test_flat_price_from_meter_readings() -> None:
    """Readings 9975 and 8865, 9.51 cents, availability charge 18.48: printed total 124.04."""
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


def test_peak_hours_of_january_2026() -> None:
    """Monday to Friday 7 to 19 h without New Year's Day: 252 of 744 hours."""
    tariff = Tariff(
        "t", 0.0, TIME_OF_DAY.tiers, periods=TIME_OF_DAY.periods, holidays=(date(2026, 1, 1),)
    )
    index = pd.date_range("2026-01-01", periods=8760, freq="h", tz="-08:00")
    numbers = period_of_hour(tariff, index, "America/Los_Angeles")
    assert int((numbers[:744] == 0).sum()) == 252
