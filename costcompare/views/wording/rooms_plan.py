"""The rooms as a plan, in words: what it is, how cold each room gets, what stands in it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from costcompare.case.home_facts import Doorway
from costcompare.case.system_facts import System
from costcompare.comparison import RoomYear
from costcompare.views import numbers
from costcompare.views.wording.naming import capital, listed, plural

SCHEMATIC = (
    "A sketch from floor areas, doorways and outside walls, not a survey: rooms are as large as "
    "they are beside each other, their true places may differ."
)
SHARES = (0.05, 0.25, 0.5)
"""Of the hours in use, where a room counts as colder (judgement)"""
STEP_WORDS = (
    "cold in fewer than 1 of 20 hours it is used",
    "in 1 of 20 to 1 of 4",
    "in 1 of 4 to half",
    "in more than half",
    "not used",
)
"""What each colour of the plan stands for, in the order of :func:`cold_step`"""


DOOR_WORDS = (("open", "doorway"), ("closed", "door that is kept closed"))
"""Signs of doorways in the key"""


@dataclass(frozen=True)
class RoomLabel:
    """What stands in one room of the plan."""

    name: str
    coldest: str
    cold: str
    step: int
    """Which of :data:`STEP_WORDS` holds"""
    inside: tuple[str, ...]
    """Machines and the thermostat that stand in it"""


def cold_step(room: RoomYear) -> int:
    """How often a room in use is colder than wanted, as a step of :data:`STEP_WORDS`."""
    if not room.wanted_hours:
        return len(SHARES) + 1
    return sum(room.cold_hours >= share * room.wanted_hours for share in SHARES)


def room_label(room: RoomYear, system: System) -> RoomLabel:
    """The words in one room: its coldest temperature, its cold hours, what stands in it."""
    return RoomLabel(
        name=capital(room.name),
        coldest=numbers.degrees(room.minimum_temperature_degf),
        cold=f"{numbers.count(room.cold_hours)} h cold" if room.wanted_hours else "not used",
        step=cold_step(room),
        inside=standing_in(room.name, system),
    )


def standing_in(room: str, system: System) -> tuple[str, ...]:
    """What of a system stands in a room: heads, heaters, the thermostat of the ducts."""
    heads = sum(unit.rooms.count(room) for unit in system.heads)
    heaters = sum(heater.room == room for heater in system.heaters)
    found = []
    if heads:
        found.append(plural(heads, "head", f"{heads} heads"))
    if heaters:
        found.append("room heater")
    if system.ducts is not None and system.thermostat_room == room:
        found.append("thermostat")
    return tuple(found)


def plan_answer(labels: Sequence[RoomLabel], when: str) -> str:
    """What a plan shows, in a sentence, for those who do not see it."""
    said = [
        f"{label.name}: {label.coldest} at the coldest, {label.cold}"
        + (f", with {listed(label.inside)}" if label.inside else "")
        for label in labels
    ]
    return f"{capital(when)}. {'; '.join(said)}."


def undrawn_answer(doorways: Sequence[Doorway]) -> str:
    """Doorways that the sketch does not show, in a sentence; empty where it shows all."""
    if not doorways:
        return ""
    pairs = [f"{way.first} and {way.second} ({way.state})" for way in doorways]
    return f"Doorways that are not drawn: {'; '.join(pairs)}."
