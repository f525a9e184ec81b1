"""Work in steps: every share in its order, and what came out at the end."""

from __future__ import annotations

import pytest

from costcompare.ranges.steps import Steps, finished, part_of


def counted(steps: int) -> Steps[str]:
    for step in range(steps):
        yield (step + 1) / steps
    return "done"


def both() -> Steps[str]:
    first = yield from part_of(counted(2), 0.0, 0.6)
    second = yield from part_of(counted(1), 0.6, 1.0)
    return f"{first}, {second}"


def test_every_step_is_told_and_the_result_given() -> None:
    told: list[float] = []
    assert finished(counted(4), told.append) == "done"
    assert told == [0.25, 0.5, 0.75, 1.0]


def test_parts_lie_behind_each_other() -> None:
    told: list[float] = []
    assert finished(both(), told.append) == "done, done"
    assert told == pytest.approx([0.3, 0.6, 1.0])


def test_nobody_need_be_told() -> None:
    assert finished(counted(3)) == "done"
