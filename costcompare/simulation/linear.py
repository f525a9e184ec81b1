"""The small dense solve and the bounded controls of one hour."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from costcompare.physics.compiled import compiled_inside
from costcompare.physics.lanes import any_of, opposite, where
from costcompare.simulation.network import Order, Places

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]

SWEEPS = 300
CAP_SLACK = 1e-9
"""Share by which a group may give more than it can without being cut again"""
ENOUGH = 1e-5
"""[W] change of an emitter in a sweep below which the controls have settled"""


@compiled_inside
def eliminate(matrix: Floats, order: Order, inverse: Floats) -> None:
    """Eliminate the nodes in their order, the known heat behind the matrix with them.

    The matrix is that of conductances: its diagonal dominates, so no pivots are sought. Only
    the few places of a row that hold anything are touched. ``inverse`` gets the inverse
    pivots; the share of a pivot's balance that went into another's stays where its
    temperature stood.
    """
    known, width = matrix.shape[0], matrix.shape[1]
    for position in range(order.pivot.shape[0]):
        pivot = order.pivot[position]
        source = matrix[pivot]
        over = 1.0 / source[pivot]
        inverse[position] = over
        heat = source[known]
        start, stop = order.column_start[position], order.column_start[position + 1]
        for k in range(order.row_start[position], order.row_start[position + 1]):
            target = matrix[order.row[k]]
            factor = target[pivot] * over
            target[pivot] = factor
            target[known] -= factor * heat
            for q in range(start, stop):
                column = order.column[q]
                target[column] -= factor * source[column]
            for column in range(known + 1, width):
                target[column] -= factor * source[column]


@compiled_inside
def substitute(matrix: Floats, order: Order, inverse: Floats, answer: Floats) -> None:
    """The answers to the known heat and to a watt of each emitter, into ``answer``."""
    known, width = matrix.shape[0], matrix.shape[1]
    for backwards in range(order.pivot.shape[0]):
        position = order.pivot.shape[0] - 1 - backwards
        pivot = order.pivot[position]
        source, found, over = matrix[pivot], answer[pivot], inverse[position]
        start, stop = order.column_start[position], order.column_start[position + 1]
        total = source[known]
        for q in range(start, stop):
            column = order.column[q]
            total -= source[column] * answer[column, 0]
        found[0] = total * over
        if width > known + 1:
            for j in range(1, width - known):
                found[j] = source[known + j] * over
            for q in range(start, stop):
                column = order.column[q]
                other, factor = answer[column], source[column] * over
                for j in range(1, width - known):
                    found[j] -= factor * other[j]


@compiled_inside
def warmed_by_a_watt(
    matrix: Floats, order: Order, inverse: Floats, node: int, rise: Floats
) -> None:
    """How much a watt at one node warms each of them, into ``rise`` [K]; once eliminated."""
    for i in range(rise.shape[0]):
        rise[i] = 0.0
    rise[node] = 1.0
    for position in range(order.pivot.shape[0]):
        pivot = order.pivot[position]
        for k in range(order.row_start[position], order.row_start[position + 1]):
            row = order.row[k]
            rise[row] -= matrix[row, pivot] * rise[pivot]
    for backwards in range(order.pivot.shape[0]):
        position = order.pivot.shape[0] - 1 - backwards
        pivot = order.pivot[position]
        total = rise[pivot]
        for q in range(order.column_start[position], order.column_start[position + 1]):
            column = order.column[q]
            total -= matrix[pivot, column] * rise[column]
        rise[pivot] = total * inverse[position]


@compiled_inside
def settle(
    searching: bool,
    answer: Floats,
    room: Places,
    lower: Floats,
    upper: Floats,
    bounds: Floats,
    resting: Floats,
    heat: Floats,
) -> None:
    """Find what each emitter gives, into ``heat`` [W].

    Each holds its room between ``lower`` (heating setpoint) and ``upper`` (cooling
    setpoint) as far as its ``bounds`` (most cooling, most heating; [W], shape (m, 2))
    allow; between the two it gives what it does at rest (``resting``, [W]). ``answer``
    holds the air temperatures without emitters [degC] and, in the columns behind, those per
    watt of each emitter [K/W], shape (nodes, 1 + m or more). Projected Gauss-Seidel sweeps.
    A home that is not ``searching`` stays as it is.
    """
    count = room.shape[0]
    for _ in range(SWEEPS):
        change = 0.0
        for j in range(count):
            node = room[j]
            temperature = answer[node, 0]
            for k in range(count):
                temperature += answer[node, 1 + k] * heat[k]
            own = answer[node, 1 + j]
            to_lower = heat[j] + (lower[j] - temperature) / own
            to_upper = heat[j] + (upper[j] - temperature) / own
            most = max(bounds[j, 1], resting[j])
            cooled = where(to_upper < 0.0, max(to_upper, bounds[j, 0]), resting[j])
            wanted = where(to_lower > resting[j], min(to_lower, most), cooled)
            change = max(change, abs(wanted - heat[j]))
            heat[j] = where(searching, wanted, heat[j])
        searching = searching & (change >= ENOUGH)
        if not any_of(searching):
            break


@compiled_inside
def cut_to_caps(heat: Floats, group: Ints, caps: Floats, limits: Floats, searching: bool) -> bool:
    """Cut the limits of heads whose group gives more than it can; True where one was cut.

    Each head keeps its share of what the group gives. ``caps`` [W] shape (groups,).
    """
    cut = searching & opposite(searching)
    for g in range(caps.shape[0]):
        total = 0.0
        for j in range(heat.shape[0]):
            if group[j] == g:
                total += abs(heat[j])
        over = (total > caps[g] * (1.0 + CAP_SLACK)) & (total > 0.0)
        if any_of(over):
            cut = cut | over
            share = caps[g] / where(over, total, 1.0)
            for j in range(heat.shape[0]):
                if group[j] == g:
                    lower = max(limits[j, 0], min(heat[j], 0.0) * share)
                    upper = min(limits[j, 1], max(heat[j], 0.0) * share)
                    limits[j, 0] = where(over, lower, limits[j, 0])
                    limits[j, 1] = where(over, upper, limits[j, 1])
    return cut
