"""Ways to pay that can be worked out on the fingers."""

from __future__ import annotations

from typing import Any

import pytest

from costcompare.case.facts import Finance
from costcompare.money.financing import way_to_pay

WINTER_SAVING = [120.0, 110.0, 70.0, 30.0, 0.0, -20.0, -30.0, -30.0, 0.0, 20.0, 60.0, 110.0]


def finance(**changes: Any) -> Finance:
    facts: dict[str, Any] = {
        "name": "a way",
        "kind": "loan",
        "rate": 0.0,
        "months": 100,
        "dealer_fee": 0.0,
        "down_payment": 0.0,
        "payment": None,
        "payment_growth": 0.0,
        "buyout": 0.0,
    }
    return Finance(**(facts | changes))


def test_payment_against_saving_month_by_month_in_winter_and_summer() -> None:
    way = way_to_pay(finance(), 5000.0, WINTER_SAVING, discount_rate=0.0)
    assert way.payment_usd == 50.0
    assert way.monthly_balance_usd == tuple(saved - 50.0 for saved in WINTER_SAVING)
    # October to March: 490 saved, 300 paid; April to September: -50 saved, 300 paid.
    assert way.winter_balance_usd == pytest.approx(190.0)
    assert way.summer_balance_usd == pytest.approx(-350.0)
    assert way.first_year_balance_usd == pytest.approx(-160.0)
    assert way.months_short == 7


def test_cash_owes_nothing_afterwards() -> None:
    way = way_to_pay(finance(kind="cash"), 5000.0, WINTER_SAVING, discount_rate=0.05)
    assert (way.down_payment_usd, way.months, way.payment_usd) == (5000.0, 0, 0.0)
    assert way.total_paid_usd == way.present_value_usd == 5000.0
    assert way.true_rate is None
    assert way.monthly_balance_usd == tuple(WINTER_SAVING)


def test_what_is_paid_down_is_not_borrowed() -> None:
    way = way_to_pay(finance(down_payment=1000.0), 5000.0, WINTER_SAVING, discount_rate=0.0)
    assert way.borrowed_usd == 4000.0
    assert way.total_paid_usd == pytest.approx(5000.0)
    assert way.true_rate == pytest.approx(0.0, abs=1e-9)


def test_a_loan_of_a_few_months_is_over_within_the_year() -> None:
    way = way_to_pay(finance(months=5), 500.0, [0.0] * 12, discount_rate=0.0)
    assert way.monthly_balance_usd == (-100.0,) * 5 + (0.0,) * 7


def test_a_lease_may_end_with_a_purchase() -> None:
    lease = finance(kind="lease", months=10, payment=100.0, buyout=300.0)
    way = way_to_pay(lease, 1200.0, [0.0] * 12, discount_rate=0.0)
    assert way.total_paid_usd == 1300.0
    assert way.cost_of_credit_usd == pytest.approx(100.0)
    assert way.yours_at_the_end
    assert way.stated_rate is None
    assert way.true_rate is not None
    assert way.true_rate > 0.0


def test_nothing_to_pay_needs_no_rate() -> None:
    way = way_to_pay(finance(), 0.0, WINTER_SAVING, discount_rate=0.03)
    assert way.payment_usd == way.total_paid_usd == 0.0
    assert way.true_rate is None
