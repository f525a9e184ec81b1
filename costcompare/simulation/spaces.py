"""The spaces round the rooms: crawlspace, attic, basement, garage."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from costcompare.case.facts import Home, Layer, System
from costcompare.physics import crawlspace as vents
from costcompare.physics import ground, infiltration
from costcompare.physics.envelope import FILM_DOWN, FILM_LEVEL, FILM_OUTSIDE, FILM_UP
from costcompare.simulation.chains import ChainBuilder, Port
from costcompare.simulation.network import NO_LOAD

Floats = NDArray[np.float64]

VENT_SHARE = {"open": 1.0, "half": 0.5, "closed": 0.05}
"""Share of the trade's vent area; closed vents still leak a little (judgement)"""
SOIL_LAYER = Layer(resistance=0.1 / ground.SOIL_CONDUCTIVITY, capacity=0.2e6)
"""The uppermost 10 cm of soil, as the crawlspace feels it within a day (derived)"""
JOISTS = 10_000.0
"""Capacity of joists and belly of a crawlspace or attic [J/(m2 K)] (judgement)"""
ATTIC_HEIGHT = 0.9
"""Mean height of an attic [m] (judgement)"""
ATTIC_VENTS = 1.0 / 300.0
"""Free vent area over ceiling area (common practice, no source)"""
ATTIC_DIFFERENCE = 5.0
"""[K] attic over outdoors taken for the stack part of its ventilation (judgement)"""
ROOF_OVER_CEILING = 1.15
"""Roof area over ceiling area (judgement: a pitch of about 6 in 12)"""
BASEMENT_DEPTH, BASEMENT_ABOVE = 1.8, 0.5
"""[m] below and above grade (judgement)"""
BASEMENT_WALL = Layer(resistance=0.2 / 1.7, capacity=0.2 * 2200.0 * 900.0)
"""Bare concrete of 0.2 m (from memory: 1.7 W/(m K), 2,200 kg/m3, 900 J/(kg K))"""
BASEMENT_AIR_CHANGES = 0.2
BELLY_HEIGHT = 0.3
"""Depth of the belly of a manufactured home [m] (judgement)"""
BELLY_AIR_CHANGES = 0.3
"""[1/h] of the belly by itself (judgement); leaks of the ducts come on top"""
GARAGE_AREA, GARAGE_HEIGHT, GARAGE_WALL_U, GARAGE_AIR_CHANGES = 40.0, 2.5, 2.2, 1.0
"""[m2], [m], [W/(m2 K)], [1/h] (judgement)"""


@dataclass(frozen=True)
class Space:
    """One space as the assembly needs it."""

    name: str
    area: float
    """[m2] of the rooms' floor or ceiling that borders on it"""
    volume: float
    """[m3]"""
    capacity: float
    """[J/K] of air and what follows it at once"""


@dataclass(frozen=True)
class Surroundings:
    """Boundary temperatures that spaces and surfaces share."""

    roof: Floats
    """Sol-air temperature of a roof, as :class:`ChainBuilder` takes it"""
    plain: int
    """Boundary column of the outdoor air"""
    ground: int
    """Boundary column of the ground"""


def spaces_of(home: Home, system: System) -> tuple[Space, ...]:
    """The spaces the home has: those under and over rooms, and the one its ducts run in."""
    named = [room.below for room in home.rooms] + [room.above for room in home.rooms]
    if system.ducts is not None:
        named.append(system.ducts.location)
    return tuple(
        _space(home, name)
        for name in ("crawlspace", "attic", "basement", "garage", "belly")
        if name in named
    )


def bordering_area(home: Home, name: str) -> float:
    """Floor area of the rooms that lie over or under a space [m2]."""
    return sum(r.floor_area for r in home.rooms if name in (r.below, r.above))


def _space(home: Home, name: str) -> Space:
    area = bordering_area(home, name)
    if name == "garage":
        area = max(area, GARAGE_AREA)
    elif area <= 0.0:
        area = home.house.footprint_area
    if name == "crawlspace" and home.crawlspace is not None:
        height, extra = home.crawlspace.height, JOISTS
    elif name == "attic":
        height, extra = ATTIC_HEIGHT, JOISTS
    elif name == "belly":
        height, extra = BELLY_HEIGHT, JOISTS
    elif name == "basement":
        height, extra = BASEMENT_DEPTH + BASEMENT_ABOVE, 2.0 * JOISTS
    else:
        height, extra = GARAGE_HEIGHT, 3.0 * JOISTS
    volume = area * height
    return Space(name, area, volume, 1207.0 * volume + extra * area)


