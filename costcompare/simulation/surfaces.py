"""The rooms' surfaces as chains, and the conductances of the partitions between rooms."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from costcompare.case.facts import ORIENTATIONS, Construction, Home, Layer, Room, System
from costcompare.physics import ground
from costcompare.physics.envelope import (
    FILM_DOWN,
    FILM_LEVEL,
    FILM_OUTSIDE,
    FILM_UP,
    INSIDE_CONVECTIVE_DOWN,
    INSIDE_CONVECTIVE_LEVEL,
    INSIDE_CONVECTIVE_UP,
    INSIDE_RADIATIVE,
    SKY_SHARE_ROOF,
    SKY_SHARE_WALL,
    sol_air,
)
from costcompare.physics.stratification import GRADIENT, ceiling_factor
from costcompare.simulation.chains import NOTHING, ChainBuilder, Port, Sunlit
from costcompare.simulation.network import FLOOR, STORED, WALLS_AND_GLASS
from costcompare.simulation.spaces import BASEMENT_WALL, SOIL_LAYER, Surroundings

Floats = NDArray[np.float64]

GLASS_EMISSIVITY = 0.84
"""ASHRAE Standard 140, glass of the test cells"""
LEAST_GLASS_RESISTANCE = 0.004
"""[m2 K/W] of a thin pane, so that a U-factor near that of its films stays possible"""
LEAST_SOIL_RESISTANCE = 0.05
"""[m2 K/W] between the uppermost soil and the deep ground, so that a chain stays possible"""
CONTENTS_AREA = 1.5
"""Surface of partitions and furnishings over floor area (judgement)"""
CONTENTS_LIT = 0.3
"""Share of the floor that furniture keeps the sun off (judgement)"""
CONTENTS_CAPACITY = 30_000.0
"""Capacity of that surface [J/(m2 K)]: 12 mm of plaster on studs, furniture (judgement)"""
CONTENTS_RESISTANCE = 0.1
"""Half of it lies this deep [m2 K/W] (judgement)"""
QUICK_CONTENTS = 3.0
"""Air and what follows it at once over the air alone (judgement); 1 for light contents"""
PARTITION_U = 1.8
"""Uninsulated stud wall between two rooms [W/(m2 K)] (derived from its films)"""
PARTITION_SHARE = 0.25
"""Share of the smaller room's walls that it shares with the neighbour (judgement)"""


@dataclass(frozen=True)
class Sky:
    """What the outer faces see, shapes (n,) or (n, 4) by orientation: by hour [degC, W/m2], or
    each as a mixture of what the weather brings."""

    outdoor: Floats
    sky: Floats
    walls: Floats
    roof: Floats


def roof_temperature(construction: Construction, seen: Sky) -> Floats:
    """Sol-air temperature of a roof [degC]."""
    return sol_air(
        seen.outdoor,
        seen.roof,
        seen.sky,
        absorptance=construction.solar_absorptance,
        emissivity=construction.emissivity,
        sky_share=SKY_SHARE_ROOF,
    )


def glass_temperature(seen: Sky) -> Floats:
    """Sol-air temperature of upright glass, which takes up no sun [degC]."""
    return sol_air(
        seen.outdoor,
        np.zeros_like(seen.outdoor),
        seen.sky,
        absorptance=0.0,
        emissivity=GLASS_EMISSIVITY,
        sky_share=SKY_SHARE_WALL,
    )


def room_port(
    room: int, area: float, convective: float, sun: Sunlit = Sunlit.REST, lit_area: float = -1.0
) -> Port:
    """The inside face of a surface of a room: its air, its radiant node, its sun.

    ``lit_area`` [m2] counts for the sun, the whole ``area`` where it is not given.
    """
    return Port(
        air=room,
        air_conductance=convective * area,
        radiant=room,
        radiant_conductance=INSIDE_RADIATIVE * area,
        sun=sun,
        sun_weight=area if lit_area < 0.0 else lit_area,
    )


def ceiling_factors(home: Home, system: System) -> dict[str, float]:
    """How much more each room's ceiling loses because the air under it is warmer.

    Nothing rises where nothing heats: an ideal heater warms all air alike, a home without any
    floats free.
    """
    heads = {room for unit in system.heads for room in unit.rooms}
    heaters = {heater.room for heater in system.heaters}
    blown = system.furnace_output > 0.0 or system.ducted_unit is not None
    even = system.kind == "ideal" or not (heads or heaters or blown)
    factors = {}
    for room in home.rooms:
        kind = "head" if room.name in heads else "heater" if room.name in heaters else "ducted"
        gradient = 0.0 if even else GRADIENT[kind]
        factors[room.name] = ceiling_factor(room.ceiling_low, room.ceiling_high, gradient)
    return factors


