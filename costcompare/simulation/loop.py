"""The year, hour by hour: the only loop over time, compiled as a whole."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from costcompare.physics.compiled import compiled
from costcompare.simulation.airflows import (
    DuctState,
    Flows,
    duct_state,
    envelope_flows,
    natural_flow,
)
from costcompare.simulation.balance import (
    air_load,
    duct_terms,
    floor_air_regained,
    imbalance,
    surface_loads,
)
from costcompare.simulation.hour import Conditions, Demand, Work, settle_hour
from costcompare.simulation.network import (
    Air,
    Chains,
    Doors,
    DuctNet,
    Emitters,
    Plant,
    Record,
    Reduction,
    Year,
)

Floats = NDArray[np.float64]

STARTING_TEMPERATURE = 16.0
"""[degC] of every node before the warm-up (judgement; the warm-up forgets it)"""
AIRING_MARGIN = 2.0
"""[K] that it must be cooler outside before windows are opened (judgement)"""


@compiled
def surfaces_forward(
    chains: Chains,
    boundary: Floats,
    sun: Floats,
    nodes: Floats,
    known: Floats,
    air: Floats,
    radiant: Floats,
) -> None:
    """Temperatures of the chains with nothing at their unknown ends, into ``known``.

    Adds what the faces then give to the air and radiant nodes [W] to ``air``, ``radiant``.
    Written on flat arrays, without slices: this is half of the work of an hour.
    """
    for chain in range(chains.start.shape[0]):
        first = chains.start[chain]
        last = first + chains.count[chain] - 1
        carried = 0.0
        for j in range(first, last + 1):
            heat = chains.storage[j] * nodes[j]
            if j == first and chains.boundary[chain, 0] >= 0:
                outside = boundary[chains.boundary[chain, 0]]
                heat += chains.boundary_conductance[chain, 0] * outside
            if j == first and chains.sun[chain, 0] > 0.0:
                heat += chains.sun[chain, 0] * sun[chains.radiant[chain, 0]]
            if j == last and chains.sun[chain, 1] > 0.0:
                heat += chains.sun[chain, 1] * sun[chains.radiant[chain, 1]]
            if j == last and chains.boundary[chain, 1] >= 0:
                outside = boundary[chains.boundary[chain, 1]]
                heat += chains.boundary_conductance[chain, 1] * outside
            carried = (heat + carried) * chains.inverse[j]
            known[j] = carried
            carried *= chains.conductance[j]
        for j in range(last - 1, first - 1, -1):
            known[j] += chains.upper[j] * known[j + 1]
        for end in range(2):
            face = known[first if end == 0 else last] * chains.returns[chain, end]
            if chains.air[chain, end] >= 0:
                air[chains.air[chain, end]] += chains.air_conductance[chain, end] * face
            if chains.radiant[chain, end] >= 0:
                room = chains.radiant[chain, end]
                radiant[room] += chains.radiant_conductance[chain, end] * face


@compiled
def surfaces_finish(
    chains: Chains, known: Floats, nodes: Floats, air: Floats, radiant: Floats
) -> None:
    """Temperatures of the chains once air and radiant nodes are known, into ``nodes``."""
    for chain in range(chains.start.shape[0]):
        first_drive = _drive(chains, chain, 0, air, radiant)
        last_drive = _drive(chains, chain, 1, air, radiant)
        first = chains.start[chain]
        for j in range(first, first + chains.count[chain]):
            nodes[j] = known[j]
            nodes[j] += chains.from_first[j] * first_drive + chains.from_last[j] * last_drive


@compiled
def _drive(chains: Chains, chain: int, end: int, air: Floats, radiant: Floats) -> float:
    """Heat that the nodes beyond an end would put into a face at 0 degC [W]."""
    total = 0.0
    if chains.air[chain, end] >= 0:
        total += chains.air_conductance[chain, end] * air[chains.air[chain, end]]
    if chains.radiant[chain, end] >= 0:
        total += chains.radiant_conductance[chain, end] * radiant[chains.radiant[chain, end]]
    return total


@compiled
def _demand(
    h: int, plant: Plant, emitters: Emitters, ducts: DuctNet, warm: float, bounds: Floats
) -> Demand:
    """Setpoints and limits of an hour; the ducted machine cools where it was too warm."""
    for j in range(emitters.room.shape[0]):
        bounds[j, 0] = -emitters.cool_most[h, j]
        bounds[j, 1] = emitters.heat_most[h, j]
    middle = 0.5 * (plant.setpoint[h] + plant.cooling_setpoint[h])
    cooling = warm > middle and plant.cool_most[h] > 0.0
    return Demand(
        plant.cool_least[h] if cooling else plant.heat_least[h],
        plant.cool_most[h] if cooling else plant.heat_most[h],
        0.0 if cooling else plant.strips[h],
        -1.0 if cooling else 1.0,
        plant.cooling_setpoint[h] if cooling else plant.setpoint[h],
        ducts.thermostat,
        emitters.room,
        emitters.setpoint[h],
        emitters.cooling_setpoint[h],
        bounds,
    )


@compiled
def _add_product(matrix: Floats, vector: Floats, sign: float, total: Floats) -> None:
    """Add ``sign matrix vector`` to ``total``."""
    for i in range(matrix.shape[0]):
        for j in range(matrix.shape[1]):
            total[i] += sign * matrix[i, j] * vector[j]


@compiled
def _copy(source: Floats, target: Floats) -> None:
    for i in range(source.shape[0]):
        target[i] = source[i]


@compiled
def _sum(values: Floats) -> float:
    total = 0.0
    for i in range(values.shape[0]):
        total += values[i]
    return total


@compiled
def _mean(values: Floats, count: int) -> float:
    total = 0.0
    for i in range(count):
        total += values[i]
    return total / count


@compiled
def _write_unmet(
    h: int, demand: Demand, ducts: DuctNet, control: float, work: Work, record: Record
) -> None:
    """Heat that would have been needed more, by the response of each short room [W]."""
    for j in range(demand.room.shape[0]):
        room = demand.room[j]
        short = demand.lower[j] - work.temperature[room]
        if short > 0.01 and work.heat[j] >= demand.bounds[j, 1] - 1e-3:
            missing = short / work.right[room, 1 + j]
            record.unmet[h, room] = max(record.unmet[h, room], missing)
    if ducts.present == 1 and demand.sign > 0.0 and control > 0.0:
        short = demand.setpoint - work.temperature[demand.thermostat]
        if short > 0.01:
            missing = short / work.right[demand.thermostat, 1 + demand.room.shape[0]]
            record.unmet[h, demand.thermostat] = max(
                record.unmet[h, demand.thermostat], missing
            )


class Memory(NamedTuple):
    """State and scratch of the loop, allocated outside of it: compiled code counts nothing."""

    nodes: Floats
    """Temperatures of the chains [degC]"""
    known: Floats
    before: Floats
    node: Floats
    """Air temperatures [degC]"""
    node_before: Floats
    radiant: Floats
    into_air: Floats
    into_radiant: Floats
    through_radiant: Floats
    bounds: Floats
    work: Work


def memory(chains: Chains, air: Air, emitters: int) -> Memory:
    """Memory for a run, every node at the starting temperature."""
    start = STARTING_TEMPERATURE
    length, size, rooms = chains.storage.shape[0], air.nodes, air.rooms
    work = Work(
        matrix=np.zeros((size, size)),
        right=np.zeros((size, 2 + emitters)),
        free=np.zeros(size),
        temperature=np.full(size, start),
        previous=np.full(size, start),
        heat=np.zeros(emitters),
        surplus=np.zeros(rooms),
        slope=np.full(1, 10.0),
    )
    return Memory(
        nodes=np.full(length, start),
        known=np.zeros(length),
        before=np.full(length, start),
        node=np.full(size, start),
        node_before=np.full(size, start),
        radiant=np.full(rooms, start),
        into_air=np.zeros(size),
        into_radiant=np.zeros(rooms),
        through_radiant=np.zeros(rooms),
        bounds=np.zeros((emitters, 2)),
        work=work,
    )


@compiled
def _gather(h: int, chains: Chains, reduction: Reduction, air: Air, year: Year, m: Memory) -> None:
    """Everything known about the hour's heat, onto the air nodes, into ``m.into_air``."""
    for i in range(air.nodes):
        m.into_air[i] = air.storage[i] * m.node[i]
    for i in range(air.rooms):
        m.into_air[i] += year.convective[h, i]
        m.into_radiant[i] = year.radiant[h, i]
    surfaces_forward(
        chains, year.boundary[h], year.sun[h], m.nodes, m.known, m.into_air, m.into_radiant
    )
    _add_product(reduction.to_air, m.into_radiant, -1.0, m.into_air)


