"""From bills as printed to bills that can be used: every rule applied, every finding told.

The rules are applied in one order, so that a bill is judged after what the ones before made of
it: meters added, doubles dropped, readings compared, zero and negative use taken out, overlaps,
estimated reads put together, odd lengths, money, figures that stand apart, gaps.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace

from costcompare.billing.reading.bills import Bill, Bills, Interval, Note
from costcompare.billing.reading.histories import Printed
from costcompare.billing.reading.money_traps import money_judged
from costcompare.billing.reading.rules import ENOUGH_BILLS, LONG_DAYS, SHORT_DAYS
from costcompare.billing.reading.slips import gaps_told, readings_compared, unlike_told

READ_PLAY = 0.5
"""[kWh] of a printed zero: meters count in whole kilowatt hours"""


class _Sorting:
    """The bills that are left, those that were taken out, and what was said of both."""

    def __init__(self, bills: Iterable[Bill], notes: Iterable[Note]) -> None:
        self.bills = sorted(bills, key=lambda bill: (bill.begins, bill.ends))
        self.notes = list(notes)
        self.out: list[Bill] = []

    def note(self, rule: str, found: str, done: str) -> None:
        self.notes.append(Note(rule, found, done))

    def take_out(self, is_out: Callable[[Bill], bool]) -> list[Bill]:
        out = [bill for bill in self.bills if is_out(bill)]
        self.bills = [bill for bill in self.bills if not is_out(bill)]
        self.out += out
        return out


def judged(
    printed: Sequence[Printed],
    notes: Iterable[Note] = (),
    *,
    intervals: Sequence[Interval] = (),
    source: str = "typed bills",
) -> Bills:
    """The bills that can be used, and a note for each trap that was met."""
    merged, found = _one_a_period(printed)
    found += readings_compared(merged)
    levels = {(one.begins, one.ends) for one in merged if one.level_payment}
    sorting = _Sorting([_bill(one) for one in merged], [*notes, *found])
    _without_use(sorting)
    _overlaps(sorting)
    _estimated(sorting)
    _lengths(sorting)
    bills, more = money_judged(sorting.bills, levels)
    more += unlike_told(bills)
    more += gaps_told(bills)
    out = sorted(sorting.out, key=lambda bill: (bill.begins, bill.ends))
    return Bills(tuple(bills), (*sorting.notes, *more), tuple(out), tuple(intervals), source)


def _bill(one: Printed) -> Bill:
    return Bill(one.begins, one.ends, one.kwh, one.dollars, one.read, export_kwh=one.export_kwh)


def _one_a_period(printed: Sequence[Printed]) -> tuple[list[Printed], list[Note]]:
    """Meters of one period added; a line that repeats one replaces it."""
    kept: dict[tuple[object, ...], Printed] = {}
    for one in printed:
        kept[one.begins, one.ends, one.meter] = one
    notes = []
    if len(kept) < len(printed):
        what = f"{len(printed) - len(kept)} lines repeat a bill."
        notes.append(Note("doubled entry", what, "The last one is counted."))
    periods: dict[tuple[object, ...], list[Printed]] = {}
    for one in kept.values():
        periods.setdefault((one.begins, one.ends), []).append(one)
    if any(len(parts) > 1 for parts in periods.values()):
        meters = sorted({one.meter for parts in periods.values() for one in parts})
        what = f"There are {len(meters)} meters: {', '.join(meters[:4])}."
        done = "Their use is added; a meter of its own for heating would tell more alone."
        notes.append(Note("several meters", what, done))
    return [_added(parts) for parts in periods.values()], notes


def _added(parts: Sequence[Printed]) -> Printed:
    if len(parts) == 1:
        return parts[0]
    money = [one.dollars for one in parts if one.dollars is not None]
    return replace(
        parts[0],
        kwh=sum(one.kwh for one in parts),
        dollars=sum(money) if len(money) == len(parts) else None,
        read="estimated" if any(one.read == "estimated" for one in parts) else parts[0].read,
        export_kwh=sum(one.export_kwh for one in parts),
        opening=None,
        closing=None,
    )


def _without_use(sorting: _Sorting) -> None:
    if any(bill.export_kwh > 0.0 for bill in sorting.bills):
        what = "The house gives electricity to the grid."
        done = "Only what was bought is counted; what its own panels gave it cannot be seen."
        sorting.note("export", what, done)
    for bill in sorting.take_out(lambda bill: bill.kwh < -READ_PLAY):
        what = f"{bill.dates} has {bill.kwh:,.0f} kWh: less than nothing was used."
        done = "Left out: it is net of what the house gave to the grid."
        sorting.note("negative use", what, done)
    for bill in sorting.take_out(lambda bill: bill.kwh < READ_PLAY):
        what = f"{bill.dates} has 0 kWh."
        sorting.note("zero use", what, "Left out as a missing read.")


def _overlaps(sorting: _Sorting) -> None:
    kept: list[Bill] = []
    for bill in list(sorting.bills):
        if kept and bill.begins < kept[-1].ends:
            sorting.out.append(bill)
            what = f"{bill.dates} overlaps {kept[-1].dates}."
            sorting.note("overlap", what, "The later one is left out; look which is right.")
        else:
            kept.append(bill)
    sorting.bills = kept


def _estimated(sorting: _Sorting) -> None:
    """A bill that ends in a guess is put together with the next, until a read (to 70 days)."""
    kept: list[Bill] = []
    open_bills: list[Bill] = []
    for bill in sorting.bills:
        if open_bills and bill.begins != open_bills[-1].ends:
            _close(open_bills, kept, sorting)
            open_bills = []
        open_bills.append(bill)
        if bill.read != "estimated":
            _close(open_bills, kept, sorting)
            open_bills = []
    if open_bills:
        _close(open_bills, kept, sorting)
    sorting.bills = kept


def _close(parts: Sequence[Bill], kept: list[Bill], sorting: _Sorting) -> None:
    """Keep the parts as one bill, or leave them out where no read ends them."""
    whole = _together(parts)
    if parts[-1].read == "estimated":
        if not kept and len(sorting.bills) == len(parts):
            what = f"{whole.dates} was estimated by the utility, and no read follows."
            sorting.note("estimated read", what, "Kept, for there is no other: trust it little.")
            kept.append(whole)
            return
        what = f"{whole.dates} was estimated by the utility, and no read follows."
        sorting.note("estimated read", what, "Left out until the next read is known.")
        sorting.out.extend(parts)
        return
    if len(parts) > 1 and whole.days > LONG_DAYS:
        what = f"{whole.dates} ({whole.days} days) was estimated more than once before a read."
        sorting.note(
            "estimated read", what, f"Left out: more than {LONG_DAYS} days tell no season."
        )
        sorting.out.extend(parts)
        return
    if len(parts) > 1:
        what = f"The utility estimated the read of {parts[0].ends.isoformat()}."
        done = f"Put together with the next bill: {whole.dates}, {whole.kwh:,.0f} kWh."
        sorting.note("estimated read", what, done)
    kept.append(whole)


def _together(parts: Sequence[Bill]) -> Bill:
    if len(parts) == 1:
        return parts[0]
    money = [bill.dollars for bill in parts if bill.dollars is not None]
    return Bill(
        parts[0].begins,
        parts[-1].ends,
        sum(bill.kwh for bill in parts),
        sum(money) if len(money) == len(parts) else None,
        parts[-1].read,
        len(parts),
        sum(bill.export_kwh for bill in parts),
    )


def _lengths(sorting: _Sorting) -> None:
    _odd_lengths(
        sorting, "short bill", f"fewer than {SHORT_DAYS} days", lambda b: b.days < SHORT_DAYS
    )
    _odd_lengths(sorting, "long bill", f"more than {LONG_DAYS} days", lambda b: b.days > LONG_DAYS)


def _odd_lengths(sorting: _Sorting, rule: str, why: str, is_odd: Callable[[Bill], bool]) -> None:
    odd = [bill for bill in sorting.bills if is_odd(bill)]
    if not odd:
        return
    enough = len(sorting.bills) - len(odd) >= ENOUGH_BILLS
    if enough:
        sorting.take_out(is_odd)
    for bill in odd:
        what = f"{bill.dates} has {bill.days} days, {why}."
        done = "Left out." if enough else "Kept, for there are few bills; it weighs by its days."
        sorting.note(rule, what, done)
