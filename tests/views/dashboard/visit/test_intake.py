"""Documents from a browser: what is refused and what is made plain."""

from __future__ import annotations

import json
from datetime import date
from typing import Any

import pytest

from costcompare.errors import CaseError
from costcompare.views.dashboard.visit.intake import LARGEST_FILE, taken_in

Doc = dict[str, Any]


def test_days_become_text_and_sets_dotted_paths() -> None:
    given = {
        "money": {"installed_on": date(2027, 4, 15)},
        "options": [
            {"set": {"today": {"ducts": {"condition": "average"}}, "house.window_panes": 2}},
            {"set": {"rooms": {"hall": {"windows": {"south": "4 ft2"}}}}},
        ],
    }
    document = taken_in(given, {})
    json.dumps(document)
    assert document["money"]["installed_on"] == "2027-04-15"
    assert document["options"][0]["set"] == {
        "today.ducts.condition": "average",
        "house.window_panes": 2,
    }
    assert document["options"][1]["set"] == {"rooms.hall.windows": {"south": "4 ft2"}}
    assert taken_in(document, {}) == document


@pytest.mark.parametrize("section", ["weather", "bills"])
def test_no_file_is_named_but_that_of_the_opened_case(section: str) -> None:
    given = {section: {"file": "/etc/passwd"}}
    with pytest.raises(CaseError, match="opens no files by name"):
        taken_in(given, {})
    with pytest.raises(CaseError, match="opens no files by name"):
        taken_in(given, {section: {"file": "year.csv"}})
    assert taken_in({section: {"file": "year.csv"}}, {section: {"file": "year.csv"}})


@pytest.mark.parametrize(
    ("given", "rule"),
    [
        (None, "must be a table"),
        ([], "must be a table"),
        ({"title": "x" * LARGEST_FILE}, "too large"),
        ({"rooms": [{}] * 41}, "40 rows at most"),
        ({"options": [{}] * 13}, "12 rows at most"),
        ({"house": {"built": float("nan")}}, "finite numbers"),
        ({"house": {"built": 10**40}}, "as large as that"),
        (
            {
                "a": {
                    "b": {
                        "c": {
                            "d": {"e": {"f": {"g": {"h": {"i": {"j": {"k": {"l": {"m": {}}}}}}}}}}
                        }
                    }
                }
            },
            "too deeply",
        ),
    ],
)
def test_what_would_be_too_much_is_refused_in_words(given: object, rule: str) -> None:
    with pytest.raises(CaseError, match=rule):
        taken_in(given, {})


def test_halves_of_letters_do_not_come_in() -> None:
    document = taken_in({"title": "a\ud800b"}, {})
    assert document["title"].encode("utf-8") == b"a?b"
