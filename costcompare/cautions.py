"""What to look out for before anybody touches the house; tied to the facts and the results.

Nothing here replaces a licensed trade, a local code or a test on site. The triggers are
common practice (no source) unless a source is named.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from costcompare.case.facts import Case, Home, System
from costcompare.comparison import Caution
from costcompare.simulation import HourlyResult

FREEZING = 0.0
"""[degC]"""
COLD_CRAWLSPACE_DROP = 1.5
"""[K] by which a colder crawlspace is worth a word (judgement)"""
COLD_ROOM = (64.4 - 32.0) / 1.8
"""[degC] 18 degC, the lowest indoor temperature of the WHO Housing and Health Guidelines
2018 (read in a reprint)"""
ASBESTOS_UNTIL = 1985
LEAD_PAINT_UNTIL = 1978
"""Years built that call for a look: EPA and CPSC advice to homeowners (from memory)"""
LARGE_STRIPS = 5000.0
"""[W] of resistance heat in a heat-pump choice that deserves a lockout (judgement)"""


@dataclass(frozen=True)
class Seen:
    """One option with its year at the warmth the family wants, beside today's."""

    name: str
    home: Home
    system: System
    year: HourlyResult


def cautions(case: Case, today: HourlyResult, options: Sequence[Seen]) -> tuple[Caution, ...]:
    """Every caution that the facts or the results call for, the most urgent first."""
    found: list[Caution] = []
    found += _people(case)
    found += _crawlspace(case, today, options)
    found += _old_materials(case, options)
    found += _machines(case, options)
    found += _too_cold(options)
    found += _rooms(options)
    found.append(
        Caution(
            "Power cuts",
            "Every choice here stops heating when the power is out. Ask what keeps one room "
            "warm in an outage.",
            "all the heat in this comparison is electric",
        )
    )
    return tuple(found)


def _people(case: Case) -> list[Caution]:
    setting = case.home.thermostat.day
    if setting >= COLD_ROOM:
        return []
    return [
        Caution(
            "Cold rooms and health",
            "Rooms this cool can harm babies, older people and anyone who is ill. Ask about "
            "the people in the house before any talk of saving, and do not turn down further.",
            f"the thermostat stands at {setting * 1.8 + 32:.0f} F, below the 64 F (18 C) that "
            "the World Health Organization names",
        )
    ]


def _crawlspace(case: Case, today: HourlyResult, options: Sequence[Seen]) -> list[Caution]:
    space = case.home.crawlspace
    now = today.space_temperature.get("crawlspace")
    if space is None or now is None:
        return []
    found: list[Caution] = []
    colder = _colder_crawlspaces(now, options)
    if colder:
        worst = max(colder, key=lambda entry: entry[2])
        name, coldest, hours, before = worst[0], worst[1], worst[2], int((now < FREEZING).sum())
        pipes = (
            "Insulate the water pipes and the floor in the same job; heat cable only of a "
            "product approved for the purpose, fitted by a licensed trade."
            if space.water_pipes
            else "Look for water pipes, traps and hose taps under the floor before the work."
        )
        found.append(
            Caution(
                "Pipes under the floor",
                f"With the ducts tight or gone the crawlspace runs colder. {pipes}",
                f"with “{name}” it falls to {coldest * 1.8 + 32:.0f} F and is below freezing "
                f"for {hours:,} hours of this year, against {before:,} today",
            )
        )
    if not space.ground_cover:
        found.append(
            Caution(
                "Damp and radon",
                "Cover the ground and mend drainage before vents are closed or the floor is "
                "insulated; test for radon before and after.",
                "the crawlspace has no ground cover, and a colder crawlspace is a damper one",
            )
        )
    return found


def _colder_crawlspaces(now: np.ndarray, options: Sequence[Seen]) -> list[tuple[str, float, int]]:
    colder = []
    for option in options:
        then = option.year.space_temperature.get("crawlspace")
        if then is not None and now.min() - then.min() > COLD_CRAWLSPACE_DROP:
            colder.append((option.name, float(then.min()), int((then < FREEZING).sum())))
    return colder


