"""What is known about money over the years: what others pay, loans, today's old system."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Literal

IncentiveKind = Literal["instant", "after the work", "tax credit", "loan buy-down"]
IncomeTest = Literal["none", "passed", "not passed", "unknown"]
FinanceKind = Literal["cash", "loan", "on-bill loan", "on-bill tariff", "lease"]


@dataclass(frozen=True)
class Incentive:
    """Money that somebody may pay towards an option."""

    name: str
    amount: float
    """[$]; nothing where it is a share of the price"""
    status: Literal["confirmed", "applied for", "unknown"]
    starts: date | None = None
    expires: date | None = None
    options: tuple[str, ...] = ()
    """Names of the options it may apply to; empty for all"""
    share: float | None = None
    """Of the installed cost, in place of an amount"""
    cap: float | None = None
    """The most that is paid [$]"""
    payer: str = ""
    kind: IncentiveKind = "after the work"
    income_test: IncomeTest = "none"
    apply_before_work: bool = False
    """Lost where it is applied for once the work is done"""
    applied_on: date | None = None
    not_with: tuple[str, ...] = ()
    """Names of incentives that may not be had with it"""
    tax_owed: float | None = None
    """The tax that a tax credit can be taken off [$]; None where it is not known"""
    source: str = ""
    """Where it was read"""
    checked_on: date | None = None


@dataclass(frozen=True)
class OldSystemFacts:
    """Today's system, which would have to be bought anew one day."""

    remaining_life: float
    """[years]"""
    replacement_cost: float
    """[$] in today's money"""
    life: float
    """[years] of a new one of the same kind"""
    counted: bool
    """False: the purchase that an option avoids is left out of every figure"""
    options: tuple[str, ...] | None = None
    """Options that make its replacement needless; None for those that no longer heat with it"""


@dataclass(frozen=True)
class Finance:
    """A way to pay for an option."""

    name: str
    kind: FinanceKind
    rate: float
    """Interest stated, a year (0.0799 for 7.99 %), charged monthly"""
    months: int
    dealer_fee: float
    """Added to what is borrowed, as a share of the price paid in cash"""
    down_payment: float
    """[$]"""
    payment: float | None
    """[$ a month] of a lease, or where a loan states it"""
    payment_growth: float
    """Of the payment, a year"""
    buyout: float
    """[$] to own it at the end of a lease"""
    options: tuple[str, ...] = ()
    """Names of the options it is offered for; empty for all"""


@dataclass(frozen=True)
class Emissions:
    """What a kWh from the grid emits."""

    factor: float
    """[kg/kWh] of carbon dioxide equivalent"""
    source: str


@dataclass(frozen=True)
class MoneyFacts:
    """How money over the years is counted."""

    installed_on: date
    study_years: int
    discount_rate: float
    """Real, a year"""
    price_growth: float
    """Real, a year, likely value"""
    price_growth_low: float
    price_growth_high: float
    incentives: tuple[Incentive, ...] = ()
    inflation: float = 0.0
    """A year; for what is fixed in dollars, and for figures in the money of each year"""
    move_in_years: int | None = None
    """When they may move out; None where nobody thinks of it"""
    old_system: OldSystemFacts | None = None
    finance: tuple[Finance, ...] = ()
    emissions: Emissions | None = None
