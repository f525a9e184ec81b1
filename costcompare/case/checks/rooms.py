"""Checks of the building: rooms, doorways, places above and below, settings."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from zoneinfo import available_timezones

from costcompare.case.document import Document, RoomTable
from costcompare.case.facts import ORIENTATIONS
from costcompare.case.layout import room_names
from costcompare.case.paths import join
from costcompare.case.rooms import (
    PLACES_ABOVE,
    PLACES_BELOW,
    bedrooms_of,
    storeys_of,
)
from costcompare.case.values import nearest
from costcompare.errors import Fault
from costcompare.units import show

AREA_TOLERANCE = 0.35
"""How far the rooms' areas may add up to another floor area than the stated one (judgement)"""
_CRAWLSPACES = ("vented crawlspace", "closed crawlspace")


def room_faults(document: Document) -> list[Fault]:
    """Everything about the building that does not fit together."""
    rooms = document.rooms or []
    return [
        *_site(document),
        *_house(document),
        *repeated("rooms", [room.name for room in rooms]),
        *_names(rooms),
        *_places(document, rooms),
        *_walls_and_windows(rooms),
        *_areas(document, rooms),
        *_doorways(document),
        *_exhaust(document),
        *_thermostat(document),
    ]


def known_rooms(document: Document) -> tuple[str, ...] | None:
    """The names of the rooms; None where they cannot be known because of another fault."""
    if document.rooms is not None and document.rooms:
        return tuple(dict.fromkeys(room.name for room in document.rooms if room.name))
    house = document.house
    if house is None or (house.bedrooms is None and house.floor_area is None):
        return None
    return room_names(storeys_of(document), bedrooms_of(document))


def repeated(path: str, names: Sequence[str | None]) -> Iterator[Fault]:
    """A fault for every name that stands twice in a list."""
    for name, count in Counter(name for name in names if name).items():
        if count > 1:
            yield Fault(join([path, name]), "must be the name of one row only", f"{count} rows")


def no_such_room(path: str, name: str | None, names: Sequence[str] | None) -> Iterator[Fault]:
    """A fault where a room is named that the house does not have."""
    if name and names is not None and name not in names:
        rule = f"must be a room of the house: {'; '.join(names)}"
        yield Fault(path, rule, name, nearest(name, list(names)))


def _site(document: Document) -> Iterator[Fault]:
    zone = document.site.time_zone if document.site is not None else None
    if zone and zone not in available_timezones():
        guess = nearest(zone, sorted(available_timezones())) or 'for example "America/New_York"'
        yield Fault("site.time_zone", "must be a time zone of the IANA list", zone, guess)


def _house(document: Document) -> Iterator[Fault]:
    house = document.house
    if house is None:
        return
    if house.floor_area is None and not document.rooms and "floor_area" not in _given(document):
        yield Fault("house.floor_area", "is needed", "", 'for example floor_area = "1850 ft2"')
    if house.air_changes is not None and house.air_leakage_at_50_pa is not None:
        rule = "give either air_changes or air_leakage_at_50_pa, not both"
        yield Fault("house.air_changes", rule)
    if document.crawlspace is not None and house.foundation not in (*_CRAWLSPACES, None):
        rule = f"a house on a {house.foundation} has no crawlspace"
        yield Fault("crawlspace", rule, "", "the foundation, or leave the table out")
    rooms = document.rooms or []
    top = max((room.storey or 1 for room in rooms), default=None)
    if house.storeys is not None and top is not None and top != house.storeys:
        rule = f"the highest storey of the rooms is {top}"
        yield Fault("house.storeys", rule, str(house.storeys), str(top))


def _given(document: Document) -> set[str]:
    return document.house.model_fields_set


def _names(rooms: Sequence[RoomTable]) -> Iterator[Fault]:
    reserved = {*PLACES_BELOW, *PLACES_ABOVE}
    for room in rooms:
        if room.name in reserved:
            rule = "must not be the name of a place above or below the rooms"
            yield Fault(join(["rooms", room.name]), rule, "", f'for example "{room.name} room"')


