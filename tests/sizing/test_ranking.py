"""Which rooms should get a head."""

from __future__ import annotations

from dataclasses import replace

from costcompare.case.facts import Case
from costcompare.sizing import Sizing, size
from costcompare.weather import Weather


def test_the_first_has_a_hundred_points(sized: Sizing) -> None:
    scores = [room.score for room in sized.ranking]
    assert scores[0] == 100.0
    assert scores == sorted(scores, reverse=True)
    assert sized.ranking[0].name == "open room"


def test_points_are_load_times_hours_times_cold(sized: Sizing) -> None:
    """The score by hand, 1 K added to how cold a room is."""

    def product(number: int) -> float:
        room = sized.ranking[number]
        return room.heat_btu_h * room.wanted_hours_a_day * (1.0 + room.below_wanted_degf / 1.8)

    for number, room in enumerate(sized.ranking):
        assert abs(room.score - 100.0 * product(number) / product(0)) < 1e-6


def test_open_neighbours_are_named(sized: Sizing) -> None:
    by_name = {room.name: room for room in sized.ranking}
    assert by_name["closed bedroom"].open_to == ()
    assert set(by_name["open room"].open_to) == {"kitchen", "loft", "small bedroom"}


def test_a_home_that_nobody_uses_has_no_points(case: Case, weather: Weather) -> None:
    rooms = tuple(replace(room, wanted_hours=(False,) * 24) for room in case.home.rooms)
    empty = replace(case, home=replace(case.home, rooms=rooms), options=())
    assert {room.score for room in size(empty, weather=weather).ranking} == {0.0}
