"""What furnaces, heads and heaters can give in each hour, and what they draw for it."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from costcompare.case.facts import Blower, Ducts, HeatPumpUnit, Home, System
from costcompare.equipment import Capability, Machine
from costcompare.simulation.airflows import BLOWER_EXPONENT
from costcompare.simulation.machines import Weathered, fitted
from costcompare.simulation.network import DuctNet, Emitters, Plant
from costcompare.simulation.schedules import Setpoints, recovered

Floats = NDArray[np.float64]

COOLING_ABOVE = (60.0 - 32.0) / 1.8
"""[degC] outdoors below which nobody runs a head to cool: windows do it (judgement)"""
UNLIMITED = 1.0e6
"""[W] of the ideal heater in each room"""
IDLE_BLEED = 60.0
"""[W] heat through a resting head while its outdoor unit heats others: 100 to 300 Btu/h
(from memory, judgement)"""
LEAST_FLOW = 0.6
"""Blower flow at the minimum speed of a modulating ducted machine (judgement)"""


@dataclass(frozen=True)
class Emitter:
    """One head, room heater or ideal heater."""

    room: str
    heating: Capability | None
    cooling: Capability | None
    unit: Machine | None
    heat_most: Floats
    cool_most: Floats
    setpoint: Floats
    resistance: bool
    """True for a heater whose electricity is its heat"""
    group: int = -1
    """Number of the outdoor unit that it shares with other heads, -1 for none"""


@dataclass(frozen=True)
class Ducted:
    """The ducted machine of a system."""

    unit: Machine | None
    """None for a furnace"""
    heating: Capability | None
    cooling: Capability | None
    plant: Plant
    room: str = ""
    """of the heat pump's thermostat"""


def emitters_of(
    home: Home, system: System, setpoints: Setpoints, weathered: Weathered
) -> tuple[Emitter, ...]:
    """Every head, room heater and ideal heater of a system."""
    hours = weathered.outdoor.shape[0]
    zero = np.zeros(hours)
    clock = weathered.clock
    found = [
        _head(unit, setpoints, weathered, system.field_factor)
        for unit in system.heads
        if not unit.heads
    ]
    for number, shared in enumerate(shared_units(system)):
        found += _heads_of(shared, number, setpoints, weathered, field_factor=system.field_factor)
    for heater in system.heaters:
        most = np.full(hours, heater.output)
        held = setpoints.of_unit(heater.setpoint)[clock]
        found.append(Emitter(heater.room, None, None, None, most, zero, held, resistance=True))
    if system.kind == "ideal":
        most = np.full(hours, UNLIMITED)
        held = setpoints.house[clock]
        found += [
            Emitter(room.name, None, None, None, most, most, held, resistance=True)
            for room in home.rooms
        ]
    return tuple(found)


def _head(
    unit: HeatPumpUnit, setpoints: Setpoints, weathered: Weathered, field_factor: float
) -> Emitter:
    held = setpoints.of_unit(unit.setpoint)[weathered.clock]
    one = fitted(unit, held, weathered, field_factor)
    heating, cooling = one.heating, one.cooling
    cool_most = np.where(weathered.outdoor > COOLING_ABOVE, cooling.most, 0.0)
    return Emitter(
        unit.room, heating, cooling, one.machine, heating.most, cool_most, held, resistance=False
    )


def shared_units(system: System) -> tuple[HeatPumpUnit, ...]:
    """The outdoor units with several heads, in the order of their group numbers."""
    return tuple(unit for unit in system.heads if unit.heads)


def _heads_of(
    unit: HeatPumpUnit,
    number: int,
    setpoints: Setpoints,
    weathered: Weathered,
    *,
    field_factor: float,
) -> list[Emitter]:
    """The heads of one outdoor unit: each can give its share of what the unit could alone."""
    one = fitted(unit, setpoints.house[weathered.clock], weathered, field_factor)
    found = []
    for head in unit.heads:
        share = head.size / unit.size
        cool = np.where(weathered.outdoor > COOLING_ABOVE, share * one.cooling.most, 0.0)
        held = setpoints.of_unit(head.setpoint)[weathered.clock]
        most = share * one.heating.most
        found.append(
            Emitter(
                head.room,
                one.heating,
                one.cooling,
                one.machine,
                most,
                cool,
                held,
                resistance=False,
                group=number,
            )
        )
    return found


