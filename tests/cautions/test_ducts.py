"""Cautions about ducts."""

from __future__ import annotations

import re
from typing import Any

from .homes import HEATERS, cautions_of, heat_pump, improve

BEHIND, RETURN, DOORS = "Ducts left behind", "Sealing the return alone", "Closed doors"


def leaks(supply: int, back: int) -> dict[str, Any]:
    return {"ducts": {"supply_leakage": f"{supply} %", "return_leakage": f"{back} %"}}


def test_ducts_left_behind() -> None:
    assert "crawlspace go out of use with “Heaters”" in cautions_of(HEATERS)[BEHIND].because
    left = {**HEATERS, "old_ducts_left_open": True}
    assert "they stay open with “Heaters”" in cautions_of(left)[BEHIND].because


def test_ducts_that_stay_in_use_or_run_inside_are_not_left_behind() -> None:
    kept = heat_pump(backup={"kind": "keep furnace"})
    assert BEHIND not in cautions_of(kept)
    inside = {"ducts": {"location": "inside"}}
    assert BEHIND not in cautions_of(HEATERS, today=inside)
    assert BEHIND not in cautions_of(heat_pump(), ducted=False)


def test_sealing_the_return_alone() -> None:
    alone = improve(today__ducts__return_leakage="2 %")
    caution = cautions_of(alone, today=leaks(20, 15))[RETURN]
    assert re.search(r"“Better” takes [\d,]+ kWh a year (more|less) than today", caution.because)


def test_sealing_both_or_the_supply_is_fine() -> None:
    both = improve(today__ducts__return_leakage="2 %", today__ducts__supply_leakage="3 %")
    assert RETURN not in cautions_of(both, today=leaks(20, 15))
    supply = improve(today__ducts__supply_leakage="3 %")
    assert RETURN not in cautions_of(supply, today=leaks(20, 15))


def test_closed_doors_with_the_flow_into_each_room() -> None:
    """1,200 cfm, 15 % of it lost: a tenth of the rest into bedroom 1, a fifth into bedroom 2."""
    shut: dict[str, Any] = {
        "house": {"foundation": "vented crawlspace", "bedrooms": 2},
        "doorways": [
            {"between": ["living room", "hall"], "state": "open"},
            {"between": ["kitchen", "living room"], "state": "open"},
            {"between": ["bath", "hall"], "state": "closed"},
            {"between": ["bedroom 1", "hall"], "state": "closed"},
            {"between": ["bedroom 2", "hall"], "state": "closed"},
        ],
        "today": {
            "blower": {"airflow": "1200 cfm"},
            "ducts": {
                "supply_leakage": "15 %",
                "return_leakage": "10 %",
                "registers": {
                    "living room": 0.4,
                    "kitchen": 0.2,
                    "hall": 0.09,
                    "bath": 0.01,
                    "bedroom 1": 0.1,
                    "bedroom 2": 0.2,
                },
            },
        },
    }
    because = cautions_of(**shut)[DOORS].because
    assert because == (
        "the return is in the hall and behind closed doors the registers blow, at full speed: "
        "bedroom 1 102 cfm, bedroom 2 204 cfm"
    )
    ajar = [{**way, "state": "ajar"} for way in shut["doorways"]]
    assert DOORS not in cautions_of(**{**shut, "doorways": ajar})
    assert DOORS not in cautions_of(ducted=False, doorways=shut["doorways"], house={"bedrooms": 2})
