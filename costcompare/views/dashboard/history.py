"""What a visitor has changed: steps that can be undone, kept in the visitor's own tab.

The store holds changes alone, never a case: a path and a text for each changed fact, and
only facts that the drawer offers. So nothing that a browser sends can name a file.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from costcompare.views.dashboard.facts_offered import OFFERED_PATHS

MOST_STEPS = 50
LONGEST_TEXT = 200
"""Limits on what a browser may send (judgement: far above any real visit)"""

Changes = dict[str, str]


def started(opened_key: str) -> dict[str, Any]:
    """The history of a visitor who has changed nothing."""
    return {"opened": opened_key, "steps": []}


def steps_of(history: Any, opened_key: str) -> list[Changes]:
    """The steps of a stored history; none where it belongs to another case or is damaged."""
    if not isinstance(history, Mapping) or history.get("opened") != opened_key:
        return []
    steps = history.get("steps")
    if not isinstance(steps, list):
        return []
    return [_cleaned(step) for step in steps[-MOST_STEPS:]]


def current(history: Any, opened_key: str) -> Changes:
    """Every change that is in force, by path."""
    steps = steps_of(history, opened_key)
    return steps[-1] if steps else {}


def stepped(history: Any, opened_key: str, changes: Mapping[str, str]) -> dict[str, Any]:
    """The history with one more step; ``changes`` are all that shall be in force after it."""
    steps = [*steps_of(history, opened_key), _cleaned(changes)]
    return {"opened": opened_key, "steps": steps[-MOST_STEPS:]}


def undone(history: Any, opened_key: str) -> dict[str, Any]:
    """The history without its last step."""
    return {"opened": opened_key, "steps": steps_of(history, opened_key)[:-1]}


def _cleaned(changes: Any) -> Changes:
    if not isinstance(changes, Mapping):
        return {}
    return {
        path: text[:LONGEST_TEXT]
        for path, text in changes.items()
        if path in OFFERED_PATHS and isinstance(text, str)
    }
