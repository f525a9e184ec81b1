"""Where air comes in, where it leaves, and how it passes from room to room."""

from __future__ import annotations

from collections import deque
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from costcompare.case.facts import Home
from costcompare.physics import infiltration
from costcompare.physics.air import heat_capacity
from costcompare.physics.doorways import CLOSED_GAP_CONDUCTANCE, OPEN_SHARE
from costcompare.simulation.network import Air, Doors, Places
from costcompare.simulation.surfaces import wall_areas

Floats = NDArray[np.float64]

SPACES_THAT_LEAK_UP = ("crawlspace", "basement", "garage", "belly")
OPEN_BOOTS = 0.12
"""Leakage of ducts whose boots stay open over that of the house: 12 % in a set of Florida
houses (Cummings and Tooley 1990, read); it lies in the floor"""
CEILING_LEAK = 0.5
"""Leak of a square metre of ceiling over that of a square metre of wall (judgement)"""


def air_network(
    home: Home,
    nodes: dict[str, int],
    storage: Floats,
    pressure: float,
    root: str,
    *,
    boots_open: bool = False,
) -> Air:
    """Leakage and links of a home; ``root`` is the room that all air finds its way to.

    ``boots_open``: unused ducts were left with their boots open in the floor.
    """
    house, leak = home.house, home.house.leakage
    rooms = len(home.rooms)
    driving = _driving(home)
    coefficient = constant = 0.0
    volume = sum(room.volume for room in home.rooms)
    if leak.flow_at_50_pa is not None:
        coefficient = infiltration.leakage_coefficient(leak.flow_at_50_pa, leak.exponent)
        coefficient *= 1.0 + (OPEN_BOOTS if boots_open else 0.0)
    elif leak.air_changes is not None:
        constant = leak.air_changes * volume / 3600.0
    exposure = _exposure(home)
    over = np.array([r.floor_area if r.below in SPACES_THAT_LEAK_UP else 0.0 for r in home.rooms])
    floor_share = leak.floor_share if over.sum() > 0.0 and coefficient > 0.0 else 0.0
    if boots_open and floor_share > 0.0:
        floor_share = (floor_share + OPEN_BOOTS) / (1.0 + OPEN_BOOTS)
    share_space = floor_share * over / over.sum() if over.sum() > 0.0 else np.zeros(rooms)
    link_from, link_to = _links(home, nodes, root)
    airing = np.array([house.airing * room.volume / 3600.0 for room in home.rooms])
    return Air(
        rooms=rooms,
        nodes=storage.shape[0],
        heat_capacity=float(heat_capacity(pressure)),
        storage=storage,
        leak_coefficient=float(coefficient),
        leak_exponent=leak.exponent,
        stack=driving.stack,
        wind=driving.wind,
        wind_factor=driving.wind_factor,
        constant_flow=constant,
        share_outdoors=(1.0 - floor_share) * exposure,
        share_space=share_space,
        space_below=np.array(
            [nodes[r.below] if r.below in SPACES_THAT_LEAK_UP else -1 for r in home.rooms],
            dtype=np.int64,
        ),
        share_out=exposure,
        link_from=link_from,
        link_to=link_to,
        airing_flow=airing,
    )


class Driving(NamedTuple):
    """Coefficients of the enhanced infiltration model for one house."""

    stack: float
    wind: float
    wind_factor: float
    """Station wind to sheltered wind at the house"""


def _driving(home: Home) -> Driving:
    """Coefficients by storeys, foundation, shelter and flue."""
    row, shelter = min(home.house.storeys, 3) - 1, home.site.shelter - 1
    on_the_ground, flue = home.house.foundation in ("slab", "basement"), home.house.flue
    stack = infiltration.STACK_COEFFICIENT_FLUE if flue else infiltration.STACK_COEFFICIENT
    if on_the_ground:
        wind = infiltration.WIND_COEFFICIENT_SLAB
        with_flue = infiltration.WIND_COEFFICIENT_SLAB_FLUE
    else:
        wind = infiltration.WIND_COEFFICIENT_CRAWLSPACE
        with_flue = infiltration.WIND_COEFFICIENT_CRAWLSPACE_FLUE
    sheltered = infiltration.SHELTER_FACTOR[shelter]
    if flue:
        sheltered = infiltration.SHELTER_FACTOR_FLUE[row, shelter]
    return Driving(
        stack=float(stack[row]),
        wind=float((with_flue if flue else wind)[row]),
        wind_factor=float(infiltration.WIND_SPEED_MULTIPLIER[row] * sheltered),
    )


def _exposure(home: Home) -> Floats:
    """Share of the envelope's leaks that lies in each room: by outside wall, glass, ceiling."""
    names = {room.name for room in home.rooms}
    area = np.array(
        [
            sum(wall_areas(room).values())
            + sum(room.windows.values())
            + (0.0 if room.above in names else CEILING_LEAK * room.floor_area)
            for room in home.rooms
        ]
    )
    if area.sum() <= 0.0:
        area = np.array([room.floor_area for room in home.rooms])
    shares: Floats = area / area.sum()
    return shares


def _links(home: Home, nodes: dict[str, int], root: str) -> tuple[Places, ...]:
    """A tree of doorways rooted in the return room, leaves first.

    A room without any doorway passes its air straight to the root: through gaps we
    know nothing of.
    """
    neighbours: dict[str, list[str]] = {room.name: [] for room in home.rooms}
    for doorway in home.doorways:
        neighbours[doorway.first].append(doorway.second)
        neighbours[doorway.second].append(doorway.first)
    parent: dict[str, str] = {}
    waiting = deque([root])
    found = [root]
    while waiting:
        room = waiting.popleft()
        for other in neighbours[room]:
            if other not in found:
                parent[other] = room
                found.append(other)
                waiting.append(other)
    for room in neighbours:
        if room not in found:
            parent[room] = root
            found.append(room)
    order = [room for room in reversed(found) if room != root]
    return (
        np.array([nodes[room] for room in order], dtype=np.uint64),
        np.array([nodes[parent[room]] for room in order], dtype=np.uint64),
    )


def door_network(home: Home, nodes: dict[str, int]) -> Doors:
    """The openings between rooms as arrays."""
    ways = home.doorways
    rising = [way.state in ("stairs", "loft") for way in ways]
    return Doors(
        first=np.array([nodes[way.first] for way in ways], dtype=np.uint64),
        second=np.array([nodes[way.second] for way in ways], dtype=np.uint64),
        width=np.array([way.width * OPEN_SHARE.get(way.state, 0.0) for way in ways], dtype=float),
        height=np.array([way.height for way in ways], dtype=float),
        fixed=np.array(
            [CLOSED_GAP_CONDUCTANCE if way.state == "closed" else 0.0 for way in ways], dtype=float
        ),
        stairs=np.array(rising, dtype=np.int64),
    )
