"""What a visitor has changed."""

from __future__ import annotations

import pytest

from costcompare.views.dashboard.history import (
    LONGEST_TEXT,
    MOST_STEPS,
    current,
    started,
    stepped,
    steps_of,
    undone,
)

KEY = "opened"


def test_steps_go_forward_and_back() -> None:
    history = started(KEY)
    assert current(history, KEY) == {}
    history = stepped(history, KEY, {"thermostat.day": "66 F"})
    history = stepped(history, KEY, {"thermostat.day": "66 F", "thermostat.night": "60 F"})
    assert current(history, KEY) == {"thermostat.day": "66 F", "thermostat.night": "60 F"}
    history = undone(history, KEY)
    assert current(history, KEY) == {"thermostat.day": "66 F"}
    history = stepped(history, KEY, {})
    assert current(history, KEY) == {}
    assert current(undone(history, KEY), KEY) == {"thermostat.day": "66 F"}
    assert current(undone(started(KEY), KEY), KEY) == {}


def test_the_history_of_another_case_is_not_taken_over() -> None:
    history = stepped(started("another"), "another", {"thermostat.day": "66 F"})
    assert steps_of(history, KEY) == []


@pytest.mark.parametrize(
    "damaged",
    [None, 3, "text", [], {}, {"opened": KEY}, {"opened": KEY, "steps": 7}],
)
def test_a_damaged_history_is_an_empty_one(damaged: object) -> None:
    assert steps_of(damaged, KEY) == []


def test_a_browser_can_change_offered_facts_alone() -> None:
    sent = {
        "opened": KEY,
        "steps": [
            {
                "weather.file": "secret.csv",
                "thermostat.day": "66 F",
                "thermostat.night": 61,
                "house.attic_insulation": "R" * 5000,
            },
            "no step",
        ],
    }
    first, second = steps_of(sent, KEY)
    assert set(first) == {"thermostat.day", "house.attic_insulation"}
    assert len(first["house.attic_insulation"]) == LONGEST_TEXT
    assert second == {}


def test_the_history_does_not_grow_without_end() -> None:
    history = started(KEY)
    for degf in range(60, 60 + MOST_STEPS + 5):
        history = stepped(history, KEY, {"thermostat.day": f"{degf} F"})
    assert len(history["steps"]) == MOST_STEPS
