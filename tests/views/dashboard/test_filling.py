"""Every part of the page, for every example and for homes that lack something."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

import pytest

from costcompare.case import example_names, example_path, read_document
from costcompare.comparison import AS_LIVED, AS_WANTED
from costcompare.views.dashboard.filling import bill_part, money_part, running_part, sure_part
from costcompare.views.dashboard.filling_rooms import rooms_part
from costcompare.views.dashboard.pieces import texts
from costcompare.views.dashboard.showing import BILL, MONEY, ROOMS, RUNNING, SURE
from costcompare.views.dashboard.workbench import Workbench, Worked
from costcompare.views.wording.naming import choosable


def without(document: dict[str, Any], *path: str) -> dict[str, Any]:
    """A copy of a case that says nothing at a path."""
    copied: dict[str, Any] = json.loads(json.dumps(document, default=str))
    place = copied
    for step in path[:-1]:
        place = place[step]
    del place[path[-1]]
    return copied


def homes() -> Iterator[Any]:
    for name in example_names():
        yield pytest.param(read_document(example_path(name)), id=name)
    demo = read_document(example_path("demo"))
    plain = without(without(demo, "options"), "money", "incentives")
    yield pytest.param(plain, id="no options")
    bare = dict(plain)
    bare["today"] = {"kind": "room heaters"}
    yield pytest.param(bare, id="no ducts")


@pytest.fixture(scope="module", params=homes())
def worked(request: pytest.FixtureRequest) -> Worked:
    return Workbench(request.param).worked(request.param)


def shown(filled: dict[str, Any]) -> list[str]:
    """Every text that a part puts on the page."""
    found: list[str] = []
    for value in filled.values():
        if isinstance(value, str):
            found.append(value)
        elif isinstance(value, dict) and "tag" in value:
            found.extend(texts(value))
    return found


def test_every_part_says_something_and_nothing_odd(worked: Worked) -> None:
    name = choosable(worked.comparison)[0]
    parts = [
        (bill_part(worked), BILL),
        (running_part(worked, name, AS_LIVED), RUNNING),
        (running_part(worked, name, AS_WANTED), RUNNING),
        (rooms_part(worked, name), ROOMS),
        (money_part(worked, name, AS_LIVED), MONEY),
        (money_part(worked, name, AS_WANTED), MONEY),
        (sure_part(worked), SURE),
    ]
    for filled, places in parts:
        assert set(filled) == set(places)
        assert filled["answer"].endswith(".")
        for text in shown(filled):
            assert not {"nan", "None", "inf"} & set(text.split()), text
            assert not any(odd in text for odd in ("{", "$-", "guaranteed", "will save")), text


def test_the_house_is_drawn_where_it_has_ducts(worked: Worked) -> None:
    filled = bill_part(worked)
    has_ducts = worked.comparison.today.ducts is not None
    assert (filled["ducts_class"] == "absent") is not has_ducts
    assert filled["drawing"].startswith("data:image/svg+xml") is has_ducts
    assert bool(filled["ducts_answer"]) is has_ducts
