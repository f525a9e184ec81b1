"""A schematic plan from what a case says of its rooms: areas, storeys, doorways, outside walls.

A case holds no coordinates, so this is no survey. Every storey is cut into rectangles as large
as its rooms; of the orders in which they can be cut, the one is kept that brings most doorways
onto a shared wall and most outside walls to their side, with room enough for a label.
"""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from costcompare.case.home_facts import Doorway, Room

WIDTH_PX, TALLEST_PX, LEAST_PX = 320.0, 440.0, 170.0
"""Size of a storey on a phone: the largest one as tall as TALLEST_PX, none lower than LEAST_PX"""
LABEL_PX = (88.0, 74.0)
"""What a name with two short lines below takes at 14 px (measured for ``living room``)"""
DOOR_PX = 22.0
"""Length of a doorway as it is drawn; a shared wall must be as long"""
LOST_DOOR, LOST_SIDE = 4000.0, 1500.0
"""A doorway that is not drawn, an outside wall on the wrong side, against the square of a label's
missing pixels (judgement)"""
MOST_ROUNDS = 8
"""Rounds of exchanging rooms; the plans of the examples settle in three"""
TOUCH = 1e-6


@dataclass(frozen=True)
class Placed:
    """A room's rectangle, as shares of the width and the height of its storey."""

    name: str
    left: float
    top: float
    width: float
    height: float


@dataclass(frozen=True)
class DoorMark:
    """A doorway in the middle of the wall that its rooms share."""

    between: tuple[str, str]
    state: str
    upright: bool
    """Whether it stands in a wall that runs from top to bottom"""
    across: float
    down: float


@dataclass(frozen=True)
class StoreyPlan:
    """One storey."""

    storey: int
    height_px: float
    rooms: tuple[Placed, ...]
    doors: tuple[DoorMark, ...]


@dataclass(frozen=True)
class _Cell:
    """What the order of one room hangs on."""

    name: str
    area: float
    sides: frozenset[str]
    doors: frozenset[str]


def floor_plans(rooms: Sequence[Room], doorways: Sequence[Doorway]) -> tuple[StoreyPlan, ...]:
    """A plan of every storey, the highest first."""
    storeys = sorted({room.storey for room in rooms}, reverse=True)
    areas = {s: sum(room.floor_area for room in rooms if room.storey == s) for s in storeys}
    plans = []
    for storey in storeys:
        here = [room for room in rooms if room.storey == storey]
        height = max(LEAST_PX, TALLEST_PX * areas[storey] / max(areas.values()))
        placed = _best(tuple(_cell(room, here, doorways) for room in here), round(height))
        plans.append(StoreyPlan(storey, round(height), placed, _doors(placed, doorways, height)))
    return tuple(plans)


def undrawn(plans: Sequence[StoreyPlan], doorways: Sequence[Doorway]) -> tuple[Doorway, ...]:
    """Doorways that could not be drawn: stairs, and rooms that do not lie beside each other."""
    drawn = {frozenset(door.between) for plan in plans for door in plan.doors}
    return tuple(way for way in doorways if frozenset((way.first, way.second)) not in drawn)


def _cell(room: Room, here: Sequence[Room], doorways: Sequence[Doorway]) -> _Cell:
    names = {one.name for one in here} - {room.name}
    partners = {way.second for way in doorways if way.first == room.name}
    partners |= {way.first for way in doorways if way.second == room.name}
    sides = frozenset(side for side, length in room.outside_walls.items() if length > 0.0)
    return _Cell(room.name, room.floor_area, sides, frozenset(partners & names))


