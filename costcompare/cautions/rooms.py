"""Cautions about rooms that a choice leaves without heat, and about air to breathe."""

from __future__ import annotations

from collections.abc import Sequence

from costcompare.cautions.seen import Seen, degf, named, winter_mean
from costcompare.comparison import Caution

TIGHT = 5.0
"""[1/h] air changes at 50 Pa below which a fan for fresh air is asked for (judgement; energy
codes ask for one from 3 to 5 on, from memory)"""


def without_heat(options: Sequence[Seen]) -> list[Caution]:
    """Rooms with neither a head, a heater nor a register."""
    for option in options:
        system = option.system
        heated = {room for unit in system.heads for room in unit.rooms}
        heated |= {heater.room for heater in system.heaters}
        if not system.heads or system.ducts is not None:
            continue
        bare = [room.name for room in option.home.rooms if room.name not in heated]
        if bare:
            figures = ", ".join(f"{name} {degf(winter_mean(option, name))}" for name in bare)
            return [
                Caution(
                    "Rooms without heat of their own",
                    "They depend on open doors. Keep the doors open, or plan a small heater.",
                    f"with {named(option)} at the warmth you want they average in winter: "
                    f"{figures}",
                )
            ]
    return []


def fresh_air(today: Seen, options: Sequence[Seen]) -> list[Caution]:
    """An envelope that an option makes tight."""
    before = _air_changes(today)
    for option in options:
        after = _air_changes(option)
        if before is None or after is None or after >= before or after >= TIGHT:
            continue
        return [
            Caution(
                "Fresh air",
                "A tight house needs a fan that runs for fresh air: ask for one in the same job, "
                "sized by the local code.",
                f"with {named(option)} the rooms change their air {after:.1f} times an hour in a "
                f"blower-door test, against {before:.1f} today",
            )
        ]
    return []


def _air_changes(seen: Seen) -> float | None:
    """At 50 Pa [1/h]; None where the case has no blower-door flow."""
    flow = seen.home.house.leakage.flow_at_50_pa
    volume = sum(room.volume for room in seen.home.rooms)
    return None if flow is None else flow * 3600.0 / volume
