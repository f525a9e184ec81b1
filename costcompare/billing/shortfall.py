"""Why a saving fell short of what was promised: what changed in the line, ranked by energy.

The signatures are those of the trade: base up, slope up, balance point up, new cooling, the coldest
bills above the line.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np

from costcompare.billing.bill_weather import BillWeather
from costcompare.billing.degree_days import FEWEST_BILLS, DegreeDayFit, fit_days
from costcompare.billing.normal_year import YearUse
from costcompare.billing.promise import AS_WANTED, Promise
from costcompare.billing.reading.bills import Bills

CauseName = Literal[
    "warmer rooms", "new cooling", "new use", "higher base", "heating above the promise",
    "coldest bills", "estimated reads",
]  # fmt: skip
COLDEST = 2
"""Bills that are looked at for resistance heat in the cold (judgement)"""
ABOVE = 2.0
"""Times the RMSE of the other bills by which the coldest must lie above their line (judgement)"""
LEAST_KWH = 50.0
"""[kWh a year] below which a cause is none (judgement)"""
DAYS_A_YEAR = 365.0


@dataclass(frozen=True)
class Cause:
    """One thing that took of the saving, and what it took in a normal year."""

    name: CauseName
    kwh: float | None
    """None where it cannot be told in energy"""
    is_known: bool
    """True where somebody said so, False where the bills alone suggest it"""


def ranked(
    lines: tuple[DegreeDayFit, DegreeDayFit],
    years: tuple[YearUse | None, YearUse | None],
    *,
    promise: Promise | None,
    after_bills: Bills,
    warmer_degf: float = 0.0,
    new_kwh: float = 0.0,
    coldest: float | None = None,
) -> tuple[Cause, ...]:
    """The causes with the largest first; what cannot be told in energy comes last.

    They may overlap: the coldest bills are part of heating. They are where to look, not a sum.
    """
    before, after = lines
    found = [
        None if _counts_warmth(promise) else _warmer(after, years, warmer_degf),
        _cooling(years, promise),
        Cause("new use", new_kwh, is_known=True),
        _base(before, after, new_kwh),
        _heating(years, promise),
        None if coldest is None else Cause("coldest bills", coldest, is_known=False),
    ]
    causes = [one for one in found if one is not None and (one.kwh or 0.0) >= LEAST_KWH]
    causes.sort(key=lambda one: -(one.kwh or 0.0))
    if any(note.rule == "estimated read" for note in after_bills.notes):
        causes.append(Cause("estimated reads", None, is_known=False))
    return tuple(causes)


def _counts_warmth(promise: Promise | None) -> bool:
    """Whether the promise was made for the warmth they wanted: that is no shortfall then."""
    return promise is not None and promise.warmth == AS_WANTED


def _warmer(
    after: DegreeDayFit, years: tuple[YearUse | None, YearUse | None], degf: float
) -> Cause | None:
    """What each degree takes now: slope times the days of a heating season, as stated."""
    if degf <= 0.0 or after.heating_kwh_per_degf_day is None or years[1] is None:
        return None
    season = sum(bill.days for bill in after.bills if (bill.heating_degree_days or 0.0) > bill.days)
    share = DAYS_A_YEAR / after.days
    return Cause(
        "warmer rooms", degf * after.heating_kwh_per_degf_day * season * share, is_known=True
    )


def _cooling(years: tuple[YearUse | None, YearUse | None], promise: Promise | None) -> Cause | None:
    first, second = years
    if first is None or second is None:
        return None
    counted = promise.cooling_after_kwh if promise else 0.0
    return Cause(
        "new cooling", second.cooling_kwh - max(first.cooling_kwh, counted), is_known=False
    )


def _base(before: DegreeDayFit, after: DegreeDayFit, new_kwh: float) -> Cause | None:
    if not after.is_weather_driven:
        return None
    more = DAYS_A_YEAR * (after.base_kwh_per_day - before.base_kwh_per_day) - new_kwh
    return Cause("higher base", more, is_known=False)


def _heating(years: tuple[YearUse | None, YearUse | None], promise: Promise | None) -> Cause | None:
    if promise is None or years[1] is None:
        return None
    more = years[1].heating_kwh - promise.heating_after_kwh
    return Cause("heating above the promise", more, is_known=False)


def coldest_above(data: BillWeather) -> float | None:
    """What the coldest bills take above the line through all the others [kWh].

    Resistance heat that comes on in the cold: a line through all bills would bend to it. None
    where the others make no line or the coldest do not lie above it.
    """
    means = data.mean_degc
    order = np.argsort(means)
    coldest, others = order[:COLDEST], sorted(order[COLDEST:])
    if len(others) < FEWEST_BILLS:
        return None
    line = fit_days(data, others)
    if not line.is_weather_driven:
        return None
    above = [
        float(data.kwh[i] - data.days[i] * sum(p.mean() for p in line.per_day(data.day_degc[i])))
        for i in coldest
    ]
    return sum(above) if all(more > ABOVE * line.rmse for more in above) else None
