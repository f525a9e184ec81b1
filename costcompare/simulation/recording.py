"""Writing an hour down: temperatures, heat, the parts of the load, the closing sum."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from costcompare.physics.compiled import compiled
from costcompare.simulation.airflows import DuctState, Flows, envelope_flows
from costcompare.simulation.balance import (
    air_load,
    carried_by_air,
    duct_terms,
    floor_air_regained,
)
from costcompare.simulation.linear import warmed_by_a_watt
from costcompare.simulation.network import DuctNet, Model, Record
from costcompare.simulation.state import Conditions, Demand, Memory, Work
from costcompare.simulation.surface_step import faces_reached, stored_and_crossed, surface_loads

Floats = NDArray[np.float64]


@compiled
def write_unmet(
    h: int,
    demand: Demand,
    ducts: DuctNet,
    control: float,
    conditions: Conditions,
    work: Work,
    record: Record,
) -> None:
    """Heat that would have been needed more, by the response of each short room [W]."""
    emitters = demand.room.shape[0]
    for j in range(emitters):
        room = demand.room[j]
        short = demand.lower[j] - work.temperature[room]
        if short > 0.01 and work.heat[j] >= demand.bounds[j, 1] - 1e-3:
            missing = short / work.answer[room, 1 + j]
            record.unmet[h, room] = max(record.unmet[h, room], missing)
    if ducts.present == 1 and demand.limits.sign > 0.0 and control > 0.0:
        short = demand.setpoint - work.temperature[ducts.thermostat]
        if short > 0.01:
            order, place = conditions.ahead.order, ducts.thermostat
            warmed_by_a_watt(work.matrix, order, work.inverse, place, work.rise)
            missing = short / work.rise[place]
            record.unmet[h, ducts.thermostat] = max(record.unmet[h, ducts.thermostat], missing)


@compiled
def write_hour(
    h: int,
    model: Model,
    state: DuctState,
    m: Memory,
    record: Record,
) -> None:
    """Write the hour's temperatures and heat."""
    for i in range(m.node.shape[0]):
        record.air[h, i] = m.node[i]
    for j in range(m.work.heat.shape[0]):
        record.emitted[h, j] = m.work.heat[j]
    record.main[h] = state.main
    record.strips[h] = state.strips
    record.blower[h] = state.blower
    record.run[h] = state.run
    duct_terms(model.air, model.ducts, state, m.node, record.duct[h])


@compiled
def write_sums(
    h: int,
    model: Model,
    state: DuctState,
    conditions: Conditions,
    gains: float,
    m: Memory,
    record: Record,
) -> None:
    """Write the hour's closing sum, and where the record has rows for them the rooms' loads.

    ``gains`` [W] are those of people, a fire and the sun.
    """
    put_in = state.run * state.heat + gains
    for j in range(m.work.heat.shape[0]):
        put_in += m.work.heat[j]
    flows = envelope_flows(conditions.natural, conditions.extraction, state)
    faces_reached(model.chains, m)
    if record.load.shape[0] > 0:
        _write_loads(model, flows, conditions, m, record.load[h], record.duct[h])
    record.turnover[h] = abs(put_in)
    record.imbalance[h] = (
        put_in
        + stored_and_crossed(model.chains, m)
        + carried_by_air(model.air, model.ducts, state, flows, conditions, m)
    )


@compiled
def _write_loads(
    model: Model, flows: Flows, conditions: Conditions, m: Memory, load: Floats, duct: Floats
) -> None:
    """Write the parts of the rooms' load and those duct terms that need them."""
    air, ducts, outdoor = model.air, model.ducts, conditions.outside.temperature
    regained = surface_loads(model.chains, m, load)
    back, taken = ducts.return_room, conditions.extracted
    total = air_load(air, m.node, outdoor, back, flows.inflow, flows.outflow, taken)
    leaking_out = flows.still - conditions.extraction
    quiet = air_load(air, m.node, outdoor, back, flows.still, leaking_out, taken)
    load[3] += quiet
    for i in range(air.rooms):
        load[2] += air.storage[i] * (m.node[i] - m.node_before[i])
        opened = conditions.airing * air.heat_capacity * air.airing_flow[i]
        load[3] += opened * (m.node[i] - outdoor)
    if ducts.present == 1:
        duct[4] = total - quiet
        if ducts.twin >= 0:
            taken_below = conditions.ahead.taken_from[ducts.space] * flows.inflow
            duct[5] = regained + floor_air_regained(air, ducts, m.node, taken_below)
