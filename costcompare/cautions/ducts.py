"""Cautions about ducts: left behind, sealed on one side, or blowing into a closed room."""

from __future__ import annotations

from collections.abc import Sequence

from costcompare.case.facts import Home, System
from costcompare.cautions.seen import CFM, Seen, all_named, named
from costcompare.comparison import Caution
from costcompare.simulation.plant import outside_part, reaching_air

LESS = 0.005
"""Share of the airflow by which leakage must change to count as work on it (judgement)"""
NOTICEABLE = 20.0 * CFM
"""[m3/s] into a closed room that is worth a word (judgement)"""


def abandoned(today: Seen, options: Sequence[Seen]) -> list[Caution]:
    """Ducts that a choice no longer uses."""
    old = today.system.ducts
    gone = [o for o in options if old is not None and o.system.ducts is None]
    if old is None or not gone or old.location == "inside":
        return []
    left_open = [o for o in gone if o.system.old_ducts_left_open]
    because = f"the ducts in the {old.location} go out of use with {all_named(gone)}"
    if left_open:
        because += f", and the case says that they stay open with {all_named(left_open)}"
    return [
        Caution(
            "Ducts left behind",
            "Cap and seal every boot at the floor or ceiling, and the open plenum, when the ducts "
            "go out of use. Open ones leak air and let damp and pests into the rooms.",
            because,
        )
    ]


def return_alone(today: Seen, options: Sequence[Seen]) -> list[Caution]:
    """Return leaks sealed while supply leaks stay."""
    old = today.system.ducts
    found = []
    for option in options:
        new = option.system.ducts
        if old is None or new is None or new.location != old.location:
            continue
        cut = old.return_leakage - new.return_leakage > LESS
        supply_cut = old.supply_leakage - new.supply_leakage > LESS
        if cut and not supply_cut and new.supply_leakage > new.return_leakage:
            found.append(option)
    if not found:
        return []
    figures = ", ".join(
        f"{named(option)} takes {_against(option.electricity_kwh - today.electricity_kwh)}"
        for option in found
    )
    return [
        Caution(
            "Sealing the return alone",
            "Seal the supply side first, or both. With the return tight and the supply leaking "
            "the blower draws more outdoor air into the rooms, and the bill can rise.",
            f"the return leaks would be cut and the supply leaks left: {figures} than today at "
            "the same warmth",
        )
    ]


def _against(kwh: float) -> str:
    return f"{abs(kwh):,.0f} kWh a year {'more' if kwh > 0.0 else 'less'}"


def closed_doors(today: Seen, options: Sequence[Seen]) -> list[Caution]:
    """Rooms with a register, a closed door and no way back to the return."""
    for seen in (today, *options):
        flows = air_shut_in(seen.home, seen.system)
        if not flows:
            continue
        rooms = ", ".join(f"{name} {flow / CFM:.0f} cfm" for name, flow in flows.items())
        return [
            Caution(
                "Closed doors",
                "Air blown into a closed room must find its way back to the return. Shut in, it "
                "leaks out through the walls while the rest of the house draws cold air in. Keep "
                "these doors open, or ask for a grille or a jumper duct.",
                f"the return is in the {seen.system.thermostat_room} and behind closed doors "
                f"the registers blow, at full speed: {rooms}",
            )
        ]
    return []


def air_shut_in(home: Home, system: System) -> dict[str, float]:
    """Supply air [m3/s] into each room whose every door is closed, the return room left out."""
    heated = system.furnace_output > 0.0 or system.ducted_unit is not None
    if system.ducts is None or system.blower is None or not heated:
        return {}
    ducts = outside_part(system.ducts)
    shares, lost = reaching_air(home, system, ducts)
    kept = (1.0 - ducts.supply_leakage) * (1.0 - lost) * system.blower.airflow
    ways: dict[str, list[str]] = {room.name: [] for room in home.rooms}
    for way in home.doorways:
        ways[way.first].append(way.state)
        ways[way.second].append(way.state)
    flows = {
        room.name: kept * float(shares[number])
        for number, room in enumerate(home.rooms)
        if room.name != system.thermostat_room
        and ways[room.name]
        and all(state == "closed" for state in ways[room.name])
    }
    return {name: flow for name, flow in flows.items() if flow > NOTICEABLE}
