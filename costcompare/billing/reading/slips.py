"""Figures that stand apart: digits misread, readings that do not fit, bills unlike the others."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from statistics import median, quantiles

from costcompare.billing.reading.bills import Bill, Note
from costcompare.billing.reading.histories import Printed
from costcompare.billing.reading.rules import FEWEST_FOR_OUTLIERS, OUTLIER_RANGES, SLIP

READING_PLAY = 2.0
"""[kWh] by which a rounded reading may differ from the use printed (judgement)"""
READING_SHARE = 0.01
"""Share of the use by which it may differ too (judgement)"""


def readings_compared(printed: Sequence[Printed]) -> list[Note]:
    """Use against the difference of the readings, and each reading against the one before."""
    notes = []
    factors = {one.multiplier for one in printed if one.multiplier not in (None, 0.0, 1.0)}
    if factors:
        named = ", ".join(f"{factor:g}" for factor in sorted(f for f in factors if f is not None))
        what = f"The meter counts in steps of {named}."
        notes.append(Note("multiplier", what, "The kWh printed are taken as they are."))
    for one in printed:
        if one.opening is None or one.closing is None:
            continue
        counted = (one.closing - one.opening) * (one.multiplier or 1.0)
        if abs(counted - one.kwh) > max(READING_PLAY, READING_SHARE * abs(one.kwh)):
            what = (
                f"{_dates(one)}: the readings differ by {counted:,.0f}, printed are "
                f"{one.kwh:,.0f} kWh."
            )
            notes.append(
                Note("meter readings", what, "The kWh printed are used; ask which is right.")
            )
    ordered = sorted(printed, key=lambda one: one.begins)
    for earlier, later in pairwise(ordered):
        if earlier.ends != later.begins or earlier.closing is None or later.opening is None:
            continue
        if earlier.closing != later.opening:
            notes.append(_reading_differs(earlier, later))
    return notes


def _reading_differs(earlier: Printed, later: Printed) -> Note:
    assert earlier.closing is not None
    assert later.opening is not None
    ends, begins = f"{earlier.closing:.0f}", f"{later.opening:.0f}"
    what = f"On {later.begins.isoformat()} one bill ends at {ends} and the next begins at {begins}."
    if sorted(ends) == sorted(begins):
        done = "Two digits were swapped: one of the two bills is wrong, their sum is right."
        return Note("digit slip", what, done)
    return Note("meter readings", what, "One reading is wrong, or the meter was changed.")


def _dates(one: Printed) -> str:
    return f"{one.begins.isoformat()} to {one.ends.isoformat()}"


def unlike_told(bills: Sequence[Bill]) -> list[Note]:
    """Bills far above or below the others: told, never dropped in silence."""
    if len(bills) < FEWEST_FOR_OUTLIERS:
        return []
    uses = [bill.kwh_per_day for bill in bills]
    middle = median(uses)
    low, _, high = quantiles(uses, n=4, method="inclusive")
    limit = middle + OUTLIER_RANGES * (high - low)
    notes = []
    for bill, use in zip(bills, uses, strict=True):
        beyond = use > limit and use > middle
        if (beyond and use > SLIP * middle) or use < middle / SLIP**2:
            tenth = use / 10.0 if use > middle else use * 10.0
            what = (
                f"{bill.dates} has {use:,.1f} kWh a day where {middle:,.1f} are usual; a digit too "
                f"many or too few would make it {tenth:,.1f}."
            )
            notes.append(Note("digit slip", what, "Kept as it is: look at the meter or the bill."))
        elif beyond:
            what = f"{bill.dates} has {use:,.1f} kWh a day, far above the others ({middle:,.1f})."
            notes.append(Note("unlike the others", what, "Kept; it needs a reason."))
    return notes


def gaps_told(bills: Sequence[Bill]) -> list[Note]:
    """Days that no bill holds."""
    gaps = [
        (earlier.ends, later.begins)
        for earlier, later in pairwise(bills)
        if later.begins > earlier.ends
    ]
    if not gaps:
        return []
    days = sum((later - earlier).days for earlier, later in gaps)
    first = f"{gaps[0][0].isoformat()} to {gaps[0][1].isoformat()}"
    what = f"{days} days between bills belong to none (first: {first})."
    return [Note("gap", what, "Nothing is put in their place.")]
