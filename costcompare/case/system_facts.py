"""What is known about a way to heat and cool a home."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

DuctLocation = Literal["crawlspace", "attic", "basement", "garage", "belly", "inside"]
SystemKind = Literal[
    "electric furnace", "room heaters", "ducted heat pump", "ductless heat pump", "ideal"
]
EQUIPMENT_CLASSES: tuple[str, ...] = (
    "single-zone cold-climate",
    "single-zone standard",
    "multi-zone cold-climate",
    "multi-zone standard",
    "ducted variable",
    "ducted single-speed",
)
"""Classes of heat pumps that a case can name; :mod:`costcompare.equipment` has their maps."""


@dataclass(frozen=True)
class Blower:
    """The fan of a ducted system."""

    airflow: float
    """[m3/s] through the air handler at full speed"""
    power: float
    """[W] at full speed"""
    variable: bool = False
    """True where the fan slows down with a modulating heat pump"""


@dataclass(frozen=True)
class Ducts:
    """The duct system outside the rooms."""

    location: DuctLocation
    supply_leakage: float
    """Share of the blower's airflow lost from the supply side to outside the rooms"""
    return_leakage: float
    """Share of the blower's airflow drawn into the return side from outside the rooms"""
    resistance: float
    """Effective thermal resistance with films [m2 K/W]"""
    supply_area: float
    """[m2]"""
    return_area: float
    """[m2]"""
    share_outside: float = 1.0
    """Share of the areas and leaks that lies in ``location``; the rest is inside"""
    cyclic_loss: float = 0.0
    """Share of the heat that is left in the ducts when the blower stops, at short runs"""
    branches: Mapping[str, str] = field(default_factory=dict)
    """``crushed`` or ``fallen`` by the room of the register"""
    condition: str = "measured values"
    """The words of the case, for showing"""


@dataclass(frozen=True)
class Head:
    """One of several heads on an outdoor unit."""

    room: str
    size: float
    """Nominal cooling capacity [W]"""
    setpoint: float | None = None
    """[degC], or None to follow the home's thermostat"""
    mounting_height: float | None = None
    """[m] to the bottom of the head"""


UnitMode = Literal["heating", "cooling"]
UnitSpeed = Literal["minimum", "rated", "maximum"]


@dataclass(frozen=True)
class UnitPoint:
    """One published point of a unit, 70 F indoors for heating."""

    mode: UnitMode
    outdoor: float
    """[degC]"""
    speed: UnitSpeed
    capacity: float
    """[W]"""
    power: float
    """[W]"""


@dataclass(frozen=True)
class HeatPumpUnit:
    """One outdoor unit with one head or with several, or the ducted unit of a system."""

    equipment_class: str
    """A row of the class table of :mod:`costcompare.equipment`"""
    size: float
    """Nominal cooling capacity [W]"""
    room: str
    """The room of the head; for a ducted unit the thermostat's room"""
    setpoint: float | None = None
    """[degC], or None to follow the home's thermostat"""
    mounting_height: float | None = None
    """[m] to the bottom of the head"""
    heads: tuple[Head, ...] = ()
    """The heads of a multi-zone unit; ``room`` is then that of the first"""

    @property
    def rooms(self) -> tuple[str, ...]:
        """Every room with a head."""
        return tuple(head.room for head in self.heads) or (self.room,)

    points: tuple[UnitPoint, ...] = ()
    """From the submittal sheet; none for a machine as its class usually is"""
    points_include_defrost: bool = False
    """True where the points between 17 and 47 F hold frost and defrost"""
    cut_out: float | None = None
    """[degC] outdoors below which it does not run, or None for that of the class"""
    cut_in: float | None = None
    """[degC] outdoors from which it runs again, or None for ``cut_out``"""
    line_set: float | None = None
    """[m] one way between outdoor unit and head, or None for the tested length"""


@dataclass(frozen=True)
class RoomHeater:
    """A baseboard or plug-in heater with its own thermostat."""

    room: str
    output: float
    """[W]"""
    setpoint: float | None = None
    """[degC], or None to follow the home's thermostat"""


@dataclass(frozen=True)
class System:
    """One way to heat (and cool) the home.

    A ducted part is there when ``ducts`` is not None: its heat comes from ``furnace_output``
    (elements) or from ``ducted_unit`` with ``strip_output`` as backup. Ductless heads and
    room heaters stand beside it or alone.
    """

    kind: SystemKind
    thermostat_room: str | None = None
    blower: Blower | None = None
    ducts: Ducts | None = None
    registers: Mapping[str, float] = field(default_factory=dict)
    """Share of the supply air by room; adds up to 1"""
    furnace_output: float = 0.0
    """Electric elements of a furnace [W]"""
    furnace_setpoint: float | None = None
    """[degC] where a furnace kept as backup has a lower setting of its own, else None"""
    ducted_unit: HeatPumpUnit | None = None
    strip_output: float = 0.0
    """[W] resistance strips behind a ducted heat pump"""
    strip_lockout: float | None = None
    """[degC] outdoors above which the strips stay off"""
    strip_gap: float = 0.0
    """[K] below the setpoint at which the strips come on and run until it is reached"""
    compressor_lockout: float | None = None
    """[degC] outdoors below which the thermostat keeps the compressor off"""
    recovery_hours: int = 0
    """Hours over which the setpoint climbs from night to day; 0 for all at once"""
    heads: tuple[HeatPumpUnit, ...] = ()
    heaters: tuple[RoomHeater, ...] = ()
    field_factor: float = 0.88
    """Efficiency of heat pumps in homes over that of their maps"""
    old_ducts_left_open: bool = False
    """True where unused ducts and their boots stay open (abandoned, not capped)"""