def vent_flow(home: Home, space: Space, wind: Floats) -> Floats:
    """Outdoor air that passes through a space by itself [m3/s], shape (hours,)."""
    shelter = home.site.shelter - 1
    if space.name == "crawlspace" and home.crawlspace is not None:
        per_metre = vents.OPEN_VENT_AREA * VENT_SHARE[home.crawlspace.vents]
        per_metre *= home.crawlspace.vent_factor
        perimeter = home.house.footprint_perimeter
        shielding = vents.WIND_SHIELDING[shelter]
        return wind * vents.vent_flow(per_metre, shielding, 1.0, perimeter)
    if space.name == "attic":
        stack = infiltration.BASIC_STACK[0]
        by_wind = infiltration.BASIC_WIND[0, shelter]
        area = space.area * ATTIC_VENTS
        return infiltration.basic(area, stack, by_wind, ATTIC_DIFFERENCE, wind)
    changes = {"basement": BASEMENT_AIR_CHANGES, "belly": BELLY_AIR_CHANGES}
    share = changes.get(space.name, GARAGE_AIR_CHANGES)
    return np.full(wind.shape[0], share * space.volume / 3600.0)


def add_space_surfaces(
    builder: ChainBuilder,
    home: Home,
    space: Space,
    node: int,
    around: Surroundings,
    *,
    twin_sign: float,
) -> None:
    """Add the surfaces between a space and outdoors or ground."""
    if space.name == "crawlspace":
        _crawlspace(builder, home, space, node, around, twin_sign)
    elif space.name == "attic":
        roof = builder.boundary(around.roof)
        area = space.area * ROOF_OVER_CEILING
        _between(
            builder, home.house.constructions.roof.layers, area, roof, node, FILM_UP, twin_sign
        )
    elif space.name == "belly" and home.house.constructions.belly is not None:
        layers = home.house.constructions.belly.layers
        _between(builder, layers, space.area, around.plain, node, FILM_DOWN, twin_sign)
    elif space.name == "basement":
        _basement(builder, home, space, node, around, twin_sign)
    else:
        wall = (Layer(1.0 / GARAGE_WALL_U - FILM_LEVEL - FILM_OUTSIDE),)
        area = 3.0 * np.sqrt(space.area) * GARAGE_HEIGHT + space.area
        _between(builder, wall, area, around.plain, node, FILM_LEVEL, twin_sign)
        u = ground.slab(space.area, 4.0 * float(np.sqrt(space.area)))
        _to_ground(builder, space.area, u, around.ground, node, twin_sign)


def _between(
    builder: ChainBuilder,
    layers: tuple[Layer, ...],
    area: float,
    column: int,
    node: int,
    film: float,
    twin_sign: float,
) -> None:
    outside = Port(boundary=column, boundary_conductance=area / FILM_OUTSIDE)
    inside = Port(air=node, air_conductance=area / film)
    builder.add(layers, area, (outside, inside), NO_LOAD, twin_sign=twin_sign)


def _to_ground(
    builder: ChainBuilder, area: float, u: float, column: int, node: int, twin_sign: float
) -> None:
    """A chain to the deep ground whose steady conductance is that of the standard."""
    deep = 1.0 / u - FILM_DOWN - SOIL_LAYER.resistance
    ground_end = Port(boundary=column, boundary_conductance=area / (0.5 * deep))
    inside = Port(air=node, air_conductance=area / FILM_DOWN)
    layers = (Layer(0.5 * deep), SOIL_LAYER)
    builder.add(layers, area, (ground_end, inside), NO_LOAD, twin_sign=twin_sign)


def _crawlspace(
    builder: ChainBuilder,
    home: Home,
    space: Space,
    node: int,
    around: Surroundings,
    twin_sign: float,
) -> None:
    if home.crawlspace is None:
        return
    perimeter = home.house.footprint_perimeter
    area = perimeter * home.crawlspace.height
    layers = home.crawlspace.wall.layers
    _between(builder, layers, area, around.plain, node, FILM_LEVEL, twin_sign)
    u = ground.slab(space.area, perimeter)
    _to_ground(builder, space.area, u, around.ground, node, twin_sign)


def _basement(
    builder: ChainBuilder,
    home: Home,
    space: Space,
    node: int,
    around: Surroundings,
    twin_sign: float,
) -> None:
    perimeter = home.house.footprint_perimeter
    above = perimeter * BASEMENT_ABOVE
    _between(builder, (BASEMENT_WALL,), above, around.plain, node, FILM_LEVEL, twin_sign)
    u_floor = ground.basement_floor(space.area, perimeter, BASEMENT_DEPTH)
    u_wall = ground.basement_wall(BASEMENT_DEPTH, BASEMENT_WALL.resistance)
    _to_ground(builder, space.area, u_floor, around.ground, node, twin_sign)
    _to_ground(builder, perimeter * BASEMENT_DEPTH, u_wall, around.ground, node, twin_sign)