def add_room_surfaces(
    builder: ChainBuilder,
    home: Home,
    nodes: dict[str, int],
    seen: Sky,
    around: Surroundings,
    factors: Mapping[str, float],
) -> None:
    """Add every surface of every room; ``nodes`` are air nodes by room and space name.

    ``factors`` are those of :func:`ceiling_factors`.
    """
    before_glass = builder.boundary(glass_temperature(seen))
    for number, room in enumerate(home.rooms):
        _walls(builder, home, number, room, seen)
        _walls_below_grade(builder, number, room, around)
        _glass(builder, home, number, room, before_glass)
        _floor(builder, home, number, room, nodes, around)
        _ceiling(builder, home, number, room, nodes, seen, factors[room.name])
        if home.house.contents == "ordinary":
            area = CONTENTS_AREA * room.floor_area
            layers = (Layer(CONTENTS_RESISTANCE, CONTENTS_CAPACITY),)
            lit = CONTENTS_LIT * room.floor_area
            face = room_port(number, area, INSIDE_CONVECTIVE_LEVEL, Sunlit.DIRECT, lit)
            ends = (NOTHING, face)
            builder.add(layers, area, ends, STORED)
    _storey_floors(builder, home, nodes)


def add_twin_surfaces(
    builder: ChainBuilder,
    home: Home,
    space: str,
    twin: int,
    nodes: dict[str, int],
    factors: Mapping[str, float],
) -> None:
    """Double the floors or ceilings that border on the duct space, felt by the twin alone."""
    parts = home.house.constructions
    for number, room in enumerate(home.rooms):
        for side, construction, convective, film in (
            (room.below, parts.floor, INSIDE_CONVECTIVE_DOWN, FILM_DOWN),
            (room.above, parts.ceiling, INSIDE_CONVECTIVE_UP, FILM_UP),
        ):
            if side != space:
                continue
            area = room.floor_area * (factors[room.name] if side == room.above else 1.0)
            lit = Sunlit.DIRECT if side == room.below else Sunlit.REST
            inside = room_port(number, area, convective, lit)
            for node, sign in ((nodes[space], -1.0), (twin, 1.0)):
                end = Port(air=node, air_conductance=area / film)
                felt = inside if sign < 0 else _unfelt(inside)
                category = FLOOR if side == room.below else WALLS_AND_GLASS
                builder.add(construction.layers, area, (end, felt), category, twin_sign=sign)


def _unfelt(port: Port) -> Port:
    return replace(port, returns=0.0)


def wall_areas(room: Room) -> dict[str, float]:
    """Opaque outside wall by orientation [m2]."""
    return {
        way: max(
            room.outside_walls.get(way, 0.0) * room.ceiling_height - room.windows.get(way, 0.0),
            0.0,
        )
        for way in ORIENTATIONS
    }


def _walls(builder: ChainBuilder, home: Home, number: int, room: Room, seen: Sky) -> None:
    """One chain for all walls of a room: they differ in sun alone, which adds up by area."""
    construction = home.house.constructions.wall
    areas = np.array(list(wall_areas(room).values())) * home.house.constructions.thermal_bridges
    total = float(areas.sum())
    if total <= 0.0:
        return
    temperature = sol_air(
        seen.outdoor,
        np.einsum("hw,w->h", seen.walls, areas / total),  # as for the glass: the same digits
        seen.sky,
        absorptance=construction.solar_absorptance,
        emissivity=construction.emissivity,
        sky_share=SKY_SHARE_WALL,
    )
    outside = Port(
        boundary=builder.boundary(temperature), boundary_conductance=total / FILM_OUTSIDE
    )
    inside = room_port(number, total, INSIDE_CONVECTIVE_LEVEL)
    builder.add(construction.layers, total, (outside, inside), WALLS_AND_GLASS)


def _walls_below_grade(
    builder: ChainBuilder, number: int, room: Room, around: Surroundings
) -> None:
    """Walls of a heated basement in the ground: bare concrete, then soil to the deep ground."""
    area = room.walls_below_grade * room.ceiling_height
    if area <= 0.0:
        return
    u = ground.basement_wall(room.ceiling_height, BASEMENT_WALL.resistance)
    rest = 1.0 / u - FILM_LEVEL - BASEMENT_WALL.resistance - SOIL_LAYER.resistance
    deep = max(rest, LEAST_SOIL_RESISTANCE)
    outside = Port(boundary=around.ground, boundary_conductance=area / (0.5 * deep))
    inside = room_port(number, area, INSIDE_CONVECTIVE_LEVEL)
    layers = (Layer(0.5 * deep), SOIL_LAYER, BASEMENT_WALL)
    builder.add(layers, area, (outside, inside), WALLS_AND_GLASS)


