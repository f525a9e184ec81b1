"""One answer written into a document or taken out of it."""

from __future__ import annotations

from typing import Any

import pytest

from costcompare.case import case_from_document
from costcompare.errors import CaseError
from costcompare.views.dashboard.visit.answers import (
    answered,
    guessed_instead,
    known_at,
    text_at,
    value_at,
    without,
)

Doc = dict[str, Any]


@pytest.mark.parametrize(
    ("path", "text", "value"),
    [
        ("house.floor_area", "1800", "1800 ft2"),
        ("house.floor_area", "167 m2", "167 m2"),
        ("house.attic_insulation", "30", "R-30"),
        ("house.attic_insulation", "R-38", "R-38"),
        ("thermostat.day", " 64 ", "64 F"),
        ("house.built", "1955", 1955),
        ("site.latitude", "38.5", 38.5),
        ("house.flue", "true", True),
        ("tariff.tax", "4", "4 %"),
        ("tariff.tax", "0.04", "0.04"),
        ("money.installed_on", "2027-05-01", "2027-05-01"),
        ("thermostat.day", "fish", "fish"),
        ("house.built", "long ago", "long ago"),
    ],
)
def test_a_typed_text_becomes_what_a_case_holds(
    opened: Doc, path: str, text: str, value: object
) -> None:
    at = tuple(path.split("."))
    assert value_at(answered(opened, at, text, "seen"), at) == value


def test_how_it_is_known_stands_beside_it(opened: Doc) -> None:
    at = ("house", "attic_insulation")
    measured = answered(opened, at, "R-19", "measured")
    assert value_at(measured, at) == {"likely": "R-19", "known": "measured"}
    assert known_at(measured, at) == "measured"
    assert value_at(answered(measured, at, "R-19", "seen"), at) == {
        "likely": "R-19",
        "known": "seen",
    }
    assert value_at(opened, at) == "R-19", "the document was touched"


def test_a_range_stays_with_its_value_alone(opened: Doc) -> None:
    at = ("house", "wall_insulation")
    kept = value_at(answered(opened, at, "R-7", "seen"), at)
    assert kept == {"likely": "R-7", "low": "R-0", "high": "R-11", "known": "seen"}
    assert value_at(answered(opened, at, "R-13", "seen"), at) == "R-13"


def test_a_share_that_was_written_bare_is_not_read_as_percent(opened: Doc) -> None:
    at = ("today", "ducts", "share_outside")
    stated = answered({**opened, "today": {"ducts": {"share_outside": 1.0}}}, at, "1.0", "seen")
    assert value_at(stated, at) == 1.0


def test_not_knowing_takes_the_answer_out(opened: Doc) -> None:
    for text, known in (("R-19", "unknown"), ("", "seen"), ("  ", "measured")):
        changed = answered(opened, ("house", "attic_insulation"), text, known)
        assert "attic_insulation" not in changed["house"]
    emptied = without(opened, ("today", "blower", "airflow"))
    assert "blower" not in without(emptied, ("today", "blower", "power"))["today"]
    assert without(opened, ("rooms", 0, "windows", "south"))["rooms"][0]["windows"] == {
        "west": "20 ft2"
    }
    assert without(opened, ("nothing", "here")) == opened


def test_what_is_needed_becomes_a_guess(opened: Doc) -> None:
    at = ("house", "built")
    assert value_at(guessed_instead(opened, at), at) == {"likely": 1968, "known": "guessed"}
    case_from_document(guessed_instead(opened, at))
    assert value_at(guessed_instead(without(opened, at), at), at)["likely"] == 1972
    with pytest.raises(CaseError, match="a guess will do"):
        guessed_instead(opened, ("options", 0, "nothing"))


def test_an_answer_takes_away_what_it_outdates(opened: Doc) -> None:
    changed = answered(opened, ("house", "window_panes"), "2", "seen")
    assert "window_u_factor" not in changed["house"]


def test_changes_of_an_option_follow_the_rule_of_their_fact(opened: Doc) -> None:
    at = ("options", 0, "set", "house.window_panes")
    assert value_at(answered(opened, at, "2", "seen"), at) == 2
    assert text_at(opened, ("options", 0, "set", "today.ducts.insulation")) == "R-6"


def test_a_place_that_is_none_is_refused(opened: Doc) -> None:
    for at in (("title", "deeper"), ("rooms", 99, "floor_area"), ("rooms", "nowhere", "x")):
        with pytest.raises(CaseError):
            answered(opened, at, "1", "seen")
