"""Meter intervals summed to bills by calendar month, hours that are missing told."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date

from costcompare.billing.reading.bills import Interval, Note
from costcompare.billing.reading.histories import Printed
from costcompare.billing.reading.rules import LARGEST_MISSING
from costcompare.billing.reading.written import next_month

HOURS_A_DAY = 24.0
CLOCK_HOURS = 1.0
"""[hours] that a month may lack or have too many where clocks change"""


def monthly(intervals: Sequence[Interval]) -> tuple[list[Printed], list[Note]]:
    """One bill a calendar month that is whole to a tenth, its missing hours made up."""
    by_month: dict[date, list[Interval]] = {}
    for interval in intervals:
        first = interval.start.date().replace(day=1)
        by_month.setdefault(first, []).append(interval)
    what = "The file holds the readings of a meter, not bills."
    notes = [Note("calendar months", what, "Summed by calendar month.")]
    bills = []
    short: list[str] = []
    made_up: list[str] = []
    for first, found in sorted(by_month.items()):
        begins, ends, missing = _share_missing(first, found)
        if begins is None or ends is None or missing > LARGEST_MISSING:
            short.append(f"{first:%B %Y}")
            continue
        if missing > 0.0:
            made_up.append(f"{first:%B %Y} ({missing:.1%})")
        bills.append(_sum(begins, ends, found, missing))
    if short:
        what = f"More than a tenth of the hours is missing in {_some(short)}."
        notes.append(Note("part month", what, "Not made a bill."))
    if made_up:
        what = f"Hours are missing in {_some(made_up)}."
        notes.append(Note("missing intervals", what, "Made up at the mean of the hours there are."))
    return bills, notes


def _share_missing(
    first: date, found: Sequence[Interval]
) -> tuple[date | None, date | None, float]:
    """The whole month and the share of its hours that has no value."""
    ends = next_month(first)
    hours = (ends - first).days * HOURS_A_DAY
    there = sum(interval.hours for interval in found)
    missing = hours - there
    if abs(missing) <= CLOCK_HOURS + 1e-9 and first.month in {3, 11}:
        return first, ends, 0.0
    return first, ends, max(missing, 0.0) / hours


def _sum(begins: date, ends: date, found: Sequence[Interval], missing: float) -> Printed:
    whole = 1.0 / (1.0 - missing)
    money = [interval.dollars for interval in found if interval.dollars is not None]
    guessed = sum(interval.estimated for interval in found) > LARGEST_MISSING * len(found)
    return Printed(
        begins,
        ends,
        whole * sum(interval.kwh for interval in found),
        whole * sum(money) if len(money) == len(found) else None,
        "estimated" if guessed else "actual",
        whole * sum(interval.export_kwh for interval in found),
    )


def _some(names: Iterable[str]) -> str:
    listed = list(names)
    more = f" and {len(listed) - 6} more" if len(listed) > 6 else ""
    return ", ".join(listed[:6]) + more
