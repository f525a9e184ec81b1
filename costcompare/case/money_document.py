"""The shape of ``[money]`` in a case file; docs/case-file.md explains every key."""

from __future__ import annotations

from typing import Annotated, Literal, get_args

from costcompare.case import values as v
from costcompare.case.money_facts import FinanceKind, IncentiveKind, IncomeTest
from costcompare.case.table import Table

Status = Literal["confirmed", "applied for", "unknown"]


class IncentiveTable(Table):
    """``[[money.incentives]]``"""

    name: v.Name
    amount: v.Money | None = None
    share: v.Share | None = None
    cap: v.Money | None = None
    payer: v.Name | None = None
    kind: Annotated[IncentiveKind, v.Words(get_args(IncentiveKind))] | None = None
    status: Annotated[Status, v.Words(get_args(Status))]
    income_test: Annotated[IncomeTest, v.Words(get_args(IncomeTest))] | None = None
    apply_before_work: v.OnOff | None = None
    applied_on: v.DayOfYear | None = None
    not_with: list[v.Name] | None = None
    tax_owed: v.Money | None = None
    starts: v.DayOfYear | None = None
    expires: v.DayOfYear | None = None
    options: list[v.Name] | None = None
    source: Annotated[str, v.Text(200)] | None = None
    checked_on: v.DayOfYear | None = None


class OldSystemTable(Table):
    """``[money.old_system]``"""

    remaining_life: v.YearsLeft
    replacement_cost: v.Money
    life: v.Years | None = None
    counted: v.OnOff | None = None
    options: list[v.Name] | None = None


class FinanceTable(Table):
    """``[[money.finance]]``"""

    name: v.Name
    kind: Annotated[FinanceKind, v.Words(get_args(FinanceKind))]
    rate: v.Interest | None = None
    term: v.Term | None = None
    dealer_fee: v.Share | None = None
    down_payment: v.Money | None = None
    payment: v.MoneyMonthly | None = None
    payment_growth: v.Rate | None = None
    buyout: v.Money | None = None
    options: list[v.Name] | None = None


class EmissionsTable(Table):
    """``[money.emissions]``"""

    factor: v.EmissionFactor
    source: Annotated[str, v.Text(200)]


class MoneyTable(Table):
    """``[money]``"""

    installed_on: v.DayOfYear | None = None
    study_years: Annotated[int, v.Whole(1, 50)] | None = None
    discount_rate: v.Rate | None = None
    price_growth: v.Rate | None = None
    inflation: v.Rate | None = None
    move_in_years: Annotated[int, v.Whole(1, 50)] | None = None
    incentives: list[IncentiveTable] | None = None
    old_system: OldSystemTable | None = None
    finance: list[FinanceTable] | None = None
    emissions: EmissionsTable | None = None
