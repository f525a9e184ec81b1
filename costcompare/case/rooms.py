"""The rooms of a case: as it lists them, or laid out from a few numbers."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from costcompare.case.defaults import house_default
from costcompare.case.document import Document, DoorwayTable, RoomTable
from costcompare.case.facts import (
    ORIENTATIONS,
    Doorway,
    Foundation,
    Orientation,
    Room,
)
from costcompare.case.hours import hours_of_day, written
from costcompare.case.layout import (
    Sketch,
    best_overlap,
    doorways_to_halls,
    in_order,
    laid_out,
)
from costcompare.case.ledger import Ledger
from costcompare.case.paths import join

PLACES_BELOW = ("crawlspace", "ground", "basement", "garage", "belly", "outdoors")
PLACES_ABOVE = ("attic", "roof")
ON_THE_GROUND = frozenset({"crawlspace", "ground", "basement", "belly"})
SLEEPING_HOURS, WAKING_HOURS = "21-7", "6-23"
"""When a bedroom and any other room is wanted (judgement)"""
LAID_OUT = "laid out from floor area, storeys and bedrooms (judgement)"
UNLIT = ("hall", "stairs", "closet", "laundry")
"""Rooms that get no window unless the case gives one (judgement)"""


def place_below(foundation: Foundation) -> str:
    """What lies under the ground floor of a house on that foundation."""
    places = {"slab": "ground", "basement": "basement", "manufactured home": "belly"}
    return places.get(foundation, "crawlspace")


def rooms_of(document: Document, ledger: Ledger) -> tuple[Room, ...]:
    """Every room, with its share of the home's inside gains."""
    if document.rooms:
        top = max(room.storey or 1 for room in document.rooms)
        rooms = [_stated_room(table, document, top, ledger=ledger) for table in document.rooms]
    else:
        rooms = _laid_out_rooms(document, ledger)
    weights = [room.floor_area * (sum(room.wanted_hours) or 1) for room in rooms]
    total = sum(weights)
    return tuple(replace(r, use_share=w / total) for r, w in zip(rooms, weights, strict=True))


def doorways_of(document: Document, rooms: Sequence[Room], ledger: Ledger) -> tuple[Doorway, ...]:
    """Every doorway: as listed, or one from each room to the hall of its storey."""
    if document.doorways is not None:
        return tuple(_stated_doorway(table) for table in document.doorways)
    doorways = doorways_to_halls([(r.name, r.storey, r.floor_area) for r in rooms])
    if not document.rooms:
        doorways.append(Doorway("living room", "kitchen", "open"))
    source = "judgement: each room opens to the hall of its storey; bedrooms and baths stand ajar"
    listed = "; ".join(f"{d.first} - {d.second}: {d.state}" for d in doorways)
    ledger.note("doorways", listed, source)
    return tuple(doorways)


def footprint(rooms: Sequence[Room]) -> tuple[float, float]:
    """Area [m2] and outside edge [m] of the ground the house covers."""
    low = [room for room in rooms if room.below in ON_THE_GROUND]
    area = sum(room.floor_area for room in low)
    edge = sum(sum(room.outside_walls.values()) + room.walls_below_grade for room in low)
    return area, edge


def _stated_doorway(table: DoorwayTable) -> Doorway:
    first, second = table.between
    plain = Doorway(first, second, table.state or "open")
    return replace(plain, width=table.width or plain.width, height=table.height or plain.height)


def _stated_room(table: RoomTable, document: Document, top: int, *, ledger: Ledger) -> Room:
    path = join(["rooms", table.name])
    storey = table.storey or 1
    low, high = table.ceiling_height or (0.0, 0.0)
    if not low:
        low = high = ledger.measure(None, f"{path}.ceiling_height", "ceiling_height")
    walls = _directions(table.outside_walls)
    windows = _directions(table.windows)
    if table.windows is None and walls:
        windows = _windows(table.name, table.floor_area, walls, height=low, ledger=ledger)
        ledger.filled(
            f"{path}.windows",
            sum(windows.values()),
            "area",
            source=house_default("window_share_of_floor_area", ledger.built).source,
        )
    return Room(
        name=table.name,
        storey=storey,
        floor_area=table.floor_area,
        ceiling_low=low,
        ceiling_high=high,
        outside_walls=walls,
        windows=windows,
        below=table.below or _below(table, document, ledger),
        above=table.above or _above(table, document, top, ledger=ledger),
        wanted_hours=table.wanted_hours or _wanted(table.name, ledger),
        walls_below_grade=table.walls_below_grade or 0.0,
    )


