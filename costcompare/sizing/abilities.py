"""What the machines of a system can give in a home, and what they are held against."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from costcompare.case.facts import HeatPumpUnit, System
from costcompare.simulation.machines import machine_of
from costcompare.sizing.capability import Ability, Outdoors, ability
from costcompare.sizing.needs import Need

Floats = NDArray[np.float64]
Line = Callable[[Floats], Floats]
"""[W] at outdoor temperatures [degC]"""

LEAST_LOAD = 50.0
"""[W] below which a load is none to speak of (judgement)"""


@dataclass(frozen=True)
class Ground:
    """What every machine of a choice is held against."""

    system: System
    need: Need
    duct_load: Line | None
    """[W] that the ducted machine must give to hold its thermostat, alone; None without one"""
    place: Outdoors
    coldest: float
    """[degC] down to which a balance point is looked for"""
    difference: float
    """[K] wanted warmth over outdoors, winter mean"""

    def house_load(self, outdoor: Floats) -> Floats:
        """Of all rooms [W]."""
        return self.need.heat_at(outdoor)

    def rooms_load(self, names: Sequence[str]) -> Line:
        """Of some rooms [W]."""
        order = [room.name for room in self.need.home.rooms]
        numbers = [order.index(name) for name in names]
        return lambda outdoor: self.need.heat_at(outdoor, numbers)


@dataclass(frozen=True)
class PlacedHead:
    """A head, the unit that feeds it, and its share of it when every head calls."""

    unit: HeatPumpUnit
    room: str
    size: float
    """[W] nominal cooling"""
    share: float
    setpoint: float | None
    mounting_height: float | None


def placed_heads(system: System) -> tuple[PlacedHead, ...]:
    """Every head of a system, in the order of its units."""
    found = []
    for unit in system.heads:
        total = max(unit.size, sum(head.size for head in unit.heads))
        found += [
            PlacedHead(
                unit, head.room, head.size, head.size / total, head.setpoint, head.mounting_height
            )
            for head in unit.heads
        ] or [PlacedHead(unit, unit.room, unit.size, 1.0, unit.setpoint, unit.mounting_height)]
    return tuple(found)


def head_ability(ground: Ground, head: PlacedHead, outdoor: Floats) -> Ability:
    """What a head gives [W]; at its minimum its outdoor unit serves it alone."""
    warmth = ground.need.home.thermostat.wanted if head.setpoint is None else head.setpoint
    whole = ability(head.unit, warmth, outdoor, ground.place, ground.system.field_factor)
    return Ability(whole.least, whole.most * head.share)


def ducted_ability(ground: Ground, unit: HeatPumpUnit, outdoor: Floats) -> Ability:
    """What the ducted machine gives [W]."""
    warmth = ground.need.home.thermostat.wanted if unit.setpoint is None else unit.setpoint
    found = ability(unit, warmth, outdoor, ground.place, ground.system.field_factor)
    lockout = ground.system.compressor_lockout
    if lockout is None:
        return found
    return Ability(found.least, np.where(outdoor < lockout, 0.0, found.most))


def shared_ability(ground: Ground, unit: HeatPumpUnit, outdoor: Floats) -> Ability:
    """What an outdoor unit with several heads gives [W], no more than all its heads take."""
    warmth = ground.need.home.thermostat.wanted
    whole = ability(unit, warmth, outdoor, ground.place, ground.system.field_factor)
    taken = min(sum(head.size for head in unit.heads) / unit.size, 1.0)
    return Ability(whole.least, whole.most * taken)


def stops_below(unit: HeatPumpUnit, system: System) -> float:
    """Outdoor temperature [degC] below which a unit does not run or is not known to."""
    model = machine_of(unit)
    stops = max(model.cut_out, model.rated_down_to)
    if unit is system.ducted_unit and system.compressor_lockout is not None:
        return max(stops, system.compressor_lockout)
    return stops
