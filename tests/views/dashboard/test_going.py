"""Work that goes on whoever asks, and is asked for in vain once it is there."""

from __future__ import annotations

from costcompare.comparison import Comparison
from costcompare.ranges.steps import Steps
from costcompare.views.dashboard.going import Going


def steps(whole: Comparison) -> Steps[Comparison]:
    yield 0.5
    yield 1.0
    return whole


def test_each_asking_takes_a_step_and_the_last_gives_the_whole(comparison: Comparison) -> None:
    going = Going(steps(comparison))
    assert going.on() == (0.5, None)
    share, whole = going.on()
    assert share < 1.0
    assert whole is None
    assert going.on() == (1.0, comparison)
    assert going.on() == (1.0, comparison)
