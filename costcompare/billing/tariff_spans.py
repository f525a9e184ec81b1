"""Which hours and days of a bill have which prices: bills cut where prices or seasons change.

Nothing here knows how much energy was used; a cut is worked out once for a tariff and a year
and serves every home that is billed by it.
"""

from __future__ import annotations

import calendar
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from functools import lru_cache
from itertools import groupby

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from costcompare.billing.clock import CivilHours, civil_hours
from costcompare.billing.holidays import holidays
from costcompare.case.tariff_facts import (
    Conventions,
    DayKind,
    Season,
    Tariff,
    YearDays,
    holds_on,
)

Ints = NDArray[np.int64]
Flags = NDArray[np.bool_]

AVERAGE_MONTH = 365.0 / 12.0
"""[d]"""


@dataclass(frozen=True)
class PartSpan:
    """The days of a bill on which the same prices and the same season hold."""

    rates: Tariff
    since: date | None
    """From when the prices hold, None where they hold from the start"""
    season: Season | None
    days: int
    registers: tuple[Ints, ...]
    """Places in the year of the hours that each period prices, and of those that none does"""

    @property
    def pattern(self) -> tuple[object, ...]:
        """What its registers measure: energy of a bill is shared by days over equal ones."""
        named = zip(self.rates.periods, self.registers, strict=False)
        used = [(p.name, p.days, p.hours) for p, hours in named if len(hours)]
        return (*used, bool(len(self.registers[-1])))


@dataclass(frozen=True)
class BillSpan:
    """One bill."""

    month: int
    """1 to 12: of its first day"""
    first: date
    days: int
    months: float
    """Its length by the tariff's proration"""
    hours: Ints
    parts: tuple[PartSpan, ...]
    windows: dict[str, Ints]
    """Places of the hours in which each demand charge is measured, by its name"""


@dataclass(frozen=True)
class _Year:
    """What a cut of a year depends on."""

    tariff: Tariff
    stamps: bytes
    offset: str
    time_zone: str


def month_spans(tariff: Tariff, index: pd.DatetimeIndex, time_zone: str) -> tuple[BillSpan, ...]:
    """The twelve calendar months of a year of hours, January first."""
    stamps = index.tz_convert("UTC").as_unit("s").asi8.tobytes()
    return _month_spans(_Year(tariff, stamps, str(index.tz), time_zone))


@lru_cache(maxsize=64)
def _month_spans(year: _Year) -> tuple[BillSpan, ...]:
    seconds = np.frombuffer(year.stamps, dtype=np.int64)
    index = pd.DatetimeIndex(pd.to_datetime(seconds, unit="s", utc=True)).tz_convert(year.offset)
    clock = civil_hours(index, year.time_zone)
    spans = (bill_span(year.tariff, clock, np.flatnonzero(clock.month == m)) for m in range(12))
    return tuple(span for span in spans if span is not None)


def read_spans(
    tariff: Tariff, index: pd.DatetimeIndex, time_zone: str, reads: Sequence[date]
) -> tuple[BillSpan, ...]:
    """The bills between the days on which a meter is read, over the hours of an index."""
    clock = civil_hours(index, time_zone)
    later = 1 if tariff.conventions.reads == "end of day" else 0
    edges = np.array([day.toordinal() + later for day in reads])
    number = np.searchsorted(edges, clock.day, side="right") - 1
    places = (np.flatnonzero(number == n) for n in range(len(reads) - 1))
    spans = (bill_span(tariff, clock, place, whole=False) for place in places)
    return tuple(span for span in spans if span is not None)


def dated_span(tariff: Tariff, start: date, end: date) -> BillSpan:
    """One bill from its two readings, without daylight saving: days of 24 hours."""
    later = timedelta(days=1 if tariff.conventions.reads == "end of day" else 0)
    index = pd.date_range(start + later, end + later, freq="h", inclusive="left", tz="UTC")
    clock = civil_hours(index, "UTC")
    span = bill_span(tariff, clock, np.arange(len(index)), whole=False)
    assert span is not None
    return span


