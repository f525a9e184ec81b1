"""What a column holds, by the words of its header, whoever the utility is."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import timedelta
from typing import Literal, get_args

from costcompare.billing.reading.written import clock

Meaning = Literal[
    "from", "to", "day", "month", "moment", "time", "end time", "days", "use", "part of use",
    "export", "demand", "unit", "dollars", "amount due", "level payment", "read", "kind", "note",
    "meter", "multiplier", "opening reading", "closing reading", "temperature", "highest",
    "lowest",
]  # fmt: skip
"""What a column can be about"""

_MEANINGS: tuple[tuple[Meaning, str], ...] = (
    ("days", r"^(?:billing |service |number of |no of |# of |bill )*days(?: in period| billed)?$"),
    ("highest", r"\btmax\b|\bmax\w* .*temp|temp\w* max|\bhigh temp|\bdaily high\b"),
    ("lowest", r"\btmin\b|\bmin\w* .*temp|temp\w* min|\blow temp|\bdaily low\b"),
    ("temperature", r"\btemp|\btavg\b|\btmean\b|\bdegc\b|\bdegf\b"),
    ("amount due", r"\bdue\b(?! date)|\bbalance\b|please pay|owed|arrears|past due"),
    ("level payment", r"budget|level+i[sz]ed|even pay|payment plan|average billing|\blevel pay"),
    ("read", r"^read$|read\w* (?:type|code|kind|status|method)|estimated|\bquality\b|actual est"),
    ("from", r"(?:start|begin|from|previous|prior|open)\w*.*(?:date|day)|(?:date|day).*\bfrom\b"),
    ("from", r"(?:period|service|read|bill\w*) (?:start|begin|from)|^(?:from|begin|since)$"),
    ("to", r"(?:\bend|\bto\b|thr(?:ough|u)|current|clos).*(?:date|day)"),
    ("to", r"(?:date|day).*\b(?:to|thru)\b"),
    ("to", r"(?:period|service|read|bill\w*) (?:end|to|thru|through)\b"),
    ("to", r"^(?:to|until|through|thru)$"),
    ("to", r"(?:meter )?read(?:ing)? (?:date|day)|^(?:bill|billing|statement|invoice) date$"),
    ("moment", r"date ?time|time ?stamp|date (?:and|&) time|interval (?:start|begin)|^read time$"),
    ("end time", r"(?:end|to|stop)\w* (?:time|hour)|interval end|time (?:end|to)$"),
    ("moment", r"^start(?:s|ed)?$"),
    ("to", r"^end(?:s|ed)?$"),
    ("time", r"(?:start|begin|from)\w* (?:time|hour)|^time\b|^hour$|^interval$|time of day"),
    ("month", r"^(?:bill\w* |usage |statement )?month(?: year)?$|^bill\w* period$|^period$"),
    ("day", r"\bdate\b|^day$"),
    ("multiplier", r"multiplier|meter constant|ct ratio"),
    ("opening reading", r"(?:previous|prior|begin|start|open|last)\w*(?: meter)? read"),
    ("closing reading", r"(?:current|present|end|clos|this)\w*(?: meter)? read"),
    ("closing reading", r"^meter read(?:ing)?$"),
    ("unit", r"^(?:usage |energy )?(?:unit|uom)s?(?: of measure)?$"),
    ("part of use", r"(?:on|off|mid|super) ?peak(?!.*(?:charge|cost|price))|shoulder|\btier \d"),
    ("export", r"export|received|generat|to grid|surplus|feed ?in|returned|sent back|solar prod"),
    ("dollars", r"cost|charge|amount|\bbill\b|dollars?|\busd\b|\$|^total$|price paid"),
    ("demand", r"demand|\bkw\b"),
    ("use", r"kwh|usage|consum|energy|\buse\b|used|import|delivered|quantity|electric|\bwh\b"),
    ("meter", r"meter(?: (?:number|no|id|serial))?$|service point"),
    ("note", r"notes?$|comment|remark"),
    ("kind", r"^(?:service )?(?:type|kind|service|commodity|fuel)$"),
)  # fmt: skip
"""First that fits; the order holds the meaning of words that stand in several"""

assert {name for name, _ in _MEANINGS} <= set(get_args(Meaning))

_COMPILED = tuple((meaning, re.compile(pattern)) for meaning, pattern in _MEANINGS)
_IGNORED = re.compile(r"degree days?|\bhdd\b|\bcdd\b|due date|rate|address|account|tariff|per day")
_UNIT = re.compile(r"\b(kwh|mwh|wh|kw|therms?|ccf|mcf|gallons?|gal|m3)\b")
_PLAIN = re.compile(r"[\s_/\-.:#()\[\]]+")
BEST_DOLLARS = (
    r"current charges?|new charges?",
    r"electric\w* (?:charges?|cost|amount)",
    r"total (?:charges?|cost|bill|amount|current)",
    r"charges?$|cost|dollars|usd|\$",
    r"total|amount|bill",
)
"""Which of several columns of money is the electricity of the period, best first"""
LONGEST_HEADER = 80
"""[characters] longer cells are text, not headers"""


@dataclass(frozen=True)
class Column:
    """One column whose meaning is known."""

    place: int
    meaning: Meaning
    header: str
    """Lower case, without marks"""
    unit: str = ""
    """``kwh``, ``therms`` … where the header says it"""


@dataclass(frozen=True)
class Header:
    """A row of headers, understood."""

    columns: tuple[Column, ...]
    clock: Mapping[int, timedelta] = field(default_factory=dict)
    """Columns of a wide table and the time of the day at which each begins"""

    def of(self, *meanings: Meaning) -> Column | None:
        """The first column of these meanings, in the order of the meanings."""
        return next((c for m in meanings for c in self.columns if c.meaning == m), None)

    def all_of(self, meaning: Meaning) -> tuple[Column, ...]:
        """Every column of that meaning."""
        return tuple(c for c in self.columns if c.meaning == meaning)


def plain(cell: str) -> str:
    """A header in lower case with single spaces for marks."""
    return _PLAIN.sub(" ", cell.strip().lower()).strip()


def understood(row: Sequence[str]) -> Header:
    """The columns of a row of headers."""
    hours = _clock_columns(row)
    columns = [
        column
        for place, cell in enumerate(row)
        if place not in hours and (column := _column(place, cell)) is not None
    ]
    return Header(tuple(columns), hours)


def _column(place: int, cell: str) -> Column | None:
    header = plain(cell)
    if not header or len(header) > LONGEST_HEADER or _IGNORED.search(header):
        return None
    unit = _UNIT.search(header)
    for meaning, pattern in _COMPILED:
        if pattern.search(header):
            return Column(place, meaning, header, unit[1] if unit else "")
    return None


_HOUR_NAME = re.compile(r"^(?:hour|hr|he|h|interval)? ?(\d{1,2})$")
FEWEST_HOURS = 23
"""Columns that make a wide table: a day may lack the hour that the clocks skip"""


def _clock_columns(row: Sequence[str]) -> dict[int, timedelta]:
    """Where a row holds a day's hours side by side, the time at which each begins."""
    named = [place for place, cell in enumerate(row) if _is_hour(cell)]
    if len(named) < FEWEST_HOURS:
        return {}
    step = min((24, 48, 96), key=lambda count: abs(count - len(named)))
    length = timedelta(hours=24) / step
    # A column more than the day has is the hour that comes twice when clocks go back.
    return {place: min(n, step - 1) * length for n, place in enumerate(named)}


