"""What is known about a home, its heating, its choices and its prices: frozen facts in SI.

A case file is read once, checked, filled with defaults and turned into these. Nothing
below this module ever sees a unit text, a missing value or a TOML table. Temperatures
are in degrees Celsius [degC], differences in kelvin [K], all else in SI base units
unless the name says otherwise; money is in dollars and energy prices in dollars per kWh
because that is what a bill is written in.

The home is in :mod:`home_facts`, systems in :mod:`system_facts`, prices of electricity in
:mod:`tariff_facts`, money over the years in :mod:`money_facts`, real bills in
:mod:`bill_facts`; all names can be had from here.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from costcompare.case.bill_facts import StatedBill, StatedBills
from costcompare.case.home_facts import (
    ORIENTATIONS,
    AirLeakage,
    ComfortBand,
    Construction,
    Constructions,
    Crawlspace,
    Doorway,
    DoorwayState,
    ExhaustFan,
    Fireplace,
    Foundation,
    Home,
    House,
    Layer,
    Orientation,
    OtherUse,
    Room,
    Site,
    Thermostat,
    VentState,
    Windows,
)
from costcompare.case.money_facts import (
    Emissions,
    Finance,
    Incentive,
    MoneyFacts,
    OldSystemFacts,
)
from costcompare.case.system_facts import (
    EQUIPMENT_CLASSES,
    Blower,
    DuctLocation,
    Ducts,
    Head,
    HeatPumpUnit,
    RoomHeater,
    System,
    SystemKind,
    UnitMode,
    UnitPoint,
    UnitSpeed,
)
from costcompare.case.tariff_facts import (
    Change,
    Conventions,
    DemandCharge,
    Export,
    Period,
    Rider,
    Season,
    Tariff,
    Tax,
    Tier,
    YearDays,
)

__all__ = [
    "EQUIPMENT_CLASSES",
    "ORIENTATIONS",
    "AirLeakage",
    "Blower",
    "Case",
    "Change",
    "ComfortBand",
    "Construction",
    "Constructions",
    "Conventions",
    "Crawlspace",
    "DemandCharge",
    "Doorway",
    "DoorwayState",
    "DuctLocation",
    "Ducts",
    "Emissions",
    "ExhaustFan",
    "Export",
    "Fact",
    "Finance",
    "Fireplace",
    "Foundation",
    "Head",
    "HeatPumpUnit",
    "Home",
    "House",
    "Incentive",
    "Known",
    "Layer",
    "MoneyFacts",
    "OldSystemFacts",
    "Option",
    "Orientation",
    "OtherUse",
    "Period",
    "Rider",
    "Room",
    "RoomHeater",
    "Season",
    "Site",
    "StatedBill",
    "StatedBills",
    "System",
    "SystemKind",
    "Tariff",
    "Tax",
    "Thermostat",
    "Tier",
    "UnitMode",
    "UnitPoint",
    "UnitSpeed",
    "VentState",
    "WeatherChoice",
    "Windows",
    "YearDays",
]

Known = Literal["measured", "seen", "guessed"]


@dataclass(frozen=True)
class Fact:
    """One stated or filled value, as shown to the user and written to the result file."""

    path: str
    value: float | str | bool | None
    unit: str
    known: Known
    source: str
    """Where the value comes from: ``the case`` or the source of the default."""
    low: float | None = None
    """Tenth percentile in ``unit``, where the case states one."""
    high: float | None = None
    """Ninetieth percentile in ``unit``, where the case states one."""


@dataclass(frozen=True)
class WeatherChoice:
    """Which year of weather the case asks for."""

    source: Literal["typical", "file", "measured"] = "typical"
    file: Path | None = None
    winter: Literal["mild", "typical", "cold"] = "typical"
    calendar_year: int = 2027


@dataclass(frozen=True)
class Option:
    """A proposed change: the home and the system as they would be afterwards, and the price."""

    name: str
    kind: str
    """``improve`` or a system kind, as the case says"""
    home: Home
    system: System
    installed_cost: float
    """[$]"""
    life: float
    """[years]"""
    maintenance: float
    """[$ a year], on top of what today's system costs"""
    changed: tuple[Fact, ...] = ()
    """What its ``set`` states, each under the path that it changes"""


@dataclass(frozen=True)
class Case:
    """A whole case: one home, what it has today, what is proposed, and the prices."""

    title: str
    home: Home
    weather: WeatherChoice
    today: System
    options: tuple[Option, ...]
    tariff: Tariff
    money: MoneyFacts
    facts: tuple[Fact, ...]
    directory: Path | None = None
    """Folder of the case file; relative paths in it start there"""
    other_tariffs: tuple[Tariff, ...] = ()
    """Other prices under which every choice is billed too"""
    bills: StatedBills | None = None
    """Real bills, where the case names or lists them"""
