"""One hour: the air system at a control setting, and the control that holds the setpoint."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from costcompare.physics.compiled import compiled
from costcompare.simulation.airflows import (
    DuctState,
    Flows,
    add_airing,
    add_doors,
    add_ducts,
    add_leakage,
    add_links,
    duct_state,
    envelope_flows,
)
from costcompare.simulation.linear import cut_to_caps, settle, solve
from costcompare.simulation.network import Model
from costcompare.simulation.state import Bracket, Conditions, Demand, Work

Floats = NDArray[np.float64]

HELD = 2e-4
"""[K] how closely the ducted system holds its thermostat"""
FIRST_HELD = 0.02
"""[K] the same on the first pass, while the doorways still move"""
DOORWAY_PASSES = 4
DOORWAY_SETTLED = 0.05
"""[K] change of a room below which the doorway exchange has settled"""
DOORWAY_STEP = 0.7
"""Share of the way to the temperatures found: a flow that goes with the root of a
difference swings when all of the way is taken (judgement)"""
GROUP_PASSES = 3
"""Times that heads on one outdoor unit share out what it can give"""
TRIALS = 40
LEAST_SLOPE = 1e-3
"""[K] per unit of control: a cut-out machine moves nothing"""
CLOSE = 1e-9
"""Width of the bracket at which there is nothing left to try"""


@compiled
def evaluate(
    state: DuctState, conditions: Conditions, demand: Demand, model: Model, work: Work
) -> Flows:
    """Temperatures and emitter heat, into ``work``, with the ducted system in a state."""
    air, ducts = model.air, model.ducts
    matrix, right = work.matrix, work.right
    emitters = demand.room.shape[0]
    for i in range(air.nodes):
        for j in range(air.nodes):
            matrix[i, j] = conditions.matrix[i, j]
        right[i, 0] = conditions.right[i]
        for j in range(1, emitters + 2):
            right[i, j] = 0.0
    for j in range(emitters):
        right[demand.room[j], 1 + j] = 1.0
    right[demand.thermostat, 1 + emitters] = 1.0
    flows = envelope_flows(conditions.natural, conditions.extraction, state)
    add_doors(matrix, model.doors, air.heat_capacity, work.previous)
    add_leakage(matrix, right, air, ducts, state, flows, conditions.outdoor, conditions.vents)
    add_links(matrix, air, ducts, state, flows, conditions.extracted, work.surplus)
    add_ducts(matrix, right, air, ducts, state)
    add_airing(matrix, right, air, conditions.outdoor, conditions.airing)
    solve(matrix, right)
    for i in range(air.nodes):
        work.free[i] = right[i, 0]
    response = right[:, 1 : 1 + emitters]
    if emitters > 0:
        _settle_emitters(response, demand, work)
    for i in range(air.nodes):
        total = work.free[i]
        for j in range(emitters):
            total += response[i, j] * work.heat[j]
        work.temperature[i] = total
    return flows


@compiled
def _settle_emitters(response: Floats, demand: Demand, work: Work) -> None:
    """What every emitter gives; groups of heads are cut to what their outdoor unit can."""
    for j in range(demand.room.shape[0]):
        work.limits[j, 0] = demand.bounds[j, 0]
        work.limits[j, 1] = demand.bounds[j, 1]
    for _ in range(GROUP_PASSES):
        settle(
            work.free,
            response,
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
def state_at(control: float, demand: Demand, model: Model) -> DuctState:
    """The ducted system at a control, under the limits of the hour."""
    return duct_state(
        control,
        demand.sign,
        demand.least,
        demand.most,
        demand.strips,
        model.ducts,
        model.air.heat_capacity,
    )


@compiled
def _excess(
    control: float, conditions: Conditions, demand: Demand, model: Model, work: Work
) -> float:
    """How far the thermostat is past its setpoint [K], negative while it asks for more."""
    evaluate(state_at(control, demand, model), conditions, demand, model, work)
    reached: float = work.temperature[demand.thermostat]
    return demand.sign * (reached - demand.setpoint)


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
def hold(
    guess: float, conditions: Conditions, demand: Demand, model: Model, work: Work, held: float
) -> float:
    """The control of the ducted system that holds the thermostat within ``held`` [K], 0 to 2.

    Strips behind a gap stay off while the machine alone comes within the gap; below it they
    come on and run until the setpoint is reached, as a thermostat with two stages does.
    """
    gap = model.ducts.strip_gap
    if demand.strips <= 0.0 or gap <= 0.0 or demand.most <= 0.0:
        highest = 2.0 if demand.strips > 0.0 else 1.0
        if demand.most <= 0.0 and demand.strips <= 0.0:
            highest = 0.0
        return _held_below(highest, guess, conditions, demand, model, work, held)
    control = _held_below(1.0, min(guess, 1.0), conditions, demand, model, work, held)
    if control < 1.0:
        return control
    if demand.setpoint - work.temperature[demand.thermostat] <= gap:
        return control
    return _held_below(2.0, max(guess, 1.0), conditions, demand, model, work, held)


@compiled
def _held_below(
    highest: float,
    guess: float,
    conditions: Conditions,
    demand: Demand,
    model: Model,
    work: Work,
    held: float,
) -> float:
    """The control between 0 and ``highest`` that holds the thermostat within ``held`` [K].

    The thermostat's temperature rises with the control, so the answer is where the excess
    is nothing, or one of the two ends. Secant steps, starting from the last hour's control
    and slope, kept between the settings known to be too low and too high.
    """
    bracket = Bracket(0.0, 0.0, False, highest, 0.0, False)
    control = min(max(guess, 0.0), highest)
    for trial in range(TRIALS):
        excess = _excess(control, conditions, demand, model, work)
        at_end = (excess < 0.0 and control >= highest) or (excess > 0.0 and control <= 0.0)
        if abs(excess) < held or at_end:
            break
        bracket = _narrowed(bracket, control, excess, work)
        if bracket.high - bracket.low < CLOSE or trial == TRIALS - 1:
            break
        control = _next_trial(bracket, control, excess, work.slope[0])
    return control


@compiled
def settle_hour(
    guess: float, conditions: Conditions, demand: Demand, model: Model, work: Work
) -> float:
    """Controls and temperatures of the hour, the doorways at the temperatures found.

    Returns the control; temperatures and emitter heat stand in ``work``. The last pass
    takes the doorway exchange as it stands, so the answer is one consistent linear system.
    """
    control = guess if model.ducts.present == 1 else 0.0
    rooms, doorways = model.air.rooms, model.doors.first.shape[0]
    for number in range(DOORWAY_PASSES):
        if model.ducts.present == 1:
            held = FIRST_HELD if number == 0 and doorways > 0 else HELD
            control = hold(control, conditions, demand, model, work, held)
        else:
            evaluate(state_at(0.0, demand, model), conditions, demand, model, work)
        change = 0.0
        for i in range(rooms):
            change = max(change, abs(work.temperature[i] - work.previous[i]))
        settled = change < DOORWAY_SETTLED and (number > 0 or model.ducts.present == 0)
        if settled or doorways == 0 or number == DOORWAY_PASSES - 1:
            break
        for i in range(rooms):
            work.previous[i] += DOORWAY_STEP * (work.temperature[i] - work.previous[i])
    return control