def _is_hour(cell: str) -> bool:
    text = cell.strip().lower()
    first = re.split(r"\s*(?:-|to|\N{EN DASH})\s*(?=\d)", text)[0]
    if ":" in first or first.endswith(("am", "pm")):
        return clock(re.sub(r"\s*kwh$|\(kwh\)$", "", first)) is not None
    match = _HOUR_NAME.match(plain(text))
    return match is not None and int(match[1]) <= 25


def best_dollars(header: Header) -> Column | None:
    """The column of money that is the electricity of the period."""
    columns = header.all_of("dollars")
    for pattern in BEST_DOLLARS:
        for column in columns:
            if re.search(pattern, column.header):
                return column
    return columns[0] if columns else None


def uses(header: Header) -> tuple[Column, ...]:
    """The columns of use that are added: a total, or its parts where there is none."""
    columns = header.all_of("use")
    for wanted in (r"total|net", r"import|delivered", r"."):
        found = [c for c in columns if re.search(wanted, c.header) and not is_other(c.unit)]
        with_unit = [c for c in found if c.unit]
        if found:
            return ((with_unit or found)[0],)
    return header.all_of("part of use") or columns[:1]


def is_other(unit: str) -> bool:
    """Whether a unit is that of gas or water."""
    return unit in {"therm", "therms", "ccf", "mcf", "gallon", "gallons", "gal", "m3"}


def names_of(columns: Iterable[Column]) -> str:
    """Headers for a message."""
    return ", ".join(f'"{column.header}"' for column in columns)
