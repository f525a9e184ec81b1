"""The mean temperature outdoors of each day, of real years or of one that stands for any year."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

import numpy as np

DAYS = 365
HOURS = 24
ANY_YEAR = 2027
"""A year of 365 days, for the days of a year that stands for any"""


@dataclass(frozen=True)
class DailyTemperatures:
    """Daily means [degC] from ``first`` on, nan where a day has none."""

    first: date
    degc: np.ndarray
    source: str
    """Where they come from, for showing"""
    repeats: bool = False
    """True for 365 days from 1 January that stand for any year"""

    def between(self, begins: date, ends: date) -> np.ndarray:
        """The days from the first up to, not with, the last [degC]; nan where there is none."""
        days = (ends - begins).days
        if self.repeats:
            return np.array([self.degc[_place(begins + timedelta(d))] for d in range(days)])
        wanted = (begins - self.first).days + np.arange(days)
        found = np.full(days, np.nan)
        there = (wanted >= 0) & (wanted < len(self.degc))
        found[there] = self.degc[wanted[there]]
        return found

    @property
    def last(self) -> date:
        """The last day."""
        return self.first + timedelta(days=len(self.degc) - 1)

    def by_day_of_year(self, values: np.ndarray) -> np.ndarray | None:
        """Values of each day as 365 means over the years there are; None for less than a year."""
        if self.repeats:
            return values
        places = np.array([_place(self.first + timedelta(d)) for d in range(len(self.degc))])
        there = np.isfinite(values)
        count = np.bincount(places[there], minlength=DAYS)
        if (count == 0).any():
            return None
        mean: np.ndarray = np.bincount(places[there], weights=values[there], minlength=DAYS) / count
        return mean

    def mean_year(self) -> DailyTemperatures | None:
        """365 days, each the mean over the years there are; None for less than a whole year."""
        mean = None if self.repeats else self.by_day_of_year(self.degc)
        if mean is None:
            return self if self.repeats else None
        return DailyTemperatures(date(ANY_YEAR, 1, 1), mean, f"{self.source}, mean year", True)


def _place(day: date) -> int:
    """The day's place in a year of 365 days; the 29th of February is taken as the 28th."""
    if (day.month, day.day) == (2, 29):
        day = day.replace(day=28)
    return day.replace(year=ANY_YEAR).timetuple().tm_yday - 1


def of_hours(hourly_degc: np.ndarray, source: str) -> DailyTemperatures:
    """A year of 8,760 hours [degC] as daily means that stand for any year."""
    daily = np.asarray(hourly_degc, dtype=float).reshape(DAYS, HOURS).mean(axis=1)
    return DailyTemperatures(date(ANY_YEAR, 1, 1), daily, source, repeats=True)


def of_days(means_degc: Mapping[date, float], source: str) -> DailyTemperatures:
    """Days with their means [degC]; a day that is not among them has none."""
    first, last = min(means_degc), max(means_degc)
    degc = np.full((last - first).days + 1, np.nan)
    for day, mean in means_degc.items():
        degc[(day - first).days] = mean
    return DailyTemperatures(first, degc, source)


def of_row(first: date, means_degc: Sequence[float] | np.ndarray, source: str) -> DailyTemperatures:
    """Successive days from the first on [degC]."""
    return DailyTemperatures(first, np.asarray(means_degc, dtype=float), source)
