"""Facts moved until a model explains what was measured, as little as need be.

The unknowns are standard normal numbers, one a fact: zero is what is said of the house, one
is a standard deviation away. With measured values ``y``, their standard errors ``s`` and a
model ``E``, the most likely numbers make

    sum(((y - E(z)) / s)^2) + sum(z^2)

least (Gauss-Newton: C. D. Rodgers, Inverse Methods for Atmospheric Sounding, 2000, eq.
5.8, from memory). The slopes are kept from round to round and mended by the change that each
step really made (Broyden, Math. Comp. 19, 1965), so that a round needs one run of the model;
at the end they can be taken anew, so that the spreads are those of the place that was found.
So can the errors where they hang on what the model makes: they are held while the numbers
move, as in iterated weights (R. W. M. Wedderburn, Biometrika 61, 1974, from memory), because
numbers that could choose their errors would choose large ones.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Model = Callable[[Floats], Floats]
"""From numbers (facts,) to what they would make of the measured values (values,)"""

ROUNDS = 12
SETTLED = 0.01
"""Standard deviations: no number moves further in the last round"""
LONGEST_STEP = 1.0
"""Standard deviations that a number may move in one round (judgement: slopes hold that far)"""
FARTHEST = 4.0
"""Standard deviations beyond which no number goes (judgement: spreads are judgements)"""


@dataclass(frozen=True)
class MostLikely:
    """The most likely numbers, and how certain they are."""

    z: Floats
    """Shape (facts,)"""
    explained: Floats
    """What the model makes of them, shape (values,)"""
    slopes: Floats
    """Of the model by the numbers, shape (values, facts)"""
    errors: Floats
    """Of the measured values, as they were taken in the end, shape (values,)"""
    covariance: Floats
    """Of the numbers, shape (facts, facts)"""
    rounds: int
    settled: bool

    @property
    def spread(self) -> Floats:
        """Standard deviation of every number; 1 where nothing was learned, shape (facts,)."""
        result: Floats = np.sqrt(np.diag(self.covariance))
        return result


def most_likely(
    model: Model,
    measured: Floats,
    errors: Floats,
    *,
    slopes: Floats,
    start: Floats,
    slopes_at: Model | None = None,
    errors_at: Model | None = None,
) -> MostLikely:
    """The most likely numbers, from slopes (values, facts) that hold near all zeros.

    ``start`` is what the model makes of all zeros, so that it need not be run again.
    ``slopes_at`` and ``errors_at`` give slopes and errors at any numbers; with the first they
    are taken anew where the first rounds end. Raises ValueError where an error is not more
    than 0.
    """
    _check(errors)
    begin = _Place(np.zeros(slopes.shape[1]), start, slopes.copy())
    found = _rounds(model, measured, errors, begin)
    if slopes_at is not None:
        anew = _Place(found.z, found.explained, slopes_at(found.z))
        if errors_at is not None:
            errors = errors_at(found.z)
            _check(errors)
        last = _rounds(model, measured, errors, anew)
        found = replace(last, rounds=found.rounds + last.rounds)
    return found


def _check(errors: Floats) -> None:
    if not (errors > 0.0).all():
        raise ValueError("every measured value must have an error of more than 0")


class _Place(NamedTuple):
    z: Floats
    explained: Floats
    slopes: Floats


def _rounds(model: Model, measured: Floats, errors: Floats, begin: _Place) -> MostLikely:
    z, explained, slopes = begin
    settled, rounds = False, 0
    while rounds < ROUNDS:
        step = _step(z, measured - explained, errors, slopes)
        following: Floats = np.clip(z + step, -FARTHEST, FARTHEST)
        moved = following - z
        if np.abs(moved).max(initial=0.0) < SETTLED:
            settled = True
            break
        rounds += 1
        found = model(following)
        missed = found - explained - slopes @ moved
        slopes = np.asarray(slopes + np.outer(missed, moved) / float(moved @ moved), np.float64)
        z, explained = following, found
    spread = covariance(slopes, errors)
    return MostLikely(z, explained, slopes, errors, spread, rounds, settled)


def covariance(slopes: Floats, errors: Floats) -> Floats:
    """Of the numbers, given slopes (values, facts) and the errors of the values."""
    weighted = slopes / errors[:, None]
    inner = np.eye(slopes.shape[1]) + weighted.T @ weighted
    return np.asarray(np.linalg.inv(inner), dtype=np.float64)


def _step(z: Floats, missing: Floats, errors: Floats, slopes: Floats) -> Floats:
    """The Gauss-Newton step, shortened as a whole where a number would move too far."""
    weighted = slopes / errors[:, None]
    inner = np.eye(z.shape[0]) + weighted.T @ weighted
    step = np.linalg.solve(inner, weighted.T @ (missing / errors) - z)
    longest = np.abs(step).max(initial=0.0)
    shortened: Floats = np.asarray(step * min(1.0, LONGEST_STEP / max(longest, 1e-12)))
    return shortened
