"""Which rooms a head is meant to heat, and how much of what they need gets there.

A room without heat of its own is counted to the head that is nearest through doors that are
not closed. Warm air goes up stairs and past the edge of a loft, not down.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from costcompare.case.facts import Home, System
from costcompare.comfort import room_years
from costcompare.simulation import HourlyResult, setpoints_as_wanted
from costcompare.simulation.schedules import local_hours
from costcompare.sizing.needs import Need
from costcompare.sizing.results import SecondRoom
from costcompare.summary import fahrenheit, kwh

STEP = {"open": 1.0, "ajar": 2.0, "stairs": 1.0, "loft": 1.0}
"""How far it is through a doorway (judgement); closed doors let nothing through"""
ONE_WAY = ("stairs", "loft")
LEAST_NEED = 20.0
"""[kWh] a year below which a room has no need to speak of (judgement)"""


def head_rooms(system: System) -> tuple[str, ...]:
    """The rooms in which heads hang, those of one outdoor unit with several heads too."""
    return tuple(room for unit in system.heads for room in unit.rooms)


def nearest_head(home: Home, system: System) -> dict[str, str]:
    """The room of the nearest head for every room that has no heat of its own.

    Rooms out of reach are left out.
    """
    heads = head_rooms(system)
    own = {*heads, *(heater.room for heater in system.heaters)}
    reached: dict[str, tuple[float, str]] = {room: (0.0, room) for room in heads}
    for _ in home.rooms:
        for way in home.doorways:
            step = STEP.get(way.state)
            if step is None:
                continue
            ends = [(way.first, way.second)]
            ends += [] if way.state in ONE_WAY else [(way.second, way.first)]
            for start, end in ends:
                if start in reached:
                    far = (reached[start][0] + step, reached[start][1])
                    reached[end] = min(reached.get(end, far), far)
    return {room: head for room, (_far, head) in reached.items() if room not in own}


def without_furnace(system: System) -> System:
    """The heads and heaters alone: what comes to a room then comes through its doors."""
    return replace(
        system, furnace_output=0.0, furnace_setpoint=None, ducts=None, blower=None, registers={}
    )


def second_rooms(need: Need, system: System, alone: HourlyResult) -> tuple[SecondRoom, ...]:
    """How much of their heat comes to the rooms that depend on a head.

    ``alone`` is the year of the heads and heaters without a furnace. What is missing is how
    much colder than wanted a room is, in the hours in which it needs heat, times what it
    loses a degree; the rest has come through its doors.
    """
    home, held = need.home, need.held
    winter = {year.name: year.winter_mean_degc for year in room_years(home, alone)}
    clock = local_hours(alone.index, home.site.time_zone)
    setting = setpoints_as_wanted(home).house[clock]
    found = []
    for name, head in nearest_head(home, system).items():
        place = held.room_names.index(name)
        heat = np.maximum(held.room_heat[:, place], 0.0)
        per_kelvin = need.at_design([place]) / max(home.thermostat.wanted - need.design, 1.0)
        short = np.maximum(setting - alone.room_temperature[:, place], 0.0)
        missing = np.minimum(per_kelvin * short, heat)
        whole = kwh(heat)
        found.append(
            SecondRoom(
                name=name,
                head=head,
                arriving_share=1.0 - kwh(missing) / whole if whole > LEAST_NEED else 1.0,
                missing_kwh=kwh(missing),
                winter_mean_degf=fahrenheit(winter[name]),
            )
        )
    return tuple(found)
