"""Whether every hour of a year has one price: periods that meet, seasons that meet, gaps."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

from costcompare.case.hours import written
from costcompare.case.paths import join
from costcompare.case.tariff_facts import Period, Tariff, YearDays, holds_on
from costcompare.errors import Fault

Flags = NDArray[np.bool_]

_DAYS = tuple(date(2028, 1, 1) + timedelta(days=n) for n in range(366))
"""The days of a leap year: every day that a year can have"""


def hour_faults(tariff: Tariff, at: str) -> Iterator[Fault]:
    """Hours with two prices whose order is not stated, hours without a price."""
    periods = [(period, _hours_of(period)) for period in tariff.periods]
    priced = np.zeros((366, 2, 24), dtype=bool)
    for number, (period, hours) in enumerate(periods):
        path = join([at, "periods", period.name])
        if number and not np.any(hours & ~priced):
            rule = "is never reached: the periods that stand before it price all its hours"
            yield Fault(path, rule, "", "the narrower period first")
        priced |= hours
    if tariff.conventions.overlaps == "refused":
        for (one, first), (other, second) in combinations(periods, 2):
            shared = first & second
            inside = np.array_equal(shared, first) or np.array_equal(shared, second)
            if shared.any() and not inside and one.price != other.price:
                rule = f'shares hours with the period "{one.name}", which has another price'
                yield Fault(
                    join([at, "periods", other.name]),
                    f"{rule}: {_said(shared)}",
                    "",
                    'hours that do not meet, or overlaps = "first wins"',
                )
    yield from _dated_seasons(tariff, at)
    unpriced = ~priced & ~_tiered(tariff)[:, np.newaxis, np.newaxis]
    if unpriced.any():
        rule = f"must price the hours that no period prices: {_said(unpriced)}"
        example = 'for example tiers = [ { price = "0.12 $/kWh" } ]'
        yield Fault(f"{at}.tiers", rule, instead=example)


def _held(months: tuple[bool, ...], dates: YearDays | None) -> Flags:
    return np.array([holds_on(months, dates, day) for day in _DAYS])


def _hours_of(period: Period) -> Flags:
    """Hours by day of the year, weekday or weekend, and hour of the clock."""
    kinds = np.array([period.days != "weekends", period.days != "weekdays"])
    held = _held(period.months, period.dates)
    hours = np.array(period.hours)
    flags: Flags = held[:, np.newaxis, np.newaxis] & kinds[:, np.newaxis] & hours
    return flags


def _tiered(tariff: Tariff) -> Flags:
    """Days on which tiers price what no period does."""
    days = np.full(366, bool(tariff.tiers))
    for season in tariff.seasons:
        days |= _held(season.months, season.dates)
    return days


def _dated_seasons(tariff: Tariff, at: str) -> Iterator[Fault]:
    for one, other in combinations(tariff.seasons, 2):
        if one.dates is None and other.dates is None:
            continue
        shared = _held(one.months, one.dates) & _held(other.months, other.dates)
        if shared.any():
            day = _DAYS[int(np.argmax(shared))]
            rule = f'must not share days with the season "{one.name}", such as {day:%m-%d}'
            yield Fault(join([at, "seasons", other.name, "dates"]), rule)


def _said(hours: Flags) -> str:
    """Hours of a year in words: the months, and the hours of weekdays and weekends."""
    days: Flags = np.any(hours, axis=(1, 2)).reshape(366)
    months = sorted({day.month for day, held in zip(_DAYS, days, strict=True) if held})
    whole = len(months) == 12
    named = "all year" if whole else f"in month {', '.join(map(str, months))}"
    kinds = []
    for kind, name in enumerate(("weekdays", "weekends")):
        flags: Flags = np.any(hours[:, kind], axis=0).reshape(24)
        if flags.any():
            kinds.append(f"{name} {written(tuple(bool(flag) for flag in flags))}")
    return f"{', '.join(kinds)} {named}"
