"""The year, hour by hour: the only loop over time, compiled as a whole."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from costcompare.physics.compiled import compiled
from costcompare.physics.envelope import back_substitute
from costcompare.simulation.airflows import Flows, duct_state, envelope_flows, natural_flow
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
    chains: Chains, boundary: Floats, nodes: Floats, known: Floats, air: Floats, radiant: Floats
) -> None:
    """Temperatures of the chains with nothing at their unknown ends, into ``known``.

    Adds what the faces then give to the air and radiant nodes [W] to ``air``, ``radiant``.
    """
    for chain in range(chains.start.shape[0]):
        first = chains.start[chain]
        stop = first + chains.count[chain]
        last = stop - 1
        heat = chains.storage[first:stop] * nodes[first:stop]
        for end in range(2):
            column = chains.boundary[chain, end]
            if column >= 0:
                position = 0 if end == 0 else last - first
                heat[position] += chains.boundary_conductance[chain, end] * boundary[column]
        back_substitute(
            heat,
            chains.conductance[first:stop],
            chains.upper[first:stop],
            chains.inverse[first:stop],
            known[first:stop],
        )
        for end in range(2):
            face = known[first if end == 0 else last]
            back = chains.returns[chain, end]
            if chains.air[chain, end] >= 0:
                heat_back = back * chains.air_conductance[chain, end] * face
                air[chains.air[chain, end]] += heat_back
            if chains.radiant[chain, end] >= 0:
                heat_back = back * chains.radiant_conductance[chain, end] * face
                radiant[chains.radiant[chain, end]] += heat_back


@compiled
def surfaces_finish(
    chains: Chains, known: Floats, nodes: Floats, air: Floats, radiant: Floats
) -> None:
    """Temperatures of the chains once air and radiant nodes are known, into ``nodes``."""
    for chain in range(chains.start.shape[0]):
        first = chains.start[chain]
        stop = first + chains.count[chain]
        drive = np.zeros(2)
        for end in range(2):
            if chains.air[chain, end] >= 0:
                drive[end] += chains.air_conductance[chain, end] * air[chains.air[chain, end]]
            if chains.radiant[chain, end] >= 0:
                room = chains.radiant[chain, end]
                drive[end] += chains.radiant_conductance[chain, end] * radiant[room]
        for j in range(first, stop):
            nodes[j] = known[j] + chains.from_first[j] * drive[0] + chains.from_last[j] * drive[1]


@compiled
def _demand(h: int, plant: Plant, emitters: Emitters, ducts: DuctNet, warm: float) -> Demand:
    """Setpoints and limits of an hour; the ducted machine cools where it was too warm."""
    count = emitters.room.shape[0]
    bounds = np.zeros((count, 2))
    for j in range(count):
        bounds[j, 0] = -emitters.cool_most[h, j]
        bounds[j, 1] = emitters.heat_most[h, j]
    middle = 0.5 * (plant.setpoint[h] + plant.cooling_setpoint[h])
    if warm > middle and plant.cool_most[h] > 0.0:
        return Demand(
            plant.cool_least[h],
            plant.cool_most[h],
            0.0,
            -1.0,
            plant.cooling_setpoint[h],
            ducts.thermostat,
            emitters.room,
            emitters.setpoint[h],
            emitters.cooling_setpoint[h],
            bounds,
        )
    return Demand(
        plant.heat_least[h],
        plant.heat_most[h],
        plant.strips[h],
        1.0,
        plant.setpoint[h],
        ducts.thermostat,
        emitters.room,
        emitters.setpoint[h],
        emitters.cooling_setpoint[h],
        bounds,
    )


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
) -> None:
    """Step through the year and write every hour into ``record``."""
    rooms, size = air.rooms, air.nodes
    count = emitters.room.shape[0]
    nodes = np.full(chains.storage.shape[0], STARTING_TEMPERATURE)
    known = np.zeros_like(nodes)
    before = nodes.copy()
    node = np.full(size, STARTING_TEMPERATURE)
    node_before = node.copy()
    radiant = np.zeros(rooms)
    work = Work(
        np.zeros((size, size)),
        np.zeros((size, 2 + count)),
        np.zeros(size),
        np.full(size, STARTING_TEMPERATURE),
        np.full(size, STARTING_TEMPERATURE),
        np.zeros(count),
        np.full(1, 10.0),
    )
    control = 0.0
    for position in range(year.order.shape[0]):
        h = year.order[position]
        outdoor = year.outdoor[h]
        into_air = air.storage * node
        into_radiant = year.radiant[h].copy()
        into_air[:rooms] += year.convective[h]
        surfaces_forward(chains, year.boundary[h], nodes, known, into_air, into_radiant)
        warm = _mean(node, rooms)
        natural = natural_flow(air, warm - outdoor, year.wind[h])
        airing = 0.0
        if warm > year.airing_above[h] and outdoor < warm - AIRING_MARGIN:
            airing = 1.0
        conditions = Conditions(
            reduction.air,
            into_air - reduction.to_air @ into_radiant,
            outdoor,
            year.vent_flow[h],
            natural,
            airing,
        )
        demand = _demand(h, plant, emitters, ducts, warm)
        work.previous[:] = node
        control = settle_hour(control, conditions, demand, air, doors, ducts, work)
        state = duct_state(
            control, demand.sign, demand.least, demand.most, demand.strips, ducts, air.heat_capacity
        )
        flows = envelope_flows(natural, state)
        node_before[:] = node
        node[:] = work.temperature
        radiant[:] = reduction.radiant_inverse @ (into_radiant - reduction.radiant_air @ node)
        before[:] = nodes
        surfaces_finish(chains, known, nodes, node, radiant)
        if position < year.recorded_from:
            continue
        record.air[h] = node
        record.emitted[h] = work.heat
        record.main[h] = state.main
        record.strips[h] = state.strips
        record.blower[h] = state.blower
        record.run[h] = state.run
        _write_unmet(h, demand, ducts, control, work, record)
        _write_loads(h, chains, nodes, node, radiant, air, ducts, state, flows, outdoor, record)
        put_in = state.run * state.heat + work.heat.sum()
        put_in += year.convective[h].sum() + year.radiant[h].sum()
        record.turnover[h] = abs(put_in)
        for i in range(rooms):
            record.load[h, 2] += air.storage[i] * (node[i] - node_before[i])
            if airing > 0.0:
                opened = air.heat_capacity * air.airing_flow[i] * (node[i] - outdoor)
                record.load[h, 3] += opened
        record.imbalance[h] = imbalance(
            chains,
            nodes,
            before,
            year.boundary[h],
            air,
            ducts,
            state,
            flows,
            node,
            node_before,
            outdoor,
            year.vent_flow[h],
            airing,
            put_in,
        )


@compiled
def _write_loads(
    h: int,
    chains: Chains,
    nodes: Floats,
    node: Floats,
    radiant: Floats,
    air: Air,
    ducts: DuctNet,
    state: object,
    flows: Flows,
    outdoor: float,
    record: Record,
) -> None:
    """Write the parts of the rooms' load and the duct terms of an hour."""
    regained = surface_loads(chains, nodes, node, radiant, air.rooms, record.load[h])
    back = ducts.return_room
    total = air_load(air, node, outdoor, back, flows.inflow, flows.outflow)
    quiet = air_load(air, node, outdoor, back, flows.natural, flows.natural)
    record.load[h, 3] += quiet
    duct_terms(air, ducts, state, node, record.duct[h])
    if ducts.present == 1:
        record.duct[h, 4] = total - quiet
        if ducts.twin >= 0:
            record.duct[h, 5] = regained + floor_air_regained(air, ducts, node, flows.inflow)
