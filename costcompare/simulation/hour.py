"""One hour: the air system at a control setting, and the control that holds the setpoint."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from costcompare.physics.compiled import compiled_inside
from costcompare.physics.lanes import any_of, opposite, where
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


@compiled_inside
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


@compiled_inside
def _copy(source: Floats, target: Floats) -> None:
    for i in range(source.shape[0]):
        target[i] = source[i]


@compiled_inside
def evaluate(
    searching: bool,
    state: DuctState,
    conditions: Conditions,
    demand: Demand,
    model: Model,
    work: Work,
) -> None:
    """Temperatures and emitter heat, into ``work``, with the ducted system in a state.

    Emitters that are no longer ``searching`` stay at what they give.
    """
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
        _settle_emitters(searching, demand, work)
    for i in range(air.nodes):
        total = answer[i, 0]
        for j in range(emitters):
            total += answer[i, 1 + j] * work.heat[j]
        work.temperature[i] = total


@compiled_inside
def _settle_emitters(searching: bool, demand: Demand, work: Work) -> None:
    """What every emitter gives; groups of heads are cut to what their outdoor unit can."""
    for j in range(demand.room.shape[0]):
        work.limits[j, 0] = demand.bounds[j, 0]
        work.limits[j, 1] = demand.bounds[j, 1]
    for _ in range(GROUP_PASSES):
        settle(
            searching,
            work.answer,
            demand.room,
            demand.lower,
            demand.upper,
            work.limits,
            demand.resting,
            work.heat,
        )
        cut = cut_to_caps(work.heat, demand.group, demand.caps, work.limits, searching)
        searching = searching & cut
        if not any_of(searching):
            break


@compiled_inside
def state_at(control: float, demand: Demand, model: Model, ahead: Ahead) -> DuctState:
    """The ducted system at a control, under the limits of the hour."""
    return duct_state(control, demand.limits, model.ducts, model.air.heat_capacity, ahead)


@compiled_inside
def _narrowed(trying: bool, bracket: Bracket, control: float, excess: float, work: Work) -> Bracket:
    """The bracket with one more trial, the slope it shows written to ``work``."""
    too_low = excess < 0.0
    by_low = trying & bracket.has_low & (too_low | opposite(bracket.has_high))
    by_high = trying & bracket.has_high & opposite(by_low)
    rise = where(by_low, excess - bracket.at_low, bracket.at_high - excess)
    width = where(by_low, control - bracket.low, bracket.high - control)
    shown = by_low | by_high
    slope = rise / where(shown, width, 1.0)
    work.slope[0] = where(shown, max(slope, LEAST_SLOPE), work.slope[0])
    low, high = trying & too_low, trying & opposite(too_low)
    return Bracket(
        where(low, control, bracket.low),
        where(low, excess, bracket.at_low),
        bracket.has_low | low,
        where(high, control, bracket.high),
        where(high, excess, bracket.at_high),
        bracket.has_high | high,
    )


@compiled_inside
def _next_trial(bracket: Bracket, control: float, excess: float, slope: float) -> float:
    """A secant step, or the chord of the bracket where the step leaves it."""
    step = control - excess / slope
    both = bracket.has_low & bracket.has_high
    inside = (bracket.low < step) & (step < bracket.high)
    width = bracket.high - bracket.low
    rise = where(both, bracket.at_high - bracket.at_low, 1.0)
    chord = bracket.low - bracket.at_low * width / rise
    kept = min(max(step, bracket.low), bracket.high)
    stuck = opposite(bracket.has_high) & (kept <= bracket.low)
    return where(both, where(inside, step, chord), where(stuck, bracket.high, kept))


@compiled_inside
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


@compiled_inside
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
    works = limits.most > 0.0
    staged = (limits.strips > 0.0) & (gap > 0.0) & works
    highest = where(works, 1.0, 0.0 * guess)
    highest = where((limits.strips > 0.0) & opposite(staged), 2.0, highest)
    if model.ducts.present == 0:
        highest = 0.0 * highest
    # With the machine cut out nothing changes below 1: there a search would not find its way.
    lowest = where((highest > 1.0) & opposite(works), 1.0, 0.0 * guess)
    control = min(guess, highest)
    tangents(model.doors, conditions.ahead.door_value, work.previous, work.doorways)
    open_doorways(conditions, model, work)
    control = _held_between(
        lowest, highest, control, highest >= 0.0, conditions, demand, model, work
    )
    short = demand.setpoint - work.temperature[model.ducts.thermostat]
    strips_on = staged & (control >= 1.0) & (short > gap)
    if any_of(strips_on):
        highest = where(strips_on, 2.0, highest)
        control = where(strips_on, max(guess, 1.0), control)
        control = _held_between(
            lowest, highest, control, strips_on, conditions, demand, model, work
        )
    return control


@compiled_inside
def missed_by(demand: Demand, model: Model, work: Work) -> float:
    """How far a control that holds is from the exact one, as the last slope has it; else 0.

    Guesses that start from the exact one keep hours that are alike from being all off alike.
    """
    reached: float = work.temperature[model.ducts.thermostat]
    excess = demand.limits.sign * (reached - demand.setpoint)
    missed: float = where(abs(excess) < HELD, excess / work.slope[0], 0.0)
    return missed


@compiled_inside
def _held_between(
    lowest: float,
    highest: float,
    guess: float,
    searching: bool,
    conditions: Conditions,
    demand: Demand,
    model: Model,
    work: Work,
) -> float:
    """The control between ``lowest`` and ``highest`` that holds the thermostat.

    The thermostat's temperature rises with the control, so the answer is where the excess
    is nothing, or one of the two ends. Secant steps, starting from the last hour's control
    and slope, kept between the settings known to be too low and too high. On the way the
    doorways are opened anew, where what they pass is off what was taken for it. A home that
    is not ``searching`` stays as it is.
    """
    nothing, never = 0.0 * lowest, lowest < 0.0
    fresh = Bracket(lowest, nothing, never, highest, nothing, never)
    bracket, passes = fresh, nothing
    control = where(searching, min(max(guess, lowest), highest), guess)
    for trial in range(TRIALS):
        state = state_at(control, demand, model, conditions.ahead)
        evaluate(searching, state, conditions, demand, model, work)
        reached: float = work.temperature[model.ducts.thermostat]
        excess = demand.limits.sign * (reached - demand.setpoint)
        at_end = ((excess < 0.0) & (control >= highest)) | ((excess > 0.0) & (control <= lowest))
        look = searching & ((abs(excess) < NEARLY_HELD) | at_end) & (passes < DOORWAY_PASSES)
        anew = never
        if any_of(look):
            off = doorways_off(model.doors, conditions.ahead.door_value, work)
            anew = look & (off >= DOORWAY_SETTLED)
            if any_of(anew):
                passes = where(anew, passes + 1.0, passes)
                for d in range(work.doorways.shape[0]):
                    for part in range(2):
                        found, taken = work.doorways_found[d, part], work.doorways[d, part]
                        work.doorways[d, part] = where(anew, found, taken)
                open_doorways(conditions, model, work)
                bracket = _chosen_bracket(anew, fresh, bracket)
                step = min(max(control - excess / work.slope[0], lowest), highest)
                control = where(anew, step, control)
        found = (abs(excess) < HELD) | at_end
        trying = searching & opposite(anew) & opposite(found)
        bracket = _narrowed(trying, bracket, control, excess, work)
        trying = trying & (bracket.high - bracket.low >= CLOSE)
        searching = trying | anew
        if trial == TRIALS - 1 or not any_of(searching):
            break
        following = _next_trial(bracket, control, excess, work.slope[0])
        control = where(trying, following, control)
    return control


@compiled_inside
def _chosen_bracket(condition: bool, one: Bracket, other: Bracket) -> Bracket:
    return Bracket(
        where(condition, one.low, other.low),
        where(condition, one.at_low, other.at_low),
        where(condition, one.has_low, other.has_low),
        where(condition, one.high, other.high),
        where(condition, one.at_high, other.at_high),
        where(condition, one.has_high, other.has_high),
    )
