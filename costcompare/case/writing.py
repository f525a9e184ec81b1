"""Writing a document as the text of a case file: what :mod:`read` reads back as it was.

Sections and their inner tables get headings of their own, rows of rooms, doorways, options
and incentives too; what stands inside a row is written on one line. Comments of a file that
was read are not kept: a document holds none.
"""

from __future__ import annotations

import json
import math
import re
from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from typing import Any

from costcompare.case.partial import rule_at
from costcompare.case.paths import Location
from costcompare.case.values import Day

HEADING = """\
# A case for costcompare. Text values carry their units: "68 F", "R-19", "1200 cfm".
# What is left out is filled from the years, the condition and the place, and shown as guessed.
"""
_BARE_KEY = re.compile(r"[A-Za-z0-9_-]+")
_LONGEST_LINE = 88
_MOST_INLINE = 4
"""Values that a table inside a section may have to stand on one line"""


def case_text(document: Mapping[str, Any]) -> str:
    """The TOML text of a case document.

    Days may be text, as in documents that went through JSON; they are written as days.
    Raises ValueError for a value that TOML cannot hold.
    """
    lines = [*_section(document, (), ()), ""]
    return HEADING + "\n".join(lines).lstrip("\n") if any(lines) else HEADING


def _section(
    table: Mapping[str, Any], path: tuple[str, ...], location: Location, *, row: bool = False
) -> Iterator[str]:
    """The lines of a table: its own values first, then the tables inside it."""
    inner = {key: value for key, value in table.items() if _has_heading(value, path)}
    if path and (row or len(inner) < len(table) or not inner):
        name = ".".join(map(_key, path))
        yield from ("", f"[[{name}]]" if row else f"[{name}]")
    for key, value in table.items():
        if key not in inner:
            yield f"{_key(key)} = {_value(value, (*location, key), len(_key(key)))}"
    for key, value in inner.items():
        if isinstance(value, Mapping):
            yield from _section(value, (*path, key), (*location, key))
        else:
            for number, item in enumerate(value):
                yield from _section(item, (*path, key), (*location, key, number), row=True)


def _has_heading(value: Any, path: tuple[str, ...]) -> bool:
    """Whether a value gets a heading of its own: tables of sections, lists of named rows."""
    if isinstance(value, Mapping):
        if not path:
            return "likely" not in value
        plain = all(not isinstance(item, Mapping | list) for item in value.values())
        return "likely" not in value and not (plain and len(value) <= _MOST_INLINE)
    named = isinstance(value, list) and bool(value) and all(isinstance(v, Mapping) for v in value)
    return named and all("name" in item or "between" in item for item in value) and len(path) < 2


def _value(value: Any, location: Location, used: int = 0) -> str:
    if isinstance(value, Mapping):
        pairs = [f"{_key(key)} = {_value(v, (*location, key))}" for key, v in value.items()]
        return f"{{ {', '.join(pairs)} }}" if pairs else "{}"
    if isinstance(value, list | tuple):
        return _list(value, location, used)
    return _single(value, location)


def _list(values: Sequence[Any], location: Location, used: int) -> str:
    """A list on one line, or one item a line where that would be long."""
    items = [_value(item, (*location, number)) for number, item in enumerate(values)]
    line = f"[{', '.join(items)}]"
    if used + len(line) <= _LONGEST_LINE or not items:
        return line
    return "\n".join(["[", *(f"  {item}," for item in items), "]"])


def _single(value: Any, location: Location) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int):
        return str(value)
    if isinstance(value, float):
        if not math.isfinite(value):
            raise ValueError("a case holds finite numbers only")
        return repr(value)
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, str):
        return value.strip() if _is_day(value, location) else _quoted(value)
    raise ValueError(f"a case cannot hold {type(value).__name__}")


def _is_day(text: str, location: Location) -> bool:
    """Whether a text stands where a day belongs, and is one."""
    if not isinstance(rule_at(location), Day):
        return False
    try:
        return date.fromisoformat(text.strip()).isoformat() == text.strip()
    except ValueError:
        return False


def _key(key: str) -> str:
    return key if _BARE_KEY.fullmatch(key) else _quoted(key)


def _quoted(text: str) -> str:
    """A text in quotes: JSON's escapes are TOML's, but for the delete character."""
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")
