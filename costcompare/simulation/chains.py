"""Building the chain arrays, and the constant system with the radiant nodes eliminated."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from enum import Enum
from functools import lru_cache
from typing import Any

import numpy as np
from numpy.typing import NDArray

from costcompare.case.facts import Layer
from costcompare.physics.envelope import Modes, Responses, solved
from costcompare.simulation.network import Chains, Reduction

Floats = NDArray[np.float64]

HEAVY = 60_000.0
"""[J/(m2 K)] above which a layer is cut into slices of at most this capacity (judgement)"""


class Sunlit(Enum):
    """How the sun that comes through a room's glass reaches a face."""

    NOT = "not"
    DIRECT = "direct"
    """Floors and what stands on them: most of the sun lands there first"""
    REST = "rest"


SUN_DIRECT = 0.6
"""Share of the sun that lands on floor and furniture; the rest on all other faces by area
(ASHRAE Standard 140 gives 0.64 to the floor of its light test cell, from memory)"""


@dataclass(frozen=True)
class Port:
    """What lies beyond one end of a chain; conductances for the whole area [W/K]."""

    air: int = -1
    air_conductance: float = 0.0
    radiant: int = -1
    radiant_conductance: float = 0.0
    boundary: int = -1
    boundary_conductance: float = 0.0
    returns: float = 1.0
    """0 for the room end of a twin: it feels the room, the room does not feel it"""
    sun: Sunlit = Sunlit.NOT
    sun_weight: float = 0.0
    """Share of this face among those of its room that are lit alike (relative)"""

    @property
    def total(self) -> float:
        return self.air_conductance + self.radiant_conductance + self.boundary_conductance


NOTHING = Port()
"""An adiabatic end"""


@dataclass(frozen=True)
class _Chain:
    conductance: tuple[float, ...]
    storage: tuple[float, ...]
    kept: int
    """Nodes with storage, which is the number of modes"""
    ends: tuple[Port, Port]
    category: int
    twin_sign: float


@dataclass
class ChainBuilder:
    """Collects surfaces and boundary temperatures while a home is put together."""

    step: float
    """[s]"""
    chains: list[_Chain] = field(default_factory=list)
    columns: list[Floats] = field(default_factory=list)
    found: dict[bytes, int] = field(default_factory=dict)
    """Column of each boundary temperature by its content"""

    def boundary(self, temperature: Floats) -> int:
        """Register a boundary temperature; returns its column, the same for the same again.

        It is given by hour [degC] or as a mixture, all of a home in the same way.
        """
        key = temperature.tobytes()
        if key not in self.found:
            self.found[key] = len(self.columns)
            self.columns.append(temperature)
        return self.found[key]

    def add(
        self,
        layers: tuple[Layer, ...],
        area: float,
        ends: tuple[Port, Port],
        category: int,
        *,
        twin_sign: float = 0.0,
    ) -> None:
        """Add a surface of an area [m2]; ``layers`` run from the first end to the last."""
        if area <= 0.0:
            return
        per_area = _nodes(layers, self.step)
        chain = _Chain(
            tuple([area * value for value in per_area.conductance]),
            tuple([area * value for value in per_area.storage]),
            per_area.kept,
            ends,
            category,
            twin_sign,
        )
        self.chains.append(chain)

    def sun_shares(self) -> list[tuple[float, float]]:
        """Share of each room's sun on each face; a twin's face gets that of the face it doubles."""
        rooms = 1 + max((port.radiant for chain in self.chains for port in chain.ends), default=-1)
        direct, rest = [0.0] * rooms, [0.0] * rooms
        for chain in self.chains:
            for port in chain.ends:
                if port.sun is not Sunlit.NOT and port.returns > 0.0:
                    total = direct if port.sun is Sunlit.DIRECT else rest
                    total[port.radiant] += port.sun_weight

        def share(port: Port) -> float:
            if port.sun is Sunlit.NOT or port.sun_weight == 0.0:
                return 0.0
            own, other = (direct, rest) if port.sun is Sunlit.DIRECT else (rest, direct)
            part = SUN_DIRECT if port.sun is Sunlit.DIRECT else 1.0 - SUN_DIRECT
            of_all = part if other[port.radiant] > 0.0 else 1.0
            return of_all * port.sun_weight / own[port.radiant]

        return [(share(chain.ends[0]), share(chain.ends[1])) for chain in self.chains]

    def arrays(self, nodes: int) -> Chains:
        """The chains as arrays, those with most modes first; ``nodes`` of the air there are."""
        self.chains.sort(key=lambda chain: -chain.kept)
        return Chains(*_modes_by_row(self.chains), *_ends(self.chains, self.sun_shares(), nodes))


