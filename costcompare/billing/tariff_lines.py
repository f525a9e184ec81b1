"""The lines of one bill in their order, for many homes at once.

Every amount is an array with one value a home, so that an ensemble is priced by the same
code as a single bill. The order is that of docs/tariffs.md: energy by period and tier, demand,
riders for each kWh, fixed charges, percentage riders, minimum bill, credit for export, taxes.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date

import numpy as np
from numpy.typing import NDArray

from costcompare.case.tariff_facts import (
    LineGroup,
    Rounding,
    Season,
    Tariff,
    Tax,
    Tier,
)

Floats = NDArray[np.float64]

CUSTOMER_CHARGE = "customer charge"
DAILY_CHARGE = "daily charge"
MINIMUM = "top-up to the minimum bill"
CREDIT = "credit for exported energy"
PAID_OUT = "paid for what is left at the true-up"
TAX = "tax"
ROUNDING = "rounding to the cent"


@dataclass(frozen=True)
class Line:
    """One line of a bill, for every home."""

    name: str
    group: LineGroup | None
    """None for the rounding of the total"""
    usd: Floats
    amount: Floats | None
    """What is multiplied: [kWh], [kW], months, days or [$]"""
    unit: str
    price: float | None
    """For each unit of the amount"""


@dataclass(frozen=True)
class Part:
    """What was used while the same prices and the same season held."""

    rates: Tariff
    since: date | None
    season: Season | None
    days: float
    energy: Floats
    """[kWh] by period, and what no period prices; shape (homes, periods + 1)"""


@dataclass(frozen=True)
class Metered:
    """What one bill prices."""

    month: int
    """1 to 12"""
    months: float
    """Length by the tariff's proration"""
    parts: tuple[Part, ...]
    demand: Mapping[str, Floats]
    """[kW] billed, by the name of the charge"""
    credit: Floats
    """[$] for export, with what is left of earlier bills"""


@dataclass(frozen=True)
class Priced:
    """The lines of one bill."""

    lines: tuple[Line, ...]
    fixed_in_percentages: Floats
    """[$] the part of percentage riders that falls on fixed charges"""
    credit_left: Floats
    """[$] credit that found no line to pay"""


def to_cents(usd: Floats) -> Floats:
    """Dollars to the cent, half a cent away from nothing, after the binary noise of a sum."""
    cents = np.floor(np.round(np.abs(usd) * 100.0, 7) + 0.5)
    result: Floats = np.copysign(cents, usd) / 100.0
    return result


@dataclass
class _Sheet:
    """A bill while it is written: its lines and the sums of what holds together."""

    homes: int
    rounding: Rounding
    lines: list[Line] = field(default_factory=list)
    sums: dict[tuple[int, LineGroup], Floats] = field(default_factory=dict)

    def add(
        self,
        which: int,
        group: LineGroup,
        name: str,
        *,
        amount: Floats,
        unit: str,
        price: float,
    ) -> Floats:
        """Write ``amount`` times ``price`` under the prices number ``which``."""
        usd: Floats = amount * price
        if self.rounding == "lines":
            usd = to_cents(usd)
        self.lines.append(Line(name, group, usd, amount, unit, price))
        self.sums[which, group] = self.of(which, [group]) + usd
        return usd

    def of(self, which: int, groups: Iterable[LineGroup]) -> Floats:
        """The sum of some groups of lines under the prices number ``which``."""
        none = np.zeros(self.homes)
        return sum((self.sums.get((which, group), none) for group in groups), none)


def price_lines(metered: Metered, tariff: Tariff) -> Priced:
    """The lines of one bill; conventions and export are those of ``tariff``."""
    homes = metered.parts[0].energy.shape[0]
    sheet = _Sheet(homes, tariff.conventions.rounding)
    sets = _price_sets(metered)
    for which, parts in enumerate(sets):
        for part in parts:
            _energy(sheet, which, part, _months(part, metered))
    for which, parts in enumerate(sets):
        share = sum(_months(part, metered) for part in parts)
        _demand(sheet, which, parts[0], metered, share)
        _riders(sheet, which, parts, metered.month)
        _fixed(sheet, which, parts, metered.month, share)
    on_fixed = np.zeros(homes)
    for which, parts in enumerate(sets):
        on_fixed = on_fixed + _percentages(sheet, which, parts[0], metered.month)
    _minimum(sheet, sets, metered)
    left = _credit(sheet, len(sets), metered, tariff)
    for which, parts in enumerate(sets):
        for tax in _taxes(parts[0].rates):
            base = sheet.of(which, tax.on)
            name = tax.name + _from(parts[0])
            sheet.add(which, "taxes", name, amount=base, unit="$", price=tax.share)
    lines = sheet.lines
    if tariff.conventions.rounding == "total":
        total = sum((line.usd for line in lines), np.zeros(homes))
        lines.append(Line(ROUNDING, None, to_cents(total) - total, None, "$", None))
    return Priced(tuple(lines), on_fixed, left)


def _price_sets(metered: Metered) -> list[list[Part]]:
    """The parts of a bill by the prices that hold in them, in their order."""
    sets: list[list[Part]] = []
    for part in metered.parts:
        if sets and sets[-1][0].since == part.since:
            sets[-1].append(part)
        else:
            sets.append([part])
    return sets


def _months(part: Part, metered: Metered) -> float:
    """The share of the bill's months that a part has, by its days."""
    return metered.months * part.days / sum(other.days for other in metered.parts)


def _from(part: Part) -> str:
    return "" if part.since is None else f", prices from {part.since.isoformat()}"


