"""Bars as plain values: the page gives them their shape, so that long names can wrap."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Literal

from costcompare.comparison import AS_WANTED, Choice, Comparison, RoomYear, Warmth
from costcompare.views import numbers
from costcompare.views.wording.bill import bill_lines
from costcompare.views.wording.naming import as_a_label
from costcompare.views.wording.payback import payback_words
from costcompare.views.wording.running import choices_at, year_words

Tone = Literal["now", "chosen", "other", "taken", "whole"]
"""What a bar stands for; the page gives each its colour"""


@dataclass(frozen=True)
class Bar:
    """One horizontal bar with its label and its value in words."""

    label: str
    start: float
    """Where the bar begins: at the end of the one before it, so that the bars add up"""
    value: float
    text: str
    tone: Tone


@dataclass(frozen=True)
class BarRow:
    """A row of small upright bars under one title, all rows on one scale."""

    title: str
    figure: str
    """What the row comes to, in words under the title"""
    tone: Tone
    values: tuple[float, ...]
    texts: tuple[str, ...]
    ticks: tuple[str, ...]
    called_out: int | None
    """The bar whose value stands above it"""


@dataclass(frozen=True)
class Strip:
    """The wanted hours of one room in one choice: too cold, warm and too hot."""

    label: str
    tone: Tone
    cold_hours: int
    warm_hours: int
    hot_hours: int
    wanted_hours: int


@dataclass(frozen=True)
class RoomStrips:
    """One room now and afterwards."""

    room: str
    now: Strip
    later: Strip


def bill_bars(comparison: Comparison) -> tuple[Bar, ...]:
    """The parts of today's bill, each from where the last one ended, and the bill itself."""
    bars = []
    reached = 0.0
    for line in bill_lines(comparison):
        tone: Tone = "now" if line.is_duct else "taken" if line.usd < 0 else "other"
        bars.append(Bar(line.label, reached, line.usd, numbers.dollars(line.usd), tone))
        reached += line.usd
    bars.append(Bar("Together, the year’s bill", 0.0, reached, numbers.dollars(reached), "whole"))
    return tuple(bars)


def month_rows(comparison: Comparison, name: str, warmth: Warmth) -> tuple[BarRow, ...]:
    """The twelve bills of every choice at one warmth, today first."""
    rows = []
    for choice in choices_at(comparison, warmth):
        bills = tuple(month.bill_usd for month in choice.monthly)
        rows.append(
            BarRow(
                title=as_a_label(choice),
                figure=year_words(choice),
                tone=tone_of(choice, name),
                values=bills,
                texts=tuple(numbers.dollars_a_month(bill) for bill in bills),
                ticks=tuple(numbers.month_name(month.month)[0] for month in choice.monthly),
                called_out=bills.index(max(bills)),
            )
        )
    return tuple(rows)


def position_rows(
    comparison: Comparison, name: str, warmth: Warmth, installed_on: date
) -> tuple[BarRow, ...]:
    """Money out of pocket so far of every option, year by year."""
    rows = []
    for choice in choices_at(comparison, warmth):
        money = choice.money
        if money is None or choice.is_today:
            continue
        position = money.yearly_position_usd
        last = len(position) - 1
        rows.append(
            BarRow(
                title=as_a_label(choice),
                figure=f"money back {payback_words(money, installed_on)}",
                tone=tone_of(choice, name),
                values=position,
                texts=tuple(numbers.dollars_a_year(usd) for usd in position),
                ticks=tuple(
                    str(installed_on.year + year) if year % 5 == 0 else ""
                    for year in range(len(position))
                ),
                called_out=last,
            )
        )
    return tuple(rows)


def room_strips(comparison: Comparison, name: str) -> tuple[RoomStrips, ...]:
    """Every room today as you live now, and with the choice at the warmth you want."""
    chosen = comparison.choice(name, AS_WANTED)
    return tuple(
        RoomStrips(
            room=now.name,
            now=_strip("now", "now", now),
            later=_strip(as_a_label(chosen), "chosen", later),
        )
        for now, later in zip(comparison.today.rooms, chosen.rooms, strict=True)
    )


def tone_of(choice: Choice, name: str) -> Tone:
    """Today, the option that is set against it, or one of the others."""
    if choice.is_today:
        return "now"
    return "chosen" if choice.name == name else "other"


def span(rows: Sequence[BarRow]) -> tuple[float, float]:
    """Lowest and highest value over all rows, with zero inside."""
    values = [value for row in rows for value in row.values]
    return min(0.0, *values), max(0.0, *values)


def _strip(label: str, tone: Tone, room: RoomYear) -> Strip:
    return Strip(
        label=label,
        tone=tone,
        cold_hours=room.cold_hours,
        warm_hours=room.comfort_hours,
        hot_hours=room.hot_hours,
        wanted_hours=room.wanted_hours,
    )
