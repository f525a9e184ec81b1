"""Cautions about the people in the house."""

from __future__ import annotations

from collections.abc import Sequence

from costcompare.case.facts import Case
from costcompare.cautions.seen import Seen, degf, named, winter_mean
from costcompare.comparison import Caution

MOST_ROOMS = 2
"""Named one by one; more are counted"""

COLD_ROOM = 18.0
"""[degC] lowest indoor temperature of the WHO Housing and Health Guidelines 2018 (read in a
reprint)"""


LEAST_SETTING = (55.0 - 32.0) / 1.8
"""[degC] setting below which pipes in outside walls and mould are worth a word (common practice,
no source)"""


def cold_rooms(case: Case, options: Sequence[Seen]) -> list[Caution]:
    """Rooms kept colder than is healthy for some, now or with an option at the wanted warmth."""
    thermostat = case.home.thermostat
    coldest = min(thermostat.day, thermostat.night)
    reasons = []
    if thermostat.day < COLD_ROOM:
        night = f" and at {degf(coldest)} at night" if coldest < thermostat.day else ""
        reasons.append(f"the thermostat stands at {degf(thermostat.day)} by day{night}")
    told = [f"{rooms} with {named(option)}" for option in options if (rooms := _cold_in(option))]
    if told:
        reasons.append(f"at the warmth you want these average less in winter: {'; '.join(told)}")
    if not reasons:
        return []
    return [
        Caution(
            "Cold rooms and health",
            "Rooms this cool can harm babies, older people and anyone who is ill. Ask about "
            "the people in the house before any talk of saving, and do not turn down further.",
            f"the World Health Organization names 64 °F (18 °C) as the least, and "
            f"{'; '.join(reasons)}",
        )
    ]


def _cold_in(option: Seen) -> str:
    """Rooms in use that a choice leaves below the least, with their winter means."""
    cold = [
        f"{room.name} {degf(mean)}"
        for room in option.home.rooms
        if any(room.wanted_hours) and (mean := winter_mean(option, room.name)) < COLD_ROOM
    ]
    if len(cold) > MOST_ROOMS:
        return f"{cold[0]} and {len(cold) - 1} more rooms"
    return " and ".join(cold)


def low_setting(case: Case) -> list[Caution]:
    """A setting so low that the house itself suffers."""
    thermostat = case.home.thermostat
    coldest = min(thermostat.day, thermostat.night)
    if coldest >= LEAST_SETTING:
        return []
    return [
        Caution(
            "Very low settings",
            "So cool, pipes in outside walls can freeze in hard frost and mould can grow in "
            "corners. Open the doors under sinks, and do not leave the house at this setting.",
            f"the thermostat goes down to {degf(coldest)}, below {degf(LEAST_SETTING)}",
        )
    ]


def power_cuts(case: Case) -> list[Caution]:
    """What is left when the power is out."""
    fire = case.home.fireplace
    if fire is not None and fire.used:
        return [
            Caution(
                "Power cuts",
                "Every machine here stops when the power is out. Keep the chimney swept and a "
                "carbon monoxide alarm working, so that the fire can be relied on.",
                f"all the heat but the fire in the {fire.room} is electric",
            )
        ]
    return [
        Caution(
            "Power cuts",
            "Every choice here stops heating when the power is out. Ask what keeps one room "
            "warm in an outage.",
            "all the heat in this comparison is electric",
        )
    ]
