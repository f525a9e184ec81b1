"""Writing an hour down: temperatures, heat, the parts of the load, the closing sum."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from costcompare.physics.compiled import compiled_inside
from costcompare.physics.lanes import any_of, where
from costcompare.simulation.airflows import DuctState, Flows, envelope_flows
from costcompare.simulation.balance import (
    air_load,
    carried_by_air,
    floor_air_regained,
)
from costcompare.simulation.lane_arrays import put, put_row
from costcompare.simulation.linear import warmed_by_a_watt
from costcompare.simulation.network import DuctNet, Model, Record
from costcompare.simulation.state import Conditions, Demand, Memory
from costcompare.simulation.surface_step import faces_reached, stored_and_crossed, surface_loads

Floats = NDArray[np.float64]

NOT_SHORT = 0.01
"""[K] below its setpoint at which a room is not yet short of heat"""


@compiled_inside
def find_unmet(
    demand: Demand, ducts: DuctNet, control: float, conditions: Conditions, m: Memory
) -> None:
    """Heat that would have been needed more, by the response of each short room, into
    ``m.unmet`` [W]."""
    work, unmet = m.work, m.unmet
    for room in range(unmet.shape[0]):
        unmet[room] = 0.0
    for j in range(demand.room.shape[0]):
        room = demand.room[j]
        short = demand.lower[j] - work.temperature[room]
        missed = (short > NOT_SHORT) & (work.heat[j] >= demand.bounds[j, 1] - 1e-3)
        missing = short / work.answer[room, 1 + j]
        unmet[room] = where(missed, max(unmet[room], missing), unmet[room])
    if ducts.present == 0:
        return
    place = ducts.thermostat
    short = demand.setpoint - work.temperature[place]
    missed = (short > NOT_SHORT) & (demand.limits.sign > 0.0) & (control > 0.0)
    if any_of(missed):
        warmed_by_a_watt(work.matrix, conditions.ahead.order, work.inverse, place, work.rise)
        missing = short / work.rise[place]
        unmet[place] = where(missed, max(unmet[place], missing), unmet[place])


@compiled_inside
def write_hour(h: int, state: DuctState, m: Memory, record: Record) -> None:
    """Write the hour's temperatures and heat."""
    put_row(record.air, h, m.node)
    put_row(record.emitted, h, m.work.heat)
    put(record.main, h, state.main)
    put(record.strips, h, state.strips)
    put(record.blower, h, state.blower)
    put(record.run, h, state.run)


@compiled_inside
def write_sums(
    h: int,
    model: Model,
    state: DuctState,
    conditions: Conditions,
    gains: float,
    m: Memory,
    record: Record,
    explained: bool,
) -> None:
    """Write the hour's closing sum, and where it is to be ``explained`` the rooms' loads.

    ``gains`` [W] are those of people, a fire and the sun.
    """
    put_in = state.run * state.heat + gains
    for j in range(m.work.heat.shape[0]):
        put_in += m.work.heat[j]
    flows = envelope_flows(conditions.natural, conditions.extraction, state)
    faces_reached(model.chains, m)
    if explained:
        _find_loads(model, flows, conditions, m)
        put_row(record.load, h, m.load)
    put(record.turnover, h, abs(put_in))
    left = (
        put_in
        + stored_and_crossed(model.chains, m)
        + carried_by_air(model.air, model.ducts, state, flows, conditions, m)
    )
    put(record.imbalance, h, left)


@compiled_inside
def _find_loads(model: Model, flows: Flows, conditions: Conditions, m: Memory) -> None:
    """The parts of the rooms' load and those duct terms that need them, into ``m``."""
    air, ducts, outdoor = model.air, model.ducts, conditions.outside.temperature
    load, duct = m.load, m.duct
    for part in range(load.shape[0]):
        load[part] = 0.0
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
