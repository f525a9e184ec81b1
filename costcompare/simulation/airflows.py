"""The air side of one hour: what leaks, what the ducts move, what doorways exchange.

Rows are written in inflow form: a node gains k V (T_source - T) for every inflow V. With
every node's mass balance closed this is the same as counting inflows and outflows apart.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from costcompare.physics.air import half_fan_inflow
from costcompare.physics.compiled import compiled
from costcompare.physics.doorways import (
    STAIR_CONDUCTANCE_DOWN,
    STAIR_CONDUCTANCE_UP,
    exchange_flow,
)
from costcompare.physics.ducts import conduction_factor
from costcompare.physics.infiltration import enhanced
from costcompare.simulation.network import Air, Doors, DuctNet

Floats = NDArray[np.float64]

LEAK_FLOW_EXPONENT = 0.2
"""Leak share over flow share: a hole leaks with flow^1.2 (pressure with its square,
leak with pressure^0.6), so the share changes with flow^0.2 (derived)"""
BLOWER_EXPONENT = 2.5
"""Blower power over flow: between the cube of the fan law and a constant pressure (judgement)"""


class DuctState(NamedTuple):
    """The ducted system at one setting of its control."""

    run: float
    """Share of the hour it runs"""
    flow: float
    """[m3/s] while running"""
    heat: float
    """Into the air while running, blower included [W]"""
    left: float
    """Of it, left in the ducts as they cool down, while running [W]"""
    main: float
    """Mean of the hour, without strips and blower [W]"""
    strips: float
    blower: float
    kept_supply: float
    kept_return: float
    supply_factor: float
    return_factor: float


class Flows(NamedTuple):
    """Air through the envelope of the rooms [m3/s]; what fans take out is not in it."""

    still: float
    """Inflow while the blower stands"""
    inflow: float
    """Mean of the hour, the blower's share of it on"""
    outflow: float


@compiled
def duct_state(
    control: float,
    sign: float,
    least: float,
    most: float,
    strips: float,
    ducts: DuctNet,
    heat_capacity: float,
) -> DuctState:
    """What the ducted system does at a control between 0 (off), 1 (most) and 2 (all strips)."""
    if control <= 0.0 or ducts.present == 0:
        return DuctState(0.0, ducts.airflow, 0.0, 0.0, 0.0, 0.0, 0.0, 1.0, 1.0, 1.0, 1.0)
    main = min(control, 1.0) * most
    extra = max(control - 1.0, 0.0) * strips
    run = 1.0
    share = 1.0
    main_on = main
    extra_on = extra
    if most <= 0.0:  # cut out: strips alone, cycling
        run = max(control - 1.0, 0.0)
        extra_on = strips
    elif main < least:
        run = main / least
        main_on = least
        if least < most:
            share = ducts.least_flow
    elif least < most and extra <= 0.0:
        share = ducts.least_flow + (1.0 - ducts.least_flow) * (main - least) / (most - least)
    flow = ducts.airflow * share
    blower_on = ducts.blower_power * share**BLOWER_EXPONENT
    leak = share**LEAK_FLOW_EXPONENT
    heat = sign * main_on + extra_on + blower_on
    return DuctState(
        run,
        flow,
        heat,
        heat * ducts.cyclic_loss * (1.0 - run),
        sign * main,
        extra,
        run * blower_on,
        1.0 - ducts.supply_leakage * leak,
        1.0 - ducts.return_leakage * leak,
        conduction_factor(ducts.supply_area, heat_capacity, flow, ducts.resistance),
        conduction_factor(ducts.return_area, heat_capacity, flow, ducts.resistance),
    )


@compiled
def natural_flow(air: Air, difference: float, wind: float) -> float:
    """Air leaking in and out without any fan [m3/s]."""
    if air.leak_coefficient <= 0.0:
        return air.constant_flow
    return enhanced(
        air.leak_coefficient,
        air.leak_exponent,
        air.stack,
        air.wind,
        difference,
        wind * air.wind_factor,
    )


@compiled
def envelope_flows(natural: float, extraction: float, state: DuctState) -> Flows:
    """In- and outflow of the rooms, mean of the hour: the blower's share of it with the blower.

    ``extraction`` [m3/s] leaves by fans and a fire; what the blower's unbalanced leaks take
    out adds to it, and the half-fan rule holds for the sum.
    """
    still = half_fan_inflow(natural, extraction)
    by_blower = state.flow * (state.kept_return - state.kept_supply)
    running = half_fan_inflow(natural, extraction + by_blower)
    inflow = state.run * running + (1.0 - state.run) * still
    outflow = inflow - extraction - state.run * by_blower
    return Flows(still, inflow, outflow)


@compiled
def add_doors(matrix: Floats, doors: Doors, heat_capacity: float, temperature: Floats) -> None:
    """Add the exchange through doorways at the temperatures last found."""
    for d in range(doors.first.shape[0]):
        i, j = doors.first[d], doors.second[d]
        difference = temperature[i] - temperature[j]
        if doors.stairs[d] == 1:
            conductance = STAIR_CONDUCTANCE_UP if difference > 0.0 else STAIR_CONDUCTANCE_DOWN
        else:
            conductance = doors.fixed[d]
            if doors.width[d] > 0.0:
                flow = exchange_flow(doors.width[d], doors.height[d], difference)
                conductance += heat_capacity * flow
        matrix[i, i] += conductance
        matrix[j, j] += conductance
        matrix[i, j] -= conductance
        matrix[j, i] -= conductance


