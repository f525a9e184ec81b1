"""Each machine of a system against what it has to heat."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial

import numpy as np
from numpy.typing import NDArray

from costcompare.case.facts import HeatPumpUnit, System
from costcompare.equipment.classes import single_speed
from costcompare.equipment.machine import W_PER_KBTU_H
from costcompare.simulation import HourlyResult
from costcompare.simulation.machines import machine_of
from costcompare.simulation.results import MachineHours
from costcompare.sizing import mounting, rules
from costcompare.sizing.capability import (
    AT_47_F,
    Ability,
    Outdoors,
    ability,
    balance_point,
)
from costcompare.sizing.needs import Need
from costcompare.sizing.results import BTU_H, FT, MachineFit, MachineKind, RuleCheck
from costcompare.sizing.served import nearest_head
from costcompare.summary import fahrenheit

Floats = NDArray[np.float64]
Line = Callable[[Floats], Floats]
"""[W] at outdoor temperatures [degC]"""

LEAST_LOAD = 50.0
"""[W] below which a load is none to speak of (judgement)"""


@dataclass(frozen=True)
class Ground:
    """What every machine of a choice is held against."""

    system: System
    need: Need
    duct_load: Line | None
    """[W] that the ducted machine must give to hold its thermostat, alone; None without one"""
    place: Outdoors
    coldest: float
    """[degC] down to which a balance point is looked for"""
    difference: float
    """[K] wanted warmth over outdoors, winter mean"""

    def house_load(self, outdoor: Floats) -> Floats:
        """Of all rooms [W]."""
        return self.need.heat_at(outdoor)

    def rooms_load(self, names: Sequence[str]) -> Line:
        """Of some rooms [W]."""
        order = [room.name for room in self.need.home.rooms]
        numbers = [order.index(name) for name in names]
        return lambda outdoor: self.need.heat_at(outdoor, numbers)


@dataclass(frozen=True)
class PlacedHead:
    """A head, the unit that feeds it, and its share of it when every head calls."""

    unit: HeatPumpUnit
    room: str
    size: float
    """[W] nominal cooling"""
    share: float
    setpoint: float | None
    mounting_height: float | None


def placed_heads(system: System) -> tuple[PlacedHead, ...]:
    """Every head of a system, in the order of its units."""
    found = []
    for unit in system.heads:
        total = max(unit.size, sum(head.size for head in unit.heads))
        found += [
            PlacedHead(
                unit, head.room, head.size, head.size / total, head.setpoint, head.mounting_height
            )
            for head in unit.heads
        ] or [PlacedHead(unit, unit.room, unit.size, 1.0, unit.setpoint, unit.mounting_height)]
    return tuple(found)


def machine_fits(ground: Ground, year: HourlyResult) -> tuple[MachineFit, ...]:
    """Every machine of the choice; ``year`` is the one at the wanted warmth."""
    system = ground.system
    ducted = system.ducted_unit is not None
    hours = {one.name: one for one in (year.machines[:-1] if ducted else year.machines)}
    served = nearest_head(ground.need.home, system)
    found = [
        _shared_fit(ground, unit, served, hours.get(", ".join(unit.rooms)))
        for unit in system.heads
        if unit.heads
    ]
    for head in placed_heads(system):
        rooms = _rooms_of(head.room, served)
        found.append(_head_fit(ground, head, rooms, hours.get(head.room)))
    if system.ducted_unit is not None and ground.duct_load is not None:
        found.append(_ducted_fit(ground, system.ducted_unit, year.machines[-1]))
    found += _resistance_fits(ground)
    return tuple(found)


def _rooms_of(head: str, served: Mapping[str, str]) -> tuple[str, ...]:
    """The room of a head and those that depend on it."""
    return (head, *(room for room, nearest in served.items() if nearest == head))


def head_ability(ground: Ground, head: PlacedHead, outdoor: Floats) -> Ability:
    """What a head gives [W]; at its minimum its outdoor unit serves it alone."""
    warmth = ground.need.home.thermostat.wanted if head.setpoint is None else head.setpoint
    whole = ability(head.unit, warmth, outdoor, ground.place, ground.system.field_factor)
    return Ability(whole.least, whole.most * head.share)


def ducted_ability(ground: Ground, unit: HeatPumpUnit, outdoor: Floats) -> Ability:
    """What the ducted machine gives [W]."""
    warmth = ground.need.home.thermostat.wanted if unit.setpoint is None else unit.setpoint
    found = ability(unit, warmth, outdoor, ground.place, ground.system.field_factor)
    lockout = ground.system.compressor_lockout
    if lockout is None:
        return found
    return Ability(found.least, np.where(outdoor < lockout, 0.0, found.most))


def shared_ability(ground: Ground, unit: HeatPumpUnit, outdoor: Floats) -> Ability:
    """What an outdoor unit with several heads gives [W], no more than all its heads take."""
    warmth = ground.need.home.thermostat.wanted
    whole = ability(unit, warmth, outdoor, ground.place, ground.system.field_factor)
    taken = min(sum(head.size for head in unit.heads) / unit.size, 1.0)
    return Ability(whole.least, whole.most * taken)


@dataclass(frozen=True)
class _Figures:
    """A heat pump against a load, in SI."""

    load: float
    mild_load: float
    most: float
    least: float
    mild_least: float
    balance: float | None

    @property
    def coverage(self) -> float | None:
        return self.most / self.load if self.load > LEAST_LOAD else None


def _figures(ground: Ground, able: Callable[[Floats], Ability], load: Line) -> _Figures:
    design = np.array([ground.need.design])
    mild = np.array([AT_47_F])
    cold = able(design)
    return _Figures(
        load=float(load(design)[0]),
        mild_load=float(load(mild)[0]),
        most=float(cold.most[0]),
        least=float(cold.least[0]),
        mild_least=float(able(mild).least[0]),
        balance=balance_point(
            lambda outdoor: able(outdoor).most,
            load,
            warm=ground.need.home.thermostat.wanted,
            cold=ground.coldest,
        ),
    )


def _head_fit(
    ground: Ground, head: PlacedHead, rooms: tuple[str, ...], hours: MachineHours | None
) -> MachineFit:
    found = _figures(ground, partial(head_ability, ground, head), ground.rooms_load(rooms))
    checks = _checks(found, hours, head.unit)
    if found.coverage is not None:
        checks.append(rules.check(rules.HEAD_NOMINAL, head.size / found.load))
    height = mounting.hung_at(head.mounting_height)
    over = mounting.sensor_reads_over(head.mounting_height, ground.difference)
    return _heat_pump_fit(
        _Named("head", head.room, rooms, head.unit, head.size, ground.system),
        found,
        hours,
        tuple(checks),
        height=height,
        over=over,
    )


def _shared_fit(
    ground: Ground, unit: HeatPumpUnit, served: Mapping[str, str], hours: MachineHours | None
) -> MachineFit:
    """An outdoor unit against the rooms of all its heads."""
    rooms = tuple(room for head in unit.rooms for room in _rooms_of(head, served))
    found = _figures(ground, partial(shared_ability, ground, unit), ground.rooms_load(rooms))
    return _heat_pump_fit(
        _Named("shared outdoor unit", unit.room, rooms, unit, unit.size, ground.system),
        found,
        hours,
        tuple(_checks(found, hours, unit)),
    )


def _ducted_fit(ground: Ground, unit: HeatPumpUnit, hours: MachineHours) -> MachineFit:
    assert ground.duct_load is not None
    found = _figures(ground, partial(ducted_ability, ground, unit), ground.duct_load)
    rooms = tuple(room.name for room in ground.need.home.rooms)
    return _heat_pump_fit(
        _Named("ducted heat pump", unit.room, rooms, unit, unit.size, ground.system),
        found,
        hours,
        tuple(_checks(found, hours, unit)),
    )


@dataclass(frozen=True)
class _Named:
    kind: MachineKind
    room: str
    heats: tuple[str, ...]
    unit: HeatPumpUnit
    size: float
    system: System


def _heat_pump_fit(
    named: _Named,
    found: _Figures,
    hours: MachineHours | None,
    checks: tuple[RuleCheck, ...],
    *,
    height: float | None = None,
    over: float | None = None,
) -> MachineFit:
    return MachineFit(
        kind=named.kind,
        room=named.room,
        equipment_class=named.unit.equipment_class,
        single_speed=single_speed(named.unit.equipment_class),
        nominal_kbtu_h=named.size / W_PER_KBTU_H,
        heats=named.heats,
        stops_below_degf=fahrenheit(_stops_below(named.unit, named.system)),
        load_btu_h=found.load * BTU_H,
        load_at_47f_btu_h=found.mild_load * BTU_H,
        maximum_at_design_btu_h=found.most * BTU_H,
        minimum_at_design_btu_h=found.least * BTU_H,
        minimum_at_47f_btu_h=found.mild_least * BTU_H,
        coverage=found.coverage,
        balance_degf=None if found.balance is None else fahrenheit(found.balance),
        heating_hours=hours.heating_hours if hours else None,
        below_minimum_hours=hours.below_minimum_hours if hours else None,
        at_maximum_hours=hours.at_maximum_hours if hours else None,
        mounting_height_ft=None if height is None else height * FT,
        is_mounted_high=height is not None and height > mounting.HIGH,
        sensor_reads_over_degf=None if over is None else over * 1.8,
        checks=checks,
    )


def _stops_below(unit: HeatPumpUnit, system: System) -> float:
    """Outdoor temperature [degC] below which a unit does not run or is not known to."""
    model = machine_of(unit)
    stops = max(model.cut_out, model.rated_down_to)
    if unit is system.ducted_unit and system.compressor_lockout is not None:
        return max(stops, system.compressor_lockout)
    return stops


def _checks(found: _Figures, hours: MachineHours | None, unit: HeatPumpUnit) -> list[RuleCheck]:
    """The limits for a machine that slows down, or the one for a machine of a single speed."""
    if single_speed(unit.equipment_class):
        if found.balance is None:
            return []
        return [rules.check(rules.SINGLE_SPEED_BALANCE, fahrenheit(found.balance))]
    checks = []
    if found.coverage is not None:
        checks.append(rules.check(rules.MAXIMUM_AT_DESIGN, found.coverage))
    if found.mild_load > LEAST_LOAD:
        checks.append(rules.check(rules.MINIMUM_AT_47_F, found.mild_least / found.mild_load))
    if hours is not None and hours.heating_hours > 0:
        share = hours.below_minimum_hours / hours.heating_hours
        checks.append(rules.check(rules.BELOW_MINIMUM, share))
    return checks


def _resistance_fits(ground: Ground) -> list[MachineFit]:
    """Furnace, strips and room heaters."""
    system, design = ground.system, np.array([ground.need.design])
    everywhere = tuple(room.name for room in ground.need.home.rooms)
    thermostat = system.thermostat_room or ""
    found = []
    if ground.duct_load is not None and system.furnace_output > 0.0:
        load = ground.duct_load
        fit = _resistance_fit(
            ground, "furnace", thermostat, everywhere, system.furnace_output, load
        )
        found.append(fit)
    if ground.duct_load is not None and system.strip_output > 0.0:
        output, load = system.strip_output, ground.duct_load
        fit = _resistance_fit(ground, "strips", thermostat, everywhere, output, load)
        found.append(replace(fit, checks=_strip_checks(ground, float(load(design)[0]))))
    for heater in system.heaters:
        load = ground.rooms_load((heater.room,))
        found.append(
            _resistance_fit(ground, "room heater", heater.room, (heater.room,), heater.output, load)
        )
    return found


def _strip_checks(ground: Ground, load: float) -> tuple[RuleCheck, ...]:
    """Strips cover what the heat pump lacks of a load [W], not all of it."""
    system = ground.system
    if load <= LEAST_LOAD or system.ducted_unit is None:
        return ()
    design = np.array([ground.need.design])
    pump = float(ducted_ability(ground, system.ducted_unit, design).most[0])
    return (
        rules.check(rules.WITH_STRIPS, (pump + system.strip_output) / load),
        rules.check(rules.STRIPS, system.strip_output / load),
    )


def _resistance_fit(
    ground: Ground, kind: MachineKind, room: str, heats: tuple[str, ...], output: float, load: Line
) -> MachineFit:
    cold = float(load(np.array([ground.need.design]))[0])
    balance = balance_point(
        lambda outdoor: np.full(len(outdoor), output),
        load,
        warm=ground.need.home.thermostat.wanted,
        cold=ground.coldest,
    )
    return MachineFit(
        kind=kind,
        room=room,
        equipment_class="",
        single_speed=False,
        nominal_kbtu_h=None,
        heats=heats,
        stops_below_degf=None,
        load_btu_h=cold * BTU_H,
        load_at_47f_btu_h=float(load(np.array([AT_47_F]))[0]) * BTU_H,
        maximum_at_design_btu_h=output * BTU_H,
        minimum_at_design_btu_h=None,
        minimum_at_47f_btu_h=None,
        coverage=output / cold if cold > LEAST_LOAD else None,
        balance_degf=None if balance is None else fahrenheit(balance),
        heating_hours=None,
        below_minimum_hours=None,
        at_maximum_hours=None,
        mounting_height_ft=None,
        is_mounted_high=False,
        sensor_reads_over_degf=None,
        checks=(_electric_check(kind, output, cold),) if cold > LEAST_LOAD else (),
    )


def _electric_check(kind: MachineKind, output: float, load: float) -> RuleCheck:
    """A furnace by the rule for furnaces; a room heater must cover its room."""
    if kind == "room heater":
        return rules.check(rules.ROOM_HEATER, output / load)
    return rules.electric_heat(output, load)
