"""Whether a fit can be believed: agreement, contradictions, and the bill to ask for next."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

import numpy as np
from numpy.typing import NDArray

from costcompare.billing.goodness import MONTHLY_CV, MONTHLY_NMBE
from costcompare.billing.reading import Bill
from costcompare.fitting.bill_days import DAYS, day_counts, errors
from costcompare.fitting.gauss_newton import MostLikely, covariance
from costcompare.fitting.house_model import on_bills
from costcompare.fitting.results import Finding, FittedBill, NextBill
from costcompare.uncertainty import UncertainFact

Floats = NDArray[np.float64]

MONTHS_FOR_LIMITS = 12
FAR = 2.0
"""Standard deviations from which a contradiction is told of (judgement)"""
FAR_SETTING = 1.645
"""The same for the thermostat: one time in ten by chance (judgement)"""
WORTH_ASKING = 0.05
"""A bill that narrows the range by less is not asked for (judgement)"""
COVERED = 0.5
"""Share of a month's days from which it counts as known"""


def within_limits(bills: Sequence[FittedBill], bias: float, misses: float) -> bool | None:
    """Whether the monthly limits are kept; None where there is less than a year of bills."""
    if len(bills) < MONTHS_FOR_LIMITS:
        return None
    return abs(bias) <= MONTHLY_NMBE and misses <= MONTHLY_CV


def findings(
    facts: Sequence[UncertainFact], found: MostLikely, bills: Sequence[FittedBill]
) -> tuple[Finding, ...]:
    """What was said and cannot be quite true, the farthest first."""
    told = []
    for fact, moved in zip(facts, found.z, strict=True):
        setting = fact.name == "thermostat.day"
        if abs(moved) >= (FAR_SETTING if setting else FAR):
            topic = "temperature" if setting else "fact"
            told.append(Finding(topic, fact.words, float(moved)))
    for bill in bills:
        assert bill.computed_kwh.likely is not None
        apart = (bill.measured_kwh - bill.computed_kwh.likely) / bill.error_kwh
        if abs(apart) >= FAR:
            dates = f"{bill.begins} to {bill.ends}"
            told.append(Finding("too much" if apart > 0.0 else "too little", dates, apart))
    return tuple(sorted(told, key=lambda one: -abs(one.deviations)))


@dataclass(frozen=True)
class Learning:
    """What the slopes say of bills that are not there yet."""

    electricity: Floats
    """Of the fitted house by day [kWh], shape (365,)"""
    heating: Floats
    slopes: Floats
    """Of the electricity, shape (facts, 365)"""
    yearly: Floats
    """Slopes of the logarithm of the yearly heating, shape (facts,)"""


def next_bill(
    learning: Learning,
    counts: Floats,
    found: MostLikely,
    *,
    by_degree: Floats | None,
) -> NextBill | None:
    """The calendar month whose bill would narrow the yearly heating most.

    ``by_degree`` is how the house's days change with colder weather [kWh/K], shape (365,);
    None where bills come with their own weather.
    """
    now = _deviation(learning.yearly, found.covariance)
    if now <= 0.0:
        return None
    best: NextBill | None = None
    for month in range(12):
        bill = _month(month)
        days = day_counts([bill])
        if float((counts.sum(axis=0) * days[0] > 0.0).sum()) > COVERED * bill.days:
            continue
        electricity, heating = learning.electricity @ days.T, learning.heating @ days.T
        printed = Bill(bill.begins, bill.ends, float(electricity[0]), read="actual")
        error = errors(
            [printed],
            electricity,
            heating,
            by_degree=None if by_degree is None else on_bills(by_degree, days),
        )
        slopes = np.vstack([found.slopes, on_bills(learning.slopes, days).T])
        then = _deviation(learning.yearly, covariance(slopes, np.append(found.errors, error)))
        one = NextBill(month + 1, 1.0 - then / now)
        if one.narrower >= WORTH_ASKING and (best is None or one.narrower > best.narrower):
            best = one
    return best


def _month(month: int) -> Bill:
    begins = date(2025, month + 1, 1)
    ends = date(2026, 1, 1) if month == DAYS // 31 else date(2025, month + 2, 1)
    return Bill(begins, ends, 0.0)


def _deviation(slopes: Floats, spread: Floats) -> float:
    return math.sqrt(max(float(slopes @ spread @ slopes), 0.0))
