"""The settings card: frozen results with their units in their names."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Night = Literal["hold", "set back", "makes no difference"]


@dataclass(frozen=True)
class HeadSetting:
    """What to set on the remote of one head."""

    room: str
    wanted_degf: float
    """At sitting height"""
    mounting_height_ft: float
    height_is_stated: bool
    """False: the usual height is taken"""
    reads_over_degf: float
    """How much warmer the air is where the head measures it, a difference"""
    set_degf: float
    """On the remote, a whole degree"""


@dataclass(frozen=True)
class HeaterSetting:
    """What to set on a room heater."""

    room: str
    set_degf: float


@dataclass(frozen=True)
class Tried:
    """One year at one setting."""

    setting_degf: float
    bill_usd: float
    backup_kwh: float
    warm_share: float
    """Of the wanted room-hours"""


@dataclass(frozen=True)
class StripSetting:
    """Above which outdoor temperature the strips stay off."""

    lockout_degf: float
    balance_degf: float | None
    """Where the heat pump meets the load; None: it covers it down to the coldest hour"""
    margin_degf: float
    """A difference"""
    stated_degf: float | None
    """As the case has it; None: never locked out"""
    stated_usd: float
    """The year's bill so"""
    bill_usd: float
    """With the lockout set as here"""
    backup_kwh: float
    """Of the strips, set as here"""


@dataclass(frozen=True)
class FurnaceSetting:
    """What to set on the thermostat of a furnace kept as backup."""

    set_degf: float
    """The warmest of those tried that no colder one beats by 20 $ a year"""
    below_wanted_degf: float
    """A difference"""
    stated_degf: float | None
    """As the case has it"""
    tried: tuple[Tried, ...]
    """From the warmest to the coldest"""


@dataclass(frozen=True)
class NightSetting:
    """Hold the same warmth, or set it back at night."""

    advice: Night
    setback_degf: float
    """A difference"""
    night_hours: str
    held_usd: float
    """The year's bill at the wanted warmth day and night"""
    set_back_usd: float
    held_warm_share: float
    """Of the wanted room-hours"""
    set_back_warm_share: float
    difference_usd: float
    """Bill set back less bill held; below 0 where setting back costs less"""


@dataclass(frozen=True)
class SettingsCard:
    """What to set with one option in place."""

    option: str
    wanted_degf: float
    has_heat_pump: bool
    heads: tuple[HeadSetting, ...]
    too_warm_hours: int
    """Hours from November to March in which a room with a head is more than 2 F above its
    setting: left to choose, the machine would cool"""
    strips: StripSetting | None
    furnace: FurnaceSetting | None
    """None where no furnace is kept beside heads"""
    heaters: tuple[HeaterSetting, ...]
    night: NightSetting
