"""The price of electricity and the money facts."""

from __future__ import annotations

from datetime import date

import pytest

from .cases import case


def test_one_price_is_one_tier() -> None:
    tariff = case().tariff
    assert [(t.up_to, t.price) for t in tariff.tiers] == [(None, 0.125)]
    assert (tariff.customer_charge, tariff.tax, tariff.minimum_bill) == (0.0, 0.0, 0.0)


def test_tiers_seasons_periods_and_holidays() -> None:
    tariff = case(
        tariff={
            "price": None,
            "customer_charge": "12.50 $/month",
            "tiers": [
                {"up_to": "800 kWh/month", "price": "11.2 cents/kWh"},
                {"price": "$0.14/kWh"},
            ],
            "seasons": [{"name": "summer", "months": "6-9", "tiers": [{"price": "0.1 $/kWh"}]}],
            "periods": [
                {
                    "name": "peak",
                    "months": "10-3",
                    "days": "weekdays",
                    "hours": "6-10,17-20",
                    "price": "0.31 $/kWh",
                },
                {"name": "night", "hours": "22-6", "price": "0.08 $/kWh"},
            ],
            "holidays": [date(2027, 1, 1), "2027-12-25"],
            "tax": "3 %",
            "minimum_bill": "15 $/month",
        }
    ).tariff
    assert [(t.up_to, t.price) for t in tariff.tiers] == [
        (800.0, pytest.approx(0.112)),
        (None, 0.14),
    ]
    assert [m for m, flag in enumerate(tariff.seasons[0].months, 1) if flag] == [6, 7, 8, 9]
    peak, night = tariff.periods
    assert (peak.days, sum(peak.hours), sum(peak.months)) == ("weekdays", 7, 6)
    assert (night.days, sum(night.hours), sum(night.months)) == ("all", 8, 12)
    assert tariff.holidays == (date(2027, 1, 1), date(2027, 12, 25))
    assert (tariff.customer_charge, tariff.tax, tariff.minimum_bill) == (12.5, 0.03, 15.0)


def test_money_that_is_left_out() -> None:
    money = case(weather={"calendar_year": 2030}).money
    assert money.installed_on == date(2030, 1, 1)
    assert (money.study_years, money.discount_rate) == (15, pytest.approx(0.03))
    growth = (money.price_growth_low, money.price_growth, money.price_growth_high)
    assert growth == pytest.approx((-0.01, 0.005, 0.025))


def test_a_plain_growth_widens_the_usual_range() -> None:
    money = case(money={"price_growth": "4 %"}).money
    growth = (money.price_growth_low, money.price_growth, money.price_growth_high)
    assert growth == pytest.approx((-0.01, 0.04, 0.04))


def test_an_incentive_keeps_its_status_and_dates() -> None:
    rebate = {
        "name": "rebate",
        "amount": "$1,500",
        "status": "applied for",
        "expires": date(2027, 6, 30),
    }
    (incentive,) = case(money={"incentives": [rebate]}).money.incentives
    assert (incentive.amount, incentive.status) == (1500.0, "applied for")
    assert (incentive.starts, incentive.expires) == (None, date(2027, 6, 30))
    assert incentive.options == ()
