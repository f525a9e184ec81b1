"""Part three: which rooms stay warm."""

from __future__ import annotations

import math

from costcompare.comparison import AS_WANTED, Choice, Comparison, RoomYear
from costcompare.views import numbers
from costcompare.views.wording.naming import in_a_sentence


def rooms_answer(comparison: Comparison, name: str) -> str:
    """How cold the coldest room is now and afterwards, in a sentence."""
    chosen = comparison.choice(name, AS_WANTED)
    worst = coldest_room(comparison.today)
    later = _room(chosen, worst.name)
    sentence = (
        f"Now {_the(worst.name)} is colder than you want in {numbers.count(worst.cold_hours)} of "
        f"the {numbers.count(worst.wanted_hours)} hours it is used; with {in_a_sentence(chosen)} "
        f"at the warmth you want, in {numbers.count(later.cold_hours)}."
    )
    other = coldest_room(chosen)
    if other.name != worst.name and other.cold_hours > later.cold_hours:
        sentence += (
            f" The coldest room then is {_the(other.name)}, too cold in "
            f"{numbers.count(other.cold_hours)} hours."
        )
    return sentence


def hot_answer(comparison: Comparison, name: str) -> str:
    """Where rooms get too hot, in a sentence; nothing where none does."""
    chosen = comparison.choice(name, AS_WANTED)
    now = max(comparison.today.rooms, key=lambda room: room.hot_hours)
    if now.hot_hours == 0:
        return ""
    later = _room(chosen, now.name)
    return (
        f"The hottest room is {_the(now.name)}: too hot in {numbers.count(now.hot_hours)} hours "
        f"now, in {numbers.count(later.hot_hours)} with {in_a_sentence(chosen)}."
    )


def maps_answer(comparison: Comparison, name: str) -> str:
    """How to read the maps, and what the winter means are in the coldest room."""
    chosen = comparison.choice(name, AS_WANTED)
    worst = coldest_room(comparison.today)
    later = _room(chosen, worst.name)
    return (
        "Each small picture is one room over a year: twelve months from top to bottom, "
        "midnight to midnight from left to right. In the winter hours in which "
        f"{_the(worst.name)} is used it averages {numbers.degrees(worst.winter_mean_degf)} now "
        f"and {numbers.degrees(later.winter_mean_degf)} with {in_a_sentence(chosen)}."
    )


def coldest_day_answer(comparison: Comparison, name: str) -> str:
    """What the coldest day does to the coldest room, in a sentence."""
    today = comparison.today
    chosen = comparison.choice(name, AS_WANTED)
    day = today.coldest_day
    room = coldest_room_of_the_day(today)
    now = min(day.rooms_degf[room])
    later = min(chosen.coldest_day.rooms_degf[room])
    return (
        f"On {numbers.day_and_month(day.month, day.day)}, the coldest day of this weather, it is "
        f"{numbers.degrees(min(day.outdoor_degf))} outdoors at the coldest; {_the(room)} falls to "
        f"{numbers.degrees(now)} now and to {numbers.degrees(later)} with {in_a_sentence(chosen)}."
    )


def coldest_room(choice: Choice) -> RoomYear:
    """The room with the lowest mean over its winter hours in use."""
    used = [room for room in choice.rooms if not math.isnan(room.winter_mean_degf)]
    return min(used or choice.rooms, key=lambda room: room.winter_mean_degf)


def coldest_room_of_the_day(choice: Choice) -> str:
    """The room that falls lowest on the coldest day."""
    rooms = choice.coldest_day.rooms_degf
    return min(rooms, key=lambda name: min(rooms[name]))


def _room(choice: Choice, name: str) -> RoomYear:
    return next(room for room in choice.rooms if room.name == name)


def _the(room: str) -> str:
    return f"the {room}"
