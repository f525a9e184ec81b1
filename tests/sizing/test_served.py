"""Which head is nearest to a room, and what comes through the doors."""

from __future__ import annotations

from dataclasses import replace

import pytest

from costcompare.case.facts import Case, Head, HeatPumpUnit, RoomHeater, System
from costcompare.sizing import Sizing
from costcompare.sizing.served import head_rooms, nearest_head, without_furnace
from tests.sizing.homes import with_loft

UNIT = HeatPumpUnit("single-zone cold-climate", 3500.0, "open room")


def test_rooms_behind_open_doors_depend_on_the_head(case: Case) -> None:
    system = System("ductless heat pump", heads=(UNIT,))
    assert nearest_head(case.home, system) == {
        "kitchen": "open room",
        "loft": "open room",
        "small bedroom": "open room",
    }


def test_rooms_with_heat_of_their_own_depend_on_nobody(case: Case) -> None:
    heater = RoomHeater("small bedroom", 1000.0)
    system = System("ductless heat pump", heads=(UNIT,), heaters=(heater,))
    assert "small bedroom" not in nearest_head(case.home, system)


def test_warm_air_does_not_come_down(case: Case) -> None:
    upstairs = System("ductless heat pump", heads=(replace(UNIT, room="loft"),))
    assert nearest_head(case.home, upstairs) == {}


def test_the_nearest_of_two_heads_counts() -> None:
    case = with_loft(
        doorways=[
            {"between": ["open room", "kitchen"], "state": "open"},
            {"between": ["kitchen", "small bedroom"], "state": "open"},
            {"between": ["small bedroom", "closed bedroom"], "state": "open"},
        ]
    )
    heads = (UNIT, replace(UNIT, room="closed bedroom"))
    found = nearest_head(case.home, System("ductless heat pump", heads=heads))
    assert found == {"kitchen": "open room", "small bedroom": "closed bedroom"}


def test_heads_on_one_outdoor_unit_are_found() -> None:
    heads = (Head("open room", 3000.0), Head("loft", 2000.0))
    unit = HeatPumpUnit("multi-zone standard", 5000.0, "open room", heads=heads)
    assert head_rooms(System("ductless heat pump", heads=(unit,))) == ("open room", "loft")


def test_without_a_furnace_the_heads_stay(case: Case) -> None:
    system = case.options[1].system
    assert system.furnace_output > 0.0
    alone = without_furnace(system)
    assert alone.furnace_output == 0.0
    assert alone.ducts is None
    assert alone.heads == system.heads


def test_most_of_the_heat_comes_through_an_open_door(sized: Sizing) -> None:
    rooms = {room.name: room for room in sized.choice("One head high up").second_rooms}
    assert set(rooms) == {"kitchen", "loft", "small bedroom"}
    for room in rooms.values():
        assert 0.6 < room.arriving_share < 1.0
        assert room.missing_kwh > 0.0
        assert room.winter_mean_degf < 70.0


def test_a_furnace_that_is_kept_does_not_count_as_the_door(sized: Sizing) -> None:
    alone = sized.choice("One head high up").second_rooms
    kept = sized.choice("Head and furnace").second_rooms
    for one, other in zip(alone, kept, strict=True):
        assert other.arriving_share == pytest.approx(one.arriving_share, abs=1e-9)
