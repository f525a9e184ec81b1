"""The year, hour by hour: the only loop over time, compiled as a whole."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from costcompare.physics.compiled import compiled
from costcompare.simulation.airflows import DuctState, Flows, envelope_flows, natural_flow
from costcompare.simulation.balance import (
    air_load,
    carried_by_air,
    duct_terms,
    floor_air_regained,
    stored_and_crossed,
    surface_loads,
)
from costcompare.simulation.hour import settle_hour, state_at
from costcompare.simulation.network import (
    Chains,
    Drive,
    DuctNet,
    Emitters,
    Model,
    Record,
    Year,
)
from costcompare.simulation.state import Conditions, Demand, Memory, Work

Floats = NDArray[np.float64]

AIRING_MARGIN = 2.0
"""[K] that it must be cooler outside before windows are opened (judgement)"""


@compiled
def surfaces_forward(chains: Chains, boundary: Floats, sun: Floats, m: Memory) -> None:
    """Temperatures of the chains with nothing at their unknown ends, into ``m.known``.

    Adds what the faces then give to the air and radiant nodes [W]. Written on flat arrays,
    without slices: this is half of the work of an hour.
    """
    known = m.known
    for chain in range(chains.start.shape[0]):
        first = chains.start[chain]
        last = first + chains.length[chain] - 1
        carried = 0.0
        for j in range(first, last + 1):
            heat = chains.storage[j] * m.nodes[j]
            if j == first:
                heat += _given(chains, chain, 0, boundary, sun)
            if j == last:
                heat += _given(chains, chain, 1, boundary, sun)
            carried = (heat + carried) * chains.inverse[j]
            known[j] = carried
            carried *= chains.conductance[j]
        for j in range(last - 1, first - 1, -1):
            known[j] += chains.upper[j] * known[j + 1]
        for end in range(2):
            face = known[first if end == 0 else last] * chains.returns[chain, end]
            node, room = chains.air[chain, end], chains.radiant[chain, end]
            if node >= 0:
                m.into_air[node] += chains.air_conductance[chain, end] * face
            if room >= 0:
                m.into_radiant[room] += chains.radiant_conductance[chain, end] * face


@compiled
def _given(chains: Chains, chain: int, end: int, boundary: Floats, sun: Floats) -> float:
    """Heat into an end that does not depend on the hour's answer: boundary and sun [W]."""
    heat = 0.0
    column, room = chains.boundary[chain, end], chains.radiant[chain, end]
    if column >= 0:
        heat += chains.boundary_conductance[chain, end] * boundary[column]
    if room >= 0:
        heat += chains.sun[chain, end] * sun[room]
    return heat


@compiled
def surfaces_finish(chains: Chains, m: Memory) -> None:
    """Temperatures of the chains once air and radiant nodes are known, into ``m.nodes``."""
    for chain in range(chains.start.shape[0]):
        at_first = _drive(chains, chain, 0, m.node, m.radiant)
        at_last = _drive(chains, chain, 1, m.node, m.radiant)
        first = chains.start[chain]
        for j in range(first, first + chains.length[chain]):
            by_ends = chains.from_first[j] * at_first + chains.from_last[j] * at_last
            m.nodes[j] = m.known[j] + by_ends


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
def _group_demand(h: int, emitters: Emitters, m: Memory) -> None:
    """What groups of heads may do this hour: one mode for all, chosen by the last temperatures."""
    for g in range(m.caps.shape[0]):
        cold, hot = 0.0, 0.0
        for j in range(emitters.room.shape[0]):
            if emitters.group[j] == g:
                air = m.node[emitters.room[j]]
                cold += max(emitters.setpoint[h, j] - air, 0.0)
                hot += max(air - emitters.cooling_setpoint[h, j], 0.0)
        cooling = hot > cold and emitters.group_cool[h, g] > 0.0
        m.caps[g] = emitters.group_cool[h, g] if cooling else emitters.group_heat[h, g]
        for j in range(emitters.room.shape[0]):
            if emitters.group[j] == g:
                m.bounds[j, 1 if cooling else 0] = 0.0
                if not cooling and m.running[g] > 0.0:
                    m.resting[j] = min(emitters.bleed[j], m.bounds[j, 1])


@compiled
def _demand(h: int, drive: Drive, ducts: DuctNet, warm: float, m: Memory) -> Demand:
    """Setpoints and limits of an hour; the ducted machine cools where it was too warm."""
    plant, emitters = drive.plant, drive.emitters
    for j in range(emitters.room.shape[0]):
        m.bounds[j, 0] = -emitters.cool_most[h, j]
        m.bounds[j, 1] = emitters.heat_most[h, j]
        m.resting[j] = 0.0
    _group_demand(h, emitters, m)
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
        m.bounds,
        m.resting,
        emitters.group,
        m.caps,
    )


