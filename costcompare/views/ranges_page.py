"""How sure the figures of ``compare`` are, as blocks for a terminal."""

from __future__ import annotations

from costcompare.comparison import AS_LIVED, AS_WANTED, Band, Choice, Comparison, Warmth
from costcompare.views import numbers
from costcompare.views.figures.drivers import driver_bars
from costcompare.views.terminal import Heading, Points, Sentences, Table
from costcompare.views.wording.naming import as_a_label
from costcompare.views.wording.sureness import (
    chance_words,
    range_answer,
    saving_range_answer,
    sureness_answer,
    what_ranges_hold,
)

Blocks = list[Heading | Sentences | Points | Table]

COLUMNS = (
    "choice",
    "bill a year, likely",
    "low to high",
    "saving now, likely",
    "low to high",
    "payback, likely",
    "low to high",
    "money back within its life",
)


def how_sure(comparison: Comparison) -> Blocks:
    """The ranges of every choice, what drives them, how the facts are known."""
    blocks: Blocks = [Heading("How sure we are"), Sentences(range_answer(comparison))]
    if comparison.today.range is not None:
        blocks += [_table(comparison, warmth) for warmth in (AS_LIVED, AS_WANTED)]
        blocks += _drivers(comparison)
        blocks.append(Sentences(what_ranges_hold(comparison)))
    return [*blocks, Sentences(sureness_answer(comparison))]


def choice_rows(
    comparison: Comparison,
) -> tuple[tuple[str, ...], tuple[tuple[str, ...], ...]]:
    """The range of every choice at both warmths: columns, then rows of finished text."""
    tables = [_table(comparison, warmth) for warmth in (AS_LIVED, AS_WANTED)]
    return COLUMNS, tuple(row for table in tables for row in table.rows)


def _table(comparison: Comparison, warmth: Warmth) -> Table:
    rows = tuple(
        (f"{as_a_label(choice)}, {warmth}", *_cells(choice))
        for choice in comparison.choices
        if choice.warmth == warmth
    )
    return Table(COLUMNS, rows, left=frozenset({0, 7}))


def _cells(choice: Choice) -> tuple[str, ...]:
    one = choice.range
    if one is None:
        return (numbers.MISSING,) * 7
    chance = one.chance_of_payback_within_life
    return (
        *_money(one.bill_usd),
        *_money(one.first_year_saving_usd),
        *_years(one.simple_payback_years),
        numbers.MISSING if chance is None else chance_words(chance),
    )


def _money(band: Band | None) -> tuple[str, str]:
    if band is None or band.likely is None:
        return numbers.MISSING, numbers.MISSING
    low, high = (numbers.dollars_in_a_range(end) for end in (band.low, band.high))
    return numbers.dollars_a_year(band.likely), f"{low} to {high}"


def _years(band: Band | None) -> tuple[str, str]:
    if band is None:
        return numbers.MISSING, numbers.MISSING
    low, high = numbers.years(band.low), numbers.years(band.high)
    return numbers.years(band.likely), low if low == high else f"{low} to {high}"


def _drivers(comparison: Comparison) -> Blocks:
    """One row a fact for today's bill, one sentence an option."""
    bars = driver_bars(comparison.today)
    if not bars:
        return []
    rows = tuple((bar.label, bar.text) for bar in bars)
    options = [c for c in comparison.choices if not c.is_today and c.warmth == AS_WANTED]
    return [
        Table(("what drives the range of today’s bill", "moves it by"), rows),
        Points(tuple(saving_range_answer(comparison, c.name, AS_WANTED) for c in options)),
    ]
