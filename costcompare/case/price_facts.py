"""What is known about money over the years; the price of electricity is in tariff_facts."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Literal


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
