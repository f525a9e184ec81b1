"""Payments beside the saving, month by month."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from costcompare.case import example_path, read_case
from costcompare.comparing import compare
from costcompare.comparison import AS_WANTED, Comparison
from costcompare.views.figures.loans import loan_rows, loans_of
from costcompare.views.wording.naming import choosable


@pytest.fixture(scope="module")
def borrowed() -> Comparison:
    """An example whose options can be paid by loans."""
    return compare(read_case(example_path("new_mover")))


def test_the_saving_less_the_payment_is_what_is_left(borrowed: Comparison) -> None:
    name = choosable(borrowed)[0]
    saving, *left = loan_rows(borrowed, name, AS_WANTED)
    ways = loans_of(borrowed, name, AS_WANTED)
    assert [row.title for row in left] == [way.name for way in ways]
    money = borrowed.choice(name, AS_WANTED).money
    assert money is not None
    assert math.isclose(sum(saving.values), money.first_year_saving_usd, abs_tol=0.01)
    for row, way in zip(left, ways, strict=True):
        for month in range(12):
            expected = saving.values[month] - way.payment_usd
            assert math.isclose(row.values[month], expected, abs_tol=1e-6)
        assert row.values[row.called_out or 0] == min(row.values)


def test_what_is_paid_within_the_year_has_no_row(borrowed: Comparison) -> None:
    name = choosable(borrowed)[0]
    chosen = borrowed.choice(name, AS_WANTED)
    assert chosen.money is not None
    short = tuple(replace(way, months=6) for way in chosen.money.ways_to_pay)
    other = replace(chosen, money=replace(chosen.money, ways_to_pay=short))
    choices = tuple(other if choice is chosen else choice for choice in borrowed.choices)
    assert loan_rows(replace(borrowed, choices=choices), name, AS_WANTED) == ()


def test_without_loans_there_is_nothing(comparison: Comparison, option: str) -> None:
    assert loan_rows(comparison, option, AS_WANTED) == ()
    assert loan_rows(comparison, comparison.today.name, AS_WANTED) == ()