@compiled
def _remember_groups(emitters: Emitters, m: Memory) -> None:
    """Heat that each group gave beyond what its resting heads let through [W]."""
    for g in range(m.running.shape[0]):
        m.running[g] = 0.0
        for j in range(emitters.room.shape[0]):
            if emitters.group[j] == g:
                m.running[g] += max(m.work.heat[j] - m.resting[j], 0.0)


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
            record.unmet[h, demand.thermostat] = max(record.unmet[h, demand.thermostat], missing)


@compiled
def _gather(h: int, model: Model, year: Year, m: Memory) -> None:
    """Everything known about the hour's heat, onto the air nodes, into ``m.into_air``."""
    air = model.air
    for i in range(air.nodes):
        m.into_air[i] = air.storage[i] * m.node[i]
    for i in range(air.rooms):
        m.into_air[i] += year.convective[h, i]
        m.into_radiant[i] = year.radiant[h, i]
    surfaces_forward(model.chains, year.boundary[h], year.sun[h], m)
    _add_product(model.reduction.to_air, m.into_radiant, -1.0, m.into_air)


@compiled
def _advance(model: Model, m: Memory) -> None:
    """Take over the temperatures that the hour has settled on."""
    reduction = model.reduction
    _copy(m.node, m.node_before)
    _copy(m.work.temperature, m.node)
    _copy(m.into_radiant, m.through_radiant)
    _add_product(reduction.radiant_air, m.node, -1.0, m.through_radiant)
    for i in range(model.air.rooms):
        m.radiant[i] = 0.0
    _add_product(reduction.radiant_inverse, m.through_radiant, 1.0, m.radiant)
    _copy(m.nodes, m.before)
    surfaces_finish(model.chains, m)


@compiled
def run_year(model: Model, drive: Drive, record: Record, m: Memory) -> None:
    """Step through the year and write every hour into ``record``."""
    air, year, control = model.air, drive.year, 0.0
    for position in range(year.order.shape[0]):
        h = year.order[position]
        outdoor = year.outdoor[h]
        _gather(h, model, year, m)
        warm = _mean(m.node, air.rooms)
        airing = 0.0
        if warm > year.airing_above[h] and outdoor < warm - AIRING_MARGIN:
            airing = 1.0
        conditions = Conditions(
            model.reduction.air,
            m.into_air,
            outdoor,
            year.vent_flow[h],
            natural_flow(air, warm - outdoor, year.wind[h]),
            year.extraction[h],
            _sum(year.extraction[h]),
            airing,
        )
        demand = _demand(h, drive, model.ducts, warm, m)
        _copy(m.node, m.work.previous)
        control = settle_hour(control, conditions, demand, model, m.work)
        _remember_groups(drive.emitters, m)
        _advance(model, m)
        if position >= year.recorded_from:
            state = state_at(control, demand, model)
            _write(h, model, state, conditions, year, m, record)
            _write_unmet(h, demand, model.ducts, control, m.work, record)


@compiled
def _write(
    h: int,
    model: Model,
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
    flows = envelope_flows(conditions.natural, conditions.extraction, state)
    _write_loads(model, state, flows, conditions, year.sun[h], m, record.load[h], record.duct[h])
    put_in = state.run * state.heat + _sum(m.work.heat)
    put_in += _sum(year.convective[h]) + _sum(year.radiant[h]) + _sum(year.sun[h])
    record.turnover[h] = abs(put_in)
    record.imbalance[h] = (
        put_in
        + stored_and_crossed(model.chains, m, year.boundary[h])
        + carried_by_air(model.air, model.ducts, state, flows, conditions, m)
    )


@compiled
def _write_loads(
    model: Model,
    state: DuctState,
    flows: Flows,
    conditions: Conditions,
    sun: Floats,
    m: Memory,
    load: Floats,
    duct: Floats,
) -> None:
    """Write the parts of the rooms' load and the duct terms of an hour."""
    air, ducts, outdoor = model.air, model.ducts, conditions.outdoor
    regained = surface_loads(model.chains, m, sun, load)
    back, taken = ducts.return_room, conditions.extracted
    total = air_load(air, m.node, outdoor, back, flows.inflow, flows.outflow, taken)
    leaking_out = flows.still - conditions.extraction
    quiet = air_load(air, m.node, outdoor, back, flows.still, leaking_out, taken)
    load[3] += quiet
    for i in range(air.rooms):
        load[2] += air.storage[i] * (m.node[i] - m.node_before[i])
        opened = conditions.airing * air.heat_capacity * air.airing_flow[i]
        load[3] += opened * (m.node[i] - outdoor)
    duct_terms(air, ducts, state, m.node, duct)
    if ducts.present == 1:
        duct[4] = total - quiet
        if ducts.twin >= 0:
            duct[5] = regained + floor_air_regained(air, ducts, m.node, flows.inflow)
