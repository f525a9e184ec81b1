"""Numbers, days and times as people and utilities write them."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable
from datetime import date, datetime, timedelta

_NUMBER = re.compile(r"[-+]?(?:\d{1,3}(?:,\d{3})+|\d+)?(?:\.\d*)?(?:[eE][-+]?\d{1,2})?")
_COMMA_NUMBER = re.compile(r"[-+]?(?:\d{1,3}(?:\.\d{3})+|\d+)?,\d+")
_MARKS = str.maketrans(
    {"\N{MINUS SIGN}": "-", "\N{NO-BREAK SPACE}": " ", "\N{EN DASH}": "-", "\N{EURO SIGN}": ""}
)
_UNIT_BEHIND = re.compile(r"\s*(?:kwh|kw|wh|w|usd|dollars?|days?)$", re.IGNORECASE)
LARGEST = 1e9
"""Beyond any bill; what is larger is no number of one"""

MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_ISO = re.compile(r"(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})")
_PACKED = re.compile(r"(\d{4})(\d{2})(\d{2})")
_SLASHED = re.compile(r"(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}|\d{2})")
_MONTH_FIRST = re.compile(r"([a-z]{3,9})\.?\s+(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d{4})")
_DAY_FIRST = re.compile(r"(\d{1,2})[-\s]([a-z]{3,9})\.?[-\s,]+(\d{4}|\d{2})")
_MONTH_ALONE = re.compile(r"(?:([a-z]{3,9})\.?[-\s,]+(\d{4}|\d{2}))|(?:(\d{4})-(\d{1,2}))")
_CLOCK = re.compile(r"(\d{1,2})(?::(\d{2}))?(?::(\d{2}))?(?:\.\d+)?\s*([ap]\.?m\.?)?")
_OFFSET = re.compile(r"\s*(?:z|utc|[-+]\d{2}:?\d{2}|[ecmp][sd]t)$")
FIRST_YEAR, LAST_YEAR = 1950, 2150


def number(text: str, *, decimal_comma: bool = False) -> float | None:
    """``"1,234.5"``, ``"$0.12 "``, ``"(35.20)"`` as a number; None where it is none."""
    plain = text.translate(_MARKS).strip()
    negative = plain.startswith("(") and plain.endswith(")")
    plain = plain.strip("()").replace("$", "").replace(" ", "")
    plain = _UNIT_BEHIND.sub("", plain)
    if plain.endswith("-"):
        plain = f"-{plain[:-1]}"
    if plain.upper().endswith("CR"):
        plain = f"-{plain[:-2]}"
    if decimal_comma and _COMMA_NUMBER.fullmatch(plain):
        plain = plain.replace(".", "").replace(",", ".")
    if not any(c.isdigit() for c in plain) or not _NUMBER.fullmatch(plain):
        return None
    value = float(plain.replace(",", ""))
    if not math.isfinite(value) or abs(value) > LARGEST:
        return None
    return -value if negative else value


def is_day_first(texts: Iterable[str]) -> bool:
    """Whether a column writes the day before the month: some first number is above 12."""
    found = [match for text in texts if (match := _SLASHED.match(text.strip()))]
    return any(int(match[1]) > 12 for match in found) and all(
        int(match[2]) <= 12 for match in found
    )


def _year(text: str) -> int:
    return int(text) if len(text) == 4 else 2000 + int(text)


def _day(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day) if FIRST_YEAR <= year <= LAST_YEAR else None
    except ValueError:
        return None


def _month(word: str) -> int:
    return MONTHS.index(word[:3]) + 1 if word[:3] in MONTHS else 0


def split_day(text: str, *, day_first: bool = False) -> tuple[date, str] | None:
    """The day that a text begins with and what follows it; None where there is none."""
    plain = text.strip().lower()
    if match := (_ISO.match(plain) or _PACKED.match(plain)):
        day = _day(int(match[1]), int(match[2]), int(match[3]))
    elif match := _SLASHED.match(plain):
        month, of_month = (match[2], match[1]) if day_first else (match[1], match[2])
        day = _day(_year(match[3]), int(month), int(of_month))
    elif match := _MONTH_FIRST.match(plain):
        day = _day(int(match[3]), _month(match[1]), int(match[2]))
    elif match := _DAY_FIRST.match(plain):
        day = _day(_year(match[3]), _month(match[2]), int(match[1]))
    else:
        return None
    rest = plain[match.end() :]
    if day is None or rest[:1].isdigit():
        return None
    return day, rest.lstrip("t, ").strip()


def day_of(text: str, *, day_first: bool = False) -> date | None:
    """The day that a text is, a time of the day behind it left out."""
    parts = split_day(text, day_first=day_first)
    if parts is None or (parts[1] and clock(parts[1]) is None):
        return None
    return parts[0]


def clock(text: str) -> timedelta | None:
    """``"13:15"``, ``"1:15 PM"``, ``"24:00"`` as time since midnight; None where it is none."""
    plain = _OFFSET.sub("", text.strip().lower())
    match = _CLOCK.fullmatch(plain)
    if match is None:
        return None
    hour, minute, second = int(match[1]), int(match[2] or 0), int(match[3] or 0)
    if match[4]:
        if not 1 <= hour <= 12:
            return None
        hour = hour % 12 + (12 if match[4].startswith("p") else 0)
    elif match[2] is None and hour > 24:
        return None
    if hour > 24 or minute > 59 or second > 59 or (hour == 24 and (minute or second)):
        return None
    return timedelta(hours=hour, minutes=minute, seconds=second)


def moment_of(text: str, time: str = "", *, day_first: bool = False) -> datetime | None:
    """A moment on the local clock from one text or from a day and a time."""
    parts = split_day(text, day_first=day_first)
    if parts is None:
        return None
    told = time.strip() or parts[1]
    since = clock(told) if told else timedelta()
    if since is None:
        return None
    return datetime.combine(parts[0], datetime.min.time()) + since


def month_of(text: str) -> date | None:
    """The first day of ``"Jan 2026"``, ``"January 2026"`` or ``"2026-01"``."""
    match = _MONTH_ALONE.fullmatch(text.strip().lower())
    if match is None:
        return None
    if match[1]:
        return _day(_year(match[2]), _month(match[1]), 1)
    return _day(int(match[3]), int(match[4]), 1)


def next_month(first: date) -> date:
    """The first day of the month after."""
    return date(first.year + first.month // 12, first.month % 12 + 1, 1)
