"""What others may pay towards an option, and what of it may be counted on.

Only money that is confirmed, in force on the day of the installation, and bound to nothing
that is still open lowers a price. Money that is applied for or unknown is shown beside the
price and never in it; an incentive that has ended counts for nothing and says why. The
program knows no incentive of its own: each comes from the case, with who pays it, where it
was read and when.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from datetime import date
from typing import Literal

from costcompare.case.facts import Incentive

Standing = Literal["counted", "possible", "not counted"]
"""In the price; in force, but open; worth nothing here"""

_BY_KIND = {
    "instant": "confirmed, taken off the bill for the work",
    "after the work": "confirmed, paid after the work",
    "tax credit": "confirmed, comes with the tax return of the next year",
}


@dataclass(frozen=True)
class IncentiveLine:
    """One incentive as it bears on one option."""

    name: str
    amount_usd: float
    """What it would bring"""
    counted: bool
    """Whether it lowers the price shown"""
    reason: str
    standing: Standing = "not counted"
    payer: str = ""
    kind: str = "after the work"
    source: str = ""
    """Where the case says that it was read"""
    checked_on: str | None = None
    """The day on which that was, as 2027-03-01"""


@dataclass(frozen=True)
class IncentiveResult:
    """The incentives of one option."""

    confirmed_usd: float
    """The sum of what is counted"""
    possible_usd: float
    """What may come on top: in force, but not certain"""
    lines: tuple[IncentiveLine, ...]
    """Every incentive that may apply to the option, counted or not"""
    later_usd: float = 0.0
    """The part of what is counted that comes back a year later: tax credits"""


def counted(
    incentives: Iterable[Incentive],
    option_name: str,
    installed_on: date,
    *,
    price: float | None = None,
) -> IncentiveResult:
    """Which incentives count for an option that is in service on ``installed_on``.

    Those of other options are left out altogether. The day on which an incentive ends
    still counts. ``price`` is the installed cost [$]: a share is taken of it, and no more
    than it is ever counted.
    """
    applying = [i for i in incentives if not i.options or option_name in i.options]
    judged = [_judged(incentive, installed_on, price) for incentive in applying]
    kept: list[Incentive] = []
    left = price
    # The surest and largest first: of two that exclude each other it is the one that counts.
    order = sorted(range(len(judged)), key=lambda n: _rank(judged[n]))
    for number in order:
        line, incentive = judged[number], applying[number]
        if line.standing == "not counted":
            continue
        rival = next((other for other in kept if _exclude(other, incentive)), None)
        if rival is not None:
            judged[number] = _refused(line, f"cannot be added to “{rival.name}”")
            continue
        kept.append(incentive)
        if left is not None:
            if line.amount_usd > left:
                judged[number] = line = _cut(line, left)
            left -= line.amount_usd
    certain = [line for line in judged if line.standing == "counted"]
    return IncentiveResult(
        confirmed_usd=sum(line.amount_usd for line in certain),
        possible_usd=sum(line.amount_usd for line in judged if line.standing == "possible"),
        lines=tuple(judged),
        later_usd=sum(line.amount_usd for line in certain if line.kind == "tax credit"),
    )


def _judged(incentive: Incentive, installed_on: date, price: float | None) -> IncentiveLine:
    """An incentive by itself, without the others."""
    against = next(_lost(incentive, installed_on), None)
    still_open = next(_open(incentive), None)
    standing: Standing = "counted"
    reason = _BY_KIND.get(incentive.kind, "confirmed")
    if against is not None:
        standing, reason = "not counted", against
    elif still_open is not None:
        standing, reason = "possible", still_open
    return IncentiveLine(
        name=incentive.name,
        amount_usd=_amount(incentive, price),
        counted=standing == "counted",
        reason=reason,
        standing=standing,
        payer=incentive.payer,
        kind=incentive.kind,
        source=incentive.source,
        checked_on=None if incentive.checked_on is None else incentive.checked_on.isoformat(),
    )


def _amount(incentive: Incentive, price: float | None) -> float:
    """What it would bring [$]: the amount, or its share of the price, within its limits."""
    amount = incentive.amount
    if incentive.share is not None:
        if price is None:
            raise ValueError(f"the share of {incentive.name!r} needs the price it is a share of")
        amount = incentive.share * price
    limits = [incentive.cap]
    if incentive.kind == "tax credit":
        limits.append(incentive.tax_owed)
    return min([amount, *(limit for limit in limits if limit is not None)])


def _lost(incentive: Incentive, on: date) -> Iterator[str]:
    """Why the incentive brings nothing here."""
    if incentive.expires is not None and on > incentive.expires:
        yield f"ended on {incentive.expires}, before the installation on {on}"
    if incentive.starts is not None and on < incentive.starts:
        yield f"begins on {incentive.starts}, after the installation on {on}"
    if incentive.income_test == "not passed":
        yield "its limit on income is not met"
    if incentive.apply_before_work and incentive.applied_on and incentive.applied_on >= on:
        yield (
            f"had to be applied for before the work, and was on {incentive.applied_on}, with the "
            f"installation on {on}"
        )
    if incentive.kind == "tax credit" and incentive.tax_owed == 0.0:
        yield "no tax is owed that it could be taken off"


def _open(incentive: Incentive) -> Iterator[str]:
    """Why it is not certain."""
    if incentive.status == "applied for":
        yield "applied for, not confirmed: not in the price"
    if incentive.status == "unknown":
        yield "not known whether it will be paid: not in the price"
    if incentive.income_test == "unknown":
        yield "not known whether its limit on income is met: not in the price"
    if incentive.apply_before_work and incentive.applied_on is None:
        yield "must be applied for before the work begins, and is not yet: not in the price"
    if incentive.kind == "tax credit" and incentive.tax_owed is None:
        yield "not known whether enough tax is owed to take it off: not in the price"
    if incentive.kind == "loan buy-down":
        yield "lowers the interest of a loan, not the price: not in the price"


def _rank(line: IncentiveLine) -> tuple[bool, float]:
    return line.standing != "counted", -line.amount_usd


def _exclude(one: Incentive, other: Incentive) -> bool:
    """Whether the two may not be had together."""
    return other.name in one.not_with or one.name in other.not_with


def _refused(line: IncentiveLine, reason: str) -> IncentiveLine:
    return replace(line, counted=False, standing="not counted", reason=reason)


def _cut(line: IncentiveLine, left: float) -> IncentiveLine:
    """An incentive that is more than what is still to be paid."""
    return replace(line, amount_usd=left, reason=f"{line.reason}; cut to what the work costs")