def bill_span(
    tariff: Tariff, clock: CivilHours, places: Ints, *, whole: bool = True
) -> BillSpan | None:
    """The bill over some hours; ``whole`` says that they are one calendar month."""
    if not len(places):
        return None
    ordinals = clock.billing_day[places]
    days = [date.fromordinal(int(day)) for day in np.unique(ordinals)]
    is_month = whole and tariff.conventions.proration == "calendar month"
    keyed = ((*_rates_on(tariff, day), day) for day in days)
    groups = [
        (rates, since, season, [day for *_same, day in group])
        for (rates, since, season), group in groupby(keyed, key=lambda item: item[:3])
    ]
    parts = []
    for rates, since, season, held in groups:
        mine = places[np.isin(ordinals, [day.toordinal() for day in held])]
        numbers = period_numbers(rates, clock)[mine]
        registers = tuple(mine[numbers == n] for n in range(len(rates.periods) + 1))
        parts.append(PartSpan(rates, since, season, len(held), registers))
    charges = {charge.name: charge for part in parts for charge in part.rates.demand}
    windows = {
        name: places[_window(tariff, clock, charge.months, charge.days, charge.hours)[places]]
        for name, charge in charges.items()
    }
    return BillSpan(
        month=int(clock.month[places[0]]) + 1,
        first=days[0],
        days=len(days),
        months=1.0 if is_month else length_in_months(tariff.conventions, days),
        hours=places,
        parts=tuple(parts),
        windows=windows,
    )


def _rates_on(tariff: Tariff, day: date) -> tuple[Tariff, date | None, Season | None]:
    rates = tariff.on(day)
    since = max((c.starts for c in tariff.changes if c.starts <= day), default=None)
    seasons = (s for s in rates.seasons if holds_on(s.months, s.dates, day))
    return rates, since, next(seasons, None)


def length_in_months(conventions: Conventions, days: Sequence[date]) -> float:
    """How many months the days of a bill are."""
    count = len(days)
    if conventions.whole_month is not None:
        least, most = conventions.whole_month
        if least <= count <= most:
            return 1.0
    if conventions.proration == "none":
        return 1.0
    if conventions.proration == "30 days":
        return count / 30.0
    if conventions.proration == "average month":
        return count / AVERAGE_MONTH
    by_month = groupby(days, key=lambda day: (day.year, day.month))
    return sum(len(list(group)) / calendar.monthrange(*month)[1] for month, group in by_month)


def period_numbers(rates: Tariff, clock: CivilHours) -> Ints:
    """The number of the period that prices each hour; ``len(rates.periods)`` for none."""
    number = np.full(clock.month.shape, len(rates.periods), dtype=np.int64)
    for place in reversed(range(len(rates.periods))):
        period = rates.periods[place]
        number[
            _window(rates, clock, period.months, period.days, period.hours, dates=period.dates)
        ] = place
    return number


def _window(
    rates: Tariff,
    clock: CivilHours,
    months: tuple[bool, ...],
    days: DayKind,
    hours: tuple[bool, ...],
    *,
    dates: YearDays | None = None,
) -> Flags:
    """The hours that lie in some months, on some days, at some hours of the clock."""
    holds: Flags = np.array(hours)[clock.hour]
    if dates is None:
        holds = holds & np.array(months)[clock.month]
    else:
        named = {int(d): dates.hold(date.fromordinal(int(d))) for d in np.unique(clock.day)}
        holds = holds & np.array([named[int(d)] for d in clock.day])
    if days == "all":
        return holds
    off = clock.weekend | np.isin(clock.day, list(_free_days(rates, clock)))
    return holds & (off if days == "weekends" else ~off)


def _free_days(rates: Tariff, clock: CivilHours) -> set[int]:
    """Holidays of the years of a clock, as ordinals."""
    first, last = (date.fromordinal(int(day)).year for day in (clock.day[0], clock.day[-1]))
    named = (
        day
        for year in range(first, last + 1)
        for day in holidays(rates.holiday_names, year, rates.observed)
    )
    return {day.toordinal() for day in (*rates.holidays, *named)}
