"""The months and the rooms of a comparison as a table for a spreadsheet.

A spreadsheet runs a cell that looks like a formula, whoever wrote it: a text that begins
with a sign that starts one gets an apostrophe in front (general guidance on CSV injection,
from memory). Figures are plain numbers with their unit in the head of the column.
"""

from __future__ import annotations

import csv
import io
import math
from collections.abc import Iterator, Sequence

from costcompare.comparison import Choice, Comparison, RoomYear
from costcompare.views import numbers
from costcompare.views.report.catalogue import ENGLISH, Catalogue

STARTS_A_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n")
BYTE_ORDER_MARK = "\N{ZERO WIDTH NO-BREAK SPACE}"
"""So that a spreadsheet reads the file as UTF-8"""

Value = str | int | float


def export_csv(comparison: Comparison, *, units: numbers.Units = "customary") -> str:
    """Every month and every room of every choice at both warmths: two tables, one below the other.

    Texts are quoted and never a formula; lines end in CR LF (RFC 4180).
    """
    out = io.StringIO()
    writer = csv.writer(out, quoting=csv.QUOTE_NONNUMERIC, lineterminator="\r\n")
    with numbers.written(units, comparison.currency):
        for row in _rows(comparison, ENGLISH):
            writer.writerow([safe(value) if isinstance(value, str) else value for value in row])
    return BYTE_ORDER_MARK + out.getvalue()


def safe(text: str) -> str:
    """The text; one that a spreadsheet would run, with an apostrophe in front."""
    starts = text.lstrip().startswith(STARTS_A_FORMULA) or text.startswith(STARTS_A_FORMULA)
    return f"'{text}" if starts else text


def _rows(comparison: Comparison, words: Catalogue) -> Iterator[Sequence[Value]]:
    yield (words.home, comparison.title)
    yield (words.weather, comparison.weather.station)
    yield ()
    money = f"{words.csv_bill} ({numbers.currency()})"
    yield (words.choice, words.warmth, words.month, *words.csv_months, money)
    for choice in comparison.choices:
        yield from _months(choice)
    yield ()
    degrees = numbers.degree_unit()
    yield (
        words.choice,
        words.warmth,
        words.room,
        *words.csv_rooms,
        words.csv_coldest.format(degrees),
        words.csv_winter.format(degrees),
        words.csv_unmet,
    )
    for choice in comparison.choices:
        for room in choice.rooms:
            yield (choice.name, choice.warmth, *_room(room))


def _months(choice: Choice) -> Iterator[Sequence[Value]]:
    for month in choice.monthly:
        yield (
            choice.name,
            choice.warmth,
            month.month,
            round(month.electricity_kwh, 1),
            round(month.heating_kwh, 1),
            round(month.cooling_kwh, 1),
            round(month.bill_usd, 2),
        )


def _room(room: RoomYear) -> Sequence[Value]:
    coldest, winter = room.minimum_temperature_degf, room.winter_mean_degf
    if numbers.in_si():
        coldest, winter = room.minimum_temperature_degc, room.winter_mean_degc
    return (
        room.name,
        room.wanted_hours,
        room.comfort_hours,
        room.cold_hours,
        room.hot_hours,
        round(coldest, 1),
        "" if math.isnan(winter) else round(winter, 1),
        round(room.unmet_heat_kwh, 1),
    )
