"""The book of the slider: its prose, its figures and its chart say the same."""

from __future__ import annotations

import json
from typing import Any

import pytest

from costcompare.comparison import AS_WANTED, Comparison
from costcompare.thermostat import Sweep
from costcompare.views import numbers
from costcompare.views.dashboard.book import HELD, LOWERED, WANTED, make_book


@pytest.fixture(scope="module")
def book(comparison: Comparison, swept: Sweep, option: str) -> dict[str, Any]:
    return make_book(comparison, swept, option, "a-key")


def test_there_is_a_page_for_every_setting(book: dict[str, Any], swept: Sweep) -> None:
    for night in (HELD, LOWERED):
        assert [page["setting"] for page in book[night]["pages"]] == list(swept.settings_degf)
    assert len(book[WANTED]["pages"]) == 1
    assert book["start"] in swept.settings_degf


@pytest.mark.parametrize("night", [HELD, LOWERED, WANTED])
def test_sentence_figures_and_bills_of_a_page_agree(book: dict[str, Any], night: str) -> None:
    for page in book[night]["pages"]:
        for text, usd in zip(page["bills"], page["bills_usd"], strict=True):
            assert text == numbers.dollars_a_year(usd)
            assert text in page["answer"]
        assert page["headline"]["after"] == page["bills"][1]
        assert page["headline"]["after"] in page["headline"]["lead"]
        assert page["warm"][1] == f"{page['headline']['warm_after']} of 100"


@pytest.mark.parametrize("night", [HELD, LOWERED])
def test_the_chart_holds_the_bills_of_the_pages(book: dict[str, Any], night: str) -> None:
    chart = book[night]["chart"]
    for row, mark in enumerate(book["marks"][::2]):
        line = chart["data"][mark - 1]
        shown = dict(zip(line["x"], line["y"], strict=True))
        for page in book[night]["pages"]:
            assert shown[page["setting"]] == page["bills_usd"][row]


def test_as_wanted_is_the_home_as_compared(
    book: dict[str, Any], comparison: Comparison, option: str
) -> None:
    bills = book[WANTED]["pages"][0]["bills_usd"]
    assert bills == [
        comparison.choice(name, AS_WANTED).annual.bill_usd
        for name in (comparison.today.name, option)
    ]


def test_the_book_travels_as_json(book: dict[str, Any]) -> None:
    assert len(json.dumps(book)) < 400_000


def test_a_home_without_options_has_a_book_of_today(comparison: Comparison, swept: Sweep) -> None:
    name = comparison.today.name
    for page in make_book(comparison, swept, name, "a-key")[HELD]["pages"]:
        assert page["bills"][0] == page["bills"][1]
        assert "“" not in page["answer"]
