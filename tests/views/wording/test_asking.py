"""What a question is worth and what an answer did, in words."""

from __future__ import annotations

from dataclasses import replace

import pytest

from costcompare.comparison import Band, Comparison
from costcompare.views.wording.asking import (
    narrowing_answer,
    order_words,
    ranged_choice,
    worth_words,
)


def saving_between(ranged: Comparison, low: float, high: float) -> Comparison:
    band = Band(low, (low + high) / 2.0, high)
    choices = [
        replace(
            choice,
            range=replace(choice.range, first_year_saving_usd=band) if choice.range else None,
        )
        for choice in ranged.choices
    ]
    return replace(ranged, choices=tuple(choices))


@pytest.mark.parametrize(
    ("high", "words"),
    [
        (1500.0, "50 % narrower"),
        (2520.0, "about as wide as before"),
        (3500.0, "50 % wider"),
    ],
)
def test_the_range_before_and_after_is_said(
    ranged: Comparison, option: str, high: float, words: str
) -> None:
    before = saving_between(ranged, 500.0, 2500.0)
    said = narrowing_answer(before, saving_between(ranged, 500.0, high), option)
    assert said.startswith("The range of the saving: $500 to $2,500 before, $500 to ")
    assert said.endswith(f" now, {words}.")


def test_without_an_option_it_is_todays_bill(ranged: Comparison) -> None:
    assert "The range of today’s bill: " in narrowing_answer(ranged, ranged, None)


def test_without_ranges_nothing_is_said(
    comparison: Comparison, ranged: Comparison, option: str
) -> None:
    assert narrowing_answer(comparison, ranged, option) == ""


def test_an_option_that_was_not_there_is_not_compared(ranged: Comparison, option: str) -> None:
    others = [choice for choice in ranged.choices if choice.name != option]
    assert narrowing_answer(replace(ranged, choices=tuple(others)), ranged, option) == ""


def test_the_worth_of_an_answer_has_its_money_and_its_share() -> None:
    assert worth_words("today’s bill", -417.0, 0.256) == (
        "alone it moves today’s bill by about $420 a year, 26 % of what is uncertain in it"
    )


def test_the_order_says_what_it_is_by_and_what_weighs_most(ranged: Comparison, option: str) -> None:
    choice = ranged_choice(ranged, option)
    said = order_words(choice, earlier=False)
    assert said.startswith(f"By how much they move the saving with “{option}”")
    assert said.endswith("from how much air the ducts lose (guessed, 60 %).")
    assert "worked out again now" in order_words(choice, earlier=True)
    assert "today’s bill" in order_words(ranged_choice(ranged, "no such option"), earlier=False)
