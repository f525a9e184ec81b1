"""A made-up year of bills: 24 kWh a day and 1.85 kWh for each F day below 57 F."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from itertools import pairwise

import numpy as np

from costcompare.billing.daily_temperatures import DailyTemperatures, of_row
from costcompare.billing.reading.bills import Bill

FIRST = date(2025, 1, 1)
DAY = np.arange(365)
DEGF = (
    52.0
    - 17.0 * np.cos(2.0 * np.pi * (DAY - 20) / 365.0)
    + 7.0 * np.sin(2.0 * np.pi * DAY / 9.0)
    + 3.0 * np.sin(2.0 * np.pi * DAY / 4.3)
)
READS = [
    *(date(2025, m, d) for m, d in ((1, 1), (1, 31), (3, 3), (4, 2), (5, 1), (6, 2), (7, 1))),
    *(date(2025, m, d) for m, d in ((7, 31), (9, 2), (10, 1), (10, 31), (12, 2))),
    date(2026, 1, 1),
]
NOISE = [0.031, -0.018, 0.009, -0.027, 0.044, -0.036, 0.021, -0.012, 0.017, -0.041, 0.026, -0.007]


def degc(degf: np.ndarray | Sequence[float]) -> np.ndarray:
    return (np.asarray(degf, dtype=float) - 32.0) / 1.8


TEMPERATURES = of_row(FIRST, degc(DEGF), "a made-up year")


def uses(degf: np.ndarray = DEGF, base: float = 24.0, slope: float = 1.85, balance: float = 57.0) -> list[float]:  # noqa: E501  # fmt: skip
    """The use between the reads."""
    daily = base + slope * np.maximum(balance - degf, 0.0)
    at = [(read - FIRST).days for read in READS]
    return [float(daily[a:b].sum()) for a, b in pairwise(at)]


def bills(amounts: Sequence[float], later: int = 0) -> list[Bill]:
    """Bills of these amounts between the reads, moved by whole years."""
    reads = [read.replace(year=read.year + later) for read in READS]
    return [
        Bill(begins, ends, float(kwh), read="actual")
        for begins, ends, kwh in zip(reads, reads[1:], amounts, strict=False)
    ]


def noisy() -> list[float]:
    return [use * (1.0 + part) for use, part in zip(uses(), NOISE, strict=True)]


def shifted(degf: float) -> DailyTemperatures:
    return of_row(FIRST, degc(DEGF + degf), "a made-up year, moved")
