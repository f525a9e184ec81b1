"""The machines of a system: from facts to maps, as they stand in this home."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import cast

import numpy as np
from numpy.typing import NDArray

from costcompare.case.facts import HeatPumpUnit, System
from costcompare.equipment import (
    Capability,
    Installation,
    Machine,
    MapPoint,
    OutdoorYear,
    cooling_year,
    in_a_home,
    machine,
    map_from_points,
    outdoor_year,
)
from costcompare.equipment.machine import Speed
from costcompare.simulation.clock import Same
from costcompare.simulation.results import MachineHours

Floats = NDArray[np.float64]

_SPEEDS: dict[str, Speed] = {"minimum": "min", "rated": "rated", "maximum": "max"}


@dataclass(frozen=True)
class Weathered:
    """The weather as machines feel it, shape (hours,)."""

    outdoor: Floats
    humidity: Floats
    clock: NDArray[np.int64]
    """Hour of the local day"""
    altitude: float = 0.0
    """[m] of the home above the sea"""


@dataclass(frozen=True)
class Fitted:
    """A machine with what it can do in each hour of the year where it stands."""

    machine: Machine
    heating: Capability
    cooling: Capability


@lru_cache(maxsize=64)
def machine_of(unit: HeatPumpUnit) -> Machine:
    """The machine of a unit: of its points where it has some, else of its class and size."""
    if unit.points:
        return map_from_points(
            [
                MapPoint(p.outdoor, _SPEEDS[p.speed], p.capacity, p.power, p.mode)
                for p in unit.points
            ],
            like=unit.equipment_class,
            nominal=unit.size,
            cut_out=unit.cut_out,
            cut_in=unit.cut_in,
            frost=not unit.points_include_defrost,
        )
    return machine(unit.equipment_class, unit.size, cut_out=unit.cut_out, cut_in=unit.cut_in)


def fitted(unit: HeatPumpUnit, room: Floats, weathered: Weathered, field_factor: float) -> Fitted:
    """A unit over the year; ``room`` [degC] the warmth that it holds, hour by hour."""
    model = machine_of(unit)
    installed = Installation(unit.line_set, weathered.altitude)
    outdoors = _outdoors(Same(model), Same(weathered.outdoor), Same(weathered.humidity))
    return Fitted(
        model,
        in_a_home(model, outdoors, room=room, installed=installed, field_factor=field_factor),
        _cooling(Same(model), Same(weathered.outdoor), installed, field_factor),
    )


@lru_cache(maxsize=32)
def _outdoors(model: Same, outdoor: Same, humidity: Same) -> OutdoorYear:
    """What a machine's map says of a year outdoors: whatever room it warms, it is the same."""
    assert isinstance(model.item, Machine)
    assert isinstance(outdoor.item, np.ndarray)
    assert isinstance(humidity.item, np.ndarray)
    return outdoor_year(model.item, outdoor.item, humidity.item)


@lru_cache(maxsize=32)
def _cooling(
    model: Same, outdoor: Same, installed: Installation, field_factor: float
) -> Capability:
    """What a machine can cool over a year: whatever the thermostats say, it is the same."""
    assert isinstance(model.item, Machine)
    assert isinstance(outdoor.item, np.ndarray)
    return cooling_year(model.item, outdoor.item, installed=installed, field_factor=field_factor)


def machine_hours(name: str, heating: Capability, heat: Floats) -> MachineHours:
    """How a machine spends the hours of the year; ``heat`` [W] that it gave, by hour."""
    runs = heat > 0.0
    return MachineHours(
        name=name,
        heating_hours=int(runs.sum()),
        below_minimum_hours=int((runs & (heat < heating.least * (1.0 - 1e-9))).sum()),
        cut_out_hours=int(heating.cut_out.sum()),
        not_rated_hours=int((heating.not_rated & ~heating.cut_out).sum()),
        at_maximum_hours=int((runs & (heat >= heating.most * (1.0 - 1e-6))).sum()),
    )


def filled_points(system: System) -> dict[str, tuple[str, ...]]:
    """The points that were filled in, by the room of the machine; none for generic classes."""
    ducted = (system.ducted_unit,) if system.ducted_unit is not None else ()
    units = cast("tuple[HeatPumpUnit, ...]", (*system.heads, *ducted))
    return {unit.room: machine_of(unit).filled for unit in units if unit.points}
