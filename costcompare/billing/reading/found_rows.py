"""Cells of a found table as bills are made of them: dates, use, money, how the meter was read."""

from __future__ import annotations

from collections.abc import Iterable

from costcompare.billing.reading.bills import ReadKind
from costcompare.billing.reading.delimited import Rows
from costcompare.billing.reading.headers import Column, is_other, uses
from costcompare.billing.reading.written import number

_TO_KWH = {"kwh": 1.0, "kw": 1.0, "mwh": 1000.0, "wh": 0.001, "": 1.0}
_READS: dict[str, ReadKind] = {
    "e": "estimated",
    "a": "actual",
    "v": "actual",
    "r": "actual",
    "c": "customer",
}
"""How a cell begins, and how the meter was read then"""
_ELECTRIC = ("electric", "power", "kwh", "energy")
_OTHER = ("gas", "water", "sewer", "therm", "trash", "refuse", "steam", "propane", "internet")


def use_of(rows: Rows, row: tuple[str, ...], columns: Iterable[Column]) -> float | None:
    """The sum of the columns of use [kWh, or kW where the column is a power]; None where empty."""
    unit = rows.header.of("unit")
    total: float | None = None
    for column in columns:
        value = number(rows.cell(row, column.place), decimal_comma=rows.decimal_comma)
        if value is None:
            continue
        told = rows.cell(row, unit.place).lower() if unit else ""
        factor = _TO_KWH.get(column.unit or told, 1.0)
        total = (total or 0.0) + value * factor
    return total


def money_of(rows: Rows, row: tuple[str, ...], column: Column | None) -> float | None:
    """Dollars of a cell; None where it is empty or no number."""
    if column is None:
        return None
    return number(rows.cell(row, column.place), decimal_comma=rows.decimal_comma)


def read_kind(rows: Rows, row: tuple[str, ...]) -> ReadKind:
    """How the meter was read, from its own column or from a remark."""
    note, column = rows.header.of("note"), rows.header.of("read")
    if note and "estimat" in rows.cell(row, note.place).lower():
        return "estimated"
    if column is None:
        return "unknown"
    text = rows.cell(row, column.place).lower()
    if column.header.startswith("estimated"):
        text = {"y": "e", "yes": "e", "true": "e", "1": "e", "x": "e"}.get(text, text)
        text = {"n": "a", "no": "a", "false": "a", "0": "a", "": "a"}.get(text, text)
    return next((kind for start, kind in _READS.items() if text.startswith(start)), "unknown")


def is_electric(rows: Rows, row: tuple[str, ...]) -> bool:
    """False where the row says that it is of gas, water or waste."""
    unit, kind = rows.header.of("unit"), rows.header.of("kind")
    if unit and is_other(rows.cell(row, unit.place).lower()):
        return False
    columns = uses(rows.header)
    if columns and all(is_other(column.unit) for column in columns):
        return False
    if kind is None:
        return True
    text = rows.cell(row, kind.place).lower()
    return any(word in text for word in _ELECTRIC) or not any(word in text for word in _OTHER)
