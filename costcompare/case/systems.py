"""From a checked document to systems: today's equipment and that of every option."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from costcompare.case.defaults import house_default
from costcompare.case.document import (
    BackupTable,
    Document,
    OptionTable,
)
from costcompare.case.ducts import ducts_of
from costcompare.case.facts import (
    Blower,
    HeatPumpUnit,
    Home,
    RoomHeater,
    System,
)
from costcompare.case.heat_pumps import field_factor, unit_of
from costcompare.case.ledger import Ledger
from costcompare.case.paths import join
from costcompare.case.setup import Setup
from costcompare.units import parse

HEATER_STEP = 250.0
"""[W] room heaters come in steps of this size (common practice, no source)"""
TON = parse("1 ton", "capacity")
"""[W]"""


def today_system(document: Document, home: Home, ledger: Ledger) -> System:
    """The system in the house now."""
    table = document.today
    return _system(Setup(document, home, ledger, "today", table.kind, table, None))


def option_system(
    option: OptionTable, document: Document, home: Home, *, today: System, ledger: Ledger
) -> System:
    """The system of an option; ``document``, ``home`` and ``today`` are after its ``set``."""
    if option.kind == "improve":
        return today
    path = join(["options", option.name])
    return _system(Setup(document, home, ledger, path, option.kind, option, today))


def _system(setup: Setup) -> System:
    bare = System(
        setup.kind,
        thermostat_room=_thermostat_room(setup),
        field_factor=field_factor(setup.document),
    )
    if setup.kind == "electric furnace":
        system = _with_furnace(bare, setup)
    elif setup.kind == "ducted heat pump":
        system = _with_ducted_unit(bare, setup)
    elif setup.kind == "ductless heat pump":
        system = replace(bare, heads=_units(setup))
    elif setup.kind == "room heaters":
        system = replace(bare, heaters=_heaters(setup))
    else:
        system = bare
    if setup.table.backup is not None:
        system = _with_backup(system, setup, setup.table.backup)
    left_open = bool(setup.table.old_ducts_left_open) and system.ducts is None
    return replace(
        system,
        old_ducts_left_open=left_open,
        compressor_lockout=setup.table.compressor_lockout,
        recovery_hours=setup.table.recovery_hours or 0,
    )


def _thermostat_room(setup: Setup) -> str:
    """As stated, as today, the hall, or the first room."""
    names = [room.name for room in setup.home.rooms]
    if setup.table.thermostat_room is not None:
        return setup.table.thermostat_room
    if setup.today is not None and setup.today.thermostat_room in names:
        return str(setup.today.thermostat_room)
    room = next((name for name in names if "hall" in name.lower()), names[0])
    if setup.kind in {"electric furnace", "ducted heat pump"}:
        setup.ledger.note(f"{setup.path}.thermostat_room", room, "judgement: the hall")
    return room


def _with_furnace(system: System, setup: Setup) -> System:
    output = setup.table.output
    if output is None and setup.today is not None and setup.today.furnace_output > 0.0:
        output = setup.today.furnace_output
    output = output or 0.0
    flow = output / 1000.0 * setup.default("blower.airflow_per_output")
    return _with_air_side(replace(system, furnace_output=output), setup, flow)


def _with_ducted_unit(system: System, setup: Setup) -> System:
    unit = _units(setup)[0]
    flow = unit.size / TON * setup.default("blower.airflow_per_capacity")
    return _with_air_side(replace(system, ducted_unit=unit), setup, flow)


def _with_air_side(system: System, setup: Setup, usual_airflow: float) -> System:
    """The system with its blower, ducts and registers."""
    blower = _blower(system, setup, usual_airflow)
    before = setup.today.ducts if setup.today else None
    return replace(
        system,
        blower=blower,
        ducts=ducts_of(setup, setup.table.ducts, before, blower.airflow),
        registers=_registers(setup),
    )


def _blower(system: System, setup: Setup, usual_airflow: float) -> Blower:
    """Stated, else today's airflow; a modulating heat pump brings a fan of its own."""
    table = setup.table.blower
    before = setup.today.blower if setup.today else None
    unit = system.ducted_unit
    variable = table.variable if table else None
    if variable is None:
        variable = unit is not None and unit.equipment_class == "ducted variable"
    airflow = table.airflow if table else None
    if airflow is None and before is not None:
        airflow = before.airflow
    if airflow is None:
        per = "blower.airflow_per_capacity" if unit else "blower.airflow_per_output"
        source = house_default(per, setup.home.house.built).source
        airflow = setup.ledger.filled(
            f"{setup.path}.blower.airflow", usual_airflow, "airflow", source=source
        )
    power = table.power if table else None
    if power is None and before is not None and variable == before.variable:
        power = before.power * airflow / before.airflow
    if power is None:
        per = "blower.variable_power_per_airflow" if variable else "blower.power_per_airflow"
        row = house_default(per, setup.home.house.built)
        watts = row.number * airflow / parse("1 cfm", "airflow")
        power = setup.ledger.filled(f"{setup.path}.blower.power", watts, "power", source=row.source)
    return Blower(airflow, power, variable)


