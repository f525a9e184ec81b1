"""What machines take from the panel, as information for a licensed electrician.

The amperes of heat pumps come from a table by size, not from a nameplate: the nameplate and
the local code decide.
"""

from __future__ import annotations

import math
from collections import Counter

from costcompare.case.facts import HeatPumpUnit, System
from costcompare.equipment.machine import W_PER_KBTU_H, rows
from costcompare.simulation import HourlyResult
from costcompare.sizing.results import Circuit, Electricity

VOLTS = 240.0
CONTINUOUS = 1.25
"""Wires and breakers of resistance heat are chosen for 125 % of its current (read: furnace
listings; National Electrical Code 424)"""
LARGEST_PART = 48.0
"""[A] heating loads above this are divided among circuits of at most 60 A (read: National
Electrical Code 424.22)"""
RESISTANCE = "National Electrical Code 424"


def furnace_amps(output: float) -> float:
    """Current of resistance heat [W] at 240 V [A]."""
    return output / VOLTS


def resistance_circuit(machine: str, output: float) -> Circuit:
    """The circuit of elements, strips or a room heater of so many watts."""
    amps = furnace_amps(output)
    return Circuit(
        machine=machine,
        kw=output / 1000.0,
        amps=amps,
        circuit_amps=CONTINUOUS * amps,
        parts=max(math.ceil(amps / LARGEST_PART - 1e-9), 1),
        breaker_low_amps=None,
        breaker_high_amps=None,
        known="read",
        source=RESISTANCE,
    )


def heat_pump_circuit(machine: str, unit: HeatPumpUnit) -> Circuit:
    """The circuit of an outdoor unit, by the table of sizes."""
    size = unit.size / W_PER_KBTU_H
    family = "ducted" if unit.equipment_class.startswith("ducted") else ""
    family = family or ("multi-zone" if unit.equipment_class.startswith("multi") else "single-zone")
    listed = [row for row in rows("circuits.csv") if row["family"] == family]
    row = next((r for r in listed if size <= float(r["to_kbtu_h"])), listed[-1])
    low = float(row["breaker_low_a"])
    return Circuit(
        machine=machine,
        kw=None,
        amps=None,
        circuit_amps=float(row["minimum_circuit_a"] or low),
        parts=1,
        breaker_low_amps=low,
        breaker_high_amps=float(row["breaker_high_a"]),
        known=row["known"],
        source=row["source"],
    )


def circuits_of(system: System) -> list[Circuit]:
    """Every circuit that a system's heat takes; blowers and controls come on top."""
    found = []
    if system.furnace_output > 0.0:
        kw = system.furnace_output / 1000.0
        found.append(resistance_circuit(f"electric furnace, {kw:g} kW", system.furnace_output))
    if system.ducted_unit is not None:
        found.append(
            heat_pump_circuit(
                f"ducted outdoor unit, {_size(system.ducted_unit)}", system.ducted_unit
            )
        )
    if system.strip_output > 0.0:
        kw = system.strip_output / 1000.0
        found.append(resistance_circuit(f"strips, {kw:g} kW", system.strip_output))
    for unit in system.heads:
        where = ", ".join(head.room for head in unit.heads) or unit.room
        found.append(heat_pump_circuit(f"outdoor unit for {where}, {_size(unit)}", unit))
    for heater in system.heaters:
        kw = heater.output / 1000.0
        found.append(resistance_circuit(f"heater in {heater.room}, {kw:g} kW", heater.output))
    return found


def _size(unit: HeatPumpUnit) -> str:
    return f"{unit.size / W_PER_KBTU_H:.0f} kBtu/h"


def electricity(
    before: System, after: System, *, today: HourlyResult, then: HourlyResult
) -> Electricity:
    """Circuits that go and come, and the highest hourly means of the year before and after."""
    old, new = Counter(circuits_of(before)), Counter(circuits_of(after))
    freed = tuple((old - new).elements())
    added = tuple((new - old).elements())
    return Electricity(
        freed=freed,
        added=added,
        freed_circuit_amps=sum(circuit.circuit_amps for circuit in freed),
        added_circuit_amps=sum(circuit.circuit_amps for circuit in added),
        peak_before_kw=float(today.electricity.max()) / 1000.0,
        peak_after_kw=float(then.electricity.max()) / 1000.0,
    )
