"""Bills against the days of the simulated year, and how far each can be trusted."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta

import numpy as np
from numpy.typing import NDArray

from costcompare.billing.reading import Bill

Floats = NDArray[np.float64]

DAYS = 365

READ_ERROR = {"actual": 0.02, "unknown": 0.03, "customer": 0.05, "estimated": 0.15}
"""Share of what a bill should show, by how its meter was read (judgement: 1 to 3 % for a
read, 15 % for an estimate)"""
MODEL_IN_WINTER, MODEL_ELSE = 0.05, 0.10
"""Share of a bill that the hourly model misses although every fact is right: in bills that
are mostly heating, and in those with little of it (judgement)"""
LITTLE_HEATING, MOSTLY_HEATING = 0.25, 0.75
"""Share of heating in a bill up to which it counts as one, and from which as the other
(judgement); the error changes steadily between them, or a little more heating in April would
move a fit by a jump"""
STATION = 0.03
"""The same for weather measured at a station some way off (judgement: 2 to 4 %)"""
LEAST_ERROR = 0.5
"""[kWh] a day that no bill is known better than, for months in which a house should use next
to nothing (judgement)"""
DAY_SD, MONTH_SD, MONTH = 4.0, 1.9, 30.0
"""[K] standard deviation of the mean temperature of one day and of thirty from the typical one
(judgement); longer bills scatter less"""


def day_counts(bills: Sequence[Bill]) -> Floats:
    """How often each day of a year of 365 lies in each bill, shape (bills, 365).

    The 29th of February counts as another 28th. The day of the last read belongs to the next
    bill.
    """
    counts = np.zeros((len(bills), DAYS))
    for row, bill in enumerate(bills):
        for offset in range(bill.days):
            counts[row, _place(bill.begins + timedelta(days=offset))] += 1.0
    return counts


def _place(day: date) -> int:
    """Number of a day in a year of 365 days, 0 for 1 January."""
    common = date(2025, day.month, 28 if (day.month, day.day) == (2, 29) else day.day)
    return common.timetuple().tm_yday - 1


def errors(
    bills: Sequence[Bill],
    computed: Floats,
    heating: Floats,
    *,
    by_degree: Floats | None,
) -> Floats:
    """Standard error of every bill against the model [kWh], shape (bills,).

    ``computed`` and ``heating`` are what the model makes of them [kWh]. The shares are of
    ``computed``: as shares of what was measured, bills that came out low would count for more
    than those that came out high, and pull the fit down. ``by_degree`` is how much a bill
    changes with each kelvin of colder weather [kWh/K]; None where the weather is that of the
    bills' own days.
    """
    part = np.divide(heating, computed, out=np.zeros_like(computed), where=computed > 0.0)
    read = computed * np.array([READ_ERROR[bill.read] for bill in bills])
    model = computed * np.interp(
        part, [LITTLE_HEATING, MOSTLY_HEATING], [MODEL_ELSE, MODEL_IN_WINTER]
    )
    days = np.array([bill.days for bill in bills], dtype=float)
    if by_degree is None:
        weather = STATION * computed
    else:
        weather = np.abs(by_degree) * np.minimum(MONTH_SD * np.sqrt(MONTH / days), DAY_SD)
    whole = np.sqrt(read**2 + model**2 + weather**2)
    return np.asarray(np.maximum(whole, LEAST_ERROR * days), dtype=np.float64)
