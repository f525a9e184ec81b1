"""Each machine of a system against what it has to heat."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial

import numpy as np
from numpy.typing import NDArray

from costcompare.case.facts import HeatPumpUnit, System
from costcompare.equipment.classes import single_speed
from costcompare.equipment.machine import W_PER_KBTU_H
from costcompare.simulation import HourlyResult
from costcompare.simulation.results import MachineHours
from costcompare.sizing import mounting, rules
from costcompare.sizing.abilities import (
    LEAST_LOAD,
    Ground,
    Line,
    PlacedHead,
    ducted_ability,
    head_ability,
    placed_heads,
    shared_ability,
    stops_below,
)
from costcompare.sizing.capability import AT_47_F, Ability, balance_point
from costcompare.sizing.resistance_fits import resistance_fits
from costcompare.sizing.results import BTU_H, FT, MachineFit, MachineKind, RuleCheck
from costcompare.sizing.served import nearest_head
from costcompare.summary import fahrenheit

Floats = NDArray[np.float64]


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
    found += resistance_fits(ground)
    return tuple(found)


def _rooms_of(head: str, served: Mapping[str, str]) -> tuple[str, ...]:
    """The room of a head and those that depend on it."""
    return (head, *(room for room, nearest in served.items() if nearest == head))


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
        stops_below_degf=fahrenheit(stops_below(named.unit, named.system)),
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
