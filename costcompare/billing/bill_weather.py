"""Bills as a degree-day fit needs them: use per day, days, and degree days at any balance point.

Degree days are summed day by day over the days of the bill; where a bill is told only by its mean
temperature they are taken from that mean, which is biased near the balance point.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from costcompare.billing.daily_temperatures import DailyTemperatures
from costcompare.billing.reading.bills import Bill

LEAST_COVERAGE = 0.9
"""Share of a bill's days that must have a temperature (CalTRACK Methods v2.0)"""


@dataclass(frozen=True)
class BillWeather:
    """Bills with the temperatures of their days."""

    bills: tuple[Bill, ...]
    days: np.ndarray
    kwh: np.ndarray
    day_degc: tuple[np.ndarray, ...]
    """For each bill the daily means there are, or its one mean"""
    without: tuple[Bill, ...] = ()
    """Bills that have too few temperatures"""
    is_daily: bool = True

    @property
    def use(self) -> np.ndarray:
        """Mean use [kWh/day]."""
        use: np.ndarray = self.kwh / self.days
        return use

    @property
    def mean_degc(self) -> np.ndarray:
        """Mean temperature of each bill."""
        return np.array([day.mean() for day in self.day_degc])

    def heating(self, balance_degc: np.ndarray) -> np.ndarray:
        """Mean degree days a day below each balance point [K], one row a balance point."""
        return self._mean(balance_degc, 1.0)

    def cooling(self, balance_degc: np.ndarray) -> np.ndarray:
        """Mean degree days a day above each balance point [K], one row a balance point."""
        return self._mean(balance_degc, -1.0)

    def _mean(self, balance_degc: np.ndarray, sign: float) -> np.ndarray:
        columns = [
            np.maximum(sign * (balance_degc[:, None] - days[None, :]), 0.0).mean(axis=1)
            for days in self.day_degc
        ]
        return np.stack(columns, axis=1)


def with_weather(
    bills: Sequence[Bill], temperatures: DailyTemperatures | Sequence[float]
) -> BillWeather:
    """Bills beside their temperatures: of each day, or one mean a bill [degC].

    A bill with temperatures for fewer than nine tenths of its days is set aside. Raises
    ``ValueError`` where the means are not as many as the bills.
    """
    if not isinstance(temperatures, DailyTemperatures):
        means = [np.array([float(mean)]) for mean in temperatures]
        if len(means) != len(bills):
            raise ValueError(f"{len(means)} mean temperatures for {len(bills)} bills")
        return _beside(bills, means, (), is_daily=False)
    kept, days, without = [], [], []
    for bill in bills:
        found = temperatures.between(bill.begins, bill.ends)
        there = found[np.isfinite(found)]
        if len(there) < LEAST_COVERAGE * len(found):
            without.append(bill)
        else:
            kept.append(bill)
            days.append(there)
    return _beside(kept, days, tuple(without), is_daily=True)


def _beside(
    bills: Sequence[Bill], days: Sequence[np.ndarray], without: tuple[Bill, ...], *, is_daily: bool
) -> BillWeather:
    return BillWeather(
        tuple(bills),
        np.array([float(bill.days) for bill in bills]),
        np.array([bill.kwh for bill in bills]),
        tuple(days),
        without,
        is_daily,
    )
