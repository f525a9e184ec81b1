"""Which rooms should get a head: load times hours of use times how cold they are today."""

from __future__ import annotations

import numpy as np

from costcompare.case.facts import Home
from costcompare.comfort import room_years
from costcompare.simulation import HourlyResult
from costcompare.sizing.needs import Need
from costcompare.sizing.results import BTU_H, RankedRoom

BASE = 1.0
"""[K] added to how cold a room is today, so that a warm room with a load still counts
(judgement)"""


def ranking(need: Need, today: HourlyResult) -> tuple[RankedRoom, ...]:
    """The rooms, that which would gain most first; ``today`` is the year as lived now."""
    home = need.home
    winter = {year.name: year.winter_mean_degc for year in room_years(home, today)}
    wanted = home.thermostat.wanted
    found = []
    for number, room in enumerate(home.rooms):
        mean = winter[room.name]
        below = 0.0 if np.isnan(mean) else max(wanted - mean, 0.0)
        hours = sum(room.wanted_hours)
        load = max(need.at_design([number]), 0.0)
        found.append(
            RankedRoom(
                name=room.name,
                score=load * hours * (BASE + below),
                heat_btu_h=load * BTU_H,
                wanted_hours_a_day=hours,
                below_wanted_degf=below * 1.8,
                open_to=_open_to(home, room.name),
            )
        )
    most = max(room.score for room in found) or 1.0
    ranked = sorted(found, key=lambda room: -room.score)
    return tuple(_scaled(room, 100.0 / most) for room in ranked)


def _scaled(room: RankedRoom, factor: float) -> RankedRoom:
    return RankedRoom(
        room.name,
        room.score * factor,
        room.heat_btu_h,
        room.wanted_hours_a_day,
        room.below_wanted_degf,
        room.open_to,
    )


def _open_to(home: Home, name: str) -> tuple[str, ...]:
    """Rooms behind an open doorway, opening or stair of a room."""
    ends = [(way.first, way.second) for way in home.doorways if way.state not in ("ajar", "closed")]
    return tuple(b if a == name else a for a, b in ends if name in (a, b))
