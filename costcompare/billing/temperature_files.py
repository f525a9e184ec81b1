"""Daily mean temperatures from a plain CSV: days or hours of any number of years."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import numpy as np

from costcompare.billing.daily_temperatures import DailyTemperatures, of_days
from costcompare.billing.reading.delimited import Rows, content_of, table_of, text_of
from costcompare.billing.reading.headers import Column, Header
from costcompare.billing.reading.written import is_day_first, number, split_day
from costcompare.errors import BillsError, Fault

LOWEST_DEGC, HIGHEST_DEGC = -70.0, 55.0
"""Daily means outside are slips (the records of the earth lie about there)"""
HOTTEST_DEGC = 45.0
"""No daily mean of a place with houses is above: what is, is in degrees Fahrenheit (judgement)"""
MOST_WRONG = 0.02
"""Share of values that may be impossible; more is another column or unit (judgement)"""
FEWEST_HOURS = 20
"""Of 24 that a day must have to have a mean (CalTRACK Methods v2.0: at most 6 in a row filled)"""
GZIP_START = b"\x1f\x8b"


def read_daily_temperatures(path: Path) -> DailyTemperatures | None:
    """The days of a CSV with days and temperatures; None where it is another kind of file.

    Highs and lows stand in for a mean: their middle. F or C is told by the header. Raises
    :class:`BillsError` with sentences where the columns are there and cannot be used.
    """
    content = content_of(path)
    if content.startswith(GZIP_START):
        return None
    rows = table_of(text_of(content, path.name), _fits)
    if rows is None:
        return None
    column = rows.header.of("day", "moment", "time")
    columns = _columns(rows.header)
    assert column is not None
    found = _by_day(rows, column, columns)
    if not found:
        rule = "has no line with a day and a temperature"
        raise BillsError([Fault(path.name, rule, instead="for example 2026-01-18,34.5")])
    means = _in_degc(found, columns[0], path.name)
    temperatures = of_days(means, path.name)
    if any("source" in line and "typical" in line for line in rows.preamble):
        return temperatures.mean_year() or temperatures
    return temperatures


def _fits(header: Header) -> bool:
    return header.of("day", "moment", "time") is not None and bool(_columns(header))


def _columns(header: Header) -> tuple[Column, ...]:
    mean = [c for c in header.all_of("temperature") if "sky" not in c.header]
    if mean:
        return (mean[0],)
    high, low = header.of("highest"), header.of("lowest")
    return (high, low) if high and low else ()


def _by_day(rows: Rows, column: Column, columns: tuple[Column, ...]) -> dict[date, list[float]]:
    """The values of each day, as they are written."""
    day_first = is_day_first(rows.cell(row, column.place) for row in rows.rows)
    found: dict[date, list[float]] = {}
    for row in rows.rows:
        parts = split_day(rows.cell(row, column.place), day_first=day_first)
        values = [
            number(rows.cell(row, one.place), decimal_comma=rows.decimal_comma) for one in columns
        ]
        if parts is not None and all(value is not None for value in values):
            told = [value for value in values if value is not None]
            found.setdefault(parts[0], []).append(sum(told) / len(told))
    hourly = found and float(np.median([len(values) for values in found.values()])) > 1.0
    least = FEWEST_HOURS if hourly else 1
    return {day: values for day, values in found.items() if len(values) >= least}


def _in_degc(found: dict[date, list[float]], column: Column, name: str) -> dict[date, float]:
    means = {day: sum(values) / len(values) for day, values in found.items()}
    told = column.header.replace("degc", " c ").replace("degf", " f ").split()
    highest = max(means.values())
    if "f" in told or "fahrenheit" in told or "°f" in told:
        fahrenheit = True
    elif "c" in told or "celsius" in told or "°c" in told:
        fahrenheit = False
    elif highest > HOTTEST_DEGC:
        fahrenheit = True
    else:
        rule = "must say whether it is in F or C"
        instead = f'"{column.header} (F)" or "{column.header} (C)" as its header'
        raise BillsError([Fault(f"{name}: {column.header}", rule, instead=instead)])
    if fahrenheit:
        means = {day: (mean - 32.0) / 1.8 for day, mean in means.items()}
    kept = {d: mean for d, mean in means.items() if LOWEST_DEGC <= mean <= HIGHEST_DEGC}
    if len(kept) < (1.0 - MOST_WRONG) * len(means):
        rule = f"holds {len(means) - len(kept)} days that no place on earth has"
        raise BillsError([Fault(f"{name}: {column.header}", rule, instead="means in F or in C")])
    return kept
