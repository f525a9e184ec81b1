"""Cautions about the people in the house."""

from __future__ import annotations

from costcompare.case.facts import Case
from costcompare.cautions.seen import degf
from costcompare.comparison import Caution

COLD_ROOM = 18.0
"""[degC] lowest indoor temperature of the WHO Housing and Health Guidelines 2018 (read in a
reprint)"""


def cold_rooms(case: Case) -> list[Caution]:
    """Rooms kept colder than is healthy for some."""
    thermostat = case.home.thermostat
    coldest = min(thermostat.day, thermostat.night)
    if thermostat.day >= COLD_ROOM:
        return []
    night = f" and at {degf(coldest)} at night" if coldest < thermostat.day else ""
    return [
        Caution(
            "Cold rooms and health",
            "Rooms this cool can harm babies, older people and anyone who is ill. Ask about "
            "the people in the house before any talk of saving, and do not turn down further.",
            f"the thermostat stands at {degf(thermostat.day)} by day{night}, below the 64 °F "
            "(18 °C) that the World Health Organization names",
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
