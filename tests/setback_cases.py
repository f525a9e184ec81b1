"""Named cases of a night setback of 8 F, for the test and for docs/setback.md.

``python -m tests.setback_cases`` prints the table of that page.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache
from typing import Any

import numpy as np

from costcompare import typical_year
from costcompare.case import case_from_document
from costcompare.case.facts import Case, HeatPumpUnit, RoomHeater, System
from costcompare.simulation import HourlyResult, Setpoints, simulate_home
from costcompare.weather import Weather

KBTU_H = 293.07107  # [W]
DAY, SETBACK, GAP = 20.0, 8.0 / 1.8, 2.0 / 1.8  # [degC], [K]
LEFT_ON = (66.0 - 32.0) / 1.8  # [degC] of heaters that nobody turns down
PLACES = {"cool marine": (48.8, -122.5), "cold inland": (47.49, -117.59)}
NIGHT = np.array([hour >= 22 or hour < 6 for hour in range(24)])


def document(place: str) -> dict[str, Any]:
    """1,900 ft2 of 1975 with old crawlspace ducts, the program's defaults else."""
    latitude, longitude = PLACES[place]
    return {
        "site": {"latitude": latitude, "longitude": longitude},
        "house": {
            "floor_area": "1900 ft2",
            "storeys": 1,
            "bedrooms": 3,
            "built": 1975,
            "foundation": "vented crawlspace",
            "people": 3,
        },
        "thermostat": {"day": "68 F", "night": "68 F", "wanted": "68 F"},
        "today": {
            "kind": "electric furnace",
            "output": "20 kW",
            "ducts": {"condition": "old, never sealed"},
        },
        "tariff": {"price": "0.12 $/kWh"},
    }


@cache
def case(place: str) -> Case:
    return case_from_document(document(place))


@cache
def weather(place: str) -> Weather:
    return typical_year(*PLACES[place])


def _heat_pump(today: System, size: float, **more: Any) -> System:
    unit = HeatPumpUnit("ducted single-speed", size * KBTU_H, today.thermostat_room or "")
    return replace(
        today,
        kind="ducted heat pump",
        furnace_output=0.0,
        ducted_unit=unit,
        strip_output=15_000.0,
        **more,
    )


def _heads(today: System, *, heaters: bool) -> System:
    rooms = (("living room", 18.0), ("bedroom 1", 9.0), ("bedroom 3", 9.0))
    units = tuple(
        HeatPumpUnit("single-zone cold-climate", size * KBTU_H, room) for room, size in rooms
    )
    system = System("ductless heat pump", thermostat_room=today.thermostat_room, heads=units)
    if heaters:
        helped = tuple(RoomHeater(room, 3000.0, LEFT_ON) for room, _ in rooms)
        system = replace(system, heaters=helped)
    return system


def systems(place: str) -> dict[str, System]:
    today = case(place).today
    return {
        "furnace": today,
        "heat pump, strips free, gap 2 F": _heat_pump(today, 36.0, strip_gap=GAP),
        "the same, small machine": _heat_pump(today, 24.0, strip_gap=GAP),
        "heat pump, ramp of 4 h, strips locked above 30 F": _heat_pump(
            today, 36.0, strip_gap=GAP, strip_lockout=-1.11, recovery_hours=4
        ),
        "three heads": _heads(today, heaters=False),
        "three heads set back, heaters left at 66 F": _heads(today, heaters=True),
    }


@dataclass(frozen=True)
class Setback:
    """Electricity of a year, held and set back [kWh]."""

    held: float
    back: float
    held_backup: float
    back_backup: float

    @property
    def change(self) -> float:
        """Share of the heating electricity; negative where setting back saves."""
        return self.back / self.held - 1.0


def _bought(year: HourlyResult) -> tuple[float, float]:
    total = (year.heating + year.fan + year.standby).sum() / 1000.0
    return float(total), float(year.backup.sum()) / 1000.0


@cache
def setback(place: str, name: str) -> Setback:
    """A case held at 68 F day and night, and set back by 8 F from 22 to 6 o'clock."""
    system, home = systems(place)[name], case(place).home
    found = []
    for night in (DAY, DAY - SETBACK):
        profile = np.where(NIGHT, night, DAY)
        # Heaters with settings of their own keep them; heads and furnace follow the profile.
        setpoints = Setpoints(profile, 26.0, profile)
        found.append(_bought(simulate_home(home, system, weather(place), setpoints)))
    (held, held_backup), (back, back_backup) = found
    return Setback(held, back, held_backup, back_backup)


def main() -> None:
    print("| place | system | held, kWh | set back, kWh | of it resistance | change |")
    print("|---|---|---|---|---|---|")
    for place in PLACES:
        for name in systems(place):
            s = setback(place, name)
            resistance = f"{s.held_backup:,.0f} → {s.back_backup:,.0f}"
            cells = (place, name, f"{s.held:,.0f}", f"{s.back:,.0f}", resistance)
            print("| " + " | ".join(cells) + f" | {s.change:+.1%} |")


if __name__ == "__main__":
    main()
