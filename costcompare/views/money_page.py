"""What compare prints of the money: the four bills, who else pays, loans, the years ahead."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from costcompare.comparison import AS_LIVED, AS_WANTED, Choice, Comparison
from costcompare.views import numbers
from costcompare.views.terminal import Block, Heading, Points, Sentences, Table
from costcompare.views.wording import ways_to_pay
from costcompare.views.wording.emissions import emissions_answer
from costcompare.views.wording.four_bills import degree, four_bills
from costcompare.views.wording.notice import basis_answer
from costcompare.views.wording.outdoors import (
    MILD_AND_COLD,
    cold_evening,
    hour_answer,
    winter_columns,
    winter_lines,
)
from costcompare.views.wording.years_ahead import (
    LIFE_CYCLE_COLUMNS,
    life_cycle_lines,
    once_answers,
    outlook_columns,
    outlook_lines,
)


def money_blocks(
    comparison: Comparison, installed_on: date | None, outdoor_degf: float | None
) -> list[Block]:
    """Everything of the money but the bills and the payback themselves.

    ``installed_on`` is the day from which months are counted; without it they are not
    named. ``outdoor_degf`` is a temperature outdoors that was asked for.
    """
    return [
        *_four_bills(comparison),
        *_incentives(comparison),
        *_ways(comparison),
        *_life_cycle(comparison),
        *(_years(comparison, installed_on) if installed_on is not None else ()),
        *_outdoors(comparison, outdoor_degf),
        *_winters(comparison),
        *_emissions(comparison),
    ]


def _options(comparison: Comparison, warmth: str) -> list[Choice]:
    return [c for c in comparison.choices if not c.is_today and c.warmth == warmth]


def _four_bills(comparison: Comparison) -> Iterator[Block]:
    if not comparison.four_rows:
        return
    yield Heading("The four bills: two systems, two warmths, a year each")
    columns = ("system", AS_LIVED, AS_WANTED, f"each {degree()} between")
    first = comparison.four_rows[0]
    bills = four_bills(first)
    rows = [
        (bills[0].system, bills[0].figure, bills[3].figure, _degree(first.today_one_degree_usd))
    ]
    for one in comparison.four_rows:
        bills = four_bills(one)
        rows.append(
            (bills[1].system, bills[1].figure, bills[2].figure, _degree(one.new_one_degree_usd))
        )
    yield Table(columns, tuple(rows))


def _degree(usd: float | None) -> str:
    """What a degree costs a year, a degree as degrees are written here."""
    step = numbers.shown_degree_degf()
    return numbers.MISSING if usd is None else numbers.dollars_a_year(usd * step)


def _incentives(comparison: Comparison) -> Iterator[Block]:
    """Every incentive of every option: in the price or not, and why."""
    rows = tuple(
        (
            choice.name,
            line.name,
            line.payer or numbers.MISSING,
            numbers.dollars(line.amount_usd),
            "yes" if line.counted else "no",
            line.reason,
        )
        for choice in _options(comparison, AS_LIVED)
        if choice.money is not None
        for line in choice.money.incentives
    )
    if rows:
        yield Heading("What others may pay")
        columns = ("choice", "incentive", "who pays", "amount", "in the price", "why")
        yield Table(columns, rows, left=frozenset({0, 1, 2, 4, 5}))


def _ways(comparison: Comparison) -> Iterator[Block]:
    for choice in _options(comparison, AS_WANTED):
        if choice.money is None or not choice.money.ways_to_pay:
            continue
        ways = choice.money.ways_to_pay
        yield Heading(f"Ways to pay for {choice.name}, against the saving {AS_WANTED}")
        yield Table(ways_to_pay.COLUMNS, ways_to_pay.way_lines(ways))
        yield Points(tuple(ways_to_pay.way_answer(way) for way in ways))


def _life_cycle(comparison: Comparison) -> Iterator[Block]:
    for warmth in (AS_LIVED, AS_WANTED):
        rows = life_cycle_lines(_options(comparison, warmth))
        if rows:
            yield Heading(f"The money over the years, {warmth}, for who wants all of it")
            yield Table(LIFE_CYCLE_COLUMNS, rows)
            yield Sentences(basis_answer(comparison, warmth))


def _years(comparison: Comparison, installed_on: date) -> Iterator[Block]:
    options = _options(comparison, AS_WANTED)
    rows = outlook_lines(options)
    if not rows:
        return
    yield Heading(f"What else the years bring, {AS_WANTED}")
    yield Table(outlook_columns(options), rows)
    points = [
        f"{choice.name}: {text}"
        for choice in options
        if choice.money is not None
        for text in once_answers(choice.money, installed_on)
    ]
    if points:
        yield Points(tuple(points))


def _outdoors(comparison: Comparison, outdoor_degf: float | None) -> Iterator[Block]:
    asked = cold_evening(comparison) if outdoor_degf is None else outdoor_degf
    choices: Sequence[Choice] = [c for c in comparison.choices if c.warmth == AS_WANTED]
    yield Heading(f"An hour of heating when it is cold, {AS_WANTED}")
    yield Sentences(hour_answer(choices, asked))


def _winters(comparison: Comparison) -> Iterator[Block]:
    if comparison.winters:
        yield Heading("A year’s bill in a mild, a typical and a cold winter")
        columns = winter_columns(comparison.winters)
        rows = winter_lines(comparison, comparison.winters)
        yield Table(columns, rows, left=frozenset({0, 1}))
        yield Sentences(MILD_AND_COLD)


def _emissions(comparison: Comparison) -> Iterator[Block]:
    said = tuple(
        f"{choice.name}: {text}"
        for choice in _options(comparison, AS_WANTED)
        if (text := emissions_answer(comparison, choice.name))
    )
    if said:
        yield Heading("What the electricity emits")
        yield Points(said)
