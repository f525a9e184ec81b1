"""The machines of an option as a table, and what of them lies outside the trade's limits."""

from __future__ import annotations

from costcompare.sizing import ChoiceFit, DesignConditions, MachineFit
from costcompare.views import numbers
from costcompare.views.report.catalogue import Catalogue
from costcompare.views.report.pieces import Cell, Point, Table
from costcompare.views.wording.machines import check_text
from costcompare.views.wording.naming import capital, listed

NO_BREAK = "\N{NO-BREAK SPACE}"


def machine_table(fit: ChoiceFit, design: DesignConditions, words: Catalogue) -> Table:
    """Every machine against its load: most and least, and the hours on and off."""
    cold, mild = numbers.degrees(design.outdoor_degf), numbers.degrees(47.0)
    unit = numbers.heat_unit()
    head = (
        words.machine,
        words.load_at.format(cold, unit),
        words.most_at.format(cold, unit),
        words.covers,
        words.load_at.format(mild, unit),
        words.least_at.format(mild, unit),
        words.below_least,
        words.at_most,
        words.balance,
    )
    return Table(
        "machines",
        words.machines_table,
        tuple(Cell(text) for text in head),
        tuple(_row(machine, words) for machine in fit.machines),
        words.machines_note,
    )


def _row(machine: MachineFit, words: Catalogue) -> tuple[Cell, ...]:
    is_pump = machine.minimum_at_47f_btu_h is not None
    balance = numbers.MISSING
    if is_pump:
        degf = machine.balance_degf
        balance = words.always_covers if degf is None else numbers.degrees(degf)
    return (
        Cell(machine_name(machine, words)),
        Cell(numbers.heat(machine.load_btu_h)),
        Cell(numbers.heat(machine.maximum_at_design_btu_h), strong=True),
        Cell(numbers.MISSING if machine.coverage is None else numbers.percent(machine.coverage)),
        Cell(numbers.heat(machine.load_at_47f_btu_h)),
        Cell(_heat(machine.minimum_at_47f_btu_h)),
        Cell(_share(machine.below_minimum_hours, machine.heating_hours)),
        Cell(_share(machine.at_maximum_hours, machine.heating_hours)),
        Cell(balance),
    )


def machine_name(machine: MachineFit, words: Catalogue) -> str:
    """What it is, in which room, of which nominal size."""
    name: str = machine.kind
    if machine.kind in ("head", "room heater"):
        name = words.machine_in.format(machine.room, machine.kind)
    if machine.nominal_kbtu_h is not None:
        name = f"{name}, {numbers.nominal(machine.nominal_kbtu_h)}"
    return capital(name)


def outside_points(fit: ChoiceFit, words: Catalogue) -> list[Point]:
    """Limits of the trade that are not kept, machine by machine."""
    points = []
    for machine in fit.machines:
        broken = [check_text(check) for check in machine.checks if not check.is_kept]
        if broken:
            text = words.outside.format(listed(broken))
            points.append(Point(machine_name(machine, words), text))
    broken = [check_text(check) for check in fit.checks if not check.is_kept]
    if broken:
        points.append(Point(words.all_heads, words.outside.format(listed(broken))))
    return points


def _heat(btu_h: float | None) -> str:
    return numbers.MISSING if btu_h is None else numbers.heat(btu_h)


def _share(hours: int | None, of: int | None) -> str:
    """So many hours and their share of the hours of heating."""
    if hours is None or not of:
        return numbers.MISSING
    # On one line: a share alone below its hours would look like a figure of its own.
    return f"{numbers.count(hours)} ({numbers.percent(hours / of)})".replace(" ", NO_BREAK)
