"""The bars of the page."""

from __future__ import annotations

from datetime import date
from itertools import pairwise

import pytest

from costcompare.comparison import AS_LIVED, AS_WANTED, Comparison
from costcompare.views import numbers
from costcompare.views.figures.rows import (
    bill_bars,
    month_rows,
    position_rows,
    room_strips,
    span,
)

DAY = date(2027, 3, 1)


def test_each_bar_of_the_bill_begins_where_the_last_one_ended(comparison: Comparison) -> None:
    *parts, whole = bill_bars(comparison)
    assert parts[0].start == 0.0
    for before, after in pairwise(parts):
        assert after.start == pytest.approx(before.start + before.value)
    assert whole.start == 0.0
    assert whole.value == pytest.approx(parts[-1].start + parts[-1].value)
    assert whole.text == numbers.dollars_a_year(comparison.today.annual.bill_usd)


def test_months_are_those_of_the_result_and_the_highest_is_called_out(
    comparison: Comparison, option: str
) -> None:
    for warmth in (AS_LIVED, AS_WANTED):
        rows = month_rows(comparison, option, warmth)
        choices = [c for c in comparison.choices if c.warmth == warmth]
        assert [row.tone for row in rows].count("chosen") == 1
        assert rows[0].tone == "now"
        for row, choice in zip(rows, choices, strict=True):
            assert row.values == tuple(month.bill_usd for month in choice.monthly)
            assert row.called_out is not None
            assert row.values[row.called_out] == max(row.values)
            assert numbers.dollars_a_year(choice.annual.bill_usd) in row.figure
    low, high = span(rows)
    assert low == 0.0
    assert high == max(max(row.values) for row in rows)


def test_money_rows_show_every_option_and_never_today(comparison: Comparison, option: str) -> None:
    rows = position_rows(comparison, option, AS_WANTED, DAY)
    options = [c for c in comparison.choices if not c.is_today and c.warmth == AS_WANTED]
    assert [row.title for row in rows] == [choice.name for choice in options]
    for row, choice in zip(rows, options, strict=True):
        assert choice.money is not None
        assert row.values == choice.money.yearly_position_usd
        assert row.ticks[0] == "2027"
        assert row.figure.startswith("money back ")


def test_strips_hold_all_hours_in_which_a_room_is_used(comparison: Comparison, option: str) -> None:
    strips = room_strips(comparison, option)
    assert [strip.room for strip in strips] == [room.name for room in comparison.today.rooms]
    for strip in strips:
        for part in (strip.now, strip.later):
            assert part.cold_hours + part.warm_hours + part.hot_hours == part.wanted_hours
