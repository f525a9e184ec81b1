"""From the table of a unit to a heat pump's facts: class, size and points."""

from __future__ import annotations

from collections.abc import Sequence

from costcompare.case.defaults import house_default
from costcompare.case.document import Document, PointTable, UnitTable
from costcompare.case.facts import Head, HeatPumpUnit, System, UnitPoint
from costcompare.case.ledger import Ledger
from costcompare.case.setup import Setup
from costcompare.units import parse

USUAL_CLASS = {
    "ducted heat pump": "ducted variable",
    "ductless heat pump": "single-zone standard",
}
"""Whose cycling, standby and fan a machine of points has when it names no class (judgement)"""
NOMINAL_OVER_RATED = {"ducted heat pump": 1.0, "ductless heat pump": 1.0 / 1.15}
"""Nominal cooling over rated heating at 47 F (judgement, from typical listings)"""
AT_95, AT_47 = parse("95 F", "temperature"), parse("47 F", "temperature")
NEAR = 0.5
"""[K] within which a point counts as one at a standard temperature"""


def unit_of(setup: Setup, table: UnitTable, path: str, room: str) -> HeatPumpUnit:
    """One outdoor unit with its head; ``room`` is where it stands if the table names none."""
    points = tuple(_point(point) for point in table.points or [])
    name = table.equipment_class
    if name is None:
        name = USUAL_CLASS.get(setup.kind, "single-zone standard")
        source = "judgement: standby, cycling and fan of a machine that names no class"
        setup.ledger.note(f"{path}.class", name, source)
    return HeatPumpUnit(
        equipment_class=name,
        size=table.size if table.size is not None else _size(setup, points, path),
        room=table.heads[0].room if table.heads else table.room or room,
        setpoint=table.setpoint,
        mounting_height=table.mounting_height,
        points=points,
        points_include_defrost=bool(table.points_include_defrost),
        cut_out=table.cut_out,
        cut_in=table.cut_in,
        line_set=table.line_set,
        heads=tuple(
            Head(head.room, head.size, head.setpoint, head.mounting_height)
            for head in table.heads or []
        ),
    )


def _point(table: PointTable) -> UnitPoint:
    power = table.power
    if power is None:
        power = table.capacity / (table.cop or 1.0)
    return UnitPoint(table.mode or "heating", table.at, table.speed, table.capacity, power)


def _size(setup: Setup, points: Sequence[UnitPoint], path: str) -> float:
    """Nominal cooling [W]: the rated point at 95 F, else from the heating nearest to 47 F."""
    for point in points:
        rated = point.mode == "cooling" and point.speed == "rated"
        if rated and abs(point.outdoor - AT_95) <= NEAR:
            source = "the rated cooling point at 95 F"
            return setup.ledger.filled(f"{path}.size", point.capacity, "capacity", source=source)
    heating = [point for point in points if point.mode == "heating"]
    nearest = min(heating, key=lambda p: (p.speed != "rated", abs(p.outdoor - AT_47)))
    size = nearest.capacity * NOMINAL_OVER_RATED.get(setup.kind, 1.0)
    source = "judgement: nominal cooling from the rated heating point nearest to 47 F"
    return setup.ledger.filled(f"{path}.size", size, "capacity", source=source)


def field_factor(document: Document) -> float:
    """Efficiency of heat pumps in homes over that of their maps."""
    stated = document.equipment.field_factor
    built = document.house.built
    return stated if stated is not None else house_default("equipment.field_factor", built).number


def note_field_factor(document: Document, systems: Sequence[System], ledger: Ledger) -> None:
    """Show the factor among the facts where a heat pump uses it and the case does not say it."""
    if any(system.heads or system.ducted_unit is not None for system in systems):
        ledger.measure(document.equipment.field_factor, "equipment.field_factor")
