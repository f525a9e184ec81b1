"""What is worked out of a home once, ahead of its year, so that no hour works it out again."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from costcompare.physics.doorways import exchange_flow
from costcompare.physics.ducts import conduction_factor
from costcompare.simulation.clock import Same
from costcompare.simulation.network import Air, DuctNet, Model, Order, Places

Floats = NDArray[np.float64]
Flags = NDArray[np.bool_]


class Ahead(NamedTuple):
    """Constants of a home's year beside its :class:`Model`."""

    order: Order
    taken_from: Floats
    """Share of all inflow of the rooms that each air node gives them, shape (nodes,); a twin
    gives what the space that it doubles does"""
    door_value: Floats
    """[W/K^1.5] of each doorway: what it passes at a difference of 1 K"""
    supply_factor: float
    """Conduction factors of the ducts at full flow"""
    return_factor: float
    by_wind: Floats
    """Air that the wind alone drives in and out of the rooms [m3/s], shape (hours,)"""


def ahead_of(model: Model, wind: Floats) -> Ahead:
    """The constants of a home; ``wind`` [m/s] at the station, shape (hours,)."""
    air, ducts, doors = model.air, model.ducts, model.doors
    taken = np.zeros(air.nodes)
    for room, below in enumerate(air.space_below):
        if below >= 0:
            taken[below] += air.share_space[room]
    if ducts.twin >= 0:
        taken[ducts.twin] = taken[ducts.space]
    passed = [
        exchange_flow(width, height, 1.0)
        for width, height in zip(doors.width.tolist(), doors.height.tolist(), strict=True)
    ]
    k = air.heat_capacity
    power = 2.0 * air.leak_exponent
    return Ahead(
        _order(_felt(model).tobytes(), air.nodes, _pivots(air, ducts)),
        taken,
        k * np.array(passed, dtype=float),
        conduction_factor(ducts.supply_area, k, ducts.airflow, ducts.resistance),
        conduction_factor(ducts.return_area, k, ducts.airflow, ducts.resistance),
        air.leak_coefficient * air.wind * air.wind_factor**power * _to_a_power(Same(wind), power),
    )


@lru_cache(maxsize=16)
def _to_a_power(wind: Same, power: float) -> Floats:
    """The wind of a year to a power, once for all homes that stand in it."""
    assert isinstance(wind.item, np.ndarray)
    raised: Floats = wind.item**power
    return raised


def _pivots(air: Air, ducts: DuctNet) -> tuple[int, ...]:
    """Rooms in the order in which their air leaves them, the root, then the spaces.

    Rooms at the ends of the tree are felt by few others, so that their going leaves few new
    entries. The twin is left out: nobody feels it.
    """
    ends = [int(node) for node in air.link_from]
    rest = [room for room in range(air.rooms) if room not in ends]
    spaces = [space for space in range(air.rooms, air.nodes) if space != ducts.twin]
    return (*ends, *rest, *spaces)


def _felt(model: Model) -> Flags:
    """Which air node's balance (row) may hold which temperature (column), in any hour."""
    air, ducts = model.air, model.ducts
    felt: Flags = model.reduction.air != 0.0
    _join(felt, model.doors.first, model.doors.second)
    _join(felt, air.link_from, air.link_to)
    below = air.space_below >= 0
    felt[np.flatnonzero(below), air.space_below[below]] = True
    if ducts.present == 1:
        space = ducts.space if ducts.space >= 0 else ducts.return_room
        felt[: air.rooms, ducts.return_room] = True
        felt[: air.rooms, space] = True
        felt[space, ducts.return_room] = True
    return felt


def _join(felt: Flags, first: Places, second: Places) -> None:
    felt[first, second] = True
    felt[second, first] = True


@lru_cache(maxsize=256)
def _order(felt: bytes, nodes: int, pivots: tuple[int, ...]) -> Order:
    """The order of elimination with what it fills in; homes of one plan share it."""
    left = np.frombuffer(felt, dtype=bool).reshape(nodes, nodes).copy()
    rows: list[int] = []
    columns: list[int] = []
    row_start, column_start = [0], [0]
    for position, pivot in enumerate(pivots):
        later = np.array(pivots[position + 1 :], dtype=np.int64)
        row, column = later[left[later, pivot]], later[left[pivot, later]]
        left[np.ix_(row, column)] = True
        rows += row.tolist()
        columns += column.tolist()
        row_start.append(len(rows))
        column_start.append(len(columns))
    return Order(
        np.array(pivots, dtype=np.uint64),
        np.array(row_start, dtype=np.uint64),
        np.array(rows, dtype=np.uint64),
        np.array(column_start, dtype=np.uint64),
        np.array(columns, dtype=np.uint64),
    )