@lru_cache(maxsize=128)
def _best(cells: tuple[_Cell, ...], height_px: int) -> tuple[Placed, ...]:
    """The rectangles of the best order that exchanging rooms by twos comes to."""
    order = list(cells)
    placed = _cut(order, 0.0, 0.0, (WIDTH_PX, float(height_px)))
    least = _faults(placed, cells, height_px)
    for _round in range(MOST_ROUNDS):
        before = least
        for one, other in itertools.combinations(range(len(order)), 2):
            tried = list(order)
            tried[one], tried[other] = tried[other], tried[one]
            rectangles = _cut(tried, 0.0, 0.0, (WIDTH_PX, float(height_px)))
            faults = _faults(rectangles, cells, height_px)
            if faults < least - TOUCH:
                order, placed, least = tried, rectangles, faults
        if least == before:
            break
    return tuple(
        Placed(
            one.name,
            one.left / WIDTH_PX,
            one.top / height_px,
            one.width / WIDTH_PX,
            one.height / height_px,
        )
        for one in placed
    )


def _cut(
    cells: Sequence[_Cell], left: float, top: float, size: tuple[float, float]
) -> list[Placed]:
    """Cut a rectangle in two across its longer side, as evenly as the order allows, and on."""
    width, height = size
    if len(cells) == 1:
        return [Placed(cells[0].name, left, top, width, height)]
    total = sum(cell.area for cell in cells)
    sums = list(itertools.accumulate(cell.area for cell in cells))
    at = min(range(1, len(cells)), key=lambda n: abs(2.0 * sums[n - 1] - total))
    share = sums[at - 1] / total
    if width >= height:
        first = _cut(cells[:at], left, top, (width * share, height))
        rest = (left + width * share, top, (width * (1.0 - share), height))
    else:
        first = _cut(cells[:at], left, top, (width, height * share))
        rest = (left, top + height * share, (width, height * (1.0 - share)))
    return first + _cut(cells[at:], *rest)


def _faults(placed: Sequence[Placed], cells: Sequence[_Cell], height_px: float) -> float:
    """What speaks against a plan [square pixels], in its own pixels."""
    by_name = {one.name: one for one in placed}
    found = 0.0
    for cell in cells:
        own = by_name[cell.name]
        found += max(0.0, LABEL_PX[0] - own.width) ** 2 + max(0.0, LABEL_PX[1] - own.height) ** 2
        found += LOST_SIDE * sum(not _touches(own, side, height_px) for side in cell.sides)
        for other in cell.doors:
            if _shared(own, by_name[other])[1] < DOOR_PX:
                found += LOST_DOOR / 2.0  # each doorway is met from both of its rooms
    return found


def _touches(one: Placed, side: str, height_px: float) -> bool:
    """Whether a rectangle reaches a side of the storey, with north at the top."""
    gaps: Mapping[str, float] = {
        "north": one.top,
        "south": height_px - one.top - one.height,
        "west": one.left,
        "east": WIDTH_PX - one.left - one.width,
    }
    return gaps.get(side, 0.0) < TOUCH


def _shared(one: Placed, other: Placed) -> tuple[bool, float]:
    """The wall that two rectangles share: whether it is upright, and its length."""
    across = min(one.left + one.width, other.left + other.width) - max(one.left, other.left)
    down = min(one.top + one.height, other.top + other.height) - max(one.top, other.top)
    if abs(across) < TOUCH:
        return True, max(down, 0.0)
    if abs(down) < TOUCH:
        return False, max(across, 0.0)
    return False, 0.0


def _doors(
    placed: Sequence[Placed], doorways: Sequence[Doorway], height_px: float
) -> tuple[DoorMark, ...]:
    by_name = {one.name: one for one in placed}
    marks = []
    for way in doorways:
        one, other = by_name.get(way.first), by_name.get(way.second)
        if one is None or other is None:
            continue
        upright, length = _shared(one, other)
        if length * (height_px if upright else WIDTH_PX) < DOOR_PX - TOUCH:
            continue
        left, right = (
            max(one.left, other.left),
            min(one.left + one.width, other.left + other.width),
        )
        top, bottom = max(one.top, other.top), min(one.top + one.height, other.top + other.height)
        middle = ((left + right) / 2.0, (top + bottom) / 2.0)
        marks.append(DoorMark((way.first, way.second), way.state, upright, *middle))
    return tuple(marks)
