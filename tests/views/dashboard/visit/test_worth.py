"""How much of a range each question is worth, and in which order the form asks."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest

from costcompare.case import case_from_document
from costcompare.comparison import Comparison, Driver
from costcompare.views.dashboard.pieces import texts
from costcompare.views.dashboard.visit.answers import answered
from costcompare.views.dashboard.visit.deeds import new_visit
from costcompare.views.dashboard.visit.doors import Desk
from costcompare.views.dashboard.visit.fields import Asked
from costcompare.views.dashboard.visit.form import to_ask_first, visit_form
from costcompare.views.dashboard.visit.worth import weights_of

Doc = dict[str, Any]

DRIVERS = (
    Driver("house.attic_insulation", "the ceilings", "guessed", 500.0, 0.5),
    Driver("today.ducts.supply_leakage", "supply leakage", "guessed", -300.0, 0.18),
    Driver("today.ducts.return_leakage", "return leakage", "guessed", 400.0, 0.32),
)


@pytest.fixture
def weighed(ranged: Comparison) -> Comparison:
    """Ranges with these drivers in every choice."""
    choices = [
        replace(choice, range=replace(choice.range, drivers=DRIVERS) if choice.range else None)
        for choice in ranged.choices
    ]
    return replace(ranged, choices=tuple(choices))


def test_one_answer_that_settles_two_facts_is_worth_both(weighed: Comparison, option: str) -> None:
    weights = weights_of(weighed, new_visit(), option)
    assert weights is not None
    worth = weights.by_place["today", "ducts", "condition"]
    assert math.isclose(worth.swing_usd, 500.0)
    assert math.isclose(worth.share, 0.5)


def test_a_fact_that_is_stated_stands_for_itself(weighed: Comparison, option: str) -> None:
    stated = answered(new_visit(), ("today", "ducts", "supply_leakage"), "12", "seen")
    weights = weights_of(weighed, stated, option)
    assert weights is not None
    assert math.isclose(weights.share(("today", "ducts", "supply_leakage")), 0.18)
    assert math.isclose(weights.share(("today", "ducts", "condition")), 0.32)


def test_without_ranges_nothing_is_weighed(comparison: Comparison, option: str) -> None:
    assert weights_of(comparison, new_visit(), option) is None


def test_what_drives_the_range_is_asked_first_after_what_everything_hangs_on(
    weighed: Comparison, option: str
) -> None:
    document = answered(new_visit(), ("site", "latitude"), "36", "seen")
    weights = weights_of(weighed, document, option)
    case = case_from_document(document)
    order = [at for at, _label, _why in to_ask_first(Asked(document, case, weights))]
    everything = order.index(("tariff", "price"))
    assert everything < order.index(("house", "attic_insulation"))
    assert order.index(("house", "attic_insulation")) < order.index(("house", "built"))
    usual = [at for at, _label, _why in to_ask_first(Asked(document, case))]
    assert usual[:2] == [("thermostat", "wanted"), ("thermostat", "day")]


def test_beside_a_guess_stands_what_its_answer_is_worth(weighed: Comparison, option: str) -> None:
    document = new_visit()
    weights = weights_of(weighed, document, option)
    words = " ".join(texts(visit_form(document, case_from_document(document), weights)))
    told = "alone it moves the saving by about $500 a year, 50 % of what is uncertain"
    assert f"Worth asking: {told}" in words
    seen = answered(document, ("house", "attic_insulation"), "19", "seen")
    words = " ".join(texts(visit_form(seen, case_from_document(seen), weights)))
    assert f"Worth measuring: {told}" in words
    measured = answered(document, ("house", "attic_insulation"), "19", "measured")
    words = " ".join(texts(visit_form(measured, case_from_document(measured), weights)))
    assert "Worth measuring" not in words


def test_the_desk_weighs_by_what_is_worked_out_already(
    weighed: Comparison, option: str, opened: Doc
) -> None:
    def first_words(desk: Desk, **asked: Any) -> str:
        return " ".join(
            texts(desk.form({"document": new_visit(), "option": option, **asked})["form"])
        )

    def only_the_earlier(document: Any) -> Comparison | None:
        return weighed if document == opened else None

    assert "is worked out while you talk" in first_words(Desk(opened, None))
    assert "worked out again now" in first_words(
        Desk(opened, None, only_the_earlier), earlier=opened
    )
    assert "after what everything hangs on" in first_words(Desk(opened, None, lambda _any: weighed))


def test_the_desk_says_what_an_answer_did_to_the_range(
    weighed: Comparison, option: str, opened: Doc
) -> None:
    other = replace(weighed, title="the home before")
    desk = Desk(opened, None, lambda document: other if document == opened else weighed)
    asked = {"document": new_visit(), "earlier": opened, "option": option}
    assert desk.form(asked)["narrowed"].startswith("The range of the saving")
    assert desk.form({**asked, "earlier": new_visit()})["narrowed"] == ""
    assert desk.form({**asked, "option": 7})["narrowed"].startswith("The range of today’s bill")
