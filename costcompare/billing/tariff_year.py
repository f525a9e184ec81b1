"""The bills of a year for many homes at once: hours or months of energy to priced lines."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from costcompare.billing.tariff_check import check_tariff
from costcompare.billing.tariff_lines import Metered, Part, Priced, price_lines
from costcompare.billing.tariff_spans import BillSpan, month_spans
from costcompare.billing.tariff_usage import (
    REST,
    banked,
    highest_kw,
    hourly_parts,
    netted_hours,
    netted_month,
    parts_of,
    shared_by_days,
    total_parts,
)
from costcompare.case.tariff_facts import LineGroup, Tariff

Floats = NDArray[np.float64]

DUST = 1e-9
"""[kWh] what the difference of two sums may lie below nothing"""


@dataclass(frozen=True)
class PricedBill:
    """One bill of every home."""

    span: BillSpan
    kwh: Floats
    """Bought, before anything is taken off; shape (homes,)"""
    exported: Floats
    banked: Floats
    """Exported energy that later bills take off"""
    priced: Priced


@dataclass(frozen=True)
class YearBills:
    """The bills of a year for many homes; the first axis is the home."""

    total_usd: Floats
    """Shape (homes,)"""
    month_usd: Floats
    """Shape (homes, 12), January first"""
    group_usd: dict[LineGroup | None, Floats]
    """Sums by kind of line, each of shape (homes, 12); None for the rounding of totals"""


def needs_hours(tariff: Tariff) -> bool:
    """Whether the bill depends on when in a month energy is used."""
    every = (tariff, *(change.tariff for change in tariff.changes))
    if any(rates.periods or rates.demand for rates in every):
        return True
    cut = bool(tariff.changes) or any(s.dates for rates in every for s in rates.seasons)
    return cut and tariff.conventions.split == "by use"


def year_bills(tariff: Tariff, kwh: Floats, index: pd.DatetimeIndex, time_zone: str) -> YearBills:
    """The year's bills of many homes.

    Parameters
    ----------
    tariff
        The price of electricity.
    kwh
        Energy bought [kWh], none below 0: of each hour, shape (homes, hours of the index);
        or of each calendar month, shape (homes, 12), where :func:`needs_hours` says no.
    index, time_zone
        As for :func:`costcompare.billing.tariff.year_bill`, which gives the same dollars one
        home at a time.

    Raises
    ------
    TariffError
        The tariff is wrong.
    ValueError
        Energy of another shape, below 0 or not finite; months where hours are needed.
    """
    check_tariff(tariff)
    bought = checked_energy(kwh, len(index), months=True)
    spans = month_spans(tariff, index, time_zone)
    if bought.shape[1] == len(index):
        bills = priced_hours(tariff, spans, bought, np.zeros((1, 1)))
    elif needs_hours(tariff):
        raise ValueError(f"the tariff {tariff.name!r} needs the energy of every hour")
    else:
        bills = _priced_months(tariff, spans, bought)
    groups: dict[LineGroup | None, Floats] = {}
    for bill in bills:
        for line in bill.priced.lines:
            table = groups.setdefault(line.group, np.zeros((len(bought), 12)))
            table[:, bill.span.month - 1] += line.usd
    months = sum(groups.values(), np.zeros((len(bought), 12)))
    return YearBills(months.sum(axis=1), months, groups)


def checked_energy(kwh: Floats, hours: int, *, months: bool = False) -> Floats:
    """Energy as an array of shape (homes, hours); ValueError says what is wrong with it."""
    table = np.asarray(kwh, dtype=float)
    table = table[np.newaxis] if table.ndim == 1 else table
    if table.ndim != 2 or table.shape[1] not in ({hours, 12} if months else {hours}):
        raise ValueError(f"{np.shape(kwh)} values for {hours} hours")
    if not np.all(np.isfinite(table)) or np.any(table < -DUST):
        raise ValueError("energy of an hour must be a number of at least 0 kWh")
    clean: Floats = np.maximum(table, 0.0)
    return clean


def priced_hours(
    tariff: Tariff, spans: Sequence[BillSpan], kwh: Floats, exported: Floats
) -> tuple[PricedBill, ...]:
    """The bills of a year of hours, in the order of the spans.

    ``exported`` has the shape of ``kwh``, or (1, 1) where nothing is exported.
    """
    export = tariff.export
    exports = bool(exported.any())
    net, out = netted_hours(export, kwh, exported) if exports else (kwh, exported)
    demand = highest_kw(spans, net)
    homes = len(kwh)
    bank: dict[str, Floats] = {}
    credit = np.zeros(homes)
    bills: dict[int, PricedBill] = {}
    for number in _from_the_true_up(spans, export.true_up):
        span = spans[number]
        energy = hourly_parts(span, net)
        if tariff.conventions.split == "by days":
            energy = shared_by_days(span, energy)
        parts = parts_of(span, energy)
        sent = np.zeros(homes)
        if exports:
            sent = np.take(exported, span.hours, axis=1).sum(axis=1)
            if export.netting == "month":
                parts, bank = netted_month(parts, hourly_parts(span, out), bank)
            else:
                credit = credit + export.price * np.take(out, span.hours, axis=1).sum(axis=1)
        bought = np.take(kwh, span.hours, axis=1).sum(axis=1)
        left = np.zeros(homes) + banked(bank)
        if span.month == export.true_up and export.unused == "paid":
            credit = credit + export.price * left
        if span.month == export.true_up:
            bank = {}
        metered = Metered(span.month, span.months, parts, demand[number], credit)
        priced = price_lines(metered, tariff)
        credit = priced.credit_left
        bills[number] = PricedBill(span, bought, sent, left, priced)
    return tuple(bills[number] for number in range(len(spans)))


def _from_the_true_up(spans: Sequence[BillSpan], true_up: int) -> list[int]:
    """The bills in the order in which a bank fills: from the one after the true-up."""
    numbers = range(len(spans))
    if len(spans) != 12:
        return list(numbers)
    return sorted(numbers, key=lambda n: (spans[n].month - true_up - 1) % 12)


def _priced_months(
    tariff: Tariff, spans: Sequence[BillSpan], kwh: Floats
) -> tuple[PricedBill, ...]:
    none = np.zeros(len(kwh))
    bills = []
    for span in spans:
        bought = kwh[:, span.month - 1]
        parts: tuple[Part, ...] = parts_of(span, total_parts(span, {REST: bought}))
        priced = price_lines(Metered(span.month, span.months, parts, {}, none), tariff)
        bills.append(PricedBill(span, bought, none, none, priced))
    return tuple(bills)
