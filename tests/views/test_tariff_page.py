"""The bills under other tariffs, as ``compare`` prints them."""

from __future__ import annotations

from costcompare.views import numbers
from costcompare.views.tariff_page import other_prices
from costcompare.views.terminal import Table
from tests.test_charges import comparison
from tests.test_stories import example


def test_every_choice_has_a_row_and_every_tariff_a_column() -> None:
    _heading, table, _note = other_prices(comparison())
    assert isinstance(table, Table)
    assert table.columns == ("choice", "warmth", "the prices now", "there")
    for choice, row in zip(comparison().choices, table.rows, strict=True):
        bills = (choice.annual.bill_usd, choice.other_tariffs[0].bill_usd)
        assert row[1:] == (choice.warmth, *map(numbers.dollars_a_year, bills))


def test_a_case_with_one_tariff_has_nothing_of_it() -> None:
    assert other_prices(example("demo")) == []