def _old_materials(case: Case, options: Sequence[Seen]) -> list[Caution]:
    built = case.home.house.built
    found = []
    touched = case.today.ducts is not None and any(
        option.system.ducts != case.today.ducts for option in options
    )
    if built <= ASBESTOS_UNTIL and touched:
        found.append(
            Caution(
                "Asbestos",
                "White tape, paper or cement on old ducts may hold asbestos. Do not cut, peel "
                "or cover it: have it tested by an accredited laboratory, and removed, if need "
                "be, by a licensed contractor.",
                f"the house was built in {built} and its ducts would be worked on",
            )
        )
    if touched:
        found.append(
            Caution(
                "Burning appliances",
                "Where anything burns fuel or wood in the house, have draught and carbon "
                "monoxide tested before and after: tighter ducts and floors change pressures.",
                "an option seals, changes or takes away ducts",
            )
        )
    return found


def _machines(case: Case, options: Sequence[Seen]) -> list[Caution]:
    found: list[Caution] = []
    if any(_has_heat_pump(o.system) for o in options):
        found += [
            Caution(
                "Electricity and refrigerant",
                "Circuits, disconnects and breakers are work for a licensed electrician under "
                "the local code; refrigerant is work for a certified technician. For mildly "
                "flammable refrigerants the manual of the unit gives the smallest room: check it.",
                "an option brings a heat pump",
            ),
            Caution(
                "A new line on the summer bill",
                "A heat pump can also cool. The summer bill then rises where there was no "
                "cooling before; it is in the figures.",
                "today's system does not cool"
                if not _has_heat_pump(case.today)
                else "a new machine may be used more",
            ),
        ]
    kept = [o.name for o in options if o.system.heads and o.system.furnace_output > 0.0]
    if kept:
        found.append(
            Caution(
                "The old furnace",
                "Set its thermostat well below the heads, or it goes on heating at full price.",
                f"“{kept[0]}” keeps it as backup",
            )
        )
    strips = [o.name for o in options if o.system.strip_output >= LARGE_STRIPS]
    if strips:
        found.append(
            Caution(
                "Strip heat",
                "Lock the strips out in mild weather and keep night setback small: otherwise "
                "they do the heat pump's work at the furnace's price.",
                f"“{strips[0]}” has strips behind its heat pump",
            )
        )
    return found


def _too_cold(options: Sequence[Seen]) -> list[Caution]:
    """Hours that are colder than a machine can stand, or than anything known of it."""
    found: list[Caution] = []
    for option in options:
        for machine in option.year.machines:
            stopped, unknown = machine.cut_out_hours, machine.not_rated_hours
            if stopped + unknown == 0:
                continue
            said = [f"{stopped:,} hours below its cut-out"] if stopped else []
            said += [f"{unknown:,} hours colder than its points reach"] if unknown else []
            found.append(
                Caution(
                    "Too cold for the machine",
                    "It is taken to give no heat then. Ask for its points at the lowest "
                    "temperature of the place, and plan other heat for these hours.",
                    f"“{option.name}”, machine in the {machine.name}: {' and '.join(said)} in "
                    "this year",
                )
            )
    return found


def _rooms(options: Sequence[Seen]) -> list[Caution]:
    for option in options:
        heated = {unit.room for unit in option.system.heads}
        heated |= {heater.room for heater in option.system.heaters}
        if not option.system.heads or option.system.ducts is not None:
            continue
        bare = [room.name for room in option.home.rooms if room.name not in heated]
        if bare:
            return [
                Caution(
                    "Rooms without heat of their own",
                    "They depend on open doors. Keep the doors open, or plan a small heater.",
                    f"with “{option.name}” this holds for: {', '.join(bare)}",
                )
            ]
    return []


def _has_heat_pump(system: System) -> bool:
    return bool(system.heads) or system.ducted_unit is not None