def _below(table: RoomTable, document: Document, ledger: Ledger) -> str:
    storey = table.storey or 1
    under = [r for r in document.rooms or [] if (r.storey or 1) == storey - 1]
    place = place_below(document.house.foundation)
    if storey > 1 and under:
        place = max(under, key=lambda r: r.floor_area).name
    source = "judgement: the foundation, or the largest room of the storey below"
    ledger.note(join(["rooms", table.name, "below"]), place, source)
    return place


def _above(table: RoomTable, document: Document, top: int, *, ledger: Ledger) -> str:
    storey = table.storey or 1
    over = [r for r in document.rooms or [] if (r.storey or 1) == storey + 1]
    sloped = table.ceiling_height is not None and table.ceiling_height[0] < table.ceiling_height[1]
    place = "roof" if sloped else "attic"
    if storey < top and over:
        place = max(over, key=lambda r: r.floor_area).name
    source = "judgement: an attic, a roof over a sloping ceiling, or the largest room above"
    ledger.note(join(["rooms", table.name, "above"]), place, source)
    return place


def _wanted(name: str, ledger: Ledger) -> tuple[bool, ...]:
    flags = _usual_hours(name)
    source = "judgement: bedrooms at night, other rooms by day"
    ledger.note(join(["rooms", name, "wanted_hours"]), written(flags), source)
    return flags


def _usual_hours(name: str) -> tuple[bool, ...]:
    return hours_of_day(SLEEPING_HOURS if "bed" in name.lower() else WAKING_HOURS)


def _directions(table: object) -> dict[Orientation, float]:
    """The stated lengths or areas by orientation, without zeros."""
    stated = {way: getattr(table, way, None) for way in ORIENTATIONS}
    return {way: value for way, value in stated.items() if value}


def _windows(
    name: str, area: float, walls: dict[Orientation, float], *, height: float, ledger: Ledger
) -> dict[Orientation, float]:
    """Windows in proportion to the outside walls, at most two fifths of a wall."""
    if any(word in name.lower() for word in UNLIT):
        return {}
    share = house_default("window_share_of_floor_area", ledger.built).number
    edge = sum(walls.values())
    return {
        way: min(share * area * length / edge, 0.4 * length * height)
        for way, length in walls.items()
    }


def _laid_out_rooms(document: Document, ledger: Ledger) -> list[Room]:
    house = document.house
    storeys, bedrooms = storeys_of(document), bedrooms_of(document)
    sketches = laid_out(house.floor_area or 0.0, storeys, bedrooms)
    height = ledger.measure(None, "ceiling_height")
    rooms = [_laid_out_room(s, sketches, document, height=height, ledger=ledger) for s in sketches]
    ledger.note("rooms", ", ".join(room.name for room in rooms), LAID_OUT)
    share = house_default("window_share_of_floor_area", ledger.built)
    total = sum(sum(room.windows.values()) for room in rooms)
    ledger.filled("window_area", total, "area", source=share.source)
    return rooms


def _laid_out_room(
    sketch: Sketch,
    sketches: Sequence[Sketch],
    document: Document,
    *,
    height: float,
    ledger: Ledger,
) -> Room:
    under = [s for s in sketches if s.storey == sketch.storey - 1]
    over = [s for s in sketches if s.storey == sketch.storey + 1]
    walls = in_order(sketch.walls)
    ground = place_below(document.house.foundation)
    return Room(
        name=sketch.name,
        storey=sketch.storey,
        floor_area=sketch.area,
        ceiling_low=height,
        ceiling_high=height,
        outside_walls=walls,
        windows=_windows(sketch.name, sketch.area, walls, height=height, ledger=ledger),
        below=best_overlap(sketch, under) if under else ground,
        above=best_overlap(sketch, over) if over else "attic",
        wanted_hours=_usual_hours(sketch.name),
    )


def storeys_of(document: Document) -> int:
    """Storeys as stated, as the rooms show, or one."""
    if document.house.storeys is not None:
        return document.house.storeys
    return max((room.storey or 1 for room in document.rooms or []), default=1)


def bedrooms_of(document: Document) -> int:
    """Bedrooms as stated, as the rooms show, or by floor area."""
    house = document.house
    if house.bedrooms is not None:
        return house.bedrooms
    if document.rooms:
        return sum("bed" in room.name.lower() for room in document.rooms)
    return bedrooms_for_area(house.floor_area or math.nan)


def bedrooms_for_area(floor_area: float) -> int:
    """Bedrooms for a floor area [m2] (judgement)."""
    steps = ((55.0, 1), (90.0, 2), (180.0, 3), (270.0, 4))
    return next((count for limit, count in steps if floor_area < limit), 5)
