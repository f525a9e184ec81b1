"""What drives a range: one fact at a time from its tenth to its ninetieth percentile.

A plane fitted through the ensemble would cost nothing, but with as many homes as anybody
waits for its slopes are mostly chance; two homes a fact say it without any.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from costcompare.comparison import Driver
from costcompare.uncertainty import Draws, UncertainFact
from costcompare.uncertainty.distributions import Z90

Floats = NDArray[np.float64]

LEAST_SHARE = 0.01
"""A fact with less of the squares of all swings is not named (judgement)"""


def one_at_a_time(draws: Draws) -> Draws:
    """Two homes for each fact that can move a bill: that fact low, then high, all else in the
    middle of the draws.

    Low and high are 1.2816 standard deviations of the draws from their mean.
    """
    middle, step = draws.z.mean(axis=0), Z90 * draws.z.std(axis=0)
    moved = [n for n, fact in enumerate(draws.facts) if fact.scope != "money" and step[n] > 0.0]
    z = np.tile(middle, (2 * len(moved), 1))
    for row, column in enumerate(moved):
        z[2 * row, column] -= step[column]
        z[2 * row + 1, column] += step[column]
    return Draws(draws.facts, z)


def drivers(draws: Draws, values: Floats) -> tuple[Driver, ...]:
    """What each fact does to a figure, the most first.

    ``draws`` are homes from :func:`one_at_a_time`, ``values`` the figure of each [$].
    """
    facts = _moved(draws)
    swings = values[1::2] - values[::2]
    squares = np.square(swings)
    if squares.sum() == 0.0:
        return ()
    shares = squares / squares.sum()
    found = [
        Driver(fact.path, fact.words, fact.known, float(swing), float(share))
        for fact, swing, share in zip(facts, swings, shares, strict=True)
        if share >= LEAST_SHARE
    ]
    return tuple(sorted(found, key=lambda driver: -driver.share))


def _moved(draws: Draws) -> Sequence[UncertainFact]:
    """The fact that each pair of homes moves."""
    apart = draws.z[1::2] - draws.z[::2]
    return [draws.facts[column] for column in np.argmax(apart, axis=1)]
