"""Electricity for what the machines gave, and how each spends the year."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from costcompare.equipment import Capability, Machine, draw, standby_power
from costcompare.simulation.machines import machine_hours
from costcompare.simulation.network import Record
from costcompare.simulation.plant import Ducted, Emitter
from costcompare.simulation.results import MachineHours

Floats = NDArray[np.float64]

LEAST_FAN = 0.3
"""Share of a head's full fan power at the least output (judgement)"""
TOO_WARM = 0.2
"""[K] past its setpoint at which a room counts as wanting the other mode (judgement)"""


@dataclass(frozen=True)
class Draws:
    """Electricity by hour [W]."""

    heating: Floats
    backup: Floats
    cooling: Floats
    fan: Floats
    standby: Floats


@dataclass(frozen=True)
class Outdoor:
    """One outdoor unit of heads, over the year."""

    rooms: tuple[str, ...]
    members: tuple[int, ...]
    """Numbers of its emitters"""
    machine: Machine
    heating: Capability
    cooling: Capability
    given: Floats
    """Heat, cooling negative, of all its heads [W]"""


def outdoor_units(emitters: tuple[Emitter, ...], record: Record) -> tuple[Outdoor, ...]:
    """The outdoor units behind the heads; heads of one group stand behind one."""
    found: list[Outdoor] = []
    for members in _by_unit(emitters):
        first = emitters[members[0]]
        if first.unit is None or first.heating is None or first.cooling is None:
            continue
        rooms = tuple(emitters[n].room for n in members)
        given: Floats = record.emitted[:, list(members)].sum(axis=1)
        found.append(Outdoor(rooms, members, first.unit, first.heating, first.cooling, given))
    return tuple(found)


def _by_unit(emitters: tuple[Emitter, ...]) -> list[tuple[int, ...]]:
    alone = [(n,) for n, e in enumerate(emitters) if e.group < 0]
    count = max((e.group for e in emitters), default=-1) + 1
    shared = [tuple(n for n, e in enumerate(emitters) if e.group == g) for g in range(count)]
    return alone + shared


def draws_of(
    emitters: tuple[Emitter, ...], ducted: Ducted, record: Record, outdoor: Floats
) -> Draws:
    """Electricity for what the machines gave."""
    total = Draws(*(np.zeros(outdoor.shape[0]) for _ in range(5)))
    for number, emitter in enumerate(emitters):
        if emitter.unit is None:
            total = _with_heater(total, record.emitted[:, number])
    units = outdoor_units(emitters, record)
    for unit in units:
        total = _with_unit(total, unit, outdoor)
    return _with_ducted(total, ducted, record, outdoor, heads=bool(units))


def _with_heater(total: Draws, given: Floats) -> Draws:
    heat, cold = np.maximum(given, 0.0), np.maximum(-given, 0.0)
    return replace(
        total,
        heating=total.heating + heat,
        backup=total.backup + heat,
        cooling=total.cooling + cold,
    )


def _with_unit(total: Draws, unit: Outdoor, outdoor: Floats) -> Draws:
    heat, cold = np.maximum(unit.given, 0.0), np.maximum(-unit.given, 0.0)
    # The rated power of a head holds its fan; it is shown apart, so it is taken out here.
    share = np.clip(np.abs(unit.given) / np.maximum(unit.heating.most, 1.0), 0.0, 1.0)
    power = unit.machine.fan_power * (LEAST_FAN + (1.0 - LEAST_FAN) * share)
    fan = np.where(unit.given != 0.0, power, 0.0)
    warm = draw(unit.heating, np.minimum(heat, unit.heating.most))
    cool = draw(unit.cooling, np.minimum(cold, unit.cooling.most))
    fan = np.minimum(fan, 0.5 * (warm + cool))
    still = unit.given == 0.0
    return replace(
        total,
        heating=total.heating + np.where(heat > 0.0, warm - fan, 0.0),
        cooling=total.cooling + np.where(cold > 0.0, cool - fan, 0.0),
        fan=total.fan + fan,
        standby=total.standby + standby_power(unit.machine, still, heat > 0.0, outdoor),
    )


def hours_of_machines(
    emitters: tuple[Emitter, ...],
    ducted: Ducted,
    record: Record,
    nodes: dict[str, int],
    cooling_setpoint: float,
) -> tuple[MachineHours, ...]:
    """How each heat pump spends the year; an outdoor unit is named by its rooms."""
    found = []
    for unit in outdoor_units(emitters, record):
        hours = machine_hours(", ".join(unit.rooms), unit.heating, np.maximum(unit.given, 0.0))
        waiting = _waiting(unit, emitters, record, nodes, cooling_setpoint)
        found.append(replace(hours, other_mode_hours=waiting))
    if ducted.heating is not None:
        found.append(machine_hours(ducted.room, ducted.heating, np.maximum(record.main, 0.0)))
    return tuple(found)


def _waiting(
    unit: Outdoor,
    emitters: tuple[Emitter, ...],
    record: Record,
    nodes: dict[str, int],
    cooling_setpoint: float,
) -> int:
    """Hours in which a head's room wanted to be cooled while the unit heated, or the reverse."""
    if len(unit.members) < 2:
        return 0
    waits = np.zeros(unit.given.shape[0], dtype=bool)
    for number in unit.members:
        air = record.air[:, nodes[emitters[number].room]]
        waits |= (unit.given > 0.0) & (air > cooling_setpoint + TOO_WARM)
        waits |= (unit.given < 0.0) & (air < emitters[number].setpoint - TOO_WARM)
    return int(waits.sum())


def _with_ducted(
    total: Draws, ducted: Ducted, record: Record, outdoor: Floats, *, heads: bool
) -> Draws:
    fan = total.fan + record.blower
    if ducted.unit is None or ducted.heating is None or ducted.cooling is None:
        elements = np.maximum(record.main, 0.0)
        backup = total.backup + elements if heads else total.backup
        return replace(total, heating=total.heating + elements, backup=backup, fan=fan)
    heat = np.minimum(np.maximum(record.main, 0.0), ducted.heating.most)
    cold = np.minimum(np.maximum(-record.main, 0.0), ducted.cooling.most)
    return replace(
        total,
        heating=total.heating + draw(ducted.heating, heat) + record.strips,
        backup=total.backup + record.strips,
        cooling=total.cooling + draw(ducted.cooling, cold),
        fan=fan,
        standby=total.standby + standby_power(ducted.unit, record.main == 0.0, heat > 0.0, outdoor),
    )
