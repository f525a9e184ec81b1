"""Ways to pay: what a loan or a lease really costs, and its payment against the saving.

The payment of a loan is that of a level annuity, PMT = P r / (1 - (1 + r)^-n), with r the
stated rate over twelve and n the months. Its true rate is the one at which all payments are
worth the price in cash, so that a fee hidden in what is borrowed shows. Payments are in
dollars of their month; savings are those of the first year's bills.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from costcompare.case.facts import Finance

MONTHS_A_YEAR = 12
WINTER_MONTHS = (10, 11, 12, 1, 2, 3)
"""Half a year each for winter and summer, so that the two can be set against each other"""
ON_BILL_SHARE = 0.8
"""Of the estimated saving: the most that an on-bill tariff usually charges (from memory)"""
HALVINGS = 80
HIGHEST_RATE = 1.0
"""A month: no true rate is looked for above it"""


@dataclass(frozen=True)
class WayToPay:
    """One way to pay for one option; None where a figure has no meaning."""

    name: str
    kind: str
    cash_price_usd: float
    """Price less the incentives that lower it at once"""
    down_payment_usd: float
    dealer_fee_usd: float
    """Added to what is borrowed"""
    borrowed_usd: float
    months: int
    payment_usd: float
    """The first month's"""
    total_paid_usd: float
    """Down payment, all payments and what a lease asks for at its end"""
    cost_of_credit_usd: float
    """Total paid over the price in cash"""
    stated_rate: float | None
    """A year"""
    true_rate: float | None
    """A year, charged monthly: with every fee; None where nothing is paid over time, or
    where less is paid than the price in cash"""
    present_value_usd: float
    """Of all that is paid, at the discount rate with inflation"""
    monthly_balance_usd: tuple[float, ...]
    """Saving less payment of each month of the first year, January first"""
    winter_balance_usd: float
    """October to March"""
    summer_balance_usd: float
    """April to September"""
    first_year_balance_usd: float
    months_short: int
    """Months of the first year in which the payment is more than the saving"""
    on_bill_limit_usd: float | None
    """The most a month that an on-bill tariff usually charges; None for other kinds"""
    yours_at_the_end: bool
    """False for a lease that does not end with a purchase"""
    stays_with_the_house: bool
    """True where the charge passes to whoever lives there next"""


def monthly_payment(borrowed: float, rate: float, months: int) -> float:
    """The level payment [$ a month] on ``borrowed`` at a yearly ``rate`` charged monthly."""
    monthly = rate / MONTHS_A_YEAR
    if monthly == 0.0:
        return borrowed / months
    return float(borrowed * monthly / (1.0 - (1.0 + monthly) ** -months))


def balance_after(borrowed: float, rate: float, months: int, paid: int) -> float:
    """What is still owed [$] after a number of payments."""
    monthly = rate / MONTHS_A_YEAR
    payment = monthly_payment(borrowed, rate, months)
    if monthly == 0.0:
        return borrowed - payment * paid
    grown = (1.0 + monthly) ** paid
    return float(borrowed * grown - payment * (grown - 1.0) / monthly)


def present_value_of(payments: Sequence[float], rate: float) -> float:
    """Payments at the ends of months [$] at an effective yearly rate."""
    step = (1.0 + rate) ** (-1.0 / MONTHS_A_YEAR)
    return float(sum(usd * step ** (number + 1) for number, usd in enumerate(payments)))


def true_rate(received: float, payments: Sequence[float]) -> float | None:
    """The yearly rate, charged monthly, at which the payments are worth what was received.

    None where they add up to less than that, or nothing was received.
    """
    if received <= 0.0 or sum(payments) < received - 1e-9:
        return None

    def worth(monthly: float) -> float:
        step = 1.0 / (1.0 + monthly)
        return sum(usd * step ** (number + 1) for number, usd in enumerate(payments))

    return MONTHS_A_YEAR * _where_falls_to(worth, received)


def _where_falls_to(worth: Callable[[float], float], value: float) -> float:
    """The rate a month at which a falling worth passes a value, by bisection."""
    low, high = 0.0, HIGHEST_RATE
    for _ in range(HALVINGS):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if worth(middle) > value else (low, middle)
    return 0.5 * (low + high)


def way_to_pay(
    finance: Finance,
    cash_price: float,
    monthly_savings: Sequence[float],
    *,
    discount_rate: float,
) -> WayToPay:
    """One way to pay ``cash_price`` [$] against the savings of the first year's months [$].

    ``monthly_savings`` are January first; ``discount_rate`` is nominal, a year.
    """
    cash = finance.kind == "cash"
    down = cash_price if cash else min(finance.down_payment, cash_price)
    fee = finance.dealer_fee * cash_price
    borrowed = cash_price - down + fee
    payments = [] if cash else _payments(finance, borrowed)
    bought = finance.buyout if finance.kind == "lease" else 0.0
    due = [*payments[:-1], payments[-1] + bought] if payments else []
    total = down + sum(due)
    first_year = [*payments[:MONTHS_A_YEAR], *[0.0] * MONTHS_A_YEAR][:MONTHS_A_YEAR]
    balance = tuple(saved - paid for saved, paid in zip(monthly_savings, first_year, strict=True))
    winter = sum(balance[month - 1] for month in WINTER_MONTHS)
    on_bill = finance.kind == "on-bill tariff"
    saving = max(sum(monthly_savings), 0.0)
    return WayToPay(
        name=finance.name,
        kind=finance.kind,
        cash_price_usd=cash_price,
        down_payment_usd=down,
        dealer_fee_usd=fee,
        borrowed_usd=borrowed,
        months=len(payments),
        payment_usd=payments[0] if payments else 0.0,
        total_paid_usd=total,
        cost_of_credit_usd=total - cash_price,
        stated_rate=finance.rate if finance.kind in {"loan", "on-bill loan"} else None,
        true_rate=true_rate(cash_price - down, due) if due else None,
        present_value_usd=down + present_value_of(due, discount_rate),
        monthly_balance_usd=balance,
        winter_balance_usd=winter,
        summer_balance_usd=sum(balance) - winter,
        first_year_balance_usd=sum(balance),
        months_short=sum(usd < 0.0 for usd in balance),
        on_bill_limit_usd=ON_BILL_SHARE * saving / MONTHS_A_YEAR if on_bill else None,
        yours_at_the_end=finance.kind != "lease" or bought > 0.0,
        stays_with_the_house=on_bill,
    )


def _payments(finance: Finance, borrowed: float) -> list[float]:
    """The payments of all months [$]."""
    first = finance.payment
    if first is None:
        first = monthly_payment(borrowed, finance.rate, finance.months)
    growth = 1.0 + finance.payment_growth
    return [first * growth ** (month // MONTHS_A_YEAR) for month in range(finance.months)]