def _glass(builder: ChainBuilder, home: Home, number: int, room: Room, before: int) -> None:
    """Glass without mass; the sun that passes it is a gain of the room, not of the pane.

    ``before`` it lies the boundary of :func:`glass_temperature`.
    """
    area = sum(room.windows.values())
    if area <= 0.0:
        return
    resistance = 1.0 / home.house.windows.u_factor - FILM_LEVEL - FILM_OUTSIDE
    outside = Port(boundary=before, boundary_conductance=area / FILM_OUTSIDE)
    inside = room_port(number, area, INSIDE_CONVECTIVE_LEVEL)
    layers = (Layer(max(resistance, LEAST_GLASS_RESISTANCE)),)
    builder.add(layers, area, (outside, inside), WALLS_AND_GLASS)


def _floor(
    builder: ChainBuilder,
    home: Home,
    number: int,
    room: Room,
    nodes: dict[str, int],
    around: Surroundings,
) -> None:
    parts = home.house.constructions
    area = room.floor_area
    inside = room_port(number, area, INSIDE_CONVECTIVE_DOWN, Sunlit.DIRECT)
    if room.below == "ground":
        house = home.house
        u = ground.slab(house.footprint_area, house.footprint_perimeter, parts.slab.resistance)
        deep = max(
            1.0 / u - FILM_DOWN - parts.slab.resistance - SOIL_LAYER.resistance,
            LEAST_SOIL_RESISTANCE,
        )
        outside = Port(boundary=around.ground, boundary_conductance=area / (0.5 * deep))
        layers = (Layer(0.5 * deep), SOIL_LAYER, *parts.slab.layers)
        builder.add(layers, area, (outside, inside), FLOOR)
    elif room.below == "outdoors":
        outside = Port(boundary=around.plain, boundary_conductance=area / FILM_OUTSIDE)
        builder.add(parts.floor.layers, area, (outside, inside), FLOOR)
    elif nodes.get(room.below, -1) >= len(home.rooms):  # a space: rooms stand before them
        if TWIN + room.below in nodes:
            return  # its floors come from add_twin_surfaces
        end = Port(air=nodes[room.below], air_conductance=area / FILM_DOWN)
        builder.add(parts.floor.layers, area, (end, inside), FLOOR)


def _ceiling(
    builder: ChainBuilder,
    home: Home,
    number: int,
    room: Room,
    nodes: dict[str, int],
    seen: Sky,
    factor: float,
) -> None:
    parts = home.house.constructions
    if room.above == "roof":
        rise = room.ceiling_high - room.ceiling_low
        slope = float(np.sqrt(1.0 + rise * rise / room.floor_area))
        area = factor * slope * room.floor_area * parts.thermal_bridges
        column = builder.boundary(roof_temperature(parts.sloped_ceiling, seen))
        outside = Port(boundary=column, boundary_conductance=area / FILM_OUTSIDE)
        inside = room_port(number, area, INSIDE_CONVECTIVE_UP)
        builder.add(parts.sloped_ceiling.layers, area, (outside, inside), WALLS_AND_GLASS)
    elif room.above == "attic" and TWIN + room.above not in nodes:
        area = factor * room.floor_area
        end = Port(air=nodes["attic"], air_conductance=area / FILM_UP)
        inside = room_port(number, area, INSIDE_CONVECTIVE_UP)
        builder.add(parts.ceiling.layers, area, (end, inside), WALLS_AND_GLASS)


TWIN = "twin of "
"""Prefix of the twin's name among the air nodes"""


def _storey_floors(builder: ChainBuilder, home: Home, nodes: dict[str, int]) -> None:
    """Floors between two rooms, once a pair, whichever of the two rooms names the other."""
    pairs: dict[tuple[str, str], float] = {}
    by_name = {room.name: room for room in home.rooms}
    for room in home.rooms:
        for lower, upper in ((room.below, room.name), (room.name, room.above)):
            if lower in by_name and upper in by_name:
                area = min(by_name[lower].floor_area, by_name[upper].floor_area)
                pairs[(lower, upper)] = area
    layers = home.house.constructions.storey_floor.layers
    for (lower, upper), area in pairs.items():
        ends = (
            room_port(nodes[lower], area, INSIDE_CONVECTIVE_UP),
            room_port(nodes[upper], area, INSIDE_CONVECTIVE_LEVEL, Sunlit.DIRECT),
        )
        builder.add(layers, area, ends, STORED)


def partitions(home: Home, nodes: dict[str, int]) -> list[tuple[int, int, float]]:
    """Conductance of the inside wall that goes with every doorway [W/K]."""
    by_name = {room.name: room for room in home.rooms}
    found: list[tuple[int, int, float]] = []
    for doorway in home.doorways:
        if doorway.state in ("stairs", "loft"):
            continue
        smaller = min(
            by_name[doorway.first], by_name[doorway.second], key=lambda room: room.floor_area
        )
        walls = 4.0 * float(np.sqrt(smaller.floor_area)) * smaller.ceiling_low
        conductance = PARTITION_SHARE * walls * PARTITION_U
        found.append((nodes[doorway.first], nodes[doorway.second], conductance))
    return found
