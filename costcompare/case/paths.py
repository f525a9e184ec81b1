"""Dotted paths into a case: ``rooms.hall.floor_area``, ``options."Two heads".installed_cost``.

Keys are joined by dots. A row of a list is reached by its ``name``, or by its number
counted from 1 where it has none. A part that holds a dot stands in double quotes.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

Location = tuple[str | int, ...]
"""Keys and list indices counted from 0, as pydantic gives them"""

DEEPEST = 12
"""Levels of tables that a case may have; the shape needs 6"""


def split(path: str) -> list[str]:
    """The parts of a path; ValueError when a quote is not closed or a part is empty."""
    parts: list[str] = []
    part, quoted, was_quoted = "", False, False
    for letter in path:
        if letter == '"':
            quoted = not quoted
            was_quoted = True
        elif letter == "." and not quoted:
            parts.append(part if was_quoted else part.strip())
            part, was_quoted = "", False
        else:
            part += letter
    parts.append(part if was_quoted else part.strip())
    if quoted:
        raise ValueError("has a double quote that is not closed")
    if not all(parts):
        raise ValueError("has an empty part between dots")
    return parts


def join(parts: Iterable[str | int]) -> str:
    """One path from its parts."""
    return ".".join(f'"{p}"' if "." in str(p) or p == "" else str(p) for p in parts)


def described(location: Sequence[str | int], document: Any) -> str:
    """A location in a document as a path, with rows named by their names."""
    parts: list[str] = []
    place = document
    for step in location:
        row = isinstance(step, int) and isinstance(place, list) and 0 <= step < len(place)
        if row:
            place = place[int(step)]
            parts.append(row_name(place) or str(int(step) + 1))
            continue
        place = place.get(step) if isinstance(place, Mapping) else None
        if step != "[key]":
            parts.append(str(step))
    return join(parts)


def row_name(row: Any) -> str:
    """The name of a row, or nothing where it has none that can stand in a path."""
    name = row.get("name") if isinstance(row, Mapping) else None
    return name.strip() if isinstance(name, str) and '"' not in name else ""


def find_row(rows: Sequence[Any], part: str) -> int | None:
    """Index of the row with that name, else of that number counted from 1."""
    for index, row in enumerate(rows):
        if row_name(row) == part:
            return index
    if part.isdecimal() and 1 <= int(part) <= len(rows):
        return int(part) - 1
    return None


def copied(value: Any, depth: int = 0) -> Any:
    """A copy of a document's tables and lists, down to the deepest level."""
    if depth > DEEPEST:
        return value
    if isinstance(value, Mapping):
        return {key: copied(item, depth + 1) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [copied(item, depth + 1) for item in value]
    return value
