"""Cautions about the machines themselves, their controls and the trades they call for."""

from __future__ import annotations

from collections.abc import Sequence

from costcompare.case.facts import Case
from costcompare.cautions.seen import Seen, all_named, degf, named
from costcompare.comparison import Caution

LARGE_STRIPS = 5000.0
"""[W] of resistance heat behind a heat pump that deserves a lockout (judgement)"""
HIGH_LOCKOUT = (40.0 - 32.0) / 1.8
"""[degC] outdoors above which a lockout keeps little back (judgement)"""
SETBACK = 2.0
"""[K] by night from which recovery can call for strips (judgement)"""
NEW_COOLING = 20.0
"""[kWh a year] of cooling that is worth a word (judgement)"""


def electricity(today: Seen, options: Sequence[Seen]) -> list[Caution]:
    """New circuits."""
    new = [o for o in options if o.system != today.system and _new_machine(today, o)]
    if not new:
        return []
    peak = max(new, key=lambda option: float(option.year.electricity.max()))
    return [
        Caution(
            "Electricity",
            "Circuits, disconnects and breakers are work for a licensed electrician under the "
            "local code, who also says whether the panel is large enough.",
            f"new machines come with {all_named(new)}; the heaviest hour of the house goes from "
            f"{_peak_kw(today):.0f} kW to {_peak_kw(peak):.0f} kW with {named(peak)}",
        )
    ]


def _peak_kw(seen: Seen) -> float:
    return float(seen.year.electricity.max()) / 1000.0


def _new_machine(today: Seen, option: Seen) -> bool:
    before, after = today.system, option.system
    return (
        after.heads != before.heads
        or after.ducted_unit != before.ducted_unit
        or after.heaters != before.heaters
        or after.furnace_output > before.furnace_output
        or after.strip_output > before.strip_output
    )


def refrigerant(today: Seen, options: Sequence[Seen]) -> list[Caution]:
    """A heat pump that is not there today."""
    new = [o for o in options if o.has_heat_pump and _new_machine(today, o)]
    if not new:
        return []
    return [
        Caution(
            "Refrigerant",
            "Refrigerant is work for a certified technician. For mildly flammable ones the "
            "manual of the unit gives the smallest room that may hold it: check it.",
            f"a heat pump comes with {all_named(new)}",
        )
    ]


def old_furnace(options: Sequence[Seen]) -> list[Caution]:
    """A furnace kept behind heads, with a thermostat of its own."""
    kept = [o for o in options if o.system.heads and o.system.furnace_output > 0.0]
    if not kept:
        return []
    figures = ", ".join(
        f"{named(o)} keeps it{_set_to(o)} and it still takes "
        f"{float(o.year.backup.sum()) / 1000.0:,.0f} kWh a year"
        for o in kept
    )
    return [
        Caution(
            "The old furnace",
            "Set its thermostat well below the heads, and leave it there: otherwise it goes on "
            "heating at full price and the heads stand still.",
            figures,
        )
    ]


def _set_to(option: Seen) -> str:
    setpoint = option.system.furnace_setpoint
    return f" at {degf(setpoint)}" if setpoint is not None else ""


def strips(options: Sequence[Seen]) -> list[Caution]:
    """Strips that mild weather does not lock out."""
    free = [
        o
        for o in options
        if o.system.strip_output >= LARGE_STRIPS
        and (o.system.strip_lockout is None or o.system.strip_lockout > HIGH_LOCKOUT)
    ]
    if not free:
        return []
    return [
        Caution(
            "Strip heat",
            "Have the strips locked out in mild weather: otherwise they do the heat pump's work "
            "at the furnace's price.",
            f"the heat pump has strips and no lockout below 40 °F with {all_named(free)}",
        )
    ]


def setback(case: Case, options: Sequence[Seen]) -> list[Caution]:
    """A night setback in front of strips."""
    thermostat = case.home.thermostat
    depth = max(thermostat.day - thermostat.night, thermostat.wanted - thermostat.wanted_night, 0.0)
    with_strips = [o for o in options if o.system.strip_output >= LARGE_STRIPS]
    if depth < SETBACK or not with_strips:
        return []
    used = ", ".join(
        f"{float(o.year.backup.sum()) / 1000.0:,.0f} kWh with {named(o)}" for o in with_strips
    )
    return [
        Caution(
            "Night setback with strips",
            "Warming up in the morning can call for the strips and cost more than the night "
            "saved. Try a smaller setback, or let the heat pump start early.",
            f"the night is set {depth * 1.8:.0f} °F lower and the strips of a year take {used}",
        )
    ]


def summer(today: Seen, options: Sequence[Seen]) -> list[Caution]:
    """Cooling that was not there before."""
    before = float(today.year.cooling.sum()) / 1000.0
    more = [
        (o, cooling)
        for o in options
        if (cooling := float(o.year.cooling.sum()) / 1000.0) > before + NEW_COOLING
    ]
    if not more:
        return []
    figures = ", ".join(f"{cooling:,.0f} kWh with {named(option)}" for option, cooling in more)
    return [
        Caution(
            "A new line on the summer bill",
            "A heat pump can also cool, and the summer bill then rises. It is in the figures.",
            f"cooling takes {before:,.0f} kWh a year today, {figures}",
        )
    ]


def too_cold(options: Sequence[Seen]) -> list[Caution]:
    """Hours that are colder than a machine can stand, or than anything known of it."""
    lines = []
    for option in options:
        for machine in option.year.machines:
            stopped, unknown = machine.cut_out_hours, machine.not_rated_hours
            said = [f"{stopped:,} hours below its cut-out"] if stopped else []
            said += [f"{unknown:,} hours colder than its points reach"] if unknown else []
            if said:
                where = f"{named(option)}, machine in the {machine.name}"
                lines.append(f"{where}: {' and '.join(said)}")
    if not lines:
        return []
    return [
        Caution(
            "Too cold for the machine",
            "It is taken to give no heat then. Ask for its points at the lowest temperature of "
            "the place, and plan other heat for these hours.",
            f"this year has, with {'; '.join(lines)}",
        )
    ]
