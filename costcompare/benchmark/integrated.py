"""The same home as differential equations, for an integrator that somebody else wrote.

Every node with mass is a state; radiant nodes and borders without mass are eliminated. Air
moves by the very functions of the hourly model; the thermostat is a steep proportional law.
"""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray
from scipy.integrate import solve_ivp

from costcompare.physics.compiled import compiled_inside, compiled_whole
from costcompare.simulation.ahead import Ahead
from costcompare.simulation.airflows import (
    DuctLimits,
    Outside,
    add_doors,
    add_ducts,
    add_leakage,
    add_links,
    duct_state,
    envelope_flows,
    natural_flow,
    tangents,
)
from costcompare.simulation.assembly import STEP
from costcompare.simulation.chains import ChainBuilder
from costcompare.simulation.network import Drive, Model
from costcompare.simulation.state import STARTING_TEMPERATURE

Floats = NDArray[np.float64]

JOULES = 3.6e6
"""in a kWh"""
BAND = 0.05
"""[K] over which the proportional thermostat goes from nothing to all that there is (judgement:
steep against a night setback, wide enough for the integrator)"""
RELATIVE_TOLERANCE = 1e-4
ABSOLUTE_TOLERANCE = 1e-4
"""[K]"""


class Passive(NamedTuple):
    """The home without moving air: dT/dt = states T + inputs u, temperatures in degC."""

    states: Floats
    """[1/s], shape (states, states); the air nodes come first"""
    inputs: Floats
    """[K/s] per unit of boundary temperatures, sun, radiant and convective gains"""
    air_capacity: Floats
    """[J/K] of each air node"""


def passive(
    builder: ChainBuilder, storage: Floats, partitions: list[tuple[int, int, float]], rooms: int
) -> Passive:
    """The passive network of a home from its layers; ``storage`` [W/K] of air over a step."""
    air = storage.shape[0]
    sizes = [len(chain.storage) for chain in builder.chains]
    starts = air + rooms + np.concatenate([[0], np.cumsum(sizes)[:-1]]).astype(int)
    total = air + rooms + sum(sizes)
    columns = len(builder.columns)
    matrix, known = np.zeros((total, total)), np.zeros((total, columns + 3 * rooms))
    capacity = np.zeros(total)
    capacity[:air] = storage * STEP

    def join(i: int, j: int, value: float) -> None:
        matrix[[i, j], [j, i]] += value
        matrix[[i, j], [i, j]] -= value

    for i, j, value in partitions:
        join(i, j, value)
    sun = builder.sun_shares()
    for chain, start, lit in zip(builder.chains, starts, sun, strict=True):
        stop = start + len(chain.storage)
        capacity[start:stop] = np.array(chain.storage) * STEP
        for node, value in enumerate(chain.conductance, start=int(start)):
            join(node, node + 1, value)
        for face, port, share in zip((start, stop - 1), chain.ends, lit, strict=True):
            if port.air >= 0:
                join(face, port.air, port.air_conductance)
            if port.radiant >= 0:
                join(face, air + port.radiant, port.radiant_conductance)
                known[face, columns + port.radiant] += share
            if port.boundary >= 0:
                matrix[face, face] -= port.boundary_conductance
                known[face, port.boundary] += port.boundary_conductance
    room = np.arange(rooms)
    known[air + room, columns + rooms + room] = 1.0
    known[room, columns + 2 * rooms + room] = 1.0
    return _without_the_massless(matrix, known, capacity, air)


def _without_the_massless(matrix: Floats, known: Floats, capacity: Floats, air: int) -> Passive:
    heavy, light = np.flatnonzero(capacity > 0.0), np.flatnonzero(capacity <= 0.0)
    matrix[light, light] = np.where(matrix[light, light] == 0.0, -1.0, matrix[light, light])
    answer = np.linalg.solve(
        matrix[np.ix_(light, light)], np.hstack([matrix[np.ix_(light, heavy)], known[light]])
    )
    coupling = matrix[np.ix_(heavy, light)]
    states = matrix[np.ix_(heavy, heavy)] - coupling @ answer[:, : len(heavy)]
    inputs = known[heavy] - coupling @ answer[:, len(heavy) :]
    over = 1.0 / capacity[heavy][:, None]
    return Passive(states * over, inputs * over, capacity[:air])


class Scratch(NamedTuple):
    """Memory of the right-hand side."""

    matrix: Floats
    surplus: Floats
    doorways: Floats
    """Tangents of the doorways"""
    rates: Floats
    """[K/s], and of the furnace's heat [kWh/s] last"""


