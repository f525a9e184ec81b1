"""What goes into part five once the ranges are there: the years with their range."""

from __future__ import annotations

from datetime import date
from typing import Any

from costcompare.comparison import Comparison
from costcompare.views import numbers
from costcompare.views.dashboard import pieces
from costcompare.views.dashboard.pieces import Tree, node
from costcompare.views.figures.years_range import YearRange, year_ranges, years_range_answer

TICK_YEARS = 5
"""Every so many years one is named below the bars"""


def years_part(comparison: Comparison, name: str, installed_on: date) -> tuple[Any, ...]:
    """The sentence, the label, the bars and the table; empty where nothing is installed."""
    years = year_ranges(comparison, name, installed_on)
    if not years:
        return "absent", "", "", None, None
    answer = years_range_answer(comparison, name, years)
    rows = [
        (
            str(one.year),
            numbers.dollars_in_a_range(one.low),
            numbers.dollars_a_year(one.likely),
            numbers.dollars_in_a_range(one.high),
        )
        for one in years
    ]
    head = ("End of", "One home in ten has less than", "Middle", "One in ten has more than")
    table = pieces.table("Money out of pocket over the years, with its range", head, rows)
    return "", answer, answer, range_bars(years), table


def range_bars(years: tuple[YearRange, ...]) -> Tree:
    """A bar a year from low to high, with a line across it at the middle."""
    low = min(0.0, *(one.low for one in years))
    height = max(0.0, *(one.high for one in years)) - low or 1.0

    def at(usd: float) -> float:
        return 100.0 * (usd - low) / height

    cells = [
        node(
            "span",
            [
                node(
                    "span",
                    class_="cell-fill",
                    style=f"bottom:{at(one.low):.2f}%;height:{at(one.high) - at(one.low):.2f}%",
                ),
                node("span", class_="cell-middle", style=f"bottom:{at(one.likely):.2f}%"),
            ],
            class_="cell",
            title=one.text,
        )
        for one in years
    ]
    zero = node("span", class_="zero-line", style=f"bottom:{at(0.0):.2f}%")
    ends = [
        node("span", numbers.dollars_in_a_range(low + height), class_="range-top"),
        node("span", numbers.dollars_in_a_range(low), class_="range-bottom"),
    ]
    ticks = [
        node("span", str(one.year) if number % TICK_YEARS == 0 else "")
        for number, one in enumerate(years)
    ]
    bars = node("div", [*cells, zero], class_="row-bars range-bars")
    return node("div", [ends[0], bars, ends[1], node("div", ticks, class_="row-ticks")])
