"""Numbers side by side do what each does alone; NumPy, a general library, is the other way."""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np
import pytest
from numpy.typing import NDArray

from costcompare.physics.compiled import compiled_whole
from costcompare.physics.lanes import LANES, any_of, lane, opposite, where
from costcompare.simulation.lane_arrays import as_lanes
from costcompare.simulation.network import Shared

Floats = NDArray[np.float64]


class Numbers(NamedTuple):
    """One number of each home, and one of all."""

    first: Floats
    second: Floats
    single: float
    common: Shared
    found: Floats


@compiled_whole
def sums(given: Numbers) -> None:
    n = as_lanes(given)
    for i in range(n.first.shape[0]):
        a, b = n.first[i], n.second[i]
        n.found[i, 0] = a + b * 2.0 - n.common[i] / (b + 10)
        n.found[i, 1] = -abs(a) + min(a, b) * max(a, 0.5)
        n.found[i, 2] = math.sqrt(abs(a)) + math.exp(b) + abs(a) ** 0.65
        n.found[i, 3] = where(
            (a > b) & opposite(a >= 1.0), a, where((a < 0.0) | (b <= 0.0), b, 7.0)
        )
        total = 0.0
        total += n.single
        total -= a
        total *= b
        total /= 3.0
        n.found[i, 4] = total
        n.found[i, 5] = 1.0 if any_of(a > 1.9) else 0.0
        n.found[i, 6] = lane(a, 3)
        n.found[i, 7] = where(n.common[i] > 0.0, a, b)


def test_each_lane_does_its_own_sum() -> None:
    random = np.random.default_rng(3)
    a, b = random.uniform(-2.0, 2.0, (2, 50, LANES))
    single, common = random.uniform(0.0, 1.0, LANES), random.uniform(-1.0, 1.0, 50)
    found = np.zeros((50, 8, LANES))
    sums(Numbers(a, b, single, common, found))  # type: ignore[arg-type]
    shared = common[:, None]
    expected = [
        a + b * 2.0 - shared / (b + 10),
        -np.abs(a) + np.minimum(a, b) * np.maximum(a, 0.5),
        np.sqrt(np.abs(a)) + np.exp(b) + np.abs(a) ** 0.65,
        np.where((a > b) & ~(a >= 1.0), a, np.where((a < 0.0) | (b <= 0.0), b, 7.0)),
        (single - a) * b / 3.0,
        np.repeat(np.where(a > 1.9, 1.0, 0.0).max(axis=1, keepdims=True), LANES, axis=1),
        np.repeat(a[:, 3:4], LANES, axis=1),
        np.where(shared > 0.0, a, b),
    ]
    for part, values in enumerate(expected):
        assert found[:, part] == pytest.approx(values, rel=1e-14), part
    assert 0.0 < found[:, 5].mean() < 1.0  # both answers occur


def test_without_a_compiler_the_questions_are_those_of_one_home() -> None:
    assert where(True, 1.0, 2.0) == 1.0
    assert where(False, 1.0, 2.0) == 2.0
    assert any_of(True)
    assert not any_of(False)
    assert opposite(False)
    assert not opposite(True)
