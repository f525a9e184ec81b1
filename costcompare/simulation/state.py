"""What the loop carries through an hour: conditions, demand, and its memory."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from costcompare.simulation.ahead import Ahead
from costcompare.simulation.airflows import DuctLimits, Outside
from costcompare.simulation.network import Drive, Model, Places

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]

STARTING_TEMPERATURE = 16.0
"""[degC] of every node before the warm-up (judgement; the warm-up forgets it)"""


class Conditions(NamedTuple):
    """Everything about this hour that does not depend on the controls."""

    ahead: Ahead
    matrix: Floats
    """Constant part of the air system [W/K], shape (A, A)"""
    right: Floats
    """[W], shape (A,)"""
    outside: Outside
    natural: float
    """Air leaking in and out without a fan [m3/s]"""
    extracted: Floats
    """Air that fans and a fire take out of each room [m3/s], shape (rooms,)"""
    extraction: float
    """Their sum [m3/s]"""
    airing: float
    """1 while the windows are open"""


class Demand(NamedTuple):
    """Setpoints and limits of this hour."""

    limits: DuctLimits
    setpoint: float
    room: Places
    lower: Floats
    upper: Floats
    bounds: Floats
    """[W] most cooling (negative) and most heating of each emitter, shape (m, 2)"""
    resting: Floats
    """[W] what each emitter gives while it rests, shape (m,)"""
    group: Ints
    caps: Floats
    """[W] most that each group of heads can give, heating or cooling, shape (groups,)"""


class Bracket(NamedTuple):
    """Controls known to be too low and too high, with the excess found there [K]."""

    low: float
    at_low: float
    has_low: bool
    high: float
    at_high: float
    has_high: bool


class Work(NamedTuple):
    """Memory of the loop, allocated once."""

    base: Floats
    """The air system, behind it the known heat and one watt of each emitter, without the
    ducted machine, shape (A, A + 1 + m)"""
    matrix: Floats
    """The same with it, eliminated"""
    still_flat: Floats
    """The constant part of it, row by row"""
    base_flat: Floats
    """The entries of ``base``, row by row, for copying"""
    matrix_flat: Floats
    inverse: Floats
    """Inverse pivots"""
    answer: Floats
    """Air temperatures by the known heat alone, then those per watt of each emitter"""
    rise: Floats
    """[K] of each air node by a watt at the thermostat"""
    temperature: Floats
    previous: Floats
    """Temperatures that the hour is taken to come to before it is known [degC]"""
    doorways: Floats
    """Tangents taken for the doorways: conductance [W/K] and excess [W], shape (doors, 2)"""
    doorways_found: Floats
    """Those at the temperatures last found"""
    heat: Floats
    limits: Floats
    """The bounds of the emitters, cut where a group would give more than it can"""
    surplus: Floats
    """Air that each room passes on [m3/s]"""
    slope: Floats
    """Last rise of the thermostat per unit of control [K], shape (1,)"""


class Memory(NamedTuple):
    """State and scratch of the loop, allocated outside of it: compiled code counts nothing."""

    modes: Floats
    """State of the surfaces"""
    content: Floats
    """Heat that was in them before the hour, over the time step [W], shape (1,)"""
    given: Floats
    """Known heat into each end of a chain [W]"""
    drive: Floats
    """All heat into each end from what lies beyond it, for a face at 0 degC [W]"""
    face: Floats
    """Temperature of each end [degC]"""
    node: Floats
    """Air temperatures [degC]"""
    node_before: Floats
    radiant: Floats
    boundary: Floats
    """Boundary temperatures of the hour [degC]"""
    sun: Floats
    """Through the glass of each room [W]"""
    into_air: Floats
    into_radiant: Floats
    through_radiant: Floats
    bounds: Floats
    resting: Floats
    caps: Floats
    running: Floats
    """Heat of each group in the last hour [W]"""
    duct: Floats
    """A row of the record's ``duct``"""
    load: Floats
    """A row of its ``load``"""
    unmet: Floats
    """A row of its ``unmet``"""
    work: Work


def relinked(stacked: Memory) -> Memory:
    """Memory of homes side by side whose flat arrays are again views of the others."""
    work = stacked.work
    lanes = work.base.shape[-1]
    base, matrix = work.base.reshape(-1, lanes), work.matrix.reshape(-1, lanes)
    return stacked._replace(work=work._replace(base_flat=base, matrix_flat=matrix))


def memory(model: Model, drive: Drive) -> Memory:
    """Memory for a run, every node at the starting temperature."""
    room, groups = drive.emitters.room, drive.emitters.group_heat.shape[1]
    start, emitters = STARTING_TEMPERATURE, room.shape[0]
    chains, doors = model.chains, model.doors.first.shape[0]
    ends = 2 * chains.face_first.shape[0]
    size, rooms = model.air.nodes, model.air.rooms
    still = np.zeros((size, size + 1 + emitters))
    still[:, :size] = model.reduction.air
    still[room, size + 1 + np.arange(emitters)] = 1.0
    base, matrix = np.zeros_like(still), np.zeros_like(still)
    work = Work(
        base=base,
        matrix=matrix,
        still_flat=still.ravel(),
        base_flat=base.ravel(),
        matrix_flat=matrix.ravel(),
        inverse=np.zeros(size),
        answer=np.zeros((size, 1 + emitters)),
        rise=np.zeros(size),
        temperature=np.full(size, start),
        previous=np.full(size, start),
        doorways=np.zeros((doors, 2)),
        doorways_found=np.zeros((doors, 2)),
        heat=np.zeros(emitters),
        limits=np.zeros((emitters, 2)),
        surplus=np.zeros(rooms),
        slope=np.full(1, 10.0),
    )
    return Memory(
        modes=start * chains.uniform,
        content=np.zeros(1),
        given=np.zeros(ends),
        drive=np.zeros(ends),
        face=np.zeros(ends),
        node=np.full(size, start),
        node_before=np.full(size, start),
        radiant=np.zeros(size),
        boundary=np.zeros(drive.year.mixtures.shape[1]),
        sun=np.zeros(size),
        into_air=np.zeros(size),
        into_radiant=np.zeros(size),
        through_radiant=np.zeros(size),
        bounds=np.zeros((emitters, 2)),
        resting=np.zeros(emitters),
        caps=np.zeros(groups),
        running=np.zeros(groups),
        duct=np.zeros(6),
        load=np.zeros(4),
        unmet=np.zeros(rooms),
        work=work,
    )