def _modes_by_row(chains: list[_Chain]) -> tuple[Any, ...]:
    """``row`` to ``through`` of the chains, which stand by how many modes they have."""
    kept = np.array([chain.kept for chain in chains])
    most = int(kept.max(initial=0))
    wide = [int(np.sum(kept > k)) for k in range(most)]
    row = np.concatenate([[0], np.cumsum(wide)]).astype(np.int64)
    flat = [np.zeros(row[-1]) for _ in range(4)]
    faces = [np.zeros(len(chains)) for _ in range(3)]
    for alike in _alike(chains):
        found, answers = _solved([chains[n] for n in alike])
        places = row[: found.decay.shape[1]] + np.array(alike)[:, None]
        for part, values in zip(flat, found, strict=True):
            part[places] = values
        for face, answer in zip(faces, answers, strict=True):
            face[alike] = answer
    counted = np.array([chain.twin_sign <= 0.0 for chain in chains], dtype=float)
    stored = flat[3] * np.concatenate([counted[:count] for count in wide]) if most else flat[3]
    return (row, *flat, stored, *faces)


def _alike(chains: list[_Chain]) -> list[list[int]]:
    """Numbers of the chains with equally many nodes and modes, which are solved together."""
    groups: dict[tuple[int, int], list[int]] = {}
    for number, chain in enumerate(chains):
        groups.setdefault((len(chain.storage), chain.kept), []).append(number)
    return list(groups.values())


def _solved(chains: list[_Chain]) -> tuple[Modes, Responses]:
    """Homes whose walls are alike share the answer: chains are found again by their content."""
    return _answers(
        tuple(chain.conductance for chain in chains),
        tuple(chain.storage for chain in chains),
        tuple((chain.ends[0].total, chain.ends[1].total) for chain in chains),
    )


@lru_cache(maxsize=4096)
def _answers(
    conductance: tuple[tuple[float, ...], ...],
    storage: tuple[tuple[float, ...], ...],
    ports: tuple[tuple[float, float], ...],
) -> tuple[Modes, Responses]:
    stored, beyond = np.array(storage), np.array(ports)
    return solved(np.array(conductance), stored, beyond[:, 0], beyond[:, 1])


def _ends(chains: list[_Chain], sun: list[tuple[float, float]], nodes: int) -> tuple[Any, ...]:
    """``outer_end`` to ``load_twin`` of the chains; a face with radiation has its room's air."""
    count = len(chains)
    outer: list[tuple[int, int, float]] = []
    of_twin: list[tuple[int, int, float]] = []
    lit: list[tuple[int, int, float]] = []
    touch: list[tuple[int, int, float, float, float, float]] = []
    load: list[tuple[int, int, float, float, float]] = []
    for number, chain in enumerate(chains):
        for side, port in enumerate(chain.ends):
            end = number + side * count
            if port.boundary >= 0:
                kind = of_twin if chain.twin_sign > 0.0 else outer
                kind.append((end, port.boundary, port.boundary_conductance))
            by_air, by_radiation = port.air_conductance, port.radiant_conductance
            if port.air >= 0:
                back = (by_air * port.returns, by_radiation * port.returns)
                touch.append((port.air, end, by_air, by_radiation, *back))
            if port.radiant >= 0:
                both = by_air + by_radiation
                load.append((end, chain.category, both, port.returns, chain.twin_sign))
            if sun[number][side] != 0.0:
                lit.append((end, port.radiant, sun[number][side]))
    touch.sort()
    return (
        *_columns(outer + of_twin, "ppf"),
        len(outer),
        *_columns(lit, "ppf"),
        np.searchsorted([one[0] for one in touch], range(nodes + 1)).astype(np.uint64),
        *_columns([one[1:] for one in touch], "pffff"),
        *_columns(load, "pifff"),
    )