def _energy(sheet: _Sheet, which: int, part: Part, months: float) -> None:
    for number, period in enumerate(part.rates.periods):
        kwh = part.energy[:, number]
        name = period.name + _from(part)
        sheet.add(which, "energy", name, amount=kwh, unit="kWh", price=period.price)
    rest = part.energy[:, -1]
    if not rest.any():
        return
    season = part.season
    tiers = part.rates.tiers if season is None else season.tiers
    lower: float = 0.0
    named_lower: float = 0.0
    for tier in tiers:
        length = part.days if tier.daily else months
        upper = np.inf if tier.up_to is None else tier.up_to * length
        kwh = np.maximum(np.minimum(rest, upper) - lower, 0.0)
        name = tier_name(tier, named_lower, season, daily=tiers[0].daily) + _from(part)
        sheet.add(which, "energy", name, amount=kwh, unit="kWh", price=tier.price)
        lower, named_lower = upper, tier.up_to or 0.0


def tier_name(tier: Tier, lower: float, season: Season | None, *, daily: bool = False) -> str:
    """A tier in words, from where the one before it ends."""
    start = "" if season is None else f"{season.name}, "
    unit = "kWh a day" if daily else "kWh"
    if tier.up_to is None:
        return f"{start}all energy" if lower == 0.0 else f"{start}above {lower:,.6g} {unit}"
    if lower == 0.0:
        return f"{start}first {tier.up_to:,.6g} {unit}"
    return f"{start}{lower:,.6g} to {tier.up_to:,.6g} {unit}"


def _demand(sheet: _Sheet, which: int, part: Part, metered: Metered, months: float) -> None:
    for charge in part.rates.demand:
        kw = metered.demand.get(charge.name, np.zeros(sheet.homes)) * months
        name = charge.name + _from(part)
        sheet.add(which, "demand", name, amount=kw, unit="kW month", price=charge.price)


def _riders(sheet: _Sheet, which: int, parts: list[Part], month: int) -> None:
    kwh = sum((part.energy.sum(axis=1) for part in parts), np.zeros(sheet.homes))
    for rider in parts[0].rates.riders:
        if rider.per_kwh and rider.months[month - 1]:
            name = rider.name + _from(parts[0])
            sheet.add(which, "riders", name, amount=kwh, unit="kWh", price=rider.per_kwh)


def _fixed(sheet: _Sheet, which: int, parts: list[Part], month: int, months: float) -> None:
    rates, later = parts[0].rates, _from(parts[0])
    length = np.full(sheet.homes, months)
    days = np.full(sheet.homes, float(sum(part.days for part in parts)))
    has_monthly = rates.customer_charge or not rates.daily_charge
    monthly = [(CUSTOMER_CHARGE, rates.customer_charge)] if has_monthly else []
    monthly += [(r.name, r.per_month) for r in rates.riders if r.per_month and r.months[month - 1]]
    for name, price in monthly:
        sheet.add(which, "fixed", name + later, amount=length, unit="month", price=price)
    if rates.daily_charge:
        name = DAILY_CHARGE + later
        sheet.add(which, "fixed", name, amount=days, unit="day", price=rates.daily_charge)


def _percentages(sheet: _Sheet, which: int, part: Part, month: int) -> Floats:
    """Percentage riders; returns what of them falls on fixed charges."""
    fixed = sheet.of(which, ["fixed"])
    on_fixed = np.zeros(sheet.homes)
    for rider in part.rates.riders:
        if not rider.share or not rider.months[month - 1]:
            continue
        base = sheet.of(which, rider.on)
        named = (fixed if "fixed" in rider.on else 0.0 * fixed) + (
            on_fixed if "percentages" in rider.on else 0.0
        )
        name = rider.name + _from(part)
        sheet.add(which, "percentages", name, amount=base, unit="$", price=rider.share)
        on_fixed = on_fixed + rider.share * named
    return on_fixed


def _minimum(sheet: _Sheet, sets: list[list[Part]], metered: Metered) -> None:
    """What is missing to the minimum bill, where there is one."""
    owed = sum(part.rates.minimum_bill * _months(part, metered) for parts in sets for part in parts)
    if owed <= 0.0:
        return
    counted = sum(
        (sheet.of(which, parts[0].rates.minimum_counts) for which, parts in enumerate(sets)),
        np.zeros(sheet.homes),
    )
    missing = np.maximum(owed - counted, 0.0)
    sheet.add(len(sets) - 1, "minimum", MINIMUM, amount=missing, unit="$", price=1.0)


def _credit(sheet: _Sheet, sets: int, metered: Metered, tariff: Tariff) -> Floats:
    """Credit for export, as far as there are lines that it may pay; returns what is left."""
    export, left = tariff.export, metered.credit
    payable = np.zeros(sheet.homes)
    for which in range(sets):
        payable = payable + sheet.of(which, export.offsets)
    if left.any():
        used = np.minimum(left, np.maximum(payable, 0.0))
        sheet.add(sets - 1, "credits", CREDIT, amount=used, unit="$", price=-1.0)
        left = left - used
    if metered.month == export.true_up:
        if export.unused == "paid" and left.any():
            sheet.add(sets - 1, "credits", PAID_OUT, amount=left, unit="$", price=-1.0)
        left = np.zeros(sheet.homes)
    return left


def _taxes(rates: Tariff) -> tuple[Tax, ...]:
    return (Tax(TAX, rates.tax), *rates.taxes) if rates.tax else rates.taxes


def without_rounding(tariff: Tariff) -> Tariff:
    """The same tariff with amounts as they come, for differences of a few cents."""
    return replace(tariff, conventions=replace(tariff.conventions, rounding="none"))
