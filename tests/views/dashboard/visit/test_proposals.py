"""Options: every kind that can be added makes a case, and what is said of an option follows it."""

from __future__ import annotations

from typing import Any

import pytest

from costcompare.case import case_from_document, example_names, example_path, read_document
from costcompare.errors import CaseError
from costcompare.views.dashboard.visit.deeds import new_visit
from costcompare.views.dashboard.visit.intake import taken_in
from costcompare.views.dashboard.visit.listed import names_of
from costcompare.views.dashboard.visit.proposals import (
    MOST_OPTIONS,
    kinds_for,
    with_head_added,
    with_option_added,
    with_option_duplicated,
    with_option_renamed,
    without_option,
)

Doc = dict[str, Any]


def homes() -> list[Any]:
    found = [pytest.param(read_document(example_path(name)), id=name) for name in example_names()]
    opened = read_document(example_path("demo"))
    heaters = {**opened, "today": {"kind": "room heaters"}, "options": [], "money": {}}
    return [
        *found,
        pytest.param(new_visit(), id="new"),
        pytest.param(heaters, id="room heaters"),
    ]


@pytest.mark.parametrize("home", homes())
def test_every_kind_that_is_offered_makes_a_case(home: Doc) -> None:
    document = {**taken_in(home, home), "options": [], "money": {}}
    kinds = kinds_for(case_from_document(document))
    assert len(kinds) > 2
    for kind in kinds:
        case = case_from_document(document)
        changed = with_option_added(document, case, kind.key)
        option = case_from_document(changed).options[-1]
        assert option.name == kind.name
        cost = next(f for f in case_from_document(changed).facts if f.path.endswith("ed_cost"))
        assert cost.known == "guessed"


def test_a_visit_compares_six_at_most(opened: Doc) -> None:
    case = case_from_document(opened)
    full = with_option_duplicated(opened, ("options", 3))
    assert len(full["options"]) == MOST_OPTIONS
    assert full["options"][4]["name"] == f"{opened['options'][3]['name']}, changed"
    case_from_document(full)
    for act in (
        lambda: with_option_added(full, case, "attic"),
        lambda: with_option_duplicated(full, ("options", 0)),
    ):
        with pytest.raises(CaseError, match="6 options at most"):
            act()


def test_incentives_follow_a_name_and_go_with_the_last_of_their_options(opened: Doc) -> None:
    renamed = with_option_renamed(opened, ("options", 1), "Ducted, old ducts")
    assert renamed["money"]["incentives"][0]["options"][0] == "Ducted, old ducts"
    case_from_document(renamed)
    for name in list(renamed["money"]["incentives"][0]["options"]):
        at = names_of(renamed, "options").index(name)
        renamed = without_option(renamed, ("options", at))
        case_from_document(renamed)
    assert renamed["money"]["incentives"] == []


def test_a_head_takes_the_place_of_a_heater(opened: Doc) -> None:
    changed = with_head_added(opened, case_from_document(opened), ("options", 3))
    option = changed["options"][3]
    assert option["units"][-1]["room"] == "guest bedroom"
    assert "guest bedroom" not in option["backup"]["rooms"]
    case_from_document(changed)
    with pytest.raises(CaseError):
        with_head_added(opened, case_from_document(opened), ("options", 0))


def test_what_is_no_option_is_refused(opened: Doc) -> None:
    with pytest.raises(CaseError, match="no such kind"):
        with_option_added(opened, case_from_document(opened), "a stove")
    for at in (("options", 9), ("rooms", 0), ()):
        with pytest.raises(CaseError, match="no such option"):
            without_option(opened, at)