@compiled
def _advance(chains: Chains, reduction: Reduction, air: Air, m: Memory) -> None:
    """Take over the temperatures that the hour has settled on."""
    _copy(m.node, m.node_before)
    _copy(m.work.temperature, m.node)
    _copy(m.into_radiant, m.through_radiant)
    _add_product(reduction.radiant_air, m.node, -1.0, m.through_radiant)
    for i in range(air.rooms):
        m.radiant[i] = 0.0
    _add_product(reduction.radiant_inverse, m.through_radiant, 1.0, m.radiant)
    _copy(m.nodes, m.before)
    surfaces_finish(chains, m.known, m.nodes, m.node, m.radiant)


@compiled
def run_year(
    chains: Chains,
    reduction: Reduction,
    air: Air,
    doors: Doors,
    ducts: DuctNet,
    plant: Plant,
    emitters: Emitters,
    year: Year,
    record: Record,
    m: Memory,
) -> None:
    """Step through the year and write every hour into ``record``."""
    control = 0.0
    for position in range(year.order.shape[0]):
        h = year.order[position]
        outdoor = year.outdoor[h]
        _gather(h, chains, reduction, air, year, m)
        warm = _mean(m.node, air.rooms)
        natural = natural_flow(air, warm - outdoor, year.wind[h])
        airing = 0.0
        if warm > year.airing_above[h] and outdoor < warm - AIRING_MARGIN:
            airing = 1.0
        conditions = Conditions(
            reduction.air, m.into_air, outdoor, year.vent_flow[h], natural, airing
        )
        demand = _demand(h, plant, emitters, ducts, warm, m.bounds)
        _copy(m.node, m.work.previous)
        control = settle_hour(control, conditions, demand, air, doors, ducts, m.work)
        _advance(chains, reduction, air, m)
        if position >= year.recorded_from:
            state = duct_state(
                control,
                demand.sign,
                demand.least,
                demand.most,
                demand.strips,
                ducts,
                air.heat_capacity,
            )
            _write_unmet(h, demand, ducts, control, m.work, record)
            _write(h, chains, air, ducts, state, conditions, year, m, record)


