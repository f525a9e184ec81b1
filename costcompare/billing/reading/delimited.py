"""Text with separators: its characters, its separator, and the row in which the headers stand."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from costcompare.billing.reading.headers import Header, understood
from costcompare.errors import BillsError, Fault

LARGEST = 100_000_000
"""[bytes] ten years of quarter hours are under 40 MB"""
SEPARATORS = (",", ";", "\t", "|")
PREAMBLE_ROWS = 80
"""Rows above the headers that are looked through (judgement: exports have fewer than 20)"""
MOST_COLUMNS = 400
_BYTE_ORDER_MARKS = (
    (b"\xef\xbb\xbf", "utf-8-sig"),
    (b"\xff\xfe", "utf-16"),
    (b"\xfe\xff", "utf-16"),
)


@dataclass(frozen=True)
class Rows:
    """The rows under a row of headers."""

    header: Header
    rows: tuple[tuple[str, ...], ...]
    first_row: int
    """Number in the file of the first of them, counted from 1"""
    decimal_comma: bool
    preamble: tuple[str, ...] = ()

    def cell(self, row: tuple[str, ...], place: int | None) -> str:
        """A cell as text; empty where the row ends before it."""
        return row[place].strip() if place is not None and place < len(row) else ""


def content_of(path: Path) -> bytes:
    """The bytes of a file that is no larger than bills can be."""
    try:
        if path.is_file() and path.stat().st_size > LARGEST:
            raise BillsError([too_large(path.name)])
        return path.read_bytes()
    except OSError as reason:
        rule = f"cannot be read: {reason.strerror or reason}"
        instead = "the path of a file of bills"
        raise BillsError([Fault(str(path), rule, instead=instead)]) from None


def too_large(name: str) -> Fault:
    """The fault of a file that no utility exports."""
    return Fault(name, f"is larger than bills can be ({LARGEST // 1_000_000} MB)")


def text_of(content: bytes, name: str) -> str:
    """Bytes as text: by their byte-order mark, as UTF-8, or as the letters of western Europe."""
    if len(content) > LARGEST:
        raise BillsError([too_large(name)])
    for mark, encoding in _BYTE_ORDER_MARKS:
        if content.startswith(mark):
            return content.decode(encoding, errors="replace")
    try:
        text = content.decode("utf-8")
    except UnicodeDecodeError:
        text = content.decode("latin-1")
    if "\x00" in text[:10_000]:
        rule = "is no text"
        instead = "a CSV or an XML file as the utility exports it"
        raise BillsError([Fault(name, rule, instead=instead)])
    return text


def table_of(text: str, fits: Callable[[Header], bool]) -> Rows | None:
    """The rows under the first row whose headers fit, with the separator that finds most."""
    best: tuple[int, Rows] | None = None
    for separator in SEPARATORS:
        if separator not in text:
            continue
        found = _with(text, separator, fits)
        if found is not None:
            worth = len(found.header.columns) + len(found.header.clock)
            if best is None or worth > best[0]:
                best = worth, found
    return best[1] if best else None


def _with(text: str, separator: str, fits: Callable[[Header], bool]) -> Rows | None:
    rows = _read(text, separator)
    for number, row in enumerate(rows[:PREAMBLE_ROWS]):
        if len(row) < 2 or len(row) > MOST_COLUMNS:
            continue
        header = understood([cell.lstrip("\ufeff# ") for cell in row])
        if fits(header):
            return Rows(
                header,
                tuple(tuple(one) for one in rows[number + 1 :] if any(c.strip() for c in one)),
                number + 2,
                separator == ";",
                tuple(" ".join(one) for one in rows[:number]),
            )
    return None


def _read(text: str, separator: str) -> list[list[str]]:
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=separator, skipinitialspace=True)
    rows: list[list[str]] = []
    try:
        rows.extend(reader)
    except csv.Error:
        # A quote that never closes: what stands above it can still be read.
        return rows
    return rows
