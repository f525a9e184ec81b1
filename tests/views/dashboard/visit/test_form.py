"""The form of a document: what it asks, in which order, and what it says was taken."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

from costcompare.case import case_from_document, example_names, example_path, read_document
from costcompare.case.partial import rule_at
from costcompare.views.dashboard.pieces import Tree, texts
from costcompare.views.dashboard.visit.answers import answered
from costcompare.views.dashboard.visit.deeds import new_visit
from costcompare.views.dashboard.visit.form import place_of, visit_form
from costcompare.views.dashboard.visit.intake import taken_in
from costcompare.views.dashboard.visit.questions import FIRST, MONEY, MOST_FIRST, STOPS

Doc = dict[str, Any]


def elements(tree: Tree) -> Iterator[Tree]:
    yield tree
    for inner in tree["inside"]:
        if not isinstance(inner, str):
            yield from elements(inner)


def form_of(document: Doc) -> Tree:
    return visit_form(document, case_from_document(document))


def by_id(tree: Tree, identity: str) -> Tree:
    return next(e for e in elements(tree) if e["attributes"].get("id") == identity)


def taken(name: str) -> Doc:
    document = read_document(example_path(name))
    return taken_in(document, document)


@pytest.mark.parametrize("name", [*example_names(), "new"])
def test_every_box_has_a_label_and_every_id_is_one(name: str) -> None:
    form = form_of(new_visit() if name == "new" else taken(name))
    identities = [e["attributes"]["id"] for e in elements(form) if "id" in e["attributes"]]
    assert len(identities) == len(set(identities))
    labelled = {e["attributes"].get("for") for e in elements(form)}
    for box in elements(form):
        own = box["attributes"]
        if box["tag"] in ("input", "select") and own.get("type") != "checkbox":
            assert own["id"] in labelled or own.get("aria-label"), own
        for note in own.get("aria-describedby", "").split():
            assert note in identities


def test_every_question_asks_for_a_value_that_a_case_can_have() -> None:
    questions = [question for stop in (*STOPS, MONEY) for question in stop.questions]
    assert len({question.at for question in questions}) == len(questions)
    for question in questions:
        assert rule_at(question.at) is not None, question
    known = {question.at for question in questions}
    for path, why in FIRST:
        assert place_of(path) in known or "tiers" in path, path
        assert not why.endswith(".")


def test_what_matters_most_is_asked_first_until_it_is_known() -> None:
    document = new_visit()
    asked = [
        e["attributes"]["data-goto"]
        for e in elements(form_of(document))
        if e["tag"] == "button" and "data-goto" in e["attributes"]
    ]
    assert asked[:2] == ["ask-thermostat-wanted", "ask-thermostat-day"]
    assert len(asked) == MOST_FIRST
    known = answered(document, ("thermostat", "wanted"), "71", "seen")
    assert "data-goto" in str(form_of(known))
    assert "ask-thermostat-wanted" not in [
        e["attributes"].get("data-goto") for e in elements(form_of(known))
    ]


def test_a_fact_that_nobody_knows_is_shown_as_taken(opened: Doc) -> None:
    unknown = answered(opened, ("house", "attic_insulation"), "", "unknown")
    words = "".join(texts(by_id(form_of(unknown), "ask-house-attic_insulation-taken")))
    assert words.startswith("Taken as R-19, guessed: judgement:")
    box = by_id(form_of(unknown), "ask-house-attic_insulation-known")
    assert box["attributes"]["data-value"] == "unknown"
    assert texts(by_id(form_of(opened), "ask-house-wall_insulation-taken")) == [
        "Likely between R-0 and R-11."
    ]


def test_only_what_fits_the_home_is_asked() -> None:
    slab = answered(new_visit(), ("house", "foundation"), "slab", "seen")
    slab = answered(slab, ("today", "ducts", "location"), "attic", "seen")
    asked = str(form_of(slab))
    assert "ask-crawlspace-vents" not in asked
    assert "ask-house-floor_insulation" not in asked
    heaters = {**new_visit(), "today": {"kind": "room heaters"}}
    asked = str(form_of(heaters))
    assert "ask-today-ducts" not in asked
    assert "ask-today-output" not in asked
    assert "Ducted heat pump" not in asked


def test_rows_show_what_was_laid_out_until_it_is_written_down(opened: Doc) -> None:
    assert "the house is laid out as living room, kitchen" in " ".join(texts(form_of(new_visit())))
    stop = by_id(form_of(opened), "stop-rooms")
    cards = [e for e in elements(stop) if e["attributes"].get("class") == "row-card"]
    assert len(cards) == len(opened["rooms"])
