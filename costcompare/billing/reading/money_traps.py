"""What stands in the dollars of bills that is no price of electricity: level payments, slips."""

from __future__ import annotations

from collections.abc import Sequence, Set
from dataclasses import replace
from datetime import date
from itertools import groupby

from costcompare.billing.reading.bills import Bill, Note
from costcompare.billing.reading.rules import (
    HIGHEST_PRICE,
    LEAST_PRICE,
    LEVEL_BILLS,
    LEVEL_CHANGE,
)

LEAST_KWH = 50.0
"""[kWh] below which fixed charges make any mean price (judgement)"""


def money_judged(
    bills: Sequence[Bill], levels: Set[tuple[date, date]]
) -> tuple[list[Bill], list[Note]]:
    """The bills without dollars that say nothing of their price, and why."""
    level = _level(bills, levels)
    notes = []
    if level:
        what = f"{len(level)} bills ask for a level payment while the use changes."
        done = "Their kWh are used, their dollars are not; the plan settles once a year."
        notes.append(Note("budget billing", what, done))
    kept = [replace(b, dollars=None) if b.begins in level else b for b in bills]
    odd = [b for b in kept if _is_odd(b)]
    if odd:
        first = odd[0]
        price = (first.dollars or 0.0) / first.kwh
        count = f"{len(odd)} bills cost" if len(odd) > 1 else "A bill costs"
        what = (
            f"{count} less than ${LEAST_PRICE:.2f} or more than ${HIGHEST_PRICE:.2f} a kWh "
            f"(first: {first.dates}, ${price:,.3f})."
        )
        notes.append(Note("price", what, "The dollars are not used: kWh or dollars hold a slip."))
    return [replace(b, dollars=None) if b in odd else b for b in kept], notes


def _is_odd(bill: Bill) -> bool:
    if bill.dollars is None or bill.kwh < LEAST_KWH:
        return False
    return not LEAST_PRICE <= bill.dollars / bill.kwh <= HIGHEST_PRICE


def _level(bills: Sequence[Bill], told: Set[tuple[date, date]]) -> set[date]:
    """Beginnings of the bills whose dollars are a level payment."""
    found = {bill.begins for bill in bills if (bill.begins, bill.ends) in told}
    for amount, group in groupby(bills, key=lambda bill: bill.dollars):
        run = list(group)
        if amount is None or len(run) < LEVEL_BILLS:
            continue
        uses = [bill.kwh for bill in run]
        if max(uses) - min(uses) > LEVEL_CHANGE * max(uses):
            found |= {bill.begins for bill in run}
    return found


def deferred_balances(actual_usd: Sequence[float]) -> tuple[float, ...]:
    """What a year of level payments has left open after each month [$].

    The level payment is the mean of the actual bills; positive is still owed, and the last is 0.
    """
    level = sum(actual_usd) / len(actual_usd)
    open_usd, balances = 0.0, []
    for actual in actual_usd:
        open_usd += actual - level
        balances.append(open_usd)
    return tuple(balances)
