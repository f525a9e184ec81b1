"""Homes of one plan side by side: their arrays with a lane for each home behind the last axis."""

from __future__ import annotations

from collections.abc import Hashable, Sequence
from typing import Any, TypeVar

import numpy as np
from numpy.typing import NDArray

from costcompare.physics.compiled import compiled_whole
from costcompare.physics.lanes import LANES
from costcompare.simulation.lane_arrays import hints_of
from costcompare.simulation.network import Shared

Floats = NDArray[np.float64]
N = TypeVar("N", bound=tuple[Any, ...])

MANY = 10_000
"""Numbers from which on compiled code is the faster to stack them (judgement)"""
LINE = 64
"""Bytes that the processor fetches at once: lanes that begin with one are fetched faster"""


def plan_of(home: tuple[Any, ...]) -> tuple[Hashable, ...]:
    """What must be equal for homes to stand side by side: the shapes of what is theirs, and all
    that is no number of theirs. What they share is told by its identity."""
    found: list[Hashable] = []
    for value, hint in zip(home, hints_of(type(home)).values(), strict=True):
        if isinstance(value, tuple):
            found.append(plan_of(value))
        elif hint == Floats:
            found.append(value.shape)
        elif hint == Shared:
            found.append(id(value))
        elif isinstance(value, np.ndarray):
            found.append((value.shape, value.tobytes()))
        elif hint is not float:
            found.append(value)
    return tuple(found)


def side_by_side(homes: Sequence[N], on: N | None = None) -> N:
    """The numbers of :data:`LANES` homes of one plan in one tuple, a lane for each behind the
    last axis.

    What is shared, and all that is no number of a home, is that of the first. ``on`` is such a
    tuple that nobody reads any more: where its shapes fit, it is written over.
    """
    first = homes[0]
    parts: list[Any] = []
    for place, (value, hint) in enumerate(zip(first, hints_of(type(first)).values(), strict=True)):
        before = None if on is None else on[place]
        each = [home[place] for home in homes]
        if isinstance(value, tuple):
            parts.append(side_by_side(each, before))
        elif hint is float or hint == Floats:
            parts.append(_stacked(each, before))
        else:
            parts.append(value)
    return type(first)(*parts)


def _stacked(each: list[Any], before: Floats | None) -> Floats:
    shape = (*np.shape(each[0]), LANES)
    stacked = before if before is not None and before.shape == shape else aligned(shape)
    if stacked.size < MANY or len({(v.flags.writeable, v.flags.c_contiguous) for v in each}) > 1:
        for number, values in enumerate(each):
            stacked[..., number] = values
    else:
        _interleave(tuple(values.ravel() for values in each), stacked.reshape(-1, LANES))
    return stacked


@compiled_whole
def _interleave(each: tuple[Floats, ...], stacked: Floats) -> None:
    """All homes in one pass: what is written is then fetched once instead of once a home."""
    a, b, c, d, e, f, g, h = each
    for i in range(stacked.shape[0]):
        row = stacked[i]
        row[0], row[1], row[2], row[3] = a[i], b[i], c[i], d[i]
        row[4], row[5], row[6], row[7] = e[i], f[i], g[i], h[i]


def aligned(shape: tuple[int, ...]) -> Floats:
    """Zeros that begin with a line of memory."""
    size = 8 * int(np.prod(shape))
    memory = np.zeros(size + LINE, dtype=np.uint8)
    start = -memory.ctypes.data % LINE
    return memory[start : start + size].view(np.float64).reshape(shape)
