"""No TOML, however wrong, gives anything but a case or a CaseError."""

from __future__ import annotations

import math
from copy import deepcopy
from datetime import date, datetime, time
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from costcompare.case import (
    case_from_document,
    example_names,
    example_path,
    read_case,
    read_document,
)
from costcompare.errors import CaseError, Fault

DOCUMENTS = [read_document(example_path(name)) for name in example_names()]
NASTY: list[Any] = [
    None,
    "",
    " ",
    "x" * 5000,
    "\x00",
    -1,
    0,
    10**400,
    1e308,
    math.nan,
    math.inf,
    True,
    [],
    {},
    [[]],
    [{}],
    [None],
    ["hall"],
    ["hall", "hall"],
    {"likely": "3 ft2"},
    {"likely": {"likely": 1}},
    {"likely": "R-5", "low": "R-9", "high": 3, "known": 7, "odd": 1},
    {"low": "8 ft", "high": "7 ft"},
    {"low": "8 ft", "high": "16 ft"},
    {"a.b": {"c": 1}},
    date(2027, 1, 1),
    datetime(2027, 1, 1, 3),  # noqa: DTZ001 (TOML has local times)
    time(3),
    "68 F",
    "R-19",
    "0 W",
    "1e-300 ft",
    "50 %",
    "22-6",
    "hall",
    "crawlspace",
    "basement",
    "garage",
    "slab",
    "ideal",
    "room heaters",
    "ductless heat pump",
    "keep furnace",
]


def _places(value: Any, at: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    found = [at] if at else []
    if isinstance(value, dict):
        for key, item in value.items():
            found += _places(item, (*at, key))
    elif isinstance(value, list):
        for index, item in enumerate(value):
            found += _places(item, (*at, index))
    return found


PLACES = [_places(document) for document in DOCUMENTS]


def _reads(document: Any) -> None:
    """Either a case with rooms, or faults that each say where and what; else it raises."""
    rooms = 0
    faults: tuple[Fault, ...] = ()
    try:
        rooms = len(case_from_document(document).home.rooms)
    except CaseError as error:
        faults = error.faults
    assert rooms or faults
    assert all(fault.path and fault.rule for fault in faults)


@settings(
    max_examples=150, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck)
)
@given(data=st.data())
def test_a_case_with_wrong_values_is_refused_or_read(data: st.DataObject) -> None:
    number = data.draw(st.integers(0, len(DOCUMENTS) - 1))
    document = deepcopy(DOCUMENTS[number])
    for _ in range(data.draw(st.integers(1, 3))):
        *place, key = data.draw(st.sampled_from(PLACES[number]))
        action = data.draw(st.sampled_from(["replace", "replace", "delete", "add"]))
        target: Any = document
        try:
            for step in place:
                target = target[step]
            if action == "delete":
                del target[key]
            elif action == "add" and isinstance(target, dict):
                target[data.draw(st.sampled_from(["", "naem", "heads", "likely", "set"]))] = (
                    data.draw(st.sampled_from(NASTY))
                )
            else:
                target[key] = deepcopy(data.draw(st.sampled_from(NASTY)))
        except (KeyError, IndexError, TypeError):
            continue  # an earlier change took the place away
    _reads(document)


@settings(max_examples=60, deadline=None, derandomize=True)
@given(
    document=st.recursive(
        st.one_of(
            st.none(),
            st.booleans(),
            st.integers(),
            st.floats(),
            st.text(max_size=8),
            st.dates(),
        ),
        lambda inner: st.one_of(
            st.lists(inner, max_size=3),
            st.dictionaries(
                st.sampled_from(
                    ["site", "house", "rooms", "today", "options", "set", "name", "tariff", "x"]
                ),
                inner,
                max_size=5,
            ),
        ),
        max_leaves=12,
    )
)
def test_anything_at_all_is_refused(document: Any) -> None:
    with pytest.raises(CaseError):
        case_from_document(document)


@pytest.mark.parametrize(
    "text",
    [
        "a = ",
        "a = 1\na = 2",
        "a = [" * 3000,
        "x" + ".x" * 4000 + " = 1",
        "n = " + "9" * 5000,
        "d = 2027-02-30",
        "[house\n",
        "\ufeff[site]\nlatitude = 1",
        "",
        "b = '''",
    ],
)
def test_text_that_is_no_case_is_refused(tmp_path: Path, text: str) -> None:
    path = tmp_path / "case.toml"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(CaseError):
        read_case(path)


def test_bytes_that_are_no_text_are_refused(tmp_path: Path) -> None:
    path = tmp_path / "case.toml"
    path.write_bytes(b"\xff\xfe\x00a")
    with pytest.raises(CaseError):
        read_case(path)