def _registers(setup: Setup) -> Mapping[str, float]:
    """Stated shares brought to a sum of 1, else today's, else by floor area."""
    shares = setup.table.ducts.registers if setup.table.ducts else None
    if shares:
        total = sum(shares.values())
        return {room: share / total for room, share in shares.items() if share > 0.0}
    if setup.today is not None and setup.today.registers:
        return setup.today.registers
    row = house_default("registers", setup.home.house.built)
    setup.ledger.note(f"{setup.path}.ducts.registers", row.text, row.source)
    area = sum(room.floor_area for room in setup.home.rooms)
    return {room.name: room.floor_area / area for room in setup.home.rooms}


def _units(setup: Setup) -> tuple[HeatPumpUnit, ...]:
    room = _thermostat_room(setup)
    return tuple(
        unit_of(setup, table, f"{setup.path}.units.{number}", room)
        for number, table in enumerate(setup.table.units or [], 1)
    )


def _heaters(setup: Setup) -> tuple[RoomHeater, ...]:
    """The heaters of a home that is heated by them: as listed, or one in every room."""
    rooms = {room.name: room.floor_area for room in setup.home.rooms}
    listed = setup.table.heaters
    if listed is None:
        names = list(rooms)
        setup.ledger.note(f"{setup.path}.heaters", "one in every room", "judgement")
        stated: list[tuple[str, float | None, float | None]] = [(n, None, None) for n in names]
    else:
        stated = [(h.room, h.output, h.setpoint) for h in listed]
    area = sum(rooms[name] for name, output, _ in stated if output is None)
    row = house_default("heater_output_per_area", setup.home.house.built)
    per_area = row.number / parse("1 ft2", "area")
    heaters = []
    for name, output, setpoint in stated:
        size = output
        if size is None and setup.table.output is not None:
            size = setup.table.output * rooms[name] / area
        elif size is None:
            size = math.ceil(per_area * rooms[name] / HEATER_STEP) * HEATER_STEP
            path = f"{setup.path}.heaters.{join([name])}.output"
            setup.ledger.filled(path, size, "output", source=row.source)
        heaters.append(RoomHeater(name, size, setpoint))
    return tuple(heaters)


def _with_backup(system: System, setup: Setup, backup: BackupTable) -> System:
    if backup.kind == "keep furnace":
        return _with_kept_furnace(system, setup, backup)
    if backup.kind == "strips":
        size = setup.fill(backup.size, "backup.size", "backup.strip_size")
        gap = setup.fill(backup.gap, "backup.gap", "backup.strip_gap")
        return replace(system, strip_output=size, strip_lockout=backup.lockout, strip_gap=gap)
    if backup.kind == "none":
        return system
    rooms = list(backup.rooms or ([backup.room] if backup.room else []))
    if not rooms:
        served = {room for unit in system.heads for room in unit.rooms}
        rooms = [room.name for room in setup.home.rooms if room.name not in served]
    size = setup.fill(backup.size, "backup.size", "backup.heater_size")
    heaters = tuple(RoomHeater(room, size, backup.setpoint) for room in rooms)
    return replace(system, heaters=(*system.heaters, *heaters))


def _with_kept_furnace(system: System, setup: Setup, backup: BackupTable) -> System:
    """Today's furnace stays with its ducts, behind a thermostat of its own."""
    setpoint = backup.setpoint
    if setpoint is None:
        row = house_default("backup.furnace_below_wanted", setup.home.house.built)
        lower = setup.home.thermostat.wanted - row.number
        path = f"{setup.path}.backup.setpoint"
        setpoint = setup.ledger.filled(path, lower, "temperature", source=row.source)
    today = setup.today
    if today is None:
        flow = (setup.table.output or 0.0) / 1000.0 * setup.default("blower.airflow_per_output")
        furnace = replace(system, furnace_output=setup.table.output or 0.0)
        return replace(_with_air_side(furnace, setup, flow), furnace_setpoint=setpoint)
    return replace(
        system,
        furnace_output=today.furnace_output,
        furnace_setpoint=setpoint,
        blower=today.blower,
        ducts=today.ducts,
        registers=today.registers,
        thermostat_room=today.thermostat_room,
    )
