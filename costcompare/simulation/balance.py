"""Where the heat of an hour went: the parts of the load, the ducts, and the closing sum."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from costcompare.physics.compiled import compiled_inside
from costcompare.physics.ducts import air_path
from costcompare.physics.lanes import any_of
from costcompare.simulation.airflows import DuctState, Flows, space_extraction, space_inflow
from costcompare.simulation.network import Air, DuctNet
from costcompare.simulation.state import Conditions, Memory

Floats = NDArray[np.float64]


@compiled_inside
def air_load(
    air: Air,
    temperature: Floats,
    outdoor: float,
    back: int,
    inflow: float,
    outflow: float,
    extracted: Floats,
) -> float:
    """Heat that air in and out costs the rooms [W], counted from the return room.

    ``outflow`` [m3/s] leaks out, ``extracted`` [m3/s] leaves each room by fans and a fire.
    """
    reference = temperature[back]
    total = 0.0
    for i in range(air.rooms):
        leaving = air.share_out[i] * outflow + extracted[i]
        total += leaving * (temperature[i] - reference)
        total -= air.share_outdoors[i] * inflow * (outdoor - reference)
        below = air.space_below[i]
        if below >= 0:
            total -= air.share_space[i] * inflow * (temperature[below] - reference)
    return air.heat_capacity * total


@compiled_inside
def floor_air_regained(air: Air, ducts: DuctNet, temperature: Floats, taken: float) -> float:
    """Heat spared because air from below comes from a space that the ducts warm [W].

    ``taken`` [m3/s] comes from there.
    """
    if ducts.twin < 0:
        return 0.0
    warmer: float = temperature[ducts.space] - temperature[ducts.twin]
    return air.heat_capacity * taken * warmer


@compiled_inside
def duct_terms(
    air: Air, ducts: DuctNet, state: DuctState, temperature: Floats, terms: Floats
) -> None:
    """Delivered, conduction, supply leak and return leak [W] into ``terms``, zeros behind them."""
    for k in range(terms.shape[0]):
        terms[k] = 0.0
    if ducts.present == 0 or not any_of(state.run > 0.0):
        return
    back = temperature[ducts.return_room]
    around = temperature[ducts.space] if ducts.space >= 0 else back
    k_flow = state.run * air.heat_capacity * state.flow
    rise = (state.heat - state.left) / (air.heat_capacity * state.flow)
    path = air_path(back, around, rise, state.kept_return, state.return_factor, state.supply_factor)
    terms[0] = k_flow * state.kept_supply * (path.register - back)
    by_return = state.kept_return * (1.0 - state.return_factor) * (back - around)
    terms[1] = k_flow * (by_return + path.supply_plenum - path.register)
    if ducts.space >= 0:
        terms[1] += state.run * state.left
    else:
        terms[0] += state.run * state.left
    terms[2] = k_flow * (1.0 - state.kept_supply) * (path.register - back)
    terms[3] = k_flow * (1.0 - state.kept_return) * (back - around)


@compiled_inside
def carried_by_air(
    air: Air, ducts: DuctNet, state: DuctState, flows: Flows, conditions: Conditions, m: Memory
) -> float:
    """Heat that outdoor air brought in, less what left with air and what air stored [W].

    Flows are counted in and out apart, so an open mass balance shows here.
    """
    k, outdoor, node = air.heat_capacity, conditions.outside.temperature, m.node
    vents, shares = conditions.outside.vents, conditions.ahead.taken_from
    total = 0.0
    for i in range(air.rooms):
        total -= air.storage[i] * (node[i] - m.node_before[i])
        total += k * air.share_outdoors[i] * flows.inflow * outdoor
        total -= k * (air.share_out[i] * flows.outflow + conditions.extracted[i]) * node[i]
        total += conditions.airing * k * air.airing_flow[i] * (outdoor - node[i])
    for s in range(air.rooms, air.nodes):
        if s == ducts.twin:
            continue
        total -= air.storage[s] * (node[s] - m.node_before[s])
        inflow = space_inflow(s, ducts, state, flows, vents[s - air.rooms], shares[s])
        taken = space_extraction(s, ducts, state, shares[s], flows.inflow, state.run)
        total += k * (inflow * outdoor - (inflow - taken) * node[s])
    return total
