"""One hour: the air system at a control setting, and the control that holds the setpoint."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from costcompare.physics.compiled import compiled
from costcompare.simulation.airflows import (
    DuctState,
    Flows,
    add_doors,
    add_ducts,
    add_leakage,
    add_links,
    duct_state,
    envelope_flows,
)
from costcompare.simulation.linear import settle, solve
from costcompare.simulation.network import Air, Doors, DuctNet

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]

HELD = 2e-4
"""[K] how closely the ducted system holds its thermostat"""
FIRST_HELD = 0.02
"""[K] the same on the first pass, while the doorways still move"""
DOORWAY_PASSES = 4
DOORWAY_SETTLED = 0.05
"""[K] change of a room below which the doorway exchange has settled"""
TRIALS = 40
LEAST_SLOPE = 1e-3
"""[K] per unit of control: a cut-out machine moves nothing"""


class Conditions(NamedTuple):
    """Everything about this hour that does not depend on the controls."""

    matrix: Floats
    """Constant part of the air system [W/K], shape (A, A)"""
    right: Floats
    """[W], shape (A,)"""
    outdoor: float
    vents: Floats
    natural: float
    """Air leaking in and out without a fan [m3/s]"""
    airing: float
    """1 while the windows are open"""


class Demand(NamedTuple):
    """Setpoints and limits of this hour."""

    least: float
    most: float
    strips: float
    sign: float
    """+1 heating, -1 cooling: which way the ducted machine works"""
    setpoint: float
    thermostat: int
    room: Ints
    lower: Floats
    upper: Floats
    bounds: Floats


class Work(NamedTuple):
    """Memory of the loop, allocated once."""

    matrix: Floats
    right: Floats
    """First column the known heat, then one watt of each emitter, then one at the thermostat"""
    free: Floats
    temperature: Floats
    previous: Floats
    heat: Floats
    surplus: Floats
    """Air that each room passes on [m3/s]"""
    slope: Floats
    """Last rise of the thermostat per unit of control [K], shape (1,)"""


@compiled
def evaluate(
    state: DuctState,
    conditions: Conditions,
    demand: Demand,
    air: Air,
    doors: Doors,
    ducts: DuctNet,
    work: Work,
) -> Flows:
    """Temperatures and emitter heat, into ``work``, with the ducted system in a state."""
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
    flows = envelope_flows(conditions.natural, state)
    add_doors(matrix, doors, air.heat_capacity, work.previous)
    add_leakage(matrix, right, air, ducts, state, flows, conditions.outdoor, conditions.vents)
    add_links(matrix, air, ducts, state, flows, work.surplus)
    add_ducts(matrix, right, air, ducts, state)
    if conditions.airing > 0.0:
        for i in range(air.rooms):
            opened = air.heat_capacity * air.airing_flow[i]
            matrix[i, i] += opened
            right[i, 0] += opened * conditions.outdoor
    solve(matrix, right)
    for i in range(air.nodes):
        work.free[i] = right[i, 0]
    if emitters > 0:
        settle(
            work.free,
            right[:, 1 : 1 + emitters],
            demand.room,
            demand.lower,
            demand.upper,
            demand.bounds,
            work.heat,
        )
    for i in range(air.nodes):
        total = work.free[i]
        for j in range(emitters):
            total += right[i, 1 + j] * work.heat[j]
        work.temperature[i] = total
    return flows


@compiled
def _short(
    control: float,
    conditions: Conditions,
    demand: Demand,
    air: Air,
    doors: Doors,
    ducts: DuctNet,
    work: Work,
) -> float:
    """How far the thermostat is from its setpoint [K], negative while it asks for more."""
    state = duct_state(
        control, demand.sign, demand.least, demand.most, demand.strips, ducts, air.heat_capacity
    )
    evaluate(state, conditions, demand, air, doors, ducts, work)
    return demand.sign * (work.temperature[demand.thermostat] - demand.setpoint)


@compiled
def hold(
    guess: float,
    conditions: Conditions,
    demand: Demand,
    air: Air,
    doors: Doors,
    ducts: DuctNet,
    work: Work,
    held: float,
) -> float:
    """The control of the ducted system that holds the thermostat, 0 to 2.

    The thermostat's temperature rises with the control, so the answer is where the
    shortfall is nothing, or one of the two ends. Secant steps, starting from the last
    hour's control and slope, kept between the settings known to be too low and too high.
    """
    highest = 2.0 if demand.strips > 0.0 else 1.0
    if demand.most <= 0.0 and demand.strips <= 0.0:
        highest = 0.0
    low, at_low, high, at_high = 0.0, 0.0, highest, 0.0
    bracketed_low, bracketed_high = False, False
    control = min(max(guess, 0.0), highest)
    for trial in range(TRIALS):
        reached = _short(control, conditions, demand, air, doors, ducts, work)
        if abs(reached) < held:
            return control
        if reached < 0.0:
            if control >= highest:
                return highest
            if bracketed_low:
                work.slope[0] = max((reached - at_low) / (control - low), LEAST_SLOPE)
            elif bracketed_high:
                work.slope[0] = max((at_high - reached) / (high - control), LEAST_SLOPE)
            low, at_low, bracketed_low = control, reached, True
        else:
            if control <= 0.0:
                return 0.0
            if bracketed_high:
                work.slope[0] = max((at_high - reached) / (high - control), LEAST_SLOPE)
            elif bracketed_low:
                work.slope[0] = max((reached - at_low) / (control - low), LEAST_SLOPE)
            high, at_high, bracketed_high = control, reached, True
        if high - low < 1e-9 or trial == TRIALS - 1:
            return control
        step = control - reached / work.slope[0]
        if bracketed_low and bracketed_high:
            chord = low - at_low * (high - low) / (at_high - at_low)
            control = chord if step <= low or step >= high else step
        else:
            control = min(max(step, low), high)
            if not bracketed_high and control <= low:
                control = high
    return control


@compiled
def settle_hour(
    guess: float,
    conditions: Conditions,
    demand: Demand,
    air: Air,
    doors: Doors,
    ducts: DuctNet,
    work: Work,
) -> float:
    """Controls and temperatures of the hour, the doorways at the temperatures found.

    Returns the control; temperatures and emitter heat stand in ``work``. The last pass
    takes the doorway exchange as it stands, so the answer is one consistent linear system.
    """
    control = guess
    off = duct_state(0.0, 1.0, 0.0, 0.0, 0.0, ducts, air.heat_capacity)
    doorways = doors.first.shape[0]
    for number in range(DOORWAY_PASSES):
        held = FIRST_HELD if number == 0 and doorways > 0 else HELD
        if ducts.present == 1:
            control = hold(control, conditions, demand, air, doors, ducts, work, held)
        else:
            control = 0.0
            evaluate(off, conditions, demand, air, doors, ducts, work)
        change = 0.0
        for i in range(air.rooms):
            change = max(change, abs(work.temperature[i] - work.previous[i]))
        settled = change < DOORWAY_SETTLED and (number > 0 or ducts.present == 0)
        if settled or doorways == 0 or number == DOORWAY_PASSES - 1:
            break
        # Not all of the way: a flow that goes with the root of a difference swings otherwise.
        for i in range(air.rooms):
            work.previous[i] += 0.7 * (work.temperature[i] - work.previous[i])
    return control
