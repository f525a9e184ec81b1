"""Checks of money over the years: incentives, ways to pay, the old system."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from costcompare.case.checks.rooms import repeated
from costcompare.case.document import Document
from costcompare.case.money_document import FinanceTable, IncentiveTable, MoneyTable
from costcompare.case.paths import join
from costcompare.case.values import nearest
from costcompare.errors import Fault


def money_faults(document: Document) -> list[Fault]:
    """Everything about money over the years that does not fit together."""
    money = document.money
    if money is None:
        return []
    options = [option.name for option in document.options or [] if option.name]
    return [*_incentives(money, options), *_finance(money, options), *_old_system(money, options)]


def _incentives(money: MoneyTable, options: Sequence[str]) -> Iterator[Fault]:
    incentives = money.incentives or []
    names = [item.name for item in incentives]
    yield from repeated("money.incentives", names)
    for number, item in enumerate(incentives, 1):
        path = join(["money", "incentives", item.name or number])
        yield from _known(f"{path}.options", item.options, options, "an option of the case")
        others = [name for name in names if name and name != item.name]
        yield from _known(f"{path}.not_with", item.not_with, others, "another incentive here")
        yield from _incentive(path, item)


def _incentive(path: str, item: IncentiveTable) -> Iterator[Fault]:
    given = item.model_fields_set
    if not given & {"amount", "share"}:
        example = 'for example amount = "1500 $", or share = "30 %" of the price'
        yield Fault(f"{path}.amount", "is needed", "", example)
    if {"amount", "share"} <= given:
        yield Fault(f"{path}.share", "give either amount or share, not both")
    if item.starts is not None and item.expires is not None and item.expires < item.starts:
        yield Fault(f"{path}.expires", "must not be before starts", item.expires.isoformat())
    if "tax_owed" in given and item.kind != "tax credit":
        rule = "is for a tax credit alone"
        yield Fault(f"{path}.tax_owed", rule, item.kind or "nothing", 'kind = "tax credit"')


def _finance(money: MoneyTable, options: Sequence[str]) -> Iterator[Fault]:
    ways = money.finance or []
    yield from repeated("money.finance", [way.name for way in ways])
    for number, way in enumerate(ways, 1):
        path = join(["money", "finance", way.name or number])
        yield from _known(f"{path}.options", way.options, options, "an option of the case")
        yield from _way_to_pay(path, way)


_NEEDED = {
    "cash": set(),
    "loan": {"rate", "term"},
    "on-bill loan": {"rate", "term"},
    "on-bill tariff": {"term"},
    "lease": {"term", "payment"},
}
_ALLOWED = {
    "cash": set(),
    "loan": {"rate", "term", "dealer_fee", "down_payment"},
    "on-bill loan": {"rate", "term", "dealer_fee", "down_payment"},
    "on-bill tariff": {"rate", "term", "payment", "dealer_fee", "down_payment"},
    "lease": {"term", "payment", "payment_growth", "down_payment", "buyout"},
}
"""What belongs to a way to pay"""
_EXAMPLES = {"rate": '"7.99 %"', "term": '"10 year"', "payment": '"129 $/month"'}


def _way_to_pay(path: str, way: FinanceTable) -> Iterator[Fault]:
    if way.kind is None:
        return
    given = way.model_fields_set - {"name", "kind", "options"}
    for key in sorted(_NEEDED[way.kind] - given):
        rule = f"is needed for a way to pay of the kind {way.kind}"
        yield Fault(f"{path}.{key}", rule, "", f"for example {key} = {_EXAMPLES[key]}")
    for key in sorted(given - _ALLOWED[way.kind]):
        yield Fault(f"{path}.{key}", f"does not belong to the kind {way.kind}")
    if way.kind == "on-bill tariff" and len(given & {"rate", "payment"}) != 1:
        rule = "an on-bill tariff needs either its payment or a rate"
        yield Fault(f"{path}.payment", rule, "", 'for example payment = "95 $/month"')


def _old_system(money: MoneyTable, options: Sequence[str]) -> Iterator[Fault]:
    old = money.old_system
    if old is not None:
        path = "money.old_system.options"
        yield from _known(path, old.options, options, "an option of the case")


def _known(
    path: str, named: Sequence[str] | None, known: Sequence[str], what: str
) -> Iterator[Fault]:
    """A fault for each name that is not there."""
    for name in named or []:
        if name not in known:
            there = "; ".join(known) if known else "the case has none"
            yield Fault(path, f"must be {what}: {there}", name, nearest(name, list(known)))
