"""What a month and a year of electricity cost under a tariff.

The order of the lines is that of a printed bill: energy by time-of-use period, energy by
tier, customer charge, what is missing to the minimum bill, tax on all of these. Nothing is
rounded on the way; :func:`rounded` turns a sum into cents where a bill is printed.

What a saved kWh is worth is never an average price: it is the bill before minus the bill
after, two calls of :func:`year_bill`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from costcompare.billing.clock import CivilHours, civil_hours
from costcompare.billing.tariff_check import check_tariff
from costcompare.case.facts import Period, Season, Tariff, Tier
from costcompare.errors import Fault, TariffError

REST = "other hours"
"""The name of the energy that no time-of-use period prices, in a usage by period."""

CUSTOMER_CHARGE = "customer charge"
MINIMUM = "top-up to the minimum bill"
TAX = "tax"


@dataclass(frozen=True)
class BillLine:
    """One line of a bill."""

    name: str
    kwh: float | None
    """Energy priced by this line, None for a line that is not energy"""
    usd: float


@dataclass(frozen=True)
class MonthBill:
    """One month, unrounded."""

    month: int
    """1 to 12"""
    kwh: float
    lines: tuple[BillLine, ...]
    """Lines without energy in the month are left out"""
    energy_usd: float
    fixed_usd: float
    """Customer charge and what is missing to the minimum bill"""
    tax_usd: float

    @property
    def total_usd(self) -> float:
        """What is owed for the month."""
        return self.energy_usd + self.fixed_usd + self.tax_usd


@dataclass(frozen=True)
class YearBill:
    """Twelve months, January first; each sum is that of its months."""

    months: tuple[MonthBill, ...]
    energy_usd: float
    fixed_usd: float
    tax_usd: float
    total_usd: float


def rounded(usd: float) -> float:
    """Dollars to the cent, half a cent upwards, as bills are printed.

    The binary noise of a sum (92.61499999999999 for 92.615) is taken away first.
    """
    exact = Decimal(f"{usd:.9f}")
    return float(exact.quantize(Decimal("0.01"), rounding=ROUND_HALF_UP))


def bill(
    tariff: Tariff,
    usage: float | Mapping[str, float],
    *,
    month: int = 1,
    months: float = 1.0,
) -> MonthBill:
    """The bill of one month from its energy, for checks by hand.

    Parameters
    ----------
    tariff
        The price of electricity.
    usage
        Energy [kWh]; where time-of-use periods hold in the month, the energy by the name of
        the period, and :data:`REST` for what lies in none.
    month
        1 to 12, for seasons and periods.
    months
        Length of the bill in months; tiers, customer charge and minimum bill are scaled
        with it. A 34-day bill is 34/30 where a utility counts by thirty days.

    Raises
    ------
    TariffError
        The tariff is wrong, or the usage names a period that does not hold in the month.
    """
    check_tariff(tariff)
    periods = [p for p in tariff.periods if p.months[month - 1]]
    by_name = _by_name(usage, periods)
    names = [p.name for p in periods]
    strangers = [name for name in by_name if name not in (*names, REST)]
    if strangers:
        raise TariffError(
            Fault(f"usage.{name}", f"must be a period of month {month}", name, _names(names))
            for name in strangers
        )
    kwh = [by_name.get(name, 0.0) for name in names]
    return _month_bill(tariff, month, (periods, kwh), by_name.get(REST, 0.0), months)


def year_bill(
    tariff: Tariff, kwh: NDArray[np.float64], index: pd.DatetimeIndex, time_zone: str
) -> YearBill:
    """The twelve bills of a year of hourly energy.

    Parameters
    ----------
    tariff
        The price of electricity.
    kwh
        Energy bought in each hour [kWh], one value a stamp, none below 0.
    index
        Stamps at the beginning of each hour, with a fixed offset (standard time).
    time_zone
        IANA name; months, weekdays, holidays and hours of the tariff are counted by the
        local civil clock, so March has 743 hours and November 721 where clocks change.

    Raises
    ------
    TariffError
        The tariff is wrong, or leaves hours without a price.
    """
    check_tariff(tariff)
    if kwh.shape != (len(index),):
        raise ValueError(f"{kwh.shape} values for {len(index)} hours")
    if not np.all(np.isfinite(kwh)) or np.any(kwh < 0.0):
        raise ValueError("energy bought in an hour must be a number of at least 0 kWh")
    clock = civil_hours(index, time_zone)
    count = len(tariff.periods) + 1
    slot = clock.month * count + _period_of_hour(tariff, clock)
    table = np.bincount(slot, weights=kwh, minlength=12 * count).reshape(12, count)
    months = tuple(
        _month_bill(tariff, m + 1, (tariff.periods, table[m, :-1].tolist()), float(table[m, -1]))
        for m in range(12)
    )
    return YearBill(
        months=months,
        energy_usd=sum(m.energy_usd for m in months),
        fixed_usd=sum(m.fixed_usd for m in months),
        tax_usd=sum(m.tax_usd for m in months),
        total_usd=sum(m.total_usd for m in months),
    )


def needs_hours(tariff: Tariff) -> bool:
    """Whether a bill depends on more than the energy of its month."""
    return bool(tariff.periods)


def period_of_hour(tariff: Tariff, index: pd.DatetimeIndex, time_zone: str) -> NDArray[np.int64]:
    """The number of the period that prices each hour; ``len(tariff.periods)`` for none."""
    return _period_of_hour(tariff, civil_hours(index, time_zone))


def _period_of_hour(tariff: Tariff, clock: CivilHours) -> NDArray[np.int64]:
    off = clock.weekend
    if tariff.holidays:
        off = off | np.isin(clock.day, [day.toordinal() for day in tariff.holidays])
    number = np.full(clock.month.shape, len(tariff.periods), dtype=np.int64)
    for place in reversed(range(len(tariff.periods))):
        period = tariff.periods[place]
        holds = np.array(period.months)[clock.month] & np.array(period.hours)[clock.hour]
        if period.days == "weekdays":
            holds &= ~off
        elif period.days == "weekends":
            holds &= off
        number[holds] = place
    return number


def _by_name(usage: float | Mapping[str, float], periods: list[Period]) -> Mapping[str, float]:
    if isinstance(usage, Mapping):
        return usage
    if periods:
        wanted = _names([p.name for p in periods])
        raise TariffError([Fault("usage", "must be given by period", f"{usage} kWh", wanted)])
    return {REST: float(usage)}


def _names(names: list[str]) -> str:
    return ", ".join(f'"{name}"' for name in (*names, REST))


def _month_bill(
    tariff: Tariff,
    month: int,
    by_period: tuple[tuple[Period, ...] | list[Period], list[float]],
    rest_kwh: float,
    months: float = 1.0,
) -> MonthBill:
    lines = [
        BillLine(period.name, kwh, kwh * period.price)
        for period, kwh in zip(*by_period, strict=True)
        if kwh > 0.0
    ]
    season = next((s for s in tariff.seasons if s.months[month - 1]), None)
    lines += _tier_lines(tariff, season, month, rest_kwh, months)
    energy = sum(line.usd for line in lines)
    fixed = tariff.customer_charge * months
    lines.append(BillLine(CUSTOMER_CHARGE, None, fixed))
    missing = tariff.minimum_bill * months - energy - fixed
    if missing > 0.0:
        fixed += missing
        lines.append(BillLine(MINIMUM, None, missing))
    tax = tariff.tax * (energy + fixed)
    if tariff.tax > 0.0:
        lines.append(BillLine(TAX, None, tax))
    kwh = sum(line.kwh or 0.0 for line in lines)
    return MonthBill(month, kwh, tuple(lines), energy, fixed, tax)


def _tier_lines(
    tariff: Tariff, season: Season | None, month: int, kwh: float, months: float
) -> list[BillLine]:
    """What no period has priced, split over the tiers of the month."""
    if kwh <= 0.0:
        return []
    tiers = tariff.tiers if season is None else season.tiers
    if not tiers:
        raise TariffError(
            [
                Fault(
                    "tariff.tiers",
                    f"must price the hours of month {month} that no period prices",
                    instead='for example tiers = [ { price = "0.12 $/kWh" } ]',
                )
            ]
        )
    lines, lower = [], 0.0
    for tier in tiers:
        upper = np.inf if tier.up_to is None else tier.up_to * months
        part = min(kwh, upper) - lower
        if part > 0.0:
            name = _tier_name(tier, lower / months, season)
            lines.append(BillLine(name, part, part * tier.price))
        lower = upper
    return lines


def _tier_name(tier: Tier, lower: float, season: Season | None) -> str:
    start = "" if season is None else f"{season.name}, "
    if tier.up_to is None:
        return f"{start}all energy" if lower == 0.0 else f"{start}above {lower:,.0f} kWh"
    if lower == 0.0:
        return f"{start}first {tier.up_to:,.0f} kWh"
    return f"{start}{lower:,.0f} to {tier.up_to:,.0f} kWh"
