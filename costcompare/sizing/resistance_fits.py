"""Furnace, strips and room heaters against what they have to heat."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from costcompare.sizing import rules
from costcompare.sizing.abilities import LEAST_LOAD, Ground, Line, ducted_ability
from costcompare.sizing.capability import AT_47_F, balance_point
from costcompare.sizing.results import BTU_H, MachineFit, MachineKind, RuleCheck
from costcompare.summary import fahrenheit


def resistance_fits(ground: Ground) -> list[MachineFit]:
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
