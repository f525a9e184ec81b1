"""The check after a winter: what was saved with the weather taken out, and how sure that is.

The line through the bills before the work says what the days after it would have used; less what
was used, that is the saving (the avoided use of IPMVP and ASHRAE Guideline 14, whose bodies were
not at hand: from memory and from papers). Its uncertainty is statistics alone. What is known to
have changed in how the home is lived in is taken out of a second figure, never of the first.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np

from costcompare.billing.bill_report import for_days_of
from costcompare.billing.bill_weather import BillWeather, with_weather
from costcompare.billing.daily_temperatures import DailyTemperatures
from costcompare.billing.degree_days import DegreeDayFit, fit
from costcompare.billing.goodness import fractional_savings_uncertainty
from costcompare.billing.normal_year import YearUse, year_use
from costcompare.billing.promise import AS_LIVED, AS_WANTED, Promise
from costcompare.billing.reading.bills import Bills
from costcompare.billing.shortfall import Cause, coldest_above, ranked
from costcompare.errors import BillsError, Fault

MONTHS_A_YEAR = 12.0
DAYS_A_YEAR = 365.0
CONFIDENCE = 0.9
LARGEST_FSU, FSU_CONFIDENCE = 0.5, 0.68
"""A saving counts as shown when its uncertainty is at most half of it at 68 % (ASHRAE Guideline
14, from memory)"""


@dataclass(frozen=True)
class Habits:
    """What is known to have changed in how the home is lived in."""

    warmer_degf: float = 0.0
    """[F] by which the rooms are kept warmer than before"""
    car_kwh_per_month: float = 0.0
    other_kwh_per_month: float = 0.0
    """New use that has nothing to do with the work; below 0 where some went"""


@dataclass(frozen=True)
class SecondWinter:
    """Measured saving, its uncertainty, the promise beside it, and why it fell short."""

    before: DegreeDayFit
    after: DegreeDayFit
    after_days: int
    expected_kwh: float
    """What the days after the work would have used before it"""
    measured_kwh: float
    saving_kwh: float
    saving_share: float
    uncertainty_share: float | None
    """Of the saving, nine in ten; None where nothing was saved or it cannot be told"""
    low_kwh: float | None
    high_kwh: float | None
    is_shown: bool
    """Whether the uncertainty is at most half of the saving at 68 %"""
    warmer_kwh: float
    """What the rooms that are kept warmer would have taken before the work"""
    car_kwh: float
    cooling_kwh: float
    """Cooling after the work above that before it"""
    same_habits_saving_kwh: float
    """The saving had the home been lived in as before"""
    before_year: YearUse | None
    after_year: YearUse | None
    year_saving_kwh: float
    """In a normal year, as the home is lived in now"""
    year_same_habits_kwh: float
    """In a normal year, had the home been lived in as before"""
    promise: Promise | None
    """The one that is held against the saving"""
    other_promises: tuple[Promise, ...]
    shortfall_kwh: float | None
    """Promised less measured in a normal year; below 0 where more was saved"""
    is_within_uncertainty: bool | None
    causes: tuple[Cause, ...]
    """Ranked, where it fell short"""
    cautions: tuple[str, ...]


def checked_winter(
    before: Bills,
    after: Bills,
    temperatures: DailyTemperatures,
    *,
    normal: DailyTemperatures | None = None,
    habits: Habits | None = None,
    promises: tuple[Promise, ...] = (),
) -> SecondWinter:
    """The saving between the bills before and after the work.

    Raises :class:`BillsError` where the bills before follow no weather (no saving can be told with
    the weather taken out) or where temperatures are missing.
    """
    habits = habits or Habits()
    own_before, before_is_own = for_days_of(before.bills, temperatures)
    own_after, after_is_own = for_days_of(after.bills, temperatures)
    line = fit(before, own_before)
    if not line.is_weather_driven:
        rule = f"cannot be freed of the weather: {line.reason}"
        instead = "a whole year of bills before the work"
        raise BillsError([Fault("the bills before", rule, instead=instead)])
    later = fit(after, own_after)
    days = with_weather(after.bills, own_after)
    sums = _sums(line, later, days, habits)
    year = normal or temperatures
    years = year_use(line, year), year_use(later, year)
    measured = _Measured(line, later, days, sums)
    told = _year_savings(measured, years, habits)
    promise, others = _held_against(promises, habits)
    result = _result(measured, years, told, promise=promise, others=others)
    said = [*result.cautions]
    if not (before_is_own and after_is_own):
        said.append("A year that stands for any is taken for days of bills: trust this little.")
    if habits.other_kwh_per_month == 0.0 and habits.car_kwh_per_month == 0.0:
        said.append("People, appliances and a car may have come or gone: ask before it is sent.")
    result = replace(result, cautions=tuple(said))
    if result.shortfall_kwh is None or result.shortfall_kwh <= 0.0:
        return result
    causes = ranked(
        (line, later),
        years,
        promise=promise,
        after_bills=after,
        warmer_degf=habits.warmer_degf,
        new_kwh=MONTHS_A_YEAR * (habits.car_kwh_per_month + habits.other_kwh_per_month),
        coldest=coldest_above(days),
    )
    return replace(result, causes=causes)


@dataclass(frozen=True)
class _Sums:
    """Over the days after the work [kWh]."""

    expected: float
    measured: float
    warmer: float
    new_use: float
    cooling: float


@dataclass(frozen=True)
class _Measured:
    line: DegreeDayFit
    later: DegreeDayFit
    days: BillWeather
    sums: _Sums


def _sums(line: DegreeDayFit, later: DegreeDayFit, days: BillWeather, habits: Habits) -> _Sums:
    warm = warmer(line, habits.warmer_degf)
    expected, at_warmer, cooling = 0.0, 0.0, 0.0
    for bill_days, degc in zip(days.days, days.day_degc, strict=True):
        expected += float(bill_days) * _mean(line, degc)
        at_warmer += float(bill_days) * _mean(warm, degc)
        cooling += float(bill_days) * float(
            later.per_day(degc)[2].mean() - line.per_day(degc)[2].mean()
        )
    months = days.days.sum() / (DAYS_A_YEAR / MONTHS_A_YEAR)
    new_use = months * (habits.car_kwh_per_month + habits.other_kwh_per_month)
    return _Sums(
        expected, float(days.kwh.sum()), at_warmer - expected, float(new_use), max(cooling, 0.0)
    )


def warmer(line: DegreeDayFit, degf: float) -> DegreeDayFit:
    """The same house kept warmer: its balance point moves as the rooms do."""
    if line.heating_balance_degc is None or line.heating_balance_degf is None:
        return line
    return replace(
        line,
        heating_balance_degf=line.heating_balance_degf + degf,
        heating_balance_degc=line.heating_balance_degc + degf / 1.8,
    )


def _mean(line: DegreeDayFit, degc: np.ndarray) -> float:
    return float(sum(part.mean() for part in line.per_day(degc)))


@dataclass(frozen=True)
class _YearSavings:
    as_lived: float
    same_habits: float


def _year_savings(
    measured: _Measured, years: tuple[YearUse | None, YearUse | None], habits: Habits
) -> _YearSavings:
    """In a normal year: by both lines where there are two, else the measured share of the first."""
    sums = measured.sums
    saving = sums.expected - sums.measured
    added = sums.warmer + sums.new_use + sums.cooling
    first, second = years
    per_year = DAYS_A_YEAR / float(measured.days.days.sum())
    if first is None:
        return _YearSavings(saving * per_year, (saving + added) * per_year)
    scale = first.kwh / sums.expected
    if second is None or not measured.later.is_weather_driven:
        return _YearSavings(saving * scale, (saving + added) * scale)
    as_lived = first.kwh - second.kwh
    new_use = MONTHS_A_YEAR * (habits.car_kwh_per_month + habits.other_kwh_per_month)
    cooling = max(second.cooling_kwh - first.cooling_kwh, 0.0)
    return _YearSavings(as_lived, as_lived + sums.warmer * scale + new_use + cooling)


def _held_against(
    promises: tuple[Promise, ...], habits: Habits
) -> tuple[Promise | None, tuple[Promise, ...]]:
    """The promise at the warmth they live at now, and the others."""
    wanted = AS_WANTED if habits.warmer_degf > 0.0 else AS_LIVED
    held = next((one for one in promises if one.warmth == wanted), None)
    held = held or (promises[0] if promises else None)
    return held, tuple(one for one in promises if one is not held)


def _result(
    measured: _Measured,
    years: tuple[YearUse | None, YearUse | None],
    told: _YearSavings,
    *,
    promise: Promise | None,
    others: tuple[Promise, ...],
) -> SecondWinter:
    line, sums, days = measured.line, measured.sums, measured.days
    saving = sums.expected - sums.measured
    share = saving / sums.expected
    relative = _uncertainty(line, share, days, CONFIDENCE)
    half = abs(saving) * relative if relative is not None else None
    shown = _uncertainty(line, share, days, FSU_CONFIDENCE)
    shortfall = promise.saving_kwh - told.as_lived if promise else None
    return SecondWinter(
        before=line,
        after=measured.later,
        after_days=int(days.days.sum()),
        expected_kwh=sums.expected,
        measured_kwh=sums.measured,
        saving_kwh=saving,
        saving_share=share,
        uncertainty_share=relative,
        low_kwh=None if half is None else saving - half,
        high_kwh=None if half is None else saving + half,
        is_shown=bool(saving > 0.0 and shown is not None and shown <= LARGEST_FSU),
        warmer_kwh=sums.warmer,
        car_kwh=sums.new_use,
        cooling_kwh=sums.cooling,
        same_habits_saving_kwh=saving + sums.warmer + sums.new_use + sums.cooling,
        before_year=years[0],
        after_year=years[1],
        year_saving_kwh=told.as_lived,
        year_same_habits_kwh=told.same_habits,
        promise=promise,
        other_promises=others,
        shortfall_kwh=shortfall,
        is_within_uncertainty=(
            bool(abs(shortfall) <= half * DAYS_A_YEAR / days.days.sum())
            if shortfall is not None and half is not None
            else None
        ),
        causes=(),
        cautions=tuple(dict.fromkeys((*line.cautions, *measured.later.cautions))),
    )


def _uncertainty(
    line: DegreeDayFit, share: float, days: BillWeather, confidence: float
) -> float | None:
    found = fractional_savings_uncertainty(
        line.cv_rmse,
        share,
        before=line.bill_count,
        after=len(days.bills),
        parameters=line.parameters,
        confidence=confidence,
    )
    return found if math.isfinite(found) else None
