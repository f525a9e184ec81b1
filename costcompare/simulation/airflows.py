"""The air side of one hour: what leaks, what the ducts move, what doorways exchange.

Rows are written in inflow form: a node gains k V (T_source - T) for every inflow V. With
every node's mass balance closed this is the same as counting inflows and outflows apart.
"""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from costcompare.physics.air import half_fan_inflow
from costcompare.physics.compiled import compiled_inside
from costcompare.physics.doorways import STAIR_CONDUCTANCE_DOWN, STAIR_CONDUCTANCE_UP
from costcompare.physics.ducts import conduction_factor
from costcompare.physics.infiltration import together
from costcompare.physics.lanes import any_of, opposite, where
from costcompare.simulation.ahead import Ahead
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


class DuctLimits(NamedTuple):
    """What the ducted machine can do in an hour [W]."""

    least: float
    most: float
    strips: float
    sign: float
    """+1 heating, -1 cooling"""


class Flows(NamedTuple):
    """Air through the envelope of the rooms [m3/s]; what fans take out is not in it."""

    still: float
    """Inflow while the blower stands"""
    inflow: float
    """Mean of the hour, the blower's share of it on"""
    outflow: float


@compiled_inside
def duct_state(
    control: float,
    limits: DuctLimits,
    ducts: DuctNet,
    heat_capacity: float,
    ahead: Ahead,
) -> DuctState:
    """What the ducted system does at a control between 0 (off), 1 (most) and 2 (all strips)."""
    off, on = 0.0 * control, control > 0.0
    if ducts.present == 0 or not any_of(on):
        return _standing(off, ducts)
    least, most, strips, sign = limits
    main = min(control, 1.0) * most
    extra = max(control - 1.0, 0.0) * strips
    cut_out = most <= 0.0  # strips alone, cycling
    cycling = (main < least) & opposite(cut_out)
    modulating = (least < most) & opposite(cut_out)
    run = where(
        cut_out, max(control - 1.0, 0.0), where(cycling, main / where(cycling, least, 1.0), 1.0)
    )
    main_on = where(cycling, least, main)
    extra_on = where(cut_out, strips, extra)
    speed = (main - least) / where(modulating, most - least, 1.0)
    between = ducts.least_flow + (1.0 - ducts.least_flow) * speed
    above = where(extra <= 0.0, between, 1.0)
    share = where(modulating, where(cycling, ducts.least_flow, above), 1.0)
    flow = ducts.airflow * share
    blower_on, leak = off + ducts.blower_power, off + 1.0
    supply_factor, return_factor = off + ahead.supply_factor, off + ahead.return_factor
    slow = share < 1.0
    if any_of(slow):
        blower_on *= share**BLOWER_EXPONENT
        leak = share**LEAK_FLOW_EXPONENT
        k, resistance = heat_capacity, ducts.resistance
        slow_supply = conduction_factor(ducts.supply_area, k, flow, resistance)
        slow_return = conduction_factor(ducts.return_area, k, flow, resistance)
        supply_factor = where(slow, slow_supply, supply_factor)
        return_factor = where(slow, slow_return, return_factor)
    heat = where(on, sign * main_on + extra_on + blower_on, 0.0)
    run = where(on, run, 0.0)
    return DuctState(
        run,
        where(on, flow, ducts.airflow),
        heat,
        heat * ducts.cyclic_loss * (1.0 - run),
        where(on, sign * main, 0.0),
        where(on, extra, 0.0),
        run * blower_on,
        where(on, 1.0 - ducts.supply_leakage * leak, 1.0),
        where(on, 1.0 - ducts.return_leakage * leak, 1.0),
        where(on, supply_factor, 1.0),
        where(on, return_factor, 1.0),
    )


@compiled_inside
def _standing(off: float, ducts: DuctNet) -> DuctState:
    """The ducted system while it does nothing; ``off`` is 0, of each home."""
    kept, flow = off + 1.0, off + ducts.airflow
    return DuctState(off, flow, off, off, off, off, off, kept, kept, kept, kept)


@compiled_inside
def natural_flow(air: Air, difference: float, by_wind: float) -> float:
    """Air leaking in and out without any fan [m3/s]; ``by_wind`` by the wind alone."""
    by_stack = air.leak_coefficient * air.stack * abs(difference) ** air.leak_exponent
    return where(air.leak_coefficient > 0.0, together(by_stack, by_wind), air.constant_flow)


@compiled_inside
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


class Tangent(NamedTuple):
    """Heat through a doorway near a difference: ``conductance difference - excess`` [W]."""

    conductance: float
    excess: float


@compiled_inside
def tangent(doors: Doors, door_value: Floats, door: int, difference: float) -> Tangent:
    """How the heat through a doorway goes with the difference of its rooms, near one [K].

    The heat through an opening goes with the difference to the power of 1.5, so that its
    tangent has half as much again as its conductance.
    """
    if doors.stairs[door] == 1:
        conductance = where(difference > 0.0, STAIR_CONDUCTANCE_UP, STAIR_CONDUCTANCE_DOWN)
        return Tangent(conductance, 0.0 * difference)
    opening = door_value[door] * math.sqrt(abs(difference))
    return Tangent(doors.fixed[door] + 1.5 * opening, 0.5 * opening * difference)


