"""Rooms for a house of which only size, storeys and bedrooms are known.

A rectangle half as long again as it is deep, its long sides to north and south. The
ground floor has the living room and the kitchen at the west end; to the east a hall
runs between a south and a north row of rooms. An upper storey is a hall between two
rows. The proportions are judgement; walls and areas add up to the rectangle exactly.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise

from costcompare.case.facts import ORIENTATIONS, Doorway, DoorwayState, Orientation

LENGTH_OVER_DEPTH = 1.5
WEST_SHARE = 0.42
"""Share of the ground floor that living room and kitchen take"""
LIVING_SHARE = 0.62
"""Share of the west end that is the living room"""
HALL_SHARE = 0.14
"""Share of the depth that the hall takes between the two rows"""
BATH_WIDTH = 0.5
"""Width of a bath, in widths of a bedroom"""


@dataclass(frozen=True)
class Sketch:
    """A room of a laid-out house: a rectangle, x to the east and y to the north [m]."""

    name: str
    storey: int
    x0: float
    y0: float
    x1: float
    y1: float
    walls: tuple[tuple[Orientation, float], ...]
    """Length of outside wall by orientation [m]"""

    @property
    def area(self) -> float:
        return (self.x1 - self.x0) * (self.y1 - self.y0)

    def overlap(self, other: Sketch) -> float:
        """Area over or under another room [m2]."""
        width = min(self.x1, other.x1) - max(self.x0, other.x0)
        depth = min(self.y1, other.y1) - max(self.y0, other.y0)
        return max(width, 0.0) * max(depth, 0.0)


def room_names(storeys: int, bedrooms: int) -> tuple[str, ...]:
    """The names of the rooms that :func:`laid_out` makes, in its order."""
    return tuple(sketch.name for sketch in laid_out(100.0, storeys, bedrooms))


def laid_out(floor_area: float, storeys: int, bedrooms: int) -> tuple[Sketch, ...]:
    """The rooms of a house by its floor area [m2], storeys and bedrooms."""
    length = math.sqrt(floor_area / storeys * LENGTH_OVER_DEPTH)
    depth = length / LENGTH_OVER_DEPTH
    names = [f"bedroom {n}" for n in range(1, bedrooms + 1)]
    if storeys == 1:
        return _ground_floor(length, depth, names, bath="bath")
    rooms = list(_ground_floor(length, depth, ["dining room"], bath="downstairs bath"))
    upper = storeys - 1
    for number in range(upper):
        storey = number + 2
        mine = names[number::upper] or [f"upstairs room {storey}"]
        prefix = "upstairs" if upper == 1 else f"storey {storey}"
        rooms += _rows(
            storey, (0.0, length, depth), mine, hall_and_bath=(f"{prefix} hall", f"{prefix} bath")
        )
    return tuple(rooms)


def _ground_floor(
    length: float, depth: float, names: list[str], *, bath: str
) -> tuple[Sketch, ...]:
    if not names:
        names = ["spare room"]
    west = WEST_SHARE * length
    middle = LIVING_SHARE * depth
    living = Sketch("living room", 1, 0.0, 0.0, west, middle, (("south", west), ("west", middle)))
    kitchen = Sketch(
        "kitchen", 1, 0.0, middle, west, depth, (("north", west), ("west", depth - middle))
    )
    return (living, kitchen, *_rows(1, (west, length, depth), names, hall_and_bath=("hall", bath)))


def _rows(
    storey: int,
    box: tuple[float, float, float],
    names: list[str],
    *,
    hall_and_bath: tuple[str, str],
) -> list[Sketch]:
    """A hall between a south row and a north row of rooms, the bath in the north row."""
    x0, x1, depth = box
    hall, bath = hall_and_bath
    row = 0.5 * (1.0 - HALL_SHARE) * depth
    south_names = names[: (len(names) + 1) // 2]
    north_names = [bath, *names[(len(names) + 1) // 2 :]]
    west_wall = x0 == 0.0
    ends: list[tuple[Orientation, float]] = [("east", depth - 2 * row)]
    if west_wall:
        ends.append(("west", depth - 2 * row))
    rooms = [Sketch(hall, storey, x0, row, x1, depth - row, tuple(ends))]
    for side, members, y0, y1 in (
        ("south", south_names, 0.0, row),
        ("north", north_names, depth - row, depth),
    ):
        parts = [BATH_WIDTH if name == bath else 1.0 for name in members]
        left = x0
        for index, (name, part) in enumerate(zip(members, parts, strict=True)):
            right = x1 if index == len(members) - 1 else left + (x1 - x0) * part / sum(parts)
            walls: list[tuple[Orientation, float]] = [
                ("south" if side == "south" else "north", right - left)
            ]
            if index == len(members) - 1:
                walls.append(("east", row))
            if index == 0 and west_wall:
                walls.append(("west", row))
            rooms.append(Sketch(name, storey, left, y0, right, y1, tuple(walls)))
            left = right
    return rooms


def best_overlap(room: Sketch, others: list[Sketch]) -> str:
    """The name of the room that lies over or under most of a room."""
    return max(others, key=room.overlap).name


def in_order(walls: tuple[tuple[Orientation, float], ...]) -> dict[Orientation, float]:
    """Walls by orientation, in the order of the sun arrays."""
    lengths = dict(walls)
    return {way: lengths[way] for way in ORIENTATIONS if way in lengths}


def doorway_state(name: str) -> DoorwayState:
    """Bedrooms and baths stand ajar, other doors open (judgement)."""
    private = any(word in name.lower() for word in ("bed", "bath", "nursery", "guest"))
    return "ajar" if private else "open"


def doorways_to_halls(rooms: list[tuple[str, int, float]]) -> list[Doorway]:
    """A doorway from every room (name, storey, area) to its storey's hall, stairs between halls."""
    doorways: list[Doorway] = []
    halls: dict[int, str] = {}
    for storey in sorted({s for _, s, _ in rooms}):
        here = [(name, area) for name, s, area in rooms if s == storey]
        named = [name for name, _ in here if "hall" in name.lower()]
        halls[storey] = named[0] if named else max(here, key=lambda pair: pair[1])[0]
        doorways += [
            Doorway(halls[storey], name, doorway_state(name))
            for name, _ in here
            if name != halls[storey]
        ]
    order = sorted(halls)
    doorways += [Doorway(halls[low], halls[high], "stairs") for low, high in pairwise(order)]
    return doorways
