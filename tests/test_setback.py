"""Does setting back at night save? It depends on what warms the house in the morning.

The named cases stand in setback_cases.py and their figures in docs/setback.md. What the
trade expects (common practice, no source): a furnace saves; strips that are free to run in
the morning eat much of the gain; a ramp and a lockout give part of it back; heads save a
little; heaters left high while the heads are set back cost.
"""

from __future__ import annotations

import pytest

from tests.setback_cases import PLACES, setback

FREE = "heat pump, strips free, gap 2 F"
RAMPED = "heat pump, ramp of 4 h, strips locked above 30 F"


@pytest.mark.parametrize("place", PLACES)
def test_the_furnace_saves(place: str) -> None:
    assert -0.20 < setback(place, "furnace").change < -0.05


@pytest.mark.parametrize("place", PLACES)
def test_free_strips_eat_into_the_gain(place: str) -> None:
    free, furnace = setback(place, FREE), setback(place, "furnace")
    assert free.back_backup > free.held_backup + 1000.0
    assert furnace.change < free.change - 0.02


@pytest.mark.parametrize("place", PLACES)
def test_a_ramp_and_a_lockout_spare_strips(place: str) -> None:
    ramped, free = setback(place, RAMPED), setback(place, FREE)
    assert ramped.back_backup < 0.85 * free.back_backup
    assert ramped.change < free.change


@pytest.mark.parametrize("place", PLACES)
def test_heaters_left_high_undo_what_the_heads_save(place: str) -> None:
    alone = setback(place, "three heads")
    helped = setback(place, "three heads set back, heaters left at 66 F")
    assert alone.change < 0.0
    assert helped.change > alone.change + 0.05
    assert helped.back_backup > helped.held_backup + 500.0


def test_a_small_machine_with_free_strips_turns_the_sign_in_a_cool_place() -> None:
    """About nothing saved, or something lost: within 3 % either side."""
    small = setback("cool marine", "the same, small machine")
    assert small.change > setback("cool marine", FREE).change + 0.02
    assert abs(small.change) < 0.03
