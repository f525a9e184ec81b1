"""Rooms and doorways: listed, added, renamed, removed."""

from __future__ import annotations

from typing import Any

import pytest

from costcompare.case import case_from_document, example_path, read_document
from costcompare.errors import CaseError
from costcompare.views.dashboard.visit.intake import taken_in
from costcompare.views.dashboard.visit.listed import (
    fresh_name,
    names_of,
    with_doorway_added,
    with_room_added,
    with_room_renamed,
    with_rooms_listed,
    without_room,
    without_row,
)

Doc = dict[str, Any]


@pytest.fixture
def laid_out() -> Doc:
    document = read_document(example_path("wrong_settings"))
    return taken_in(document, document)


def test_the_rooms_of_a_laid_out_house_are_written_down_as_they_were(laid_out: Doc) -> None:
    before = case_from_document(laid_out)
    listed = with_rooms_listed(laid_out, before)
    after = case_from_document(listed)
    assert [room.name for room in after.home.rooms] == [room.name for room in before.home.rooms]
    for one, other in zip(before.home.rooms, after.home.rooms, strict=True):
        assert other.floor_area == pytest.approx(one.floor_area, rel=1e-3)
        assert other.below == one.below
        assert sum(other.windows.values()) == pytest.approx(sum(one.windows.values()), rel=1e-3)
    assert [(d.first, d.second, d.state) for d in after.home.doorways] == [
        (d.first, d.second, d.state) for d in before.home.doorways
    ]
    assert with_rooms_listed(listed, after) == listed


def test_a_room_comes_with_a_door_and_goes_with_it(opened: Doc) -> None:
    more = with_room_added(opened, case_from_document(opened))
    assert names_of(more, "rooms")[-1] == "new room"
    assert more["doorways"][-1]["between"] == ["hall", "new room"]
    registers = more["today"]["ducts"]["registers"]
    assert "new room" not in registers
    case_from_document(more)
    last = len(more["rooms"]) - 1
    assert without_room(more, ("rooms", last)) == opened


def test_a_removed_room_leaves_registers_that_add_up(opened: Doc) -> None:
    at = names_of(opened, "rooms").index("guest bedroom")
    changed = without_room(opened, ("rooms", at))
    assert sum(changed["today"]["ducts"]["registers"].values()) == pytest.approx(1.0)
    with pytest.raises(CaseError, match="guest bedroom"):
        case_from_document(changed)  # an option has a heater there


def test_a_new_name_is_used_wherever_the_room_is_spoken_of(opened: Doc) -> None:
    opened["options"][0]["set"]["rooms.hall.floor_area"] = "160 ft2"
    changed = with_room_renamed(opened, ("rooms", 2), "middle. room")
    assert '"hall"' not in str(changed).replace("'", '"')
    case = case_from_document(with_room_renamed(opened, ("rooms", 2), "corridor"))
    assert case.today.thermostat_room == "corridor"


def test_names_stay_apart() -> None:
    assert fresh_name("bath", ["hall"]) == "bath"
    assert fresh_name("bath", ["bath", "bath 2"]) == "bath 3"


def test_a_doorway_is_added_where_there_is_none(opened: Doc) -> None:
    changed = with_doorway_added(opened, case_from_document(opened))
    assert changed["doorways"][-1] == {"between": ["living room", "sewing room"], "state": "open"}
    case_from_document(changed)
    assert without_row(changed, ("doorways", len(changed["doorways"]) - 1)) == opened


@pytest.mark.parametrize("at", [("rooms", 99), ("rooms",), ("options", 0), ("rooms", "hall")])
def test_a_row_that_is_none_is_refused(opened: Doc, at: tuple[str | int, ...]) -> None:
    with pytest.raises(CaseError, match="no such row"):
        without_room(opened, at)