def _columns(rows: Sequence[tuple[float, ...]], kinds: str) -> list[NDArray[np.generic]]:
    """The columns of a table, by letter of ``kinds``: place, whole number or any number."""
    types = {"p": np.uint64, "i": np.int64, "f": np.float64}
    table = np.array(rows, dtype=float).reshape(-1, len(kinds))
    return [np.ascontiguousarray(table[:, n], dtype=types[kind]) for n, kind in enumerate(kinds)]


@dataclass(frozen=True)
class _PerArea:
    """A surface of 1 m2 as a row of nodes."""

    conductance: tuple[float, ...]
    """Between the borders of the layers [W/(m2 K)]"""
    storage: tuple[float, ...]
    """Over a step [W/(m2 K)]"""
    kept: int
    """Nodes with storage"""


@lru_cache(maxsize=1024)
def _nodes(layers: tuple[Layer, ...], step: float) -> _PerArea:
    """The layers as nodes; the surfaces of one construction share them."""
    conductance: list[float] = []
    storage = [0.0]
    for layer in layers:
        slices = max(1, math.ceil(layer.capacity / HEAVY))
        share = 0.5 * layer.capacity / slices / step
        for _ in range(slices):
            conductance.append(slices / layer.resistance)
            storage[-1] += share
            storage.append(share)
    kept = sum(value > 0.0 for value in storage)
    return _PerArea(tuple(conductance), tuple(storage), kept)


def reduce(
    chains: Chains, storage: Floats, partitions: list[tuple[int, int, float]], rooms: int
) -> Reduction:
    """The constant air system: chains folded in, radiant nodes eliminated.

    ``storage`` [W/K] of the air nodes; ``partitions`` are constant conductances [W/K]
    between two air nodes.
    """
    size = storage.shape[0]
    full = np.zeros((size + rooms, size + rooms))
    full[np.arange(size), np.arange(size)] = storage
    for i, j, value in partitions:
        full[[i, j], [i, j]] += value
        full[i, j] -= value
        full[j, i] -= value
    _fold(full, chains, size)
    aa, ar = full[:size, :size], full[:size, size:]
    ra, rr = full[size:, :size], full[size:, size:]
    empty = np.flatnonzero(np.diag(rr) <= 0.0)
    rr[empty, empty] = 1.0  # a room without any surface has no radiant exchange
    inverse = np.linalg.inv(rr)
    to_air = ar @ inverse
    constant = np.ascontiguousarray(aa - to_air @ ra)
    return Reduction(constant, *(np.ascontiguousarray(part.T) for part in (to_air, inverse, ra)))


def _fold(full: Floats, chains: Chains, size: int) -> None:
    """Fold the chains into the full system: a node gives to a face and feels what comes back."""
    count = chains.face_first.shape[0]
    node = np.repeat(np.arange(size), np.diff(chains.touch_row).astype(np.int64))
    inside = node < full.shape[0] - size
    places = np.concatenate([node, size + node[inside]])
    ends = np.concatenate([chains.touch_end, chains.touch_end[inside]])
    value = np.concatenate([chains.touch_air, chains.touch_radiant[inside]])
    back = np.concatenate([chains.touch_air_back, chains.touch_radiant_back[inside]])
    np.add.at(full, (places, places), back)
    # How warm a node makes each face, and what each face gives back to a node.
    gives = np.zeros((2 * count, full.shape[0]))
    takes = np.zeros((2 * count, full.shape[0]))
    np.add.at(gives, (ends, places), value)
    np.add.at(takes, (ends, places), back)
    first, last = gives[:count], gives[count:]
    warm_first = chains.face_first[:, None] * first + chains.through[:, None] * last
    warm_last = chains.through[:, None] * first + chains.face_last[:, None] * last
    full -= takes[:count].T @ warm_first + takes[count:].T @ warm_last