@compiled
def add_airing(matrix: Floats, right: Floats, air: Air, outdoor: float, airing: float) -> None:
    """Add the air through open windows, where ``airing`` is 1."""
    if airing <= 0.0:
        return
    for i in range(air.rooms):
        opened = air.heat_capacity * air.airing_flow[i]
        matrix[i, i] += opened
        right[i, 0] += opened * outdoor


@compiled
def add_leakage(
    matrix: Floats,
    right: Floats,
    air: Air,
    ducts: DuctNet,
    state: DuctState,
    flows: Flows,
    outdoor: float,
    vents: Floats,
) -> None:
    """Add what leaks into rooms from outdoors and from below, and the vents of the spaces."""
    k = air.heat_capacity
    for i in range(air.rooms):
        outdoors = k * air.share_outdoors[i] * flows.inflow
        matrix[i, i] += outdoors
        right[i, 0] += outdoors * outdoor
        below = air.space_below[i]
        if below >= 0:
            from_below = k * air.share_space[i] * flows.inflow
            matrix[i, i] += from_below
            matrix[i, below] -= from_below
    for s in range(air.rooms, air.nodes):
        inflow = k * space_inflow(s, air, ducts, state, flows, vents[s])
        matrix[s, s] += inflow
        right[s, 0] += inflow * outdoor


@compiled
def space_extraction(
    space: int, air: Air, ducts: DuctNet, state: DuctState, inflow: float, running: float
) -> float:
    """Net air that rooms and ducts take out of a space [m3/s]."""
    real = ducts.space if space == ducts.twin else space
    taken = 0.0
    for i in range(air.rooms):
        if air.space_below[i] == real:
            taken += air.share_space[i] * inflow
    if space == ducts.space:
        taken += running * state.flow * (state.kept_supply - state.kept_return)
    return taken


@compiled
def space_inflow(
    space: int, air: Air, ducts: DuctNet, state: DuctState, flows: Flows, vent: float
) -> float:
    """Outdoor air into a space [m3/s], mean of the hour."""
    off = half_fan_inflow(vent, space_extraction(space, air, ducts, state, flows.still, 0.0))
    if state.run <= 0.0 or space == ducts.twin:
        return off
    running = (flows.inflow - (1.0 - state.run) * flows.still) / state.run
    on = half_fan_inflow(vent, space_extraction(space, air, ducts, state, running, 1.0))
    return state.run * on + (1.0 - state.run) * off


@compiled
def add_links(
    matrix: Floats,
    air: Air,
    ducts: DuctNet,
    state: DuctState,
    flows: Flows,
    extracted: Floats,
    surplus: Floats,
) -> None:
    """Add the air that moves from room to room towards the return grille."""
    room_surplus(air, ducts, state, flows, extracted, surplus)
    for e in range(air.link_from.shape[0]):
        source, target = air.link_from[e], air.link_to[e]
        flow = surplus[source]
        surplus[target] += flow
        if flow < 0.0:
            source, target = target, source
        conductance = air.heat_capacity * abs(flow)
        matrix[target, target] += conductance
        matrix[target, source] -= conductance


@compiled
def room_surplus(
    air: Air, ducts: DuctNet, state: DuctState, flows: Flows, extracted: Floats, surplus: Floats
) -> None:
    """Air that each room has to pass on [m3/s], into ``surplus``: what enters less what leaves."""
    supplied = state.run * state.kept_supply * state.flow
    for i in range(air.rooms):
        entering = air.share_outdoors[i] + air.share_space[i]
        surplus[i] = entering * flows.inflow - air.share_out[i] * flows.outflow - extracted[i]
        if ducts.present == 1:
            surplus[i] += ducts.registers[i] * supplied


@compiled
def add_ducts(matrix: Floats, right: Floats, air: Air, ducts: DuctNet, state: DuctState) -> None:
    """Add the supply air of every register, and what leaks and conducts into the space."""
    if ducts.present == 0 or state.run <= 0.0:
        return
    k_flow = air.heat_capacity * state.flow
    rise = (state.heat - state.left) / k_flow
    back = ducts.return_room
    space = ducts.space if ducts.space >= 0 else back
    kept = state.kept_return * state.return_factor
    from_room = state.supply_factor * kept
    from_space = state.supply_factor * (1.0 - kept) + 1.0 - state.supply_factor
    constant = state.supply_factor * rise
    for i in range(air.rooms):
        supply = state.run * k_flow * state.kept_supply * ducts.registers[i]
        matrix[i, i] += supply
        matrix[i, back] -= supply * from_room
        matrix[i, space] -= supply * from_space
        right[i, 0] += supply * constant
    if ducts.space < 0:
        right[back, 0] += state.run * state.left
        return
    right[space, 0] += state.run * state.left
    leak = state.run * k_flow * (1.0 - state.kept_supply)
    matrix[space, space] += leak * (1.0 - from_space)
    matrix[space, back] -= leak * from_room
    right[space, 0] += leak * constant
    by_return = state.run * k_flow * state.kept_return * (1.0 - state.return_factor)
    matrix[space, space] += by_return
    matrix[space, back] -= by_return
    by_supply = state.run * k_flow * (1.0 - state.supply_factor)
    matrix[space, space] += by_supply * kept
    matrix[space, back] -= by_supply * kept
    right[space, 0] += by_supply * rise
