"""Documents that come from a browser or from an opened file: what is refused, what is made plain.

A document from a browser may be anything. It may not name a file, unless the opened case names
the same, and it may not be so large that working it out would keep others waiting. What its
values may be is left to the reader of cases.
"""

from __future__ import annotations

import json
import math
from collections.abc import Mapping
from datetime import date, time
from typing import Any

from costcompare.case.paths import DEEPEST
from costcompare.errors import CaseError, Fault

Doc = dict[str, Any]

LARGEST_FILE = 200_000
"""[bytes] of a case file or document (judgement: the largest example has 7,000)"""
MOST = {"rooms": 40, "doorways": 80, "options": 12, "bills": 80}
"""Rows that the page takes (judgement: far above any real home)"""
FILES = (("weather", "file"), ("bills", "file"))
"""Keys that name a file on the machine that serves the page"""


def taken_in(given: Any, opened: Mapping[str, Any]) -> Doc:
    """A document of plain JSON values; raises CaseError where the page does not take it."""
    if not isinstance(given, Mapping):
        raise CaseError([Fault("the case", "must be a table of keys and values")])
    document: Doc = _plain(given, 0)
    size = len(json.dumps(document))
    if size > LARGEST_FILE:
        rule = f"is too large for this page: the limit is {LARGEST_FILE:,} characters"
        raise CaseError([Fault("the case", rule, f"{size:,}")])
    faults = [
        Fault(key, f"this page takes {most} rows at most", str(len(rows)))
        for key, most in MOST.items()
        if isinstance(rows := document.get(key), list) and len(rows) > most
    ]
    faults += _files(document, opened)
    if faults:
        raise CaseError(faults)
    _flatten_sets(document)
    return document


def _plain(value: Any, depth: int) -> Any:
    """Values as JSON has them: days as text; what no case holds is refused."""
    if depth > DEEPEST:
        raise CaseError([Fault("the case", "is nested too deeply to be a case")])
    if isinstance(value, Mapping):
        return {_text(str(key)): _plain(item, depth + 1) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [_plain(item, depth + 1) for item in value]
    if isinstance(value, date | time):
        return value.isoformat()
    if isinstance(value, str):
        return _text(value)
    if isinstance(value, float) and not math.isfinite(value):
        raise CaseError([Fault("the case", "holds finite numbers only", str(value))])
    if isinstance(value, int) and abs(value) > 10**15:
        raise CaseError([Fault("the case", "holds no number as large as that")])
    return value


def _text(text: str) -> str:
    """A text that can be written to a file: no halves of letters."""
    return text.encode("utf-8", "replace").decode("utf-8")


def _files(document: Doc, opened: Mapping[str, Any]) -> list[Fault]:
    faults = []
    for section, key in FILES:
        table = document.get(section)
        named = table.get(key) if isinstance(table, Mapping) else None
        theirs = opened.get(section)
        known = theirs.get(key) if isinstance(theirs, Mapping) else None
        if named is not None and named != known:
            rule = "the page opens no files by name: serve a case that names it"
            faults.append(Fault(f"{section}.{key}", rule, str(named)[:80]))
    return faults


def _flatten_sets(document: Doc) -> None:
    """Changes of options under dotted paths, however the file wrote them."""
    options = document.get("options")
    for row in options if isinstance(options, list) else ():
        if isinstance(row, dict) and isinstance(row.get("set"), Mapping):
            row["set"] = dict(_leaves(row["set"], ""))


def _leaves(table: Mapping[str, Any], path: str) -> list[tuple[str, Any]]:
    found: list[tuple[str, Any]] = []
    for key, value in table.items():
        whole = not isinstance(value, Mapping) or "likely" in value or not value
        if whole or key.rpartition(".")[2] in WHOLE or set(value) <= {"low", "high"}:
            found.append((f"{path}{key}", value))
        else:
            found += _leaves(value, f"{path}{key}.")
    return found


WHOLE = frozenset({"registers", "outside_walls", "windows"})
"""Tables that are one value"""
