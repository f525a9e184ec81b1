"""The small dense solve and the bounded controls of one hour."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from costcompare.physics.compiled import compiled

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]

SWEEPS = 300
CAP_SLACK = 1e-9
"""Share by which a group may give more than it can without being cut again"""
ENOUGH = 1e-5
"""[W] change of an emitter in a sweep below which the controls have settled"""


@compiled
def solve(matrix: Floats, right: Floats) -> None:
    """Solve ``matrix x = right`` in place, for every column of ``right``.

    The matrix is that of conductances: its diagonal dominates, so no pivots are sought.
    """
    size = matrix.shape[0]
    columns = right.shape[1]
    for pivot in range(size):
        inverse = 1.0 / matrix[pivot, pivot]
        for row in range(pivot + 1, size):
            factor = matrix[row, pivot] * inverse
            if factor != 0.0:
                for column in range(pivot + 1, size):
                    matrix[row, column] -= factor * matrix[pivot, column]
                for column in range(columns):
                    right[row, column] -= factor * right[pivot, column]
    for row in range(size - 1, -1, -1):
        inverse = 1.0 / matrix[row, row]
        for column in range(columns):
            total = right[row, column]
            for other in range(row + 1, size):
                total -= matrix[row, other] * right[other, column]
            right[row, column] = total * inverse


@compiled
def settle(
    free: Floats,
    response: Floats,
    room: Ints,
    lower: Floats,
    upper: Floats,
    bounds: Floats,
    resting: Floats,
    heat: Floats,
) -> None:
    """Find what each emitter gives, into ``heat`` [W].

    Each holds its room between ``lower`` (heating setpoint) and ``upper`` (cooling
    setpoint) as far as its ``bounds`` (most cooling, most heating; [W], shape (m, 2))
    allow; between the two it gives what it does at rest (``resting``, [W]). ``free``
    [degC] are the air temperatures without emitters, ``response`` [K/W] those per watt of
    each emitter, shape (nodes, m). Projected Gauss-Seidel sweeps.
    """
    count = room.shape[0]
    for _ in range(SWEEPS):
        change = 0.0
        for j in range(count):
            node = room[j]
            temperature = free[node]
            for k in range(count):
                temperature += response[node, k] * heat[k]
            own = response[node, j]
            to_lower = heat[j] + (lower[j] - temperature) / own
            to_upper = heat[j] + (upper[j] - temperature) / own
            wanted = resting[j]
            if to_lower > resting[j]:
                wanted = min(to_lower, max(bounds[j, 1], resting[j]))
            elif to_upper < 0.0:
                wanted = max(to_upper, bounds[j, 0])
            change = max(change, abs(wanted - heat[j]))
            heat[j] = wanted
        if change < ENOUGH:
            break


@compiled
def cut_to_caps(heat: Floats, group: Ints, caps: Floats, limits: Floats) -> bool:
    """Cut the limits of heads whose group gives more than it can; True where one was cut.

    Each head keeps its share of what the group gives. ``caps`` [W] shape (groups,).
    """
    cut = False
    for g in range(caps.shape[0]):
        total = 0.0
        for j in range(heat.shape[0]):
            if group[j] == g:
                total += abs(heat[j])
        if total > caps[g] * (1.0 + CAP_SLACK) and total > 0.0:
            cut = True
            share = caps[g] / total
            for j in range(heat.shape[0]):
                if group[j] == g:
                    limits[j, 0] = max(limits[j, 0], min(heat[j], 0.0) * share)
                    limits[j, 1] = min(limits[j, 1], max(heat[j], 0.0) * share)
    return cut