@compiled
def _write(
    h: int,
    chains: Chains,
    air: Air,
    ducts: DuctNet,
    state: DuctState,
    conditions: Conditions,
    year: Year,
    m: Memory,
    record: Record,
) -> None:
    """Write the hour's temperatures, heat, loads and closing sum."""
    _copy(m.node, record.air[h])
    _copy(m.work.heat, record.emitted[h])
    record.main[h] = state.main
    record.strips[h] = state.strips
    record.blower[h] = state.blower
    record.run[h] = state.run
    flows = envelope_flows(conditions.natural, state)
    _write_loads(h, chains, m, air, ducts, state, flows, conditions.outdoor, year.sun[h], record)
    for i in range(air.rooms):
        record.load[h, 2] += air.storage[i] * (m.node[i] - m.node_before[i])
        opened = conditions.airing * air.heat_capacity * air.airing_flow[i]
        record.load[h, 3] += opened * (m.node[i] - conditions.outdoor)
    put_in = state.run * state.heat + _sum(m.work.heat)
    put_in += _sum(year.convective[h]) + _sum(year.radiant[h]) + _sum(year.sun[h])
    record.turnover[h] = abs(put_in)
    record.imbalance[h] = imbalance(
        chains,
        m.nodes,
        m.before,
        year.boundary[h],
        air,
        ducts,
        state,
        flows,
        m.node,
        m.node_before,
        conditions.outdoor,
        conditions.vents,
        conditions.airing,
        put_in,
    )


@compiled
def _write_loads(
    h: int,
    chains: Chains,
    m: Memory,
    air: Air,
    ducts: DuctNet,
    state: DuctState,
    flows: Flows,
    outdoor: float,
    sun: Floats,
    record: Record,
) -> None:
    """Write the parts of the rooms' load and the duct terms of an hour."""
    regained = surface_loads(chains, m.nodes, m.node, m.radiant, sun, record.load[h])
    back = ducts.return_room
    total = air_load(air, m.node, outdoor, back, flows.inflow, flows.outflow)
    quiet = air_load(air, m.node, outdoor, back, flows.natural, flows.natural)
    record.load[h, 3] += quiet
    duct_terms(air, ducts, state, m.node, record.duct[h])
    if ducts.present == 1:
        record.duct[h, 4] = total - quiet
        if ducts.twin >= 0:
            record.duct[h, 5] = regained + floor_air_regained(air, ducts, m.node, flows.inflow)
