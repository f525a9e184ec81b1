"""What stands in the rooms of the plan."""

from __future__ import annotations

from dataclasses import replace

import pytest

from costcompare.case import Case
from costcompare.case.home_facts import Doorway
from costcompare.case.system_facts import RoomHeater
from costcompare.comparison import Comparison
from costcompare.views.wording.rooms_plan import (
    STEP_WORDS,
    cold_step,
    plan_answer,
    room_label,
    standing_in,
    undrawn_answer,
)


@pytest.mark.parametrize(
    ("cold", "wanted", "step"),
    [(0, 100, 0), (4, 100, 0), (5, 100, 1), (25, 100, 2), (50, 100, 3), (100, 100, 3), (0, 0, 4)],
)
def test_darker_is_colder(comparison: Comparison, cold: int, wanted: int, step: int) -> None:
    room = replace(comparison.today.rooms[0], cold_hours=cold, wanted_hours=wanted)
    assert cold_step(room) == step
    assert STEP_WORDS[step]


def test_heads_heaters_and_the_thermostat_stand_where_they_are(demo: Case) -> None:
    assert demo.today.thermostat_room is not None
    assert standing_in(demo.today.thermostat_room, demo.today) == ("thermostat",)
    headed = next(option.system for option in demo.options if option.system.heads)
    for room in headed.heads[0].rooms:
        assert "head" in " ".join(standing_in(room, headed))
    heated = replace(headed, heaters=(RoomHeater("attic", 1000.0),))
    assert standing_in("attic", heated) == ("room heater",)
    two = replace(headed, heads=(headed.heads[0], headed.heads[0]))
    assert "2 heads" in standing_in(headed.heads[0].rooms[0], two)


def test_the_plan_in_words_holds_every_figure_of_the_picture(
    comparison: Comparison, demo: Case
) -> None:
    labels = [room_label(room, demo.today) for room in comparison.today.rooms]
    said = plan_answer(labels, "now")
    assert said.startswith("Now. ")
    for label in labels:
        assert f"{label.name}: {label.coldest} at the coldest, {label.cold}" in said


def test_doorways_that_are_not_drawn_are_told() -> None:
    assert undrawn_answer(()) == ""
    said = undrawn_answer((Doorway("hall", "loft", "stairs"),))
    assert said == "Doorways that are not drawn: hall and loft (stairs)."
