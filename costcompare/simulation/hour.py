"""One hour: the air system at a control setting, and the control that holds the setpoint."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from costcompare.physics.compiled import compiled
from costcompare.simulation.ahead import Ahead
from costcompare.simulation.airflows import (
    DuctState,
    add_airing,
    add_doors,
    add_ducts,
    add_leakage,
    add_links,
    duct_state,
    envelope_flows,
    tangents,
)
from costcompare.simulation.linear import cut_to_caps, eliminate, settle, substitute
from costcompare.simulation.network import Doors, Model
from costcompare.simulation.state import Bracket, Conditions, Demand, Work

Floats = NDArray[np.float64]

HELD = 5e-3
"""[K] how closely the ducted system holds its thermostat"""
NEARLY_HELD = 0.2
"""[K] from the setpoint at which it is time to look at the doorways"""
DOORWAY_PASSES = 6
DOORWAY_SETTLED = 1.0
"""[W] by which the heat through a doorway may be off its tangent"""
GROUP_PASSES = 3
"""Times that heads on one outdoor unit share out what it can give"""
TRIALS = 40
LEAST_SLOPE = 1e-3
"""[K] per unit of control: a cut-out machine moves nothing"""
CLOSE = 1e-9
"""Width of the bracket at which there is nothing left to try"""


@compiled
def open_doorways(conditions: Conditions, model: Model, work: Work) -> None:
    """The air system without what the ducted machine moves, into ``work.base``.

    The doorways pass what ``work.doorways`` takes for it. Behind the matrix stand the known
    heat and a watt of each emitter.
    """
    air, base, known = model.air, work.base, model.air.nodes
    _copy(work.still_flat, work.base_flat)
    for i in range(air.nodes):
        base[i, known] = conditions.right[i]
    add_doors(base, known, model.doors, work.doorways)
    add_airing(base, known, air, conditions.outside.temperature, conditions.airing)


@compiled
def _copy(source: Floats, target: Floats) -> None:
    for i in range(source.shape[0]):
        target[i] = source[i]


@compiled
def evaluate(
    state: DuctState, conditions: Conditions, demand: Demand, model: Model, work: Work
) -> None:
    """Temperatures and emitter heat, into ``work``, with the ducted system in a state."""
    air, ducts, ahead = model.air, model.ducts, conditions.ahead
    matrix, answer = work.matrix, work.answer
    known, emitters = air.nodes, demand.room.shape[0]
    _copy(work.base_flat, work.matrix_flat)
    flows = envelope_flows(conditions.natural, conditions.extraction, state)
    taken = ahead.taken_from
    add_leakage(matrix, known, air, ducts, state, flows, conditions.outside, taken)
    add_links(matrix, air, ducts, state, flows, conditions.extracted, work.surplus)
    add_ducts(matrix, known, air, ducts, state)
    eliminate(matrix, ahead.order, work.inverse)
    substitute(matrix, ahead.order, work.inverse, answer)
    if emitters > 0:
        _settle_emitters(demand, work)
    for i in range(air.nodes):
        total = answer[i, 0]
        for j in range(emitters):
            total += answer[i, 1 + j] * work.heat[j]
        work.temperature[i] = total


@compiled
def _settle_emitters(demand: Demand, work: Work) -> None:
    """What every emitter gives; groups of heads are cut to what their outdoor unit can."""
    for j in range(demand.room.shape[0]):
        work.limits[j, 0] = demand.bounds[j, 0]
        work.limits[j, 1] = demand.bounds[j, 1]
    for _ in range(GROUP_PASSES):
        settle(
            work.answer,
            demand.room,
            demand.lower,
            demand.upper,
            work.limits,
            demand.resting,
            work.heat,
        )
        if not cut_to_caps(work.heat, demand.group, demand.caps, work.limits):
            break


@compiled
def state_at(control: float, demand: Demand, model: Model, ahead: Ahead) -> DuctState:
    """The ducted system at a control, under the limits of the hour."""
    return duct_state(control, demand.limits, model.ducts, model.air.heat_capacity, ahead)


@compiled
def _narrowed(bracket: Bracket, control: float, excess: float, work: Work) -> Bracket:
    """The bracket with one more trial, the slope it shows written to ``work``."""
    if excess < 0.0:
        if bracket.has_low:
            rise = (excess - bracket.at_low) / (control - bracket.low)
            work.slope[0] = max(rise, LEAST_SLOPE)
        elif bracket.has_high:
            rise = (bracket.at_high - excess) / (bracket.high - control)
            work.slope[0] = max(rise, LEAST_SLOPE)
        return Bracket(control, excess, True, bracket.high, bracket.at_high, bracket.has_high)
    if bracket.has_high:
        rise = (bracket.at_high - excess) / (bracket.high - control)
        work.slope[0] = max(rise, LEAST_SLOPE)
    elif bracket.has_low:
        rise = (excess - bracket.at_low) / (control - bracket.low)
        work.slope[0] = max(rise, LEAST_SLOPE)
    return Bracket(bracket.low, bracket.at_low, bracket.has_low, control, excess, True)


@compiled
def _next_trial(bracket: Bracket, control: float, excess: float, slope: float) -> float:
    """A secant step, or the chord of the bracket where the step leaves it."""
    step = control - excess / slope
    if bracket.has_low and bracket.has_high:
        if bracket.low < step < bracket.high:
            return step
        width = bracket.high - bracket.low
        return bracket.low - bracket.at_low * width / (bracket.at_high - bracket.at_low)
    step = min(max(step, bracket.low), bracket.high)
    if not bracket.has_high and step <= bracket.low:
        return bracket.high
    return step


@compiled
def doorways_off(doors: Doors, door_value: Floats, work: Work) -> float:
    """Most that the heat through a doorway is off what was taken for it [W].

    The tangents at the temperatures now found are left in ``work.doorways_found``.
    """
    most, taken, now = 0.0, work.doorways, work.doorways_found
    tangents(doors, door_value, work.temperature, now)
    for d in range(doors.first.shape[0]):
        between = work.temperature[doors.first[d]] - work.temperature[doors.second[d]]
        off = (now[d, 0] - taken[d, 0]) * between - (now[d, 1] - taken[d, 1])
        most = max(most, abs(off))
    return most


@compiled
def settle_hour(
    guess: float, conditions: Conditions, demand: Demand, model: Model, work: Work
) -> float:
    """Controls and temperatures of the hour; the control of the ducted system holds its
    thermostat within ``HELD``, 0 (off) to 1 (all of the machine) to 2 (all of the strips).

    Strips behind a gap stay off while the machine alone comes within the gap; below it they
    come on and run until the setpoint is reached, as a thermostat with two stages does.
    Without ducts, or with nothing to give, the control stays at 0. Temperatures and emitter
    heat stand in ``work``: the answer of one consistent linear system.
    """
    gap, limits = model.ducts.strip_gap, demand.limits
    staged = limits.strips > 0.0 and gap > 0.0 and limits.most > 0.0
    highest = 1.0 if limits.most > 0.0 else 0.0
    if limits.strips > 0.0 and not staged:
        highest = 2.0
    if model.ducts.present == 0:
        highest = 0.0
    # With the machine cut out nothing changes below 1: there a search would not find its way.
    lowest = 1.0 if limits.most <= 0.0 and highest > 1.0 else 0.0
    control = min(guess, highest)
    tangents(model.doors, conditions.ahead.door_value, work.previous, work.doorways)
    open_doorways(conditions, model, work)
    for stage in range(2):
        control = _held_between(lowest, highest, control, conditions, demand, model, work)
        if not staged or stage == 1 or control < 1.0:
            break
        if demand.setpoint - work.temperature[model.ducts.thermostat] <= gap:
            break
        highest, control = 2.0, max(guess, 1.0)
    return control


@compiled
def missed_by(demand: Demand, model: Model, work: Work) -> float:
    """How far a control that holds is from the exact one, as the last slope has it; else 0.

    Guesses that start from the exact one keep hours that are alike from being all off alike.
    """
    reached: float = work.temperature[model.ducts.thermostat]
    excess = demand.limits.sign * (reached - demand.setpoint)
    return excess / work.slope[0] if abs(excess) < HELD else 0.0


@compiled
def _held_between(
    lowest: float,
    highest: float,
    guess: float,
    conditions: Conditions,
    demand: Demand,
    model: Model,
    work: Work,
) -> float:
    """The control between ``lowest`` and ``highest`` that holds the thermostat.

    The thermostat's temperature rises with the control, so the answer is where the excess
    is nothing, or one of the two ends. Secant steps, starting from the last hour's control
    and slope, kept between the settings known to be too low and too high. On the way the
    doorways are opened anew, where what they pass is off what was taken for it.
    """
    bracket = Bracket(lowest, 0.0, False, highest, 0.0, False)
    control = min(max(guess, lowest), highest)
    passes = 0
    for trial in range(TRIALS):
        state = state_at(control, demand, model, conditions.ahead)
        evaluate(state, conditions, demand, model, work)
        reached: float = work.temperature[model.ducts.thermostat]
        excess = demand.limits.sign * (reached - demand.setpoint)
        at_end = (excess < 0.0 and control >= highest) or (excess > 0.0 and control <= lowest)
        if (abs(excess) < NEARLY_HELD or at_end) and passes < DOORWAY_PASSES:
            off = doorways_off(model.doors, conditions.ahead.door_value, work)
            if off >= DOORWAY_SETTLED:
                passes += 1
                for d in range(work.doorways.shape[0]):
                    work.doorways[d, 0] = work.doorways_found[d, 0]
                    work.doorways[d, 1] = work.doorways_found[d, 1]
                open_doorways(conditions, model, work)
                bracket = Bracket(lowest, 0.0, False, highest, 0.0, False)
                control = min(max(control - excess / work.slope[0], lowest), highest)
                continue
        if abs(excess) < HELD or at_end:
            break
        bracket = _narrowed(bracket, control, excess, work)
        if bracket.high - bracket.low < CLOSE or trial == TRIALS - 1:
            break
        control = _next_trial(bracket, control, excess, work.slope[0])
    return control
