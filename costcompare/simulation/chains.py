"""Building the chain arrays, and the constant system with the radiant nodes eliminated."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum

import numpy as np
from numpy.typing import NDArray

from costcompare.case.facts import Layer
from costcompare.physics.envelope import Elimination, eliminate
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
    elimination: Elimination
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

    def boundary(self, temperature: Floats) -> int:
        """Register an hourly boundary temperature [degC]; returns its column."""
        self.columns.append(temperature)
        return len(self.columns) - 1

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
        conductance, capacity = _nodes(layers, area)
        elimination = eliminate(conductance, capacity / self.step, ends[0].total, ends[1].total)
        self.chains.append(_Chain(elimination, ends, category, twin_sign))

    def _sun_shares(self) -> Floats:
        """Share of each room's sun on each face; a twin's face gets that of the face it doubles."""
        shares = np.zeros((len(self.chains), 2))
        totals: dict[tuple[int, Sunlit], float] = {}
        for chain in self.chains:
            for port in chain.ends:
                if port.sun is not Sunlit.NOT and port.returns > 0.0:
                    key = (port.radiant, port.sun)
                    totals[key] = totals.get(key, 0.0) + port.sun_weight
        for number, chain in enumerate(self.chains):
            for end, port in enumerate(chain.ends):
                if port.sun is Sunlit.NOT:
                    continue
                direct = (port.radiant, Sunlit.DIRECT) in totals
                rest = (port.radiant, Sunlit.REST) in totals
                share = SUN_DIRECT if port.sun is Sunlit.DIRECT else 1.0 - SUN_DIRECT
                if not (direct and rest):
                    share = 1.0
                shares[number, end] = share * port.sun_weight / totals[(port.radiant, port.sun)]
        return shares

    def arrays(self) -> Chains:
        """The chains as arrays."""
        counts = [chain.elimination.storage.shape[0] for chain in self.chains]
        start = np.concatenate([[0], np.cumsum(counts)[:-1]]).astype(np.int64)
        parts = [chain.elimination for chain in self.chains]

        def ends(name: str) -> list[list[float]]:
            return [[getattr(port, name) for port in chain.ends] for chain in self.chains]

        def numbers(name: str) -> NDArray[np.int64]:
            return np.array(ends(name), dtype=np.int64)

        def values(name: str) -> Floats:
            return np.array(ends(name), dtype=np.float64)

        return Chains(
            start=start,
            length=np.array(counts, dtype=np.int64),
            conductance=np.concatenate([np.append(p.conductance, 0.0) for p in parts]),
            storage=np.concatenate([p.storage for p in parts]),
            upper=np.concatenate([p.upper for p in parts]),
            inverse=np.concatenate([p.inverse for p in parts]),
            from_first=np.concatenate([p.from_first for p in parts]),
            from_last=np.concatenate([p.from_last for p in parts]),
            air=numbers("air"),
            air_conductance=values("air_conductance"),
            radiant=numbers("radiant"),
            radiant_conductance=values("radiant_conductance"),
            boundary=numbers("boundary"),
            boundary_conductance=values("boundary_conductance"),
            returns=values("returns"),
            sun=self._sun_shares(),
            category=np.array([chain.category for chain in self.chains], dtype=np.int64),
            twin_sign=np.array([chain.twin_sign for chain in self.chains]),
        )


def _nodes(layers: tuple[Layer, ...], area: float) -> tuple[Floats, Floats]:
    """Conductances between and capacities at the borders of the layers."""
    conductance: list[float] = []
    capacity = [0.0]
    for layer in layers:
        slices = max(1, int(np.ceil(layer.capacity / HEAVY)))
        for _ in range(slices):
            conductance.append(area * slices / layer.resistance)
            share = 0.5 * area * layer.capacity / slices
            capacity[-1] += share
            capacity.append(share)
    return np.array(conductance), np.array(capacity)


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
    for chain in range(chains.start.shape[0]):
        _fold(full, chains, chain, size)
    aa, ar = full[:size, :size], full[:size, size:]
    ra, rr = full[size:, :size], full[size:, size:]
    empty = np.flatnonzero(np.diag(rr) <= 0.0)
    rr[empty, empty] = 1.0  # a room without any surface has no radiant exchange
    inverse = np.linalg.inv(rr)
    to_air = ar @ inverse
    return Reduction(
        np.ascontiguousarray(aa - to_air @ ra),
        np.ascontiguousarray(to_air),
        np.ascontiguousarray(inverse),
        np.ascontiguousarray(ra),
    )


def _fold(full: Floats, chains: Chains, chain: int, size: int) -> None:
    """Fold one chain into the full system."""
    first = chains.start[chain]
    last = first + chains.length[chain] - 1
    face = (first, last)
    links: list[tuple[int, int, float, float]] = []
    for end in range(2):
        if chains.air[chain, end] >= 0:
            value = float(chains.air_conductance[chain, end])
            links.append((end, int(chains.air[chain, end]), value, chains.returns[chain, end]))
        if chains.radiant[chain, end] >= 0:
            value = float(chains.radiant_conductance[chain, end])
            node = size + int(chains.radiant[chain, end])
            links.append((end, node, value, chains.returns[chain, end]))
    for end, node, value, returns in links:
        if returns == 0.0:
            continue
        full[node, node] += value
        for other_end, other, other_value, _ in links:
            response = chains.from_first if other_end == 0 else chains.from_last
            full[node, other] -= value * response[face[end]] * other_value
