"""Cautions about everything that burns: flues, the vents they need, and open fires."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from costcompare.case.facts import Case, Home, System
from costcompare.cautions.seen import CFM, Seen, all_named, named
from costcompare.comparison import Caution
from costcompare.physics.air import AIR_HEAT_CAPACITY
from costcompare.physics.infiltration import leakage_coefficient
from costcompare.simulation.exhaust import burning
from costcompare.simulation.plant import outside_part

SPILLS_FROM = (2.0, 5.0)
"""[Pa] below outdoors at which natural-draught water heaters and furnaces may spill (tables
quoted by a contractor; local programmes differ)"""
ADDED_SHARE = 0.5
"""Share of a draught that is air leaking in more: half-fan rule of Palmiter and Bond 1991 (from
memory), while the draught is less than twice the leakage"""
OPEN_FIRE = 50.0 * CFM
"""[m3/s] of draught from which a fire counts as open, not as a stove (judgement)"""


def appliances(case: Case, today: Seen, options: Sequence[Seen]) -> list[Caution]:
    """Pressures change; what burns must be tested, where there is or may be something."""
    changes = [option for option in options if changes_pressure(today, option)]
    if case.home.house.flue or case.home.fireplace is not None:
        return [_with_a_flue(today, changes)]
    said = any(fact.path == "house.flue" and fact.known != "guessed" for fact in case.facts)
    if said or not changes:
        return []
    return [
        Caution(
            "Burning appliances",
            "Ask whether anything burns fuel or wood in the house. If so, have draught and "
            "carbon monoxide tested before and after: tighter ducts and floors change pressures.",
            f"ducts, floor or leaks change with {all_named(changes)}, and the case does not say "
            "whether there is a flue",
        )
    ]


def _with_a_flue(today: Seen, changes: Sequence[Seen]) -> Caution:
    figures = [f"{pressure:.1f} Pa with {name}" for name, pressure in _pressures(today, changes)]
    because = "the house has a flue"
    if figures:
        low, high = SPILLS_FROM
        because += (
            f"; with the fans of the case and the blower running the rooms are below outdoors by "
            f"about {', '.join(figures)}, and natural-draught appliances may spill from {low:.0f} "
            f"to {high:.0f} Pa on (quoted from the trade; local programmes differ)"
        )
    return Caution(
        "Burning appliances",
        "Have a certified technician test draught and carbon monoxide before and after the "
        "work, with every fan running and doors shut. Keep carbon monoxide alarms working.",
        because,
    )


def _pressures(today: Seen, changes: Sequence[Seen]) -> list[tuple[str, float]]:
    found = []
    for name, seen in (("today’s system", today), *((named(o), o) for o in changes)):
        pressure = depressurisation(seen.home, seen.system)
        if pressure is not None:
            found.append((name, pressure))
    return found


def depressurisation(home: Home, system: System) -> float | None:
    """Rooms below outdoors [Pa] with every fan and the blower on, no wind and no stack.

    What fans and unbalanced duct leaks take out comes in through the leaks of the blower
    door; 0 where more is brought in, None where the case has no blower-door flow.
    """
    leak = home.house.leakage
    if not leak.flow_at_50_pa:
        return None
    taken = sum(fan.airflow for fan in home.house.fans)
    if system.ducts is not None and system.blower is not None:
        ducts = outside_part(system.ducts)
        taken += (ducts.supply_leakage - ducts.return_leakage) * system.blower.airflow
    coefficient = leakage_coefficient(leak.flow_at_50_pa, leak.exponent)
    return float((max(taken, 0.0) / coefficient) ** (1.0 / leak.exponent))


def changes_pressure(today: Seen, option: Seen) -> bool:
    """Whether an option touches ducts, floor, leaks or vents."""
    before, after = today.home, option.home
    return (
        option.system.ducts != today.system.ducts
        or before.house.leakage != after.house.leakage
        or before.house.constructions.floor != after.house.constructions.floor
        or before.crawlspace != after.crawlspace
    )


def closed_vents(today: Seen, options: Sequence[Seen]) -> list[Caution]:
    """Closed vents where something burns."""
    closed = [
        seen
        for seen in (today, *options)
        if seen.home.crawlspace is not None
        and seen.home.crawlspace.vents == "closed"
        and (seen.home.house.flue or seen.home.fireplace is not None)
    ]
    if not closed:
        return []
    return [
        Caution(
            "Closed vents and burning appliances",
            "Where an appliance under the floor burns fuel, it takes its air through the vents. "
            "Do not close them before a licensed trade has seen to its air and its flue.",
            "the house has a flue and its vents are closed"
            if closed[0] is today
            else f"the house has a flue and the vents are closed with {all_named(closed)}",
        )
    ]


def open_fire(today: Seen) -> list[Caution]:
    """What an open fire draws out of the house against what it gives."""
    fire = today.home.fireplace
    if fire is None or not fire.used or fire.draught < OPEN_FIRE:
        return []
    year = today.year
    burns = burning(fire, today.home.site.time_zone, year.index)
    room = year.room_temperature[:, year.room_names.index(fire.room)]
    warmer = np.maximum(room - year.outdoor_temperature, 0.0)
    drawn = AIR_HEAT_CAPACITY * fire.draught * float(warmer[burns].sum()) / 1000.0
    given = fire.heat * float(burns.sum()) / 1000.0
    takes = (
        "takes more heat out of the house than it gives"
        if ADDED_SHARE * drawn > given
        else "takes out a good part of the heat it gives"
    )
    return [
        Caution(
            "The open fire",
            f"An open fire {takes}. Close the damper when it is out, once the ash is cold.",
            f"in the hours it burns the chimney draws about {drawn:,.0f} kWh of heat a year, half "
            f"of which would have leaked out by itself, and the fire gives about {given:,.0f} kWh",
        )
    ]
