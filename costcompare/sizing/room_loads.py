"""The needs of a home as a sizing shows them: room by room, in the units of the trade."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from costcompare.case.facts import Home, Room
from costcompare.equipment.machine import W_PER_KBTU_H
from costcompare.sizing.capability import AT_47_F
from costcompare.sizing.needs import Need
from costcompare.sizing.results import BTU_H, FT2, HomeLoad, LoadPart, LoadPoint, RoomLoad
from costcompare.summary import fahrenheit

Floats = NDArray[np.float64]

LITTLE_HEAT = 0.85
"""A room needs little heat of its own where this share of the difference to outdoors is there
without any (judgement)"""
AS_WARM = 0.5
"""[K] within which two rooms are as warm as each other (judgement)"""
PARTS = ("walls, glass and ceilings", "floor", "air leaking in")
RISES = ("stairs", "loft")
"""Doorways through which warm air rises and none comes down"""


def home_load(need: Need, names: tuple[str, ...], smallest: tuple[float, float]) -> HomeLoad:
    """A home's needs as they are shown.

    ``names`` are the choices it belongs to, ``smallest`` the nominal size and the minimum at
    47 F of the smallest head [W].
    """
    heat, together = need.at_design(), need.cooling.sum(axis=1)
    area = need.home.house.floor_area * FT2
    return HomeLoad(
        choices=names,
        heat_w=heat,
        heat_btu_h=heat * BTU_H,
        heat_btu_h_per_ft2=heat * BTU_H / area,
        parts=tuple(
            LoadPart(part, watts, watts * BTU_H)
            for part, watts in zip(PARTS, need.parts, strict=True)
        ),
        line=tuple(
            LoadPoint(fahrenheit(float(level)), float(watts) * BTU_H)
            for level, watts in zip(need.outdoor, need.room_heat.sum(axis=1), strict=True)
        ),
        cooling_w=float(together.max()),
        cooling_btu_h=float(together.max()) * BTU_H,
        cooling_hour=int(np.argmax(together)),
        smallest_head_kbtu_h=smallest[0] / W_PER_KBTU_H,
        smallest_head_minimum_btu_h=smallest[1] * BTU_H,
        rooms=_rooms(need, smallest[1]),
    )


def _rooms(need: Need, least: float) -> tuple[RoomLoad, ...]:
    home = need.home
    hungry = wanting_most(need)
    return tuple(
        _room(need, number, room, least, wants_most=number == hungry)
        for number, room in enumerate(home.rooms)
    )


def wanting_most(need: Need) -> int | None:
    """Number of the room that is warmest without cooling; None where none needs any."""
    if need.cooling.max() <= 0.0:
        return None
    return int(np.argmax(need.uncooled))


def _room(need: Need, number: int, room: Room, least: float, *, wants_most: bool) -> RoomLoad:
    heat = need.at_design([number])
    mild = float(need.heat_at(np.array([AT_47_F]), [number])[0])
    alone, cooling = float(need.alone[number]), need.cooling[:, number]
    below = below_by_stairs(need.home, room.name)
    wanted = need.home.thermostat.wanted
    kept = (alone - need.design) / max(wanted - need.design, 1.0)
    from_below = below is not None and kept >= LITTLE_HEAT
    return RoomLoad(
        name=room.name,
        floor_area_ft2=room.floor_area * FT2,
        heat_w=heat,
        heat_btu_h=heat * BTU_H,
        heat_at_47f_btu_h=mild * BTU_H,
        without_own_heat_degf=fahrenheit(alone),
        cooling_w=float(cooling.max()),
        cooling_btu_h=float(cooling.max()) * BTU_H,
        cooling_hour=int(np.argmax(cooling)),
        below_by_stairs=below,
        heated_from_below=from_below,
        without_cooling_degf=fahrenheit(float(need.uncooled[number])),
        wants_cooling_most=wants_most,
        wants_cooling_not_heat=from_below and _gets_warmer(need, number, str(below)),
        smallest_head_is_too_big=least > mild,
    )


def _gets_warmer(need: Need, number: int, below: str) -> bool:
    """Whether a room needs cooling and without any gets as warm as the one below it."""
    order = [room.name for room in need.home.rooms]
    hot = need.home.thermostat.cooling + need.home.comfort.above
    warmth = need.uncooled[number]
    return bool(warmth > hot and warmth >= need.uncooled[order.index(below)] - AS_WARM)


def below_by_stairs(home: Home, name: str) -> str | None:
    """The room from which warm air rises into a room by stairs or past a loft's edge."""
    for way in home.doorways:
        if way.state in RISES and way.second == name:
            return way.first
    return None
