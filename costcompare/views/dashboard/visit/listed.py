"""Rooms and doorways of a case document: listing, adding, removing, renaming."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from typing import Any

from costcompare.case.facts import Case, Room
from costcompare.case.paths import Location, copied, row_name
from costcompare.errors import CaseError, Fault
from costcompare.units import show
from costcompare.views.dashboard.visit.answers import Doc, guess, value_at

NEW_ROOM_AREA = "120 ft2"
"""Area of a room that was just added (judgement: a bedroom), until somebody measures it"""


def rows_of(document: Mapping[str, Any], key: str) -> list[Doc]:
    """The rows of a list at the top of a case that are tables."""
    rows = document.get(key)
    return [row for row in rows if isinstance(row, dict)] if isinstance(rows, list) else []


def names_of(document: Mapping[str, Any], key: str) -> list[str]:
    """The names of the rows of a list."""
    return [row_name(row) for row in rows_of(document, key)]


def fresh_name(wish: str, taken: Sequence[str]) -> str:
    """The wished name, with a number behind it where it is taken."""
    numbered = (wish if number == 1 else f"{wish} {number}" for number in range(1, 1000))
    return next(name for name in numbered if name not in taken)


# ---------------------------------------------------------------- rooms


def with_rooms_listed(document: Mapping[str, Any], case: Case) -> Doc:
    """The document with the rooms and doorways of its case written out, as guesses to correct."""
    changed: Doc = copied(document)
    if not rows_of(document, "rooms"):
        names = {room.name for room in case.home.rooms}
        changed["rooms"] = [_written(room, names) for room in case.home.rooms]
    if document.get("doorways") is None:
        changed["doorways"] = [
            {"between": [doorway.first, doorway.second], "state": doorway.state}
            for doorway in case.home.doorways
        ]
    return changed


def _written(room: Room, names: Collection[str]) -> Doc:
    low, high = room.ceiling_low, room.ceiling_high
    places = (("below", room.below), ("above", room.above))
    return {
        "name": room.name,
        "storey": room.storey,
        "floor_area": guess(show(room.floor_area, "area")),
        "ceiling_height": guess(show(low, "length"))
        if low == high
        else {"low": show(low, "length"), "high": show(high, "length")},
        "outside_walls": {
            way: show(wall, "length") for way, wall in room.outside_walls.items() if wall
        },
        "windows": {way: show(area, "area") for way, area in room.windows.items() if area},
        **{key: place for key, place in places if place in names},
    }


def with_room_added(document: Mapping[str, Any], case: Case) -> Doc:
    """The document with one more room; where none were listed, all are listed first."""
    changed = with_rooms_listed(document, case)
    taken = names_of(changed, "rooms")
    changed["rooms"].append(
        {
            "name": fresh_name("new room", taken),
            "floor_area": guess(NEW_ROOM_AREA),
            "outside_walls": {"north": "10 ft"},
            "windows": {"north": "8 ft2"},
        }
    )
    hall = next((name for name in taken if name.startswith("hall")), taken[0] if taken else "")
    if hall:
        between = [hall, names_of(changed, "rooms")[-1]]
        changed.setdefault("doorways", []).append({"between": between, "state": "ajar"})
    return changed


def with_room_renamed(document: Mapping[str, Any], at: Location, name: str) -> Doc:
    """The document with another name for a room, wherever it is spoken of."""
    old = _row(document, at, "rooms")
    return _with_names(document, old, name.strip())


def without_room(document: Mapping[str, Any], at: Location) -> Doc:
    """The document without a room and its doorways and register.

    What else speaks of it, such as a head in it, stays, and the reader of cases says so.
    """
    name = _row(document, at, "rooms")
    changed: Doc = copied(document)
    changed["rooms"] = [row for row in changed["rooms"] if row_name(row) != name]
    if isinstance(doorways := changed.get("doorways"), list):
        changed["doorways"] = [row for row in doorways if name not in _between(row)]
    registers = value_at(changed, ("today", "ducts", "registers"))
    if isinstance(registers, dict):
        registers.pop(name, None)
        _made_whole(registers)
    return changed


def _made_whole(registers: Doc) -> None:
    """Shares of registers that add up to one again."""
    shares = {key: share for key, share in registers.items() if isinstance(share, int | float)}
    total = sum(shares.values())
    if total > 0.0 and len(shares) == len(registers):
        registers.update({key: share / total for key, share in shares.items()})


def _between(row: Any) -> list[Any]:
    between = row.get("between") if isinstance(row, Mapping) else None
    return between if isinstance(between, list) else []


def _row(document: Mapping[str, Any], at: Location, key: str) -> str:
    """The name of a row of a list; CaseError where there is no such row."""
    row = value_at(document, at)
    if len(at) != 2 or at[0] != key or not isinstance(row, Mapping):
        raise CaseError([Fault(key, "has no such row")])
    return row_name(row)


ROOM_PLACES = frozenset({"room", "rooms", "between", "thermostat_room", "below", "above"})
"""Keys whose values are names of rooms"""
ROOM_KEYS = frozenset({"registers", "branches"})
"""Tables whose keys are names of rooms"""


def _with_names(document: Mapping[str, Any], old: str, new: str) -> Doc:
    def renamed(value: Any, key: str) -> Any:
        if isinstance(value, Mapping):
            names = key in ROOM_KEYS or key.endswith(tuple(f".{one}" for one in ROOM_KEYS))
            return {
                new if names and inner == old else _path_renamed(inner, old, new): renamed(
                    item, inner
                )
                for inner, item in value.items()
            }
        if isinstance(value, list):
            return [renamed(item, key) for item in value]
        return new if value == old and key.rpartition(".")[2] in ROOM_PLACES else value

    changed: Doc = renamed(document, "")
    for row in rows_of(changed, "rooms"):
        if row_name(row) == old:
            row["name"] = new
    return changed


def _path_renamed(key: str, old: str, new: str) -> str:
    """A dotted path of an option's changes with the room's new name."""
    for written, fresh in (
        (f"rooms.{old}.", f"rooms.{new}."),
        (f'rooms."{old}".', f'rooms."{new}".'),
    ):
        if key.startswith(written):
            return fresh + key[len(written) :]
    return key


# ---------------------------------------------------------------- doorways


def with_doorway_added(document: Mapping[str, Any], case: Case) -> Doc:
    """The document with a doorway between the first two rooms that have none between them."""
    changed = with_rooms_listed(document, case)
    taken = {frozenset(map(str, _between(row))) for row in rows_of(changed, "doorways")}
    pair = next(_pairs(names_of(changed, "rooms"), taken), None)
    if pair is None:
        raise CaseError([Fault("doorways", "every room has a doorway to every other")])
    changed.setdefault("doorways", []).append({"between": list(pair), "state": "open"})
    return changed


def _pairs(names: Sequence[str], taken: set[frozenset[str]]) -> Iterator[tuple[str, str]]:
    for place, one in enumerate(names):
        for other in names[place + 1 :]:
            if frozenset((one, other)) not in taken:
                yield one, other


def without_row(document: Mapping[str, Any], at: Location) -> Doc:
    """The document without a row of any list."""
    changed: Doc = copied(document)
    rows = value_at(changed, at[:-1])
    if not isinstance(rows, list) or not isinstance(at[-1], int) or not 0 <= at[-1] < len(rows):
        raise CaseError([Fault(".".join(map(str, at[:-1])), "has no such row")])
    del rows[at[-1]]
    return changed
