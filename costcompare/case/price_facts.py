"""What is known about the price of electricity and about money over the years."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Literal


@dataclass(frozen=True)
class Tier:
    """One block of a tiered price."""

    up_to: float | None
    """Upper end [kWh a month], None for the last tier"""
    price: float
    """[$/kWh]"""


@dataclass(frozen=True)
class Period:
    """A time-of-use period; the first period that matches an hour prices it."""

    name: str
    months: tuple[bool, ...]
    """12 flags, January first"""
    days: Literal["all", "weekdays", "weekends"]
    hours: tuple[bool, ...]
    """24 flags, local clock, labelled by the start of the hour"""
    price: float
    """[$/kWh]"""


@dataclass(frozen=True)
class Season:
    """Tiers that hold in some months only."""

    name: str
    months: tuple[bool, ...]
    tiers: tuple[Tier, ...]


@dataclass(frozen=True)
class Tariff:
    """The price of electricity.

    Energy is priced by ``periods`` where one matches the hour, and what is left by the
    tiers of the season, or by ``tiers`` where no season matches.
    """

    name: str
    customer_charge: float
    """[$ a month]"""
    tiers: tuple[Tier, ...]
    seasons: tuple[Season, ...] = ()
    periods: tuple[Period, ...] = ()
    holidays: tuple[date, ...] = ()
    """Days that count as weekend"""
    tax: float = 0.0
    """Share of all other lines"""
    minimum_bill: float = 0.0
    """[$ a month] before tax"""
    currency: str = "$"
    """The sign of the money that all amounts of the case are in"""


@dataclass(frozen=True)
class Incentive:
    """Money that somebody may pay towards an option."""

    name: str
    amount: float
    """[$]"""
    status: Literal["confirmed", "applied for", "unknown"]
    starts: date | None = None
    expires: date | None = None
    options: tuple[str, ...] = ()
    """Names of the options it may apply to; empty for all"""


@dataclass(frozen=True)
class MoneyFacts:
    """How money over the years is counted."""

    installed_on: date
    study_years: int
    discount_rate: float
    """Real, a year"""
    price_growth: float
    """Real, a year, likely value"""
    price_growth_low: float
    price_growth_high: float
    incentives: tuple[Incentive, ...] = ()
