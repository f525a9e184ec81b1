"""A table with the hours of a meter, one a line or a day a line, as intervals."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import datetime, timedelta
from itertools import pairwise

from costcompare.billing.reading.bills import Interval, Note
from costcompare.billing.reading.delimited import Rows
from costcompare.billing.reading.found_rows import is_electric, money_of, read_kind, use_of
from costcompare.billing.reading.headers import Column, best_dollars, uses
from costcompare.billing.reading.written import is_day_first, moment_of, number

AN_HOUR = timedelta(hours=1)
DAY_HOURS = 24.0


def read_intervals(rows: Rows) -> tuple[list[Interval], list[Note]]:
    """Every interval in order of time; doubled entries counted once, doubled hours twice."""
    column = rows.header.of("moment", "from", "day", "to")
    if column is None:
        return [], []
    day_first = is_day_first(rows.cell(row, column.place) for row in rows.rows)
    notes = []
    if day_first:
        notes.append(Note("day first", "A first number is above 12.", "Read as day, month, year."))
    electric = [row for row in rows.rows if is_electric(rows, row)]
    if len(electric) < len(rows.rows):
        what = f"{len(rows.rows) - len(electric)} lines are of gas, water or another service."
        notes.append(Note("other services", what, "Not counted."))
    read = _wide if rows.header.clock else _long
    found, skipped = read(rows, electric, column, day_first=day_first)
    if skipped:
        what = f"{skipped} lines hold no time or no use."
        notes.append(Note("unreadable line", what, "Left out; they count as missing."))
    ordered, more = in_order(found)
    return ordered, [*notes, *more]


def _long(
    rows: Rows, electric: Sequence[tuple[str, ...]], column: Column, *, day_first: bool
) -> tuple[list[Interval], int]:
    header = rows.header
    time, columns, dollars, out = (
        header.of("time"),
        uses(header),
        best_dollars(header),
        header.of("export"),
    )
    meter = header.of("meter")
    found: list[tuple[str, Interval]] = []
    skipped = 0
    for row in electric:
        at = rows.cell(row, time.place) if time and time.place != column.place else ""
        start = moment_of(rows.cell(row, column.place), at, day_first=day_first)
        kwh = use_of(rows, row, columns)
        if start is None or kwh is None:
            skipped += 1
            continue
        exported = abs(money_of(rows, row, out) or 0.0)
        interval = Interval(
            start,
            1.0,
            max(kwh, 0.0),
            money_of(rows, row, dollars),
            read_kind(rows, row) == "estimated",
            exported + max(-kwh, 0.0),
        )
        found.append((rows.cell(row, meter.place) if meter else "", interval))
    intervals = _meters_added(found)
    hours = usual_step(interval.start for interval in intervals)
    power = columns and (columns[0].unit == "kw" or _unit_told(rows) == "kw")
    factor = hours if power else 1.0
    return [
        replace(i, hours=hours, kwh=i.kwh * factor, export_kwh=i.export_kwh * factor)
        for i in intervals
    ], skipped


def _unit_told(rows: Rows) -> str:
    unit = rows.header.of("unit")
    return rows.cell(rows.rows[0], unit.place).lower() if unit and rows.rows else ""


def _meters_added(found: Sequence[tuple[str, Interval]]) -> list[Interval]:
    """The sum of several meters at the same time; the entries of one meter stay apart."""
    meters = {meter for meter, _ in found}
    if len(meters) < 2:
        return [interval for _, interval in found]
    sums: dict[datetime, dict[str, Interval]] = {}
    for meter, interval in found:
        sums.setdefault(interval.start, {})[meter] = interval
    added = []
    for start in sorted(sums):
        parts = list(sums[start].values())
        money = [part.dollars for part in parts if part.dollars is not None]
        added.append(
            Interval(
                start,
                1.0,
                sum(part.kwh for part in parts),
                sum(money) if money else None,
                any(part.estimated for part in parts),
                sum(part.export_kwh for part in parts),
            )
        )
    return added


def _wide(
    rows: Rows, electric: Sequence[tuple[str, ...]], column: Column, *, day_first: bool
) -> tuple[list[Interval], int]:
    clock = rows.header.clock
    step = min((24, 48, 96), key=lambda count: abs(count - len(clock)))
    hours = DAY_HOURS / step
    found, skipped = [], 0
    for row in electric:
        day = moment_of(rows.cell(row, column.place), day_first=day_first)
        if day is None:
            skipped += 1
            continue
        for place, since in clock.items():
            kwh = number(rows.cell(row, place), decimal_comma=rows.decimal_comma)
            if kwh is not None:
                start = day + since
                found.append(Interval(start, hours, max(kwh, 0.0), export_kwh=max(-kwh, 0.0)))
    return found, skipped


def usual_step(starts: Iterable[datetime]) -> float:
    """The commonest time between two entries [hours]; 1 where there are fewer than two."""
    ordered = sorted({start.replace(tzinfo=None) for start in starts})
    steps = Counter(later - earlier for earlier, later in pairwise(ordered))
    if not steps:
        return 1.0
    return steps.most_common(1)[0][0] / AN_HOUR


def is_doubled_hour(start: datetime) -> bool:
    """Whether the local clock shows this hour twice: 1 to 2 on the first Sunday of November.

    The rule of the United States since 2007 (Energy Policy Act of 2005, section 110).
    """
    return start.month == 11 and start.day <= 7 and start.weekday() == 6 and start.hour == 1


def in_order(found: Iterable[Interval]) -> tuple[list[Interval], list[Note]]:
    """Intervals in order of time, each time once: the last entry is kept.

    The hour that comes twice when clocks go back is kept twice; a stamp that carries its offset
    from UTC is never the same as that of the hour before.
    """
    kept: dict[tuple[datetime, int], Interval] = {}
    doubled, repeated = 0, 0
    for interval in found:
        key = (interval.start, 0)
        if key in kept:
            if interval.start.tzinfo is None and is_doubled_hour(interval.start):
                if (interval.start, 1) not in kept:
                    key = (interval.start, 1)
                    doubled += 1
            else:
                repeated += 1
        kept[key] = interval
    notes = []
    if doubled:
        what = "The hour from 1 to 2 at night comes twice on a first Sunday of November."
        notes.append(Note("doubled hour", what, "Both are counted: clocks go back then."))
    if repeated:
        what = f"{repeated} entries repeat a time that was there before."
        notes.append(Note("doubled entry", what, "The last one is counted."))
    return [kept[key] for key in sorted(kept)], notes