def _places(document: Document, rooms: Sequence[RoomTable]) -> Iterator[Fault]:
    names = tuple(room.name for room in rooms if room.name)
    for room in rooms:
        for key, places in (("below", PLACES_BELOW), ("above", PLACES_ABOVE)):
            place = getattr(room, key)
            path = join(["rooms", room.name or "?", key])
            choices = (*places, *(name for name in names if name != room.name))
            if place and place not in choices:
                rule = f"must be one of: {'; '.join(choices)}"
                yield Fault(path, rule, place, nearest(place, list(choices)))
        yield from _foundation(document, room)
    levels = {room.name: room.storey or 1 for room in rooms}
    for room in rooms:
        storey = room.storey or 1
        for key, place, side in (("below", room.below, -1), ("above", room.above, 1)):
            if place in levels and (levels[place] - storey) * side <= 0 and place != room.name:
                path = join(["rooms", room.name or "?", key])
                yield Fault(path, f"must be a room of another storey {key}", place)


def _foundation(document: Document, room: RoomTable) -> Iterator[Fault]:
    foundation = document.house.foundation if document.house is not None else None
    lacks = {
        "crawlspace": foundation not in (*_CRAWLSPACES, None),
        "basement": foundation not in ("basement", None),
        "belly": foundation not in ("manufactured home", None),
    }
    if room.below and lacks.get(room.below):
        path = join(["rooms", room.name or "?", "below"])
        yield Fault(path, f"a house on a {foundation} has no {room.below}", room.below)


def _walls_and_windows(rooms: Sequence[RoomTable]) -> Iterator[Fault]:
    for room in rooms:
        path = ["rooms", room.name or "?", "windows"]
        for way in ORIENTATIONS:
            wall = getattr(room.outside_walls, way, None) or 0.0
            window = getattr(room.windows, way, None) or 0.0
            height = max(room.ceiling_height or (0.0, 2.44))
            if window > 0.0 and wall == 0.0:
                rule = f"a window to the {way} needs an outside wall to the {way}"
                yield Fault(join([*path, way]), rule, show(window, "area"))
            elif window > wall * height:
                rule = f"must be less than the wall, {show(wall * height, 'area')}"
                yield Fault(join([*path, way]), rule, show(window, "area"))
    walls = [room.outside_walls for room in rooms if room.outside_walls is not None]
    if rooms and not any(getattr(wall, way) for wall in walls for way in ORIENTATIONS):
        instead = 'for example outside_walls = { south = "24 ft" }'
        yield Fault("rooms", "at least one room must have an outside wall", "", instead)


def _areas(document: Document, rooms: Sequence[RoomTable]) -> Iterator[Fault]:
    stated = document.house.floor_area if document.house is not None else None
    areas = [room.floor_area for room in rooms]
    if stated is None or not areas or any(area is None for area in areas):
        return
    total = sum(areas)
    if abs(total - stated) > AREA_TOLERANCE * stated:
        rule = f"the rooms add up to {show(total, 'area')}, more than 35 % away"
        instead = "the sum of the rooms, or leave floor_area out"
        yield Fault("house.floor_area", rule, show(stated, "area"), instead)


def _doorways(document: Document) -> Iterator[Fault]:
    names = known_rooms(document)
    seen: set[frozenset[str]] = set()
    for number, doorway in enumerate(document.doorways or [], 1):
        path = join(["doorways", number])
        for name in doorway.between or []:
            yield from no_such_room(f"{path}.between", name, names)
        pair = frozenset(doorway.between or [])
        if len(pair) == 2 and pair in seen:
            yield Fault(path, "two rooms have one row of doorways only", " and ".join(sorted(pair)))
        seen.add(pair)


def _exhaust(document: Document) -> Iterator[Fault]:
    names = known_rooms(document)
    house, fire = document.house, document.fireplace
    for number, fan in enumerate((house.fans or []) if house is not None else [], 1):
        yield from no_such_room(join(["house", "fans", number, "room"]), fan.room, names)
    if fire is not None:
        yield from no_such_room("fireplace.room", fire.room, names)


def _thermostat(document: Document) -> Iterator[Fault]:
    table = document.thermostat
    if table is None:
        return
    settings = (table.day, table.night, table.wanted, table.wanted_night)
    warmest = max((value for value in settings if value is not None), default=None)
    if table.cooling is not None and warmest is not None and table.cooling <= warmest:
        rule = f"must be above the warmest heating setting, {show(warmest, 'temperature')}"
        yield Fault("thermostat.cooling", rule, show(table.cooling, "temperature"))