def emitter_arrays(
    emitters: tuple[Emitter, ...], nodes: dict[str, int], cooling_setpoint: float, hours: int
) -> Emitters:
    """The emitters as the loop reads them."""
    groups = _members(emitters)

    def columns(values: list[Floats]) -> Floats:
        return np.ascontiguousarray(np.stack(values, axis=1)) if values else np.zeros((hours, 0))

    return Emitters(
        room=np.array([nodes[e.room] for e in emitters], dtype=np.uint64),
        group=np.array([e.group for e in emitters], dtype=np.int64),
        bleed=np.array([IDLE_BLEED if e.group >= 0 else 0.0 for e in emitters]),
        group_heat=columns([_cap(heads, "heat_most") for heads in groups]),
        group_cool=columns([_cap(heads, "cool_most") for heads in groups]),
        heat_most=columns([e.heat_most for e in emitters]),
        cool_most=columns([e.cool_most for e in emitters]),
        setpoint=columns([e.setpoint for e in emitters]),
        cooling_setpoint=np.full((hours, len(emitters)), cooling_setpoint),
    )


def _members(emitters: tuple[Emitter, ...]) -> list[list[Emitter]]:
    """The heads of each outdoor unit with several, by group number."""
    count = max((e.group for e in emitters), default=-1) + 1
    return [[e for e in emitters if e.group == number] for number in range(count)]


def _cap(heads: list[Emitter], what: str) -> Floats:
    """Most that an outdoor unit gives [W]: no more than itself, nor than its heads together."""
    together: Floats = np.sum([getattr(head, what) for head in heads], axis=0)
    one = heads[0].heating if what == "heat_most" else heads[0].cooling
    assert one is not None
    most = one.most if what == "heat_most" else np.where(together > 0.0, one.most, 0.0)
    return np.minimum(together, most)


def ducted_of(system: System, setpoints: Setpoints, weathered: Weathered) -> Ducted:
    """The ducted machine of a system; its plant gives nothing where there is none."""
    hours = weathered.outdoor.shape[0]
    zero = np.zeros(hours)
    held = setpoints.of_backup(system.furnace_setpoint)[weathered.clock]
    cooled = np.full(hours, setpoints.cooling)
    if system.ducted_unit is not None:
        profile = recovered(setpoints.of_unit(system.ducted_unit.setpoint), system.recovery_hours)
        held = profile[weathered.clock]
        one = fitted(system.ducted_unit, held, weathered, system.field_factor)
        heating = without_blower(one.heating, system.blower, heats=True)
        cooling = without_blower(one.cooling, system.blower, heats=False)
        strips = np.full(hours, system.strip_output)
        if system.strip_lockout is not None:
            strips = np.where(weathered.outdoor > system.strip_lockout, 0.0, strips)
        cool_most = np.where(weathered.outdoor > COOLING_ABOVE, cooling.most, 0.0)
        most = heating.most
        if system.compressor_lockout is not None:
            most = np.where(weathered.outdoor < system.compressor_lockout, 0.0, most)
        plant = Plant(heating.least, most, strips, cooling.least, cool_most, held, cooled)
        return Ducted(one.machine, heating, cooling, plant, system.ducted_unit.room)
    furnace = np.full(hours, system.furnace_output)
    return Ducted(None, None, None, Plant(furnace, furnace, zero, zero, zero, held, cooled))


MOST_FAN = 0.3
"""Share of a machine's power that its blower can be at most (judgement)"""


def without_blower(capability: Capability, blower: Blower | None, *, heats: bool) -> Capability:
    """A ducted machine's map without the blower that its published points hold.

    Points are net: heating with the blower's warmth, cooling less it, power with its draw
    (10 CFR 430 subpart B appendix M1). The loop blows with the home's own blower, so the
    same amount is taken out here, at the flow of each speed.
    """
    if blower is None:
        return capability
    capacity, power = capability.capacity, capability.power
    least = LEAST_FLOW if blower.variable else 1.0
    low, high = capacity[:, [0]], capacity[:, [2]]
    share = least + (1.0 - least) * (capacity - low) / np.maximum(high - low, 1e-9)
    fan = np.minimum(blower.power * share**BLOWER_EXPONENT, MOST_FAN * power)
    gross = np.maximum(capacity - fan, 0.5 * capacity) if heats else capacity + fan
    gross = np.where(capacity > 0.0, gross, 0.0)
    return replace(capability, capacity=gross, power=power - fan)


