"""Rows of a tariff and of money in the visit form: what each asks, and how a new one begins.

Seasons, taxes with bases of their own, credit for export and other conventions of a tariff stay
in the case file: nobody reads them off a bill at a table. They are kept as they stand.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from costcompare.case.facts import Case
from costcompare.case.paths import Location, copied
from costcompare.errors import CaseError, Fault
from costcompare.views.dashboard.visit.answers import Doc, guess, value_at
from costcompare.views.dashboard.visit.listed import fresh_name

MOST_ROWS = 12
"""Rows of a kind that the form takes (judgement)"""


@dataclass(frozen=True)
class RowKind:
    """A list of a case, or a single table that need not be there."""

    at: Location
    one: str
    """What one row is"""
    fresh: Mapping[str, Any]
    """What a new row holds until somebody corrects it: its figures are guesses"""
    asks: tuple[tuple[str, str, str], ...]
    """Key, label and hint of each field"""
    is_list: bool = True


HOURS = ("hours", "Hours", "such as 6-10,17-20; empty is all day")
MONTHS = ("months", "Months", "such as 10-3; empty is all year")
DAYS = ("days", "Days", "")

ROW_KINDS: Mapping[str, RowKind] = {
    "time of day": RowKind(
        ("tariff", "periods"),
        "time of day with its own price",
        {
            "name": "peak",
            "days": "weekdays",
            "hours": "17-20",
            "price": guess("0.25 $/kWh"),
        },  # judgement
        (
            ("name", "Name of this time", ""),
            ("price", "Price in these hours, $/kWh", ""),
            HOURS,
            DAYS,
            MONTHS,
        ),
    ),
    "demand": RowKind(
        ("tariff", "demand"),
        "demand charge",
        {"name": "demand", "price": guess("5 $/kW")},  # judgement
        (
            ("name", "Name of this charge", ""),
            ("price", "Price of the highest hour, $/kW a month", ""),
            HOURS,
            DAYS,
            MONTHS,
            ("ratchet", "Share of the highest month before that is always billed, %", ""),
        ),
    ),
    "rider": RowKind(
        ("tariff", "riders"),
        "amount on top",
        {"name": "rider", "per_kwh": guess("0.002 $/kWh")},  # judgement
        (
            ("name", "Name of this amount", "as on the bill"),
            ("per_kwh", "For each kWh, $/kWh", "one of the three; below 0 takes off"),
            ("per_month", "Or each month, $/month", ""),
            ("share", "Or a share of the energy, %", ""),
            ("months", "Months", "such as 6-9; empty is all year"),
        ),
    ),
    "incentive": RowKind(
        ("money", "incentives"),
        "rebate or credit",
        {"name": "rebate", "amount": guess("500 $"), "status": "unknown"},  # judgement
        (
            ("name", "Name of this incentive", ""),
            ("amount", "Amount, $", ""),
            ("share", "Or a share of the price, %", ""),
            ("cap", "At most, $", ""),
            ("status", "How sure", "only what is confirmed lowers the price"),
            ("kind", "How it comes", ""),
            ("income_test", "Test of income", ""),
            ("apply_before_work", "Must be applied for before the work", ""),
            ("applied_on", "Applied for on", "such as 2027-02-01"),
            ("tax_owed", "Tax that the family owes, for a tax credit, $", ""),
            ("starts", "Begins on", "such as 2027-01-01"),
            ("expires", "Ends on", "such as 2027-09-30"),
            ("source", "Where it was read", ""),
        ),
    ),
    "way to pay": RowKind(
        ("money", "finance"),
        "loan or lease",
        {
            "name": "loan",
            "kind": "loan",
            "rate": guess("8 %"),
            "term": guess("10 year"),
        },  # judgement
        (
            ("name", "Name of this way to pay", ""),
            ("kind", "Kind", ""),
            ("rate", "Interest stated, % a year", ""),
            ("term", "Runs for, years", ""),
            ("down_payment", "Paid at once, $", ""),
            ("dealer_fee", "Fee added to what is borrowed, % of the price", ""),
            ("payment", "Payment of a lease, $/month", ""),
            ("payment_growth", "Growth of that payment, % a year", ""),
            ("buyout", "To own it at the end of a lease, $", ""),
        ),
    ),
    "old system": RowKind(
        ("money", "old_system"),
        "replacement of today’s system one day",
        {"remaining_life": guess("8 year"), "replacement_cost": guess("4000 $")},  # judgement
        (
            ("remaining_life", "Years until it has to be replaced", ""),
            ("replacement_cost", "What that would cost, $", "in the money of today"),
            ("life", "Years that a new one of its kind lasts", ""),
            ("counted", "Counted as spared by options that no longer use it", ""),
        ),
        is_list=False,
    ),
    "emissions": RowKind(
        ("money", "emissions"),
        "figure for what a kWh emits",
        {"factor": guess("0.4 kg/kWh"), "source": "not yet asked of the supplier"},  # judgement
        (
            ("factor", "What a kWh bought emits, kg/kWh", "CO2 equivalent"),
            ("source", "Where that figure is from", ""),
        ),
        is_list=False,
    ),
}
"""By what a browser calls them"""

ONE_OF = ({"per_kwh", "per_month", "share"}, {"amount", "share"})
"""Keys of a row of which each answer takes the place of the others: riders, incentives"""


def with_row_added(document: Mapping[str, Any], _case: Case, name: str) -> Doc:
    """The document with a new row of that kind, to be corrected; raises CaseError."""
    kind = ROW_KINDS.get(name)
    if kind is None:
        raise CaseError([Fault("the form", "this change cannot be understood")])
    changed: Doc = copied(document)
    section, key = str(kind.at[0]), str(kind.at[1])
    table = changed.setdefault(section, {})
    if not kind.is_list:
        table.setdefault(key, copied(kind.fresh))
        return changed
    rows = table.get(key) or []
    path = ".".join(map(str, kind.at))
    if not isinstance(rows, list) or len(rows) >= MOST_ROWS:
        raise CaseError([Fault(path, f"the form takes {MOST_ROWS} rows at most")])
    taken = [str(row.get("name", "")) for row in rows if isinstance(row, Mapping)]
    row = {**copied(kind.fresh), "name": fresh_name(str(kind.fresh["name"]), taken)}
    table[key] = [*rows, row]
    return changed


def outdated_by(document: Mapping[str, Any], at: Location) -> list[Location]:
    """Places whose answers an answer at a place takes the place of."""
    row, key = at[:-1], str(at[-1]) if at else ""
    lists = {kind.at for kind in ROW_KINDS.values() if kind.is_list}
    if row[:-1] not in lists:
        return []
    table = value_at(document, row)
    held = set(table) if isinstance(table, Mapping) else set()
    return [
        (*row, other)
        for group in ONE_OF
        if key in group
        for other in sorted((group & held) - {key})
    ]