@compiled_whole
def slopes(
    h: int,
    model: Model,
    ahead: Ahead,
    drive: Drive,
    network: Passive,
    forced: Floats,
    state: Floats,
    scratch: Scratch,
) -> None:
    """The right-hand side in hour ``h``, into ``scratch.rates``.

    ``forced`` [K/s] is what the hour's inputs do, ``state`` the temperatures [degC].
    """
    rates, count = scratch.rates, network.states.shape[0]
    for i in range(count):
        row, total = network.states[i], forced[i]
        for j in range(count):
            total += row[j] * state[j]
        rates[i] = total
    known, matrix = model.air.nodes, scratch.matrix
    bought = _air(h, model, ahead, drive, state, scratch)
    for i in range(known):
        heat = matrix[i, known]
        for j in range(known):
            heat -= matrix[i, j] * state[j]
        rates[i] += heat / network.air_capacity[i]
    rates[count] = bought / JOULES


@compiled_inside
def _air(h: int, model: Model, ahead: Ahead, drive: Drive, node: Floats, scratch: Scratch) -> float:
    """Moving air as a matrix with known heat; returns what the furnace's elements give [W]."""
    air, ducts, year, plant = model.air, model.ducts, drive.year, drive.plant
    matrix, known, warm, taken = scratch.matrix, air.nodes, 0.0, 0.0
    for i in range(air.nodes):
        for j in range(matrix.shape[1]):
            matrix[i, j] = 0.0
    for i in range(air.rooms):
        warm += node[i] / air.rooms
        taken += year.extraction[h, i]
    control = (plant.setpoint[h] - node[ducts.thermostat]) / BAND + 0.5
    control = min(max(control, 0.0), 1.0)
    limits = DuctLimits(plant.heat_least[h], plant.heat_most[h], plant.strips[h], 1.0)
    state = duct_state(control, limits, ducts, air.heat_capacity, ahead)
    natural = natural_flow(air, warm - year.outdoor[h], ahead.by_wind[h])
    flows = envelope_flows(natural, taken, state)
    outside = Outside(year.outdoor[h], year.vent_flow[h])
    tangents(model.doors, ahead.door_value, node, scratch.doorways)
    add_doors(matrix, known, model.doors, scratch.doorways)
    add_leakage(matrix, known, air, ducts, state, flows, outside, ahead.taken_from)
    add_links(matrix, air, ducts, state, flows, year.extraction[h], scratch.surplus)
    add_ducts(matrix, known, air, ducts, state)
    return state.main + state.strips


@dataclass(frozen=True)
class Integrated:
    """A stretch of the year by the integrator."""

    heating_kwh: float
    """Heat of the furnace's elements over the counted hours"""
    seconds: float
    evaluations: int
    """Of the right-hand side"""


def integrate(
    network: Passive,
    model: Model,
    ahead: Ahead,
    drive: Drive,
    *,
    hours: range,
    counted_from: int,
    progress: Callable[[float], None],
) -> Integrated:
    """Integrate ``hours`` of the year; heat counts from hour ``counted_from`` on.

    One call of solve_ivp with LSODA from the starting temperature of the hourly model, the
    furnace's heat as one more state, no step longer than the hour in which inputs stand still.
    """
    year, count = drive.year, network.states.shape[0]
    # The rows of the hourly model's matrices are filled up with zeros.
    rooms = model.air.rooms
    columns = network.inputs.shape[1] - 3 * rooms
    parts = [(year.brought @ year.mixtures)[:, :columns], (year.shining @ year.glass)[:, :rooms]]
    parts += [(year.inside @ each)[:, :rooms] for each in (year.radiant, year.convective)]
    inputs = np.hstack(parts)
    air = model.air
    scratch = Scratch(
        np.zeros((air.nodes, air.nodes + 1)),
        np.zeros(air.rooms),
        np.zeros((model.doors.first.shape[0], 2)),
        np.zeros(count + 1),
    )
    forced = {h: network.inputs @ inputs[h] for h in hours}
    last = hours[0]

    def slope(seconds: float, state: Floats) -> Floats:
        nonlocal last
        h = min(hours[0] + int(seconds // STEP), hours[-1])
        if h - last >= 24:
            last = h
            progress((h - hours[0]) / len(hours))
        slopes(h, model, ahead, drive, network, forced[h], state, scratch)
        return scratch.rates.copy()

    start = np.append(np.full(count, STARTING_TEMPERATURE), 0.0)
    ends = np.array([(counted_from - hours[0]) * STEP, len(hours) * STEP])
    begun = time.process_time()
    answer = solve_ivp(
        slope,
        (0.0, ends[1]),
        start,
        method="LSODA",
        t_eval=ends,
        rtol=RELATIVE_TOLERANCE,
        atol=ABSOLUTE_TOLERANCE,
        max_step=STEP,
    )
    taken = time.process_time() - begun
    if not answer.success:
        raise RuntimeError(f"the integrator gave up: {answer.message}")
    bought = answer.y[count]
    return Integrated(float(bought[1] - bought[0]), taken, int(answer.nfev))
