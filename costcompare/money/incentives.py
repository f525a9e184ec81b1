"""What others may pay towards an option, and what of it may be counted on.

Only money that is confirmed, and in force on the day of the installation, lowers a price.
Money that is applied for or unknown is shown beside the price and never in it; an
incentive that has ended counts for nothing and says why.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from costcompare.case.facts import Incentive


@dataclass(frozen=True)
class IncentiveLine:
    """One incentive as it bears on one option."""

    name: str
    amount_usd: float
    """What it would bring"""
    counted: bool
    """Whether it lowers the price shown"""
    reason: str


@dataclass(frozen=True)
class IncentiveResult:
    """The incentives of one option."""

    confirmed_usd: float
    """The sum of what is counted"""
    possible_usd: float
    """What may come on top: in force, but applied for or unknown"""
    lines: tuple[IncentiveLine, ...]
    """Every incentive that may apply to the option, counted or not"""


def counted(
    incentives: Iterable[Incentive], option_name: str, installed_on: date
) -> IncentiveResult:
    """Which incentives count for an option that is in service on ``installed_on``.

    Those of other options are left out altogether. The day on which an incentive ends
    still counts.
    """
    lines: list[IncentiveLine] = []
    confirmed = possible = 0.0
    for incentive in incentives:
        if incentive.options and option_name not in incentive.options:
            continue
        reason = _out_of_force(incentive, installed_on)
        in_force = not reason
        certain = in_force and incentive.status == "confirmed"
        if certain:
            confirmed += incentive.amount
        elif in_force:
            possible += incentive.amount
        reason = reason or _standing(incentive)
        lines.append(IncentiveLine(incentive.name, incentive.amount, certain, reason))
    return IncentiveResult(confirmed, possible, tuple(lines))


def _out_of_force(incentive: Incentive, installed_on: date) -> str:
    """Why the incentive does not hold on that day; empty when it does."""
    if incentive.expires is not None and installed_on > incentive.expires:
        return f"ended on {incentive.expires}, before the installation on {installed_on}"
    if incentive.starts is not None and installed_on < incentive.starts:
        return f"begins on {incentive.starts}, after the installation on {installed_on}"
    return ""


def _standing(incentive: Incentive) -> str:
    if incentive.status == "confirmed":
        return "confirmed"
    if incentive.status == "applied for":
        return "applied for, not confirmed: not in the price"
    return "not known whether it will be paid: not in the price"
