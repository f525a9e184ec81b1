"""Plans from areas, doorways and outside walls."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace

import pytest

from costcompare.case import Case, example_names, example_path, read_case
from costcompare.case.home_facts import Doorway, Room
from costcompare.views.figures.floor_plan import DOOR_PX, WIDTH_PX, floor_plans, undrawn


def square_rooms(demo: Case, count: int, **change: object) -> list[Room]:
    """Rooms of one size without outside walls."""
    first = replace(demo.home.rooms[0], outside_walls={}, floor_area=20.0)
    return [replace(first, name=f"room {n}", **change) for n in range(count)]  # type: ignore[arg-type]


@pytest.mark.parametrize("name", example_names())
def test_rooms_fill_their_storey_by_their_areas_without_lying_over_each_other(name: str) -> None:
    home = read_case(example_path(name)).home
    plans = floor_plans(home.rooms, home.doorways)
    assert sorted(one.name for plan in plans for one in plan.rooms) == sorted(
        room.name for room in home.rooms
    )
    for plan in plans:
        total = sum(room.floor_area for room in home.rooms if room.storey == plan.storey)
        areas = {room.name: room.floor_area / total for room in home.rooms}
        for one in plan.rooms:
            assert math.isclose(one.width * one.height, areas[one.name])
            assert -1e-9 < one.left < one.left + one.width < 1.0 + 1e-9
            assert -1e-9 < one.top < one.top + one.height < 1.0 + 1e-9
        for one, other in itertools.combinations(plan.rooms, 2):
            apart = (
                one.left + one.width <= other.left + 1e-9
                or other.left + other.width <= one.left + 1e-9
                or one.top + one.height <= other.top + 1e-9
                or other.top + other.height <= one.top + 1e-9
            )
            assert apart, (one, other)


@pytest.mark.parametrize("name", example_names())
def test_a_doorway_is_drawn_on_a_shared_wall_or_told(name: str) -> None:
    home = read_case(example_path(name)).home
    plans = floor_plans(home.rooms, home.doorways)
    told = undrawn(plans, home.doorways)
    drawn = [door for plan in plans for door in plan.doors]
    assert len(drawn) + len(told) == len(home.doorways)
    assert len(drawn) >= len(told), "most doorways find a wall"
    for plan in plans:
        by_name = {one.name: one for one in plan.rooms}
        for door in plan.doors:
            for room in map(by_name.__getitem__, door.between):
                if door.upright:
                    edges = (room.left, room.left + room.width)
                    assert min(abs(door.across - edge) for edge in edges) < 1e-9
                    assert room.height * plan.height_px >= DOOR_PX - 1e-6
                else:
                    edges = (room.top, room.top + room.height)
                    assert min(abs(door.down - edge) for edge in edges) < 1e-9
                    assert room.width * WIDTH_PX >= DOOR_PX - 1e-6


def test_rooms_with_a_doorway_are_brought_beside_each_other(demo: Case) -> None:
    rooms = square_rooms(demo, 4)
    ways = [
        Doorway("room 0", "room 3", "open"),
        Doorway("room 3", "room 1", "closed"),
        Doorway("room 1", "room 2", "ajar"),
    ]
    plans = floor_plans(rooms, ways)
    assert undrawn(plans, ways) == ()
    assert {door.state for door in plans[0].doors} == {"open", "closed", "ajar"}


def test_an_outside_wall_brings_a_room_to_its_side(demo: Case) -> None:
    south, north = square_rooms(demo, 2)
    south = replace(south, outside_walls={"south": 4.0})
    north = replace(north, outside_walls={"north": 4.0})
    (plan,) = floor_plans([south, north], [])
    by_name = {one.name: one for one in plan.rooms}
    assert by_name["room 1"].top < by_name["room 0"].top


def test_storeys_stand_above_each_other_and_stairs_are_told(demo: Case) -> None:
    upper = [replace(room, storey=2, name=f"upper {room.name}") for room in square_rooms(demo, 1)]
    stairs = Doorway("room 0", "upper room 0", "stairs")
    plans = floor_plans([*square_rooms(demo, 3), *upper], [stairs])
    assert [plan.storey for plan in plans] == [2, 1]
    assert plans[0].height_px < plans[1].height_px
    assert undrawn(plans, [stairs]) == (stairs,)