@compiled_inside
def tangents(doors: Doors, door_value: Floats, temperature: Floats, found: Floats) -> None:
    """The tangents of all doorways at the temperatures of the rooms, into ``found``.

    A row holds conductance [W/K] and excess [W].
    """
    for d in range(doors.first.shape[0]):
        between = temperature[doors.first[d]] - temperature[doors.second[d]]
        found[d, 0], found[d, 1] = tangent(doors, door_value, d, between)


@compiled_inside
def add_doors(matrix: Floats, known: int, doors: Doors, taken: Floats) -> None:
    """Add the exchange through doorways by the tangents ``taken`` for it.

    What one room gives the other gets, wherever the answer lies.
    """
    for d in range(doors.first.shape[0]):
        i, j = doors.first[d], doors.second[d]
        conductance, excess = taken[d, 0], taken[d, 1]
        matrix[i, known] += excess
        matrix[j, known] -= excess
        matrix[i, i] += conductance
        matrix[j, j] += conductance
        matrix[i, j] -= conductance
        matrix[j, i] -= conductance


@compiled_inside
def add_airing(matrix: Floats, known: int, air: Air, outdoor: float, airing: float) -> None:
    """Add the air through open windows, where ``airing`` is 1.

    ``known`` is the column of known heat behind the matrix, here and in what follows.
    """
    if not any_of(airing > 0.0):
        return
    for i in range(air.rooms):
        opened = airing * air.heat_capacity * air.airing_flow[i]
        matrix[i, i] += opened
        matrix[i, known] += opened * outdoor


class Outside(NamedTuple):
    """Outdoor air of an hour."""

    temperature: float
    """[degC]"""
    vents: Floats
    """That passes through each space by itself [m3/s], and through the twin"""


@compiled_inside
def add_leakage(
    matrix: Floats,
    known: int,
    air: Air,
    ducts: DuctNet,
    state: DuctState,
    flows: Flows,
    outside: Outside,
    taken_from: Floats,
) -> None:
    """Add what leaks into rooms from outdoors and from below, and the vents of the spaces."""
    inflow = air.heat_capacity * flows.inflow
    for i in range(air.rooms):
        outdoors = inflow * air.share_outdoors[i]
        from_below = inflow * air.share_space[i]
        matrix[i, known] += outdoors * outside.temperature
        below = air.space_below[i]
        if below >= 0:
            matrix[i, below] -= from_below
            outdoors += from_below
        matrix[i, i] += outdoors
    for s in range(air.rooms, air.nodes):
        if s != ducts.twin:
            vented = space_inflow(
                s, ducts, state, flows, outside.vents[s - air.rooms], taken_from[s]
            )
            vented *= air.heat_capacity
            matrix[s, s] += vented
            matrix[s, known] += vented * outside.temperature


@compiled_inside
def space_extraction(
    space: int, ducts: DuctNet, state: DuctState, share: float, inflow: float, running: float
) -> float:
    """Net air that rooms and ducts take out of a space [m3/s].

    ``share`` is the part of the rooms' ``inflow`` that comes out of it.
    """
    taken = share * inflow
    if space == ducts.space:
        taken += running * state.flow * (state.kept_supply - state.kept_return)
    return taken


@compiled_inside
def space_inflow(
    space: int, ducts: DuctNet, state: DuctState, flows: Flows, vent: float, share: float
) -> float:
    """Outdoor air into a space [m3/s], mean of the hour; a twin's as if the blower stood."""
    off = half_fan_inflow(vent, share * flows.still)
    runs = state.run > 0.0
    if space == ducts.twin or not any_of(runs):
        return off
    running = (flows.inflow - (1.0 - state.run) * flows.still) / where(runs, state.run, 1.0)
    on = half_fan_inflow(vent, space_extraction(space, ducts, state, share, running, 1.0))
    return state.run * on + (1.0 - state.run) * off


@compiled_inside
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
        onward = air.heat_capacity * max(flow, 0.0)
        matrix[target, target] += onward
        matrix[target, source] -= onward
        backward = air.heat_capacity * max(-flow, 0.0)
        matrix[source, source] += backward
        matrix[source, target] -= backward


@compiled_inside
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


@compiled_inside
def add_ducts(matrix: Floats, known: int, air: Air, ducts: DuctNet, state: DuctState) -> None:
    """Add the supply air of every register, and what leaks and conducts into the space."""
    if ducts.present == 0 or not any_of(state.run > 0.0):
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
        matrix[i, known] += supply * constant
    if ducts.space < 0:
        matrix[back, known] += state.run * state.left
        return
    matrix[space, known] += state.run * state.left
    leak = state.run * k_flow * (1.0 - state.kept_supply)
    matrix[space, space] += leak * (1.0 - from_space)
    matrix[space, back] -= leak * from_room
    matrix[space, known] += leak * constant
    by_return = state.run * k_flow * state.kept_return * (1.0 - state.return_factor)
    matrix[space, space] += by_return
    matrix[space, back] -= by_return
    by_supply = state.run * k_flow * (1.0 - state.supply_factor)
    matrix[space, space] += by_supply * kept
    matrix[space, back] -= by_supply * kept
    matrix[space, known] += by_supply * rise
