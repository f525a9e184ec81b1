"""What one more kWh costs, where it can be said by hand."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from costcompare.billing.tariff_margins import next_kwh, next_kwh_at
from costcompare.case.facts import Conventions, DemandCharge, Period, Tariff, Tier
from tests.billing.test_tariff import DAYTIME, INDEX, WINTER, ZONE

TIERS = Tariff("t", 5.0, (Tier(730.0, 0.10), Tier(None, 0.15)), tax=0.10)


def test_the_next_kwh_has_the_price_of_the_block_that_it_falls_in() -> None:
    """One kWh an hour: above 730 kWh in months of 31 days, March with 743 hours among them."""
    margins = next_kwh(TIERS, np.ones(8760), INDEX, ZONE)
    long_months = (1, 3, 5, 7, 8, 10, 12)
    expected = [1.1 * (0.15 if month in long_months else 0.10) for month in range(1, 13)]
    assert margins == pytest.approx(expected)


def test_rounding_does_not_move_it() -> None:
    rounded = replace(TIERS, conventions=Conventions(rounding="lines"))
    usual = next_kwh(TIERS, np.ones(8760), INDEX, ZONE)
    assert next_kwh(rounded, np.ones(8760), INDEX, ZONE) == pytest.approx(usual)


def test_below_the_minimum_bill_it_costs_nothing() -> None:
    tariff = Tariff("t", 5.0, (Tier(None, 0.10),), minimum_bill=20.0)
    assert next_kwh(tariff, np.zeros(8760), INDEX, ZONE) == pytest.approx([0.0] * 12)


def test_an_hour_has_the_price_of_its_period_and_of_its_demand() -> None:
    peak = Period("peak", WINTER, "all", DAYTIME, 0.30)
    charge = DemandCharge("demand", 8.0)
    tariff = Tariff("t", 0.0, (Tier(None, 0.1),), periods=(peak,), demand=(charge,))
    kwh = np.ones(8760)
    kwh[12] = 4.0
    at = [next_kwh_at(tariff, kwh, INDEX, ZONE, hour=hour) for hour in (0, 10, 12)]
    assert at == pytest.approx([0.10, 0.30, 8.30])
