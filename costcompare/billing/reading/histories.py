"""A table with one line a bill: the days of its reads, its use and its money."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from itertools import pairwise
from statistics import median

from costcompare.billing.reading.bills import Note, ReadKind
from costcompare.billing.reading.delimited import Rows
from costcompare.billing.reading.found_rows import is_electric, money_of, read_kind, use_of
from costcompare.billing.reading.headers import Column, best_dollars, names_of, uses
from costcompare.billing.reading.written import day_of, is_day_first, month_of, next_month, number

A_DAY = timedelta(days=1)
LONGEST_DAYS = 800
"""[days] more between two dates is a slip in one of them (judgement)"""


@dataclass(frozen=True)
class Printed:
    """One line of bills as it is printed, before any rule."""

    begins: date
    ends: date
    kwh: float
    dollars: float | None = None
    read: ReadKind = "unknown"
    export_kwh: float = 0.0
    meter: str = ""
    opening: float | None = None
    closing: float | None = None
    multiplier: float | None = None
    level_payment: bool = False


@dataclass(frozen=True)
class _Columns:
    begins: Column | None
    ends: Column | None
    month: Column | None
    use: tuple[Column, ...]
    dollars: Column | None


def printed_bills(rows: Rows) -> tuple[list[Printed], list[Note]]:
    """Every line that has dates and use, in order of time, and what was found on the way."""
    header = rows.header
    begins, ends = header.of("from"), header.of("to")
    if begins is None and ends is not None:
        begins = header.of("moment", "day")
    if begins is None and ends is None:
        ends = header.of("day", "moment")
    columns = _Columns(begins, ends, header.of("month"), uses(header), best_dollars(header))
    notes = _money_notes(rows, columns)
    day_first = any(
        is_day_first(rows.cell(row, column.place) for row in rows.rows)
        for column in (columns.begins, columns.ends)
        if column
    )
    if day_first:
        notes.append(Note("day first", "A first number is above 12.", "Read as day, month, year."))
    found, skipped, others = [], [], 0
    for place, row in enumerate(rows.rows):
        if not is_electric(rows, row):
            others += 1
            continue
        bill = _printed(rows, row, columns, day_first=day_first)
        if bill is None:
            skipped.append(rows.first_row + place)
        else:
            found.append(bill)
    if others:
        what = f"{others} lines are of gas, water or another service."
        notes.append(Note("other services", what, "Not counted."))
    if skipped:
        notes.append(_unreadable(skipped))
    found, more = _with_beginnings(sorted(found, key=lambda bill: (bill.ends, bill.begins)))
    return found, [*notes, *more]


def _unreadable(lines: Sequence[int]) -> Note:
    first = ", ".join(str(line) for line in lines[:5])
    more = " and more" if len(lines) > 5 else ""
    what = f"{len(lines)} lines hold no dates or no use (the first: {first}{more})."
    return Note("unreadable line", what, "Left out.")


def _money_notes(rows: Rows, columns: _Columns) -> list[Note]:
    due, level = rows.header.of("amount due"), rows.header.of("level payment")
    notes = []
    if due is not None:
        done = (
            f"Taken are the charges in {names_of([columns.dollars])}."
            if columns.dollars
            else "No dollars are taken from it."
        )
        what = f"{names_of([due])} may hold arrears, deposits and other services."
        notes.append(Note("amount due", what, done))
    if level is not None and columns.dollars is None:
        what = f"{names_of([level])} is a level payment, no price of that month."
        notes.append(Note("budget billing", what, "The kWh are used, the dollars are not."))
    if columns.month is not None and columns.ends is None:
        what = "Bills are named by months; a bill called January can be half December."
        notes.append(
            Note(
                "month names", what, "Taken as calendar months; the dates of the reads are better."
            )
        )
    return notes


def _printed(
    rows: Rows, row: tuple[str, ...], columns: _Columns, *, day_first: bool
) -> Printed | None:
    begins, ends = _dates(rows, row, columns, day_first=day_first)
    kwh = use_of(rows, row, columns.use)
    if begins is None or ends is None or kwh is None:
        return None
    if not timedelta() <= ends - begins <= timedelta(days=LONGEST_DAYS):
        return None
    header = rows.header
    figures = {
        name: money_of(rows, row, header.of(name))
        for name in ("opening reading", "closing reading", "multiplier", "export", "level payment")
    }
    meter = header.of("meter")
    return Printed(
        begins,
        ends,
        kwh,
        money_of(rows, row, columns.dollars),
        read_kind(rows, row),
        abs(figures["export"] or 0.0),
        rows.cell(row, meter.place) if meter else "",
        figures["opening reading"],
        figures["closing reading"],
        figures["multiplier"],
        columns.dollars is not None
        and figures["level payment"] is not None
        and figures["level payment"] == money_of(rows, row, columns.dollars),
    )


def _dates(
    rows: Rows, row: tuple[str, ...], columns: _Columns, *, day_first: bool
) -> tuple[date | None, date | None]:
    """Both days; the first equals the last where the row tells the closing read alone."""
    ends = _date(rows, row, columns.ends, day_first=day_first)
    if columns.month is not None and ends is None:
        return _month_or_span(rows.cell(row, columns.month.place), day_first=day_first)
    begins = _date(rows, row, columns.begins, day_first=day_first)
    days = rows.header.of("days")
    count = number(rows.cell(row, days.place)) if days else None
    whole = timedelta(days=round(count)) if count and 0 < count < LONGEST_DAYS else None
    if begins is None and columns.begins is None and ends is not None:
        return (ends - whole if whole else ends), ends
    if ends is None and columns.ends is None and begins is not None and whole:
        return begins, begins + whole
    return begins, ends


def _month_or_span(text: str, *, day_first: bool) -> tuple[date | None, date | None]:
    """``Jan 2026``, or two days in one cell: ``12/18/2025 - 1/18/2026``."""
    month = month_of(text)
    if month is not None:
        return month, next_month(month)
    for mark in (" - ", " to ", " \N{EN DASH} ", "\N{EN DASH}", " thru ", " through "):
        first, found, last = text.partition(mark)
        if found:
            return day_of(first, day_first=day_first), day_of(last, day_first=day_first)
    return None, None


def _date(
    rows: Rows, row: tuple[str, ...], column: Column | None, *, day_first: bool
) -> date | None:
    return day_of(rows.cell(row, column.place), day_first=day_first) if column else None


def _with_beginnings(bills: list[Printed]) -> tuple[list[Printed], list[Note]]:
    """Bills whose two days are those of their reads.

    Where only the closing read is told a bill begins with the read before it. Where the bills
    end on the day before the next one begins, their last day is moved to the read.
    """
    if bills and all(bill.begins == bill.ends for bill in bills):
        ends = sorted({bill.ends for bill in bills})
        before = dict(pairwise(ends))
        opened = {later: earlier for earlier, later in before.items()}
        told = [replace(bill, begins=opened[bill.ends]) for bill in bills if bill.ends in opened]
        what = "Only one day is told for each bill."
        done = "Each runs from the day before it in the list; the first only opens the second."
        return told, [Note("end days", what, done)]
    bills = [bill for bill in bills if bill.begins < bill.ends or bill.kwh]
    steps = Counter(
        (later.begins - earlier.ends).days
        for earlier, later in pairwise(sorted(bills, key=lambda bill: bill.begins))
    )
    if steps[1] > steps[0]:
        moved = [replace(bill, ends=bill.ends + A_DAY) for bill in bills]
        what = "Each bill ends on the day before the next one begins."
        return moved, [
            Note("end days", what, "The last day is counted in: the read is a day later.")
        ]
    return [bill for bill in bills if bill.begins < bill.ends], []


def is_history(rows: Rows) -> bool:
    """Whether a table holds bills, and not the hours or days of a meter."""
    header = rows.header
    if header.clock or header.of("time", "end time"):
        return False
    if header.of("from", "days", "month") and header.of("day", "time") is None:
        return not _are_short(rows)
    return not _are_short(rows)


def _are_short(rows: Rows) -> bool:
    """Whether successive lines lie hours or days apart, not weeks."""
    column = rows.header.of("from", "day", "to", "moment")
    if column is None:
        return False
    day_first = is_day_first(rows.cell(row, column.place) for row in rows.rows)
    found = {day_of(rows.cell(row, column.place), day_first=day_first) for row in rows.rows}
    days = sorted(day for day in found if day is not None)
    if len(days) < len(rows.rows) / 2.0 and len(rows.rows) > 3:
        return True
    steps = [(later - earlier).days for earlier, later in pairwise(days)]
    return bool(steps) and median(steps) <= 3.0
