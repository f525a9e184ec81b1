"""A document written as text is read back as it was."""

from __future__ import annotations

import json
import tomllib
from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from costcompare.case import (
    case_from_document,
    case_text,
    document_from_text,
    example_names,
    example_path,
    read_document,
)

TEXTS = st.text(st.characters(exclude_categories=["Cs"]), max_size=12)
VALUES = st.recursive(
    st.one_of(TEXTS, st.integers(-(2**40), 2**40), st.booleans(), st.floats(-1e9, 1e9)),
    lambda inner: st.one_of(st.lists(inner, max_size=3), st.dictionaries(TEXTS, inner, max_size=4)),
    max_leaves=12,
)


@pytest.mark.parametrize("name", example_names())
def test_an_example_comes_back_as_it_was(name: str) -> None:
    document = read_document(example_path(name))
    text = case_text(document)
    assert document_from_text(text, "text") == document
    assert case_from_document(document_from_text(text, "text")) == case_from_document(document)


def test_days_that_went_through_json_are_days_again() -> None:
    document = read_document(example_path("demo"))
    sent = json.loads(json.dumps(document, default=date.isoformat))
    assert document_from_text(case_text(sent), "text") == document


@given(st.dictionaries(TEXTS, VALUES, max_size=5))
def test_any_table_comes_back(document: dict[str, Any]) -> None:
    assert tomllib.loads(case_text(document)) == document


def test_it_reads_like_a_case_written_by_hand() -> None:
    document = {
        "title": 'The "long" house',
        "house": {"floor_area": {"likely": "1750 ft2", "known": "measured"}},
        "rooms": [{"name": "hall", "windows": {"south": "6 ft2"}}],
        "today": {
            "ducts": {"registers": {"living room": 0.4, "hall": 0.2, "a": 1, "b": 2, "c": 3}}
        },
    }
    lines = case_text(document).splitlines()
    for line in (
        'title = "The \\"long\\" house"',
        "[house]",
        'floor_area = { likely = "1750 ft2", known = "measured" }',
        "[[rooms]]",
        'windows = { south = "6 ft2" }',
        "[today.ducts.registers]",
        '"living room" = 0.4',
    ):
        assert line in lines
    assert "[today]" not in lines


@pytest.mark.parametrize("value", [float("nan"), float("inf"), None, object()])
def test_what_toml_cannot_hold_is_refused(value: object) -> None:
    with pytest.raises(ValueError, match="a case"):
        case_text({"house": {"built": value}})
