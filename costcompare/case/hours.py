"""Hours of the day and months of the year as people write them: ``22-6``, ``10-3``.

A range of hours starts at the first hour and ends before the second, by the local clock:
``6-10`` is four hours. A range of months holds both ends: ``10-3`` is six months. Both
may run over the end of the day or the year, and several are joined by commas.
"""

from __future__ import annotations

import re
from calendar import monthrange

from costcompare.case.tariff_facts import YearDays

_DAYS_OF_YEAR = re.compile(r"(\d{1,2})-(\d{1,2})\s*to\s*(\d{1,2})-(\d{1,2})")
_RANGE = re.compile(r"(\d{1,2})(?:\s*-\s*(\d{1,2}))?")
_ALL = frozenset({"all", "always", "all day", "all year"})


def hours_of_day(text: str) -> tuple[bool, ...]:
    """24 flags from text such as ``6-9,17-23``; ValueError says what is wrong."""
    if text.strip().lower() in _ALL:
        return (True,) * 24
    flags = [False] * 24
    for start, end in _ranges(text):
        if end is None or start > 23 or end > 24:
            raise ValueError("must be hours from 0 to 24 such as 6-23")
        if start == end:
            raise ValueError("must be a range that lasts at least an hour")
        length = (end - start) % 24 or 24
        for hour in range(start, start + length):
            flags[hour % 24] = True
    return tuple(flags)


def months_of_year(text: str) -> tuple[bool, ...]:
    """12 flags, January first, from text such as ``10-3`` or ``6,7,8``."""
    if text.strip().lower() in _ALL:
        return (True,) * 12
    flags = [False] * 12
    for start, end in _ranges(text):
        last = start if end is None else end
        if not (1 <= start <= 12 and 1 <= last <= 12):
            raise ValueError("must be months from 1 to 12 such as 10-3")
        for month in range(start, start + (last - start) % 12 + 1):
            flags[(month - 1) % 12] = True
    return tuple(flags)


def days_of_year(text: str) -> YearDays:
    """The first and the last day of every year from text such as ``06-15 to 09-14``."""
    match = _DAYS_OF_YEAR.fullmatch(text.strip())
    rule = "must be two days, month and day, such as 06-15 to 09-14"
    if match is None:
        raise ValueError(rule)
    first, last = (int(match[1]), int(match[2])), (int(match[3]), int(match[4]))
    for month, day in (first, last):
        if not (1 <= month <= 12 and 1 <= day <= monthrange(2028, month)[1]):
            raise ValueError(rule)
    return YearDays(first, last)


def days_of_bill(text: str) -> tuple[int, int]:
    """The fewest and the most days from text such as ``27-34``."""
    ranges = _ranges(text)
    if len(ranges) != 1 or ranges[0][1] is None:
        raise ValueError("must be the fewest and the most days such as 27-34")
    return ranges[0][0], ranges[0][1]


def written(flags: tuple[bool, ...]) -> str:
    """24 flags as the text that :func:`hours_of_day` reads."""
    if all(flags):
        return "all"
    starts = [h for h in range(24) if flags[h] and not flags[h - 1]]
    ranges = []
    for start in starts:
        end = start
        while flags[end % 24]:
            end += 1
        ranges.append(f"{start}-{end % 24 or 24}")
    return ",".join(ranges)


def _ranges(text: str) -> list[tuple[int, int | None]]:
    found = []
    for part in text.split(","):
        match = _RANGE.fullmatch(part.strip())
        if match is None:
            raise ValueError("must be ranges of whole numbers such as 6-9,17-23")
        found.append((int(match[1]), int(match[2]) if match[2] else None))
    return found
