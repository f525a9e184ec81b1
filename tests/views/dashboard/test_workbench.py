"""Working out homes on the server."""

from __future__ import annotations

import json
import threading
from pathlib import Path
from typing import Any

import pytest

from costcompare.case import example_path, read_document
from costcompare.errors import CaseError
from costcompare.views.dashboard.workbench import SETTINGS_DEGF, Workbench, _Once, key_of


@pytest.fixture(scope="module")
def opened() -> dict[str, Any]:
    return read_document(example_path("demo"))


def test_equal_documents_share_a_key_and_others_do_not(opened: dict[str, Any]) -> None:
    bench = Workbench(opened)
    assert key_of(bench.opened) == key_of(dict(reversed(bench.opened.items()))) == bench.opened_key
    assert key_of({**bench.opened, "title": "another"}) != bench.opened_key


def test_a_wrong_value_raises_every_fault(opened: dict[str, Any]) -> None:
    bench = Workbench(opened)
    wrong = {**opened, "thermostat": {"day": "fish"}, "other_use": {"hot_water": "much"}}
    with pytest.raises(CaseError) as caught:
        bench.worked(wrong)
    assert {fault.path for fault in caught.value.faults} >= {
        "thermostat.day",
        "other_use.hot_water",
    }


@pytest.mark.parametrize("given", [None, 3, "text", [], {}, {"weather": {"file": "secret.csv"}}])
def test_what_is_no_case_is_refused(opened: dict[str, Any], given: object) -> None:
    with pytest.raises(CaseError):
        Workbench(opened).worked(given)


def test_the_same_home_is_worked_out_once(opened: dict[str, Any]) -> None:
    bench = Workbench(opened, Path(example_path("demo")).parent)
    first = bench.worked(opened)
    assert bench.worked(json.loads(json.dumps(bench.opened))) is first
    assert first.comparison.title == opened["title"]
    assert (SETTINGS_DEGF[0], SETTINGS_DEGF[-1]) == (58, 74)


def test_two_who_ask_at_once_wait_for_one_answer() -> None:
    once: _Once[int] = _Once(kept=2)
    began, finish = threading.Event(), threading.Event()
    calls, answers = [], []

    def work() -> int:
        calls.append(1)
        began.set()
        finish.wait()
        return 7

    def ask() -> None:
        answers.append(once.get("home", work))

    first = threading.Thread(target=ask)
    first.start()
    began.wait()
    second = threading.Thread(target=ask)
    second.start()
    finish.set()
    first.join()
    second.join()
    assert answers == [7, 7]
    assert len(calls) == 1


def test_a_failure_is_told_and_not_kept() -> None:
    once: _Once[int] = _Once(kept=2)
    with pytest.raises(ZeroDivisionError):
        once.get("home", lambda: 1 // 0)
    assert once.get("home", lambda: 5) == 5


def test_the_oldest_results_are_let_go() -> None:
    once: _Once[str] = _Once(kept=2)
    for name in ("a", "b", "c"):
        once.get(name, lambda name=name: name)
    assert once.get("a", lambda: "again") == "again"
    assert once.get("c", lambda: "again") == "c"
