"""Loans and leases against figures worked out apart from this code.

Sources and agreement reached:

- A table of loans, a dealer fee, a lease and a first year's cash flow, worked out by a second
  hand from the annuity formula PMT = P r / (1 - (1 + r)^-n): all printed digits (four decimals
  of a dollar; the true rate of the loan with a fee, 5.9943 %, to 0.0001 %).
- numpy-financial 1.0, pmt, ipmt, fv and rate: 1e-9 relative.
"""

from __future__ import annotations

import numpy_financial as npf
import pytest

from costcompare.case.facts import Finance
from costcompare.money.financing import (
    balance_after,
    monthly_payment,
    present_value_of,
    true_rate,
    way_to_pay,
)


@pytest.mark.parametrize(
    ("borrowed", "rate", "months", "payment"),
    [
        (15_000.0, 0.0799, 120, 181.9121),
        (12_000.0, 0.0599, 84, 175.2451),
        (20_000.0, 0.0999, 144, 238.9001),
        (15_000.0, 0.0, 60, 250.0),
        (17_250.0, 0.0299, 120, 166.4877),
    ],
)
def test_payments(borrowed: float, rate: float, months: int, payment: float) -> None:
    assert monthly_payment(borrowed, rate, months) == pytest.approx(payment, abs=5e-5)
    library = -npf.pmt(rate / 12.0, months, borrowed)
    assert monthly_payment(borrowed, rate, months) == pytest.approx(library, rel=1e-9)


def test_interest_and_what_is_owed_after_two_years() -> None:
    payment = monthly_payment(15_000.0, 0.0799, 120)
    assert 120 * payment - 15_000.0 == pytest.approx(6829.46, abs=5e-3)
    owed = balance_after(15_000.0, 0.0799, 120, 24)
    assert owed == pytest.approx(12_872.7234, abs=5e-5)
    assert owed == pytest.approx(npf.fv(0.0799 / 12.0, 24, payment, -15_000.0), rel=1e-9)
    assert balance_after(15_000.0, 0.0799, 120, 120) == pytest.approx(0.0, abs=1e-6)
    assert balance_after(15_000.0, 0.0, 60, 12) == pytest.approx(12_000.0)


def loan(**changes: object) -> Finance:
    facts: dict[str, object] = {
        "name": "loan",
        "kind": "loan",
        "rate": 0.0799,
        "months": 120,
        "dealer_fee": 0.0,
        "down_payment": 0.0,
        "payment": None,
        "payment_growth": 0.0,
        "buyout": 0.0,
    }
    return Finance(**(facts | changes))  # type: ignore[arg-type]


def test_a_dealer_fee_shows_in_the_true_rate() -> None:
    """15,000 dollars in cash, 17,250 borrowed at 2.99 %: 166.4877 a month, really 5.9943 %."""
    finance = loan(rate=0.0299, dealer_fee=0.15)
    way = way_to_pay(finance, 15_000.0, [100.0] * 12, discount_rate=0.05)
    assert way.borrowed_usd == pytest.approx(17_250.0)
    assert way.payment_usd == pytest.approx(166.4877, abs=5e-5)
    assert way.true_rate == pytest.approx(0.059943, abs=5e-7)
    library = 12.0 * npf.rate(120, -way.payment_usd, 15_000.0, 0.0)
    assert way.true_rate == pytest.approx(library, rel=1e-9)
    assert way.total_paid_usd == pytest.approx(120 * 166.4877, abs=1e-2)
    assert way.cost_of_credit_usd == pytest.approx(way.total_paid_usd - 15_000.0)


def test_a_loan_without_a_fee_has_the_rate_that_it_states() -> None:
    way = way_to_pay(loan(), 15_000.0, [100.0] * 12, discount_rate=0.05)
    assert way.true_rate == pytest.approx(way.stated_rate, abs=1e-12)


def test_the_first_year_may_be_short_of_cash_though_the_option_earns() -> None:
    """181.9121 a month against 1,550 dollars a year: 632.95 short."""
    way = way_to_pay(loan(), 15_000.0, [1550.0 / 12.0] * 12, discount_rate=0.05)
    assert way.first_year_balance_usd == pytest.approx(-632.95, abs=5e-3)
    assert way.months_short == 12


def test_a_lease_that_grows_by_the_year() -> None:
    """129 dollars a month, 2.9 % more each year, twelve years: 21,844.87 paid."""
    lease = loan(kind="lease", rate=0.0, months=144, payment=129.0, payment_growth=0.029)
    way = way_to_pay(lease, 15_000.0, [100.0] * 12, discount_rate=0.05)
    assert way.total_paid_usd == pytest.approx(21_844.87, abs=5e-3)
    assert way.present_value_usd == pytest.approx(16_229.92, abs=5e-3)
    assert not way.yours_at_the_end


def test_an_on_bill_tariff_usually_stays_below_four_fifths_of_the_saving() -> None:
    tariff = loan(kind="on-bill tariff", rate=0.0, payment=95.0)
    way = way_to_pay(tariff, 9000.0, [1550.0 / 12.0] * 12, discount_rate=0.05)
    assert way.on_bill_limit_usd == pytest.approx(103.33, abs=5e-3)
    assert way.stays_with_the_house


def test_a_true_rate_is_that_of_the_library_whatever_the_payments() -> None:
    payments = [50.0 + 3.0 * month for month in range(36)]
    monthly = npf.irr([-2500.0, *payments])
    rate = true_rate(2500.0, payments)
    assert rate == pytest.approx(12.0 * monthly, rel=1e-9)
    assert true_rate(10_000.0, payments) is None
    assert present_value_of(payments, (1.0 + monthly) ** 12 - 1.0) == pytest.approx(2500.0)
