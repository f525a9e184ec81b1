"""Which rooms stay warm, in words."""

from __future__ import annotations

import math
from dataclasses import replace

from costcompare.comparison import AS_WANTED, Comparison
from costcompare.views import numbers
from costcompare.views.wording.warmth import (
    coldest_day_answer,
    coldest_room,
    hot_answer,
    maps_answer,
    rooms_answer,
)


def test_the_coldest_room_is_the_one_with_the_lowest_winter_mean(comparison: Comparison) -> None:
    rooms = comparison.today.rooms
    cold = replace(rooms[1], winter_mean_degf=41.0)
    unused = replace(rooms[2], winter_mean_degf=math.nan)
    choice = replace(comparison.today, rooms=(unused, rooms[0], cold, *rooms[3:]))
    assert coldest_room(choice).name == rooms[1].name


def test_the_cold_hours_are_those_of_the_table(comparison: Comparison, option: str) -> None:
    worst = coldest_room(comparison.today)
    later = {r.name: r for r in comparison.choice(option, AS_WANTED).rooms}[worst.name]
    sentence = rooms_answer(comparison, option)
    assert f"the {worst.name} is colder than you want in" in sentence
    assert f"{numbers.count(worst.cold_hours)} of" in sentence
    assert f"the {numbers.count(worst.wanted_hours)} hours" in sentence
    assert f"in {numbers.count(later.cold_hours)}." in sentence


def test_hot_hours_are_said_where_there_are_any(comparison: Comparison, option: str) -> None:
    cool = tuple(replace(room, hot_hours=0) for room in comparison.today.rooms)
    nobody_hot = replace(
        comparison, choices=(replace(comparison.today, rooms=cool), *comparison.choices[1:])
    )
    assert hot_answer(nobody_hot, option) == ""
    hottest = max(comparison.today.rooms, key=lambda room: room.hot_hours)
    assert numbers.count(hottest.hot_hours) in hot_answer(comparison, option)


def test_the_coldest_day_is_told_with_its_own_lowest_temperatures(
    comparison: Comparison, option: str
) -> None:
    day = comparison.today.coldest_day
    later = comparison.choice(option, AS_WANTED).coldest_day
    room = min(day.rooms_degf, key=lambda name: min(day.rooms_degf[name]))
    sentence = coldest_day_answer(comparison, option)
    for temperature in (
        min(day.outdoor_degf),
        min(day.rooms_degf[room]),
        min(later.rooms_degf[room]),
    ):
        assert numbers.degrees(temperature) in sentence
    assert numbers.day_and_month(day.month, day.day) in sentence


def test_the_maps_are_explained_with_the_coldest_room(comparison: Comparison, option: str) -> None:
    worst = coldest_room(comparison.today)
    assert numbers.degrees(worst.winter_mean_degf) in maps_answer(comparison, option)