def contiguous(plant: Plant) -> Plant:
    """The plant with contiguous arrays: columns of a capability are not."""
    return Plant(*(np.ascontiguousarray(values, dtype=float) for values in plant))


def duct_network(home: Home, system: System, nodes: dict[str, int], twin: int) -> DuctNet:
    """The duct system as the loop reads it."""
    rooms = home.rooms
    thermostat = nodes[system.thermostat_room] if system.thermostat_room else 0
    heated = system.furnace_output > 0.0 or system.ducted_unit is not None
    if system.ducts is None or system.blower is None or not heated:
        largest = max(range(len(rooms)), key=lambda n: rooms[n].floor_area)
        return no_ducts(len(rooms), largest)
    ducts = outside_part(system.ducts)
    inside = ducts.location == "inside"
    registers, fallen = reaching_air(home, system, ducts)
    least = LEAST_FLOW if system.blower.variable else 1.0
    return DuctNet(
        present=1,
        space=-1 if inside else nodes[ducts.location],
        twin=-1 if inside else twin,
        supply_leakage=float(ducts.supply_leakage + (1.0 - ducts.supply_leakage) * fallen),
        return_leakage=float(ducts.return_leakage),
        supply_area=float(ducts.supply_area),
        return_area=float(ducts.return_area),
        resistance=float(ducts.resistance),
        cyclic_loss=float(ducts.cyclic_loss),
        registers=registers,
        return_room=thermostat,
        thermostat=thermostat,
        airflow=float(system.blower.airflow),
        least_flow=least,
        blower_power=float(system.blower.power),
        strip_gap=float(system.strip_gap),
    )


CRUSHED = 0.35
"""Share of its air that a crushed branch still passes (judgement)"""
FALLEN = 0.85
"""Share of a register's air that a fallen branch loses: it blows freely (judgement)"""


def reaching_air(home: Home, system: System, ducts: Ducts) -> tuple[Floats, float]:
    """Shares of the supply air by room, adding up to 1, and the share lost at fallen branches.

    A fallen branch blows most of its air into the space round the ducts; a crushed one sends
    it to the other registers. Ducts inside the rooms lose nothing that way.
    """
    rooms = home.rooms
    shares = np.array([system.registers.get(room.name, 0.0) for room in rooms])
    if shares.sum() <= 0.0:
        shares = np.array([room.floor_area for room in rooms])
    shares = shares / shares.sum()
    lost = 0.0
    for number, room in enumerate(rooms):
        damage = ducts.branches.get(room.name)
        if damage == "crushed":
            shares[number] *= CRUSHED
        elif damage == "fallen" and ducts.location != "inside":
            lost += shares[number] * FALLEN
            shares[number] *= 1.0 - FALLEN
    # What a crushed branch holds back comes out of the other registers; what a fallen one
    # loses is a leak.
    return shares / shares.sum(), lost


def no_ducts(rooms: int, root: int) -> DuctNet:
    """A duct system that is not there; air finds its way to ``root``."""
    return DuctNet(
        present=0,
        space=-1,
        twin=-1,
        supply_leakage=0.0,
        return_leakage=0.0,
        supply_area=0.0,
        return_area=0.0,
        resistance=1.0,
        cyclic_loss=0.0,
        registers=np.zeros(rooms),
        return_room=root,
        thermostat=root,
        airflow=1.0,
        least_flow=1.0,
        blower_power=0.0,
        strip_gap=0.0,
    )


def outside_part(ducts: Ducts) -> Ducts:
    """The ducts as the space round them sees them: what lies inside the rooms loses nothing."""
    share = 0.0 if ducts.location == "inside" else ducts.share_outside
    return replace(
        ducts,
        supply_leakage=ducts.supply_leakage * share,
        return_leakage=ducts.return_leakage * share,
        supply_area=ducts.supply_area * share,
        return_area=ducts.return_area * share,
    )
