"""Laid-out houses: areas and walls add up to the rectangle, rooms lie over rooms."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from costcompare.case import Case
from costcompare.case.layout import laid_out, room_names

from .cases import TWO_ROOMS, case


@given(
    area=st.floats(30.0, 600.0),
    storeys=st.integers(1, 3),
    bedrooms=st.integers(0, 12),
)
def test_rooms_fill_the_rectangle(area: float, storeys: int, bedrooms: int) -> None:
    sketches = laid_out(area, storeys, bedrooms)
    assert len({s.name for s in sketches}) == len(sketches)
    assert sum("bedroom" in s.name for s in sketches) == bedrooms
    length = (area / storeys * 1.5) ** 0.5
    around = 2.0 * (length + length / 1.5)
    for storey in range(1, storeys + 1):
        here = [s for s in sketches if s.storey == storey]
        assert sum(s.area for s in here) == pytest.approx(area / storeys)
        walls = sum(wall for s in here for _, wall in s.walls)
        assert walls == pytest.approx(around)
        for first in here:
            assert sum(first.overlap(second) for second in here) == pytest.approx(first.area)


def test_names_do_not_depend_on_the_area() -> None:
    assert room_names(1, 2) == ("living room", "kitchen", "hall", "bedroom 1", "bath", "bedroom 2")
    assert room_names(2, 2)[:3] == ("living room", "kitchen", "hall")


def names(made: Case) -> set[str]:
    return {room.name for room in made.home.rooms}


@pytest.mark.parametrize("storeys", [1, 2, 3])
@pytest.mark.parametrize("foundation", ["vented crawlspace", "basement", "slab"])
def test_a_laid_out_home_holds_together(storeys: int, foundation: str) -> None:
    made = case(
        house={"storeys": storeys, "bedrooms": 3, "foundation": foundation},
        today={"ducts": None},
    )
    home = made.home
    ground = {"vented crawlspace": "crawlspace", "basement": "basement", "slab": "ground"}
    for room in home.rooms:
        assert room.below in names(made) | {ground[foundation]}
        assert room.above in names(made) | {"attic"}
        assert (room.storey == 1) == (room.below == ground[foundation])
        assert (room.storey == storeys) == (room.above == "attic")
    assert home.house.footprint_area == pytest.approx(home.house.floor_area / storeys)
    assert {d.first for d in home.doorways} | {d.second for d in home.doorways} == names(made)
    assert sum(d.state == "stairs" for d in home.doorways) == storeys - 1
    # 13 % of the floor area is glass, less in halls, which have none.
    glass = sum(sum(room.windows.values()) for room in home.rooms) / home.house.floor_area
    assert 0.08 < glass <= 0.13


def test_bedrooms_stand_ajar_and_are_wanted_at_night() -> None:
    made = case()
    states = {d.second: d.state for d in made.home.doorways}
    assert states["bedroom 1"] == "ajar"
    assert states["living room"] == "open"
    bedroom = next(room for room in made.home.rooms if room.name == "bedroom 1")
    assert bedroom.wanted_hours[23]
    assert not bedroom.wanted_hours[12]


def test_rooms_as_listed_with_what_they_leave_out() -> None:
    made = case(rooms=TWO_ROOMS)
    big, bedroom = made.home.rooms
    assert (big.below, big.above) == ("crawlspace", "attic")
    assert made.home.house.footprint_area == pytest.approx(1500 * 0.09290304)
    assert made.home.house.footprint_perimeter == pytest.approx((90 + 70) * 0.3048)
    assert dict(big.windows) == {"south": pytest.approx(60 * 0.09290304)}
    # Without a hall the largest room takes its place.
    assert [(d.first, d.second, d.state) for d in made.home.doorways] == [
        ("big room", "bedroom", "ajar")
    ]
    assert made.home.house.bedrooms == 1
    assert bedroom.ceiling_height == pytest.approx(8 * 0.3048)


def test_a_room_upstairs_lies_over_the_largest_below() -> None:
    upper = {
        "name": "loft",
        "storey": 2,
        "floor_area": "300 ft2",
        "ceiling_height": {"low": "6 ft", "high": "10 ft"},
    }
    made = case(house={"floor_area": None}, rooms=[*TWO_ROOMS, upper])
    loft = made.home.rooms[2]
    assert (loft.below, loft.above) == ("big room", "roof")
    assert made.home.rooms[0].above == "loft"
    assert made.home.house.storeys == 2
    assert made.home.house.floor_area == pytest.approx(1800 * 0.09290304)
    # Only rooms on the ground count in the footprint.
    assert made.home.house.footprint_area == pytest.approx(1500 * 0.09290304)


def test_windows_left_out_follow_the_walls() -> None:
    room = {**TWO_ROOMS[0], "windows": None}
    room.pop("windows")
    big = case(rooms=[room, TWO_ROOMS[1]]).home.rooms[0]
    # 13 % of 900 ft2 over three equal walls
    each = 0.13 * 900 / 3 * 0.09290304
    assert dict(big.windows) == {way: pytest.approx(each) for way in ("north", "south", "west")}
