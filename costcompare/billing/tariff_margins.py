"""What one more kilowatt hour costs: always the bill with it minus the bill without it."""

from __future__ import annotations

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from costcompare.billing.tariff_lines import without_rounding
from costcompare.billing.tariff_spans import month_spans
from costcompare.billing.tariff_year import checked_energy, year_bills
from costcompare.case.tariff_facts import Tariff

Floats = NDArray[np.float64]


def next_kwh(
    tariff: Tariff, kwh: Floats, index: pd.DatetimeIndex, time_zone: str
) -> tuple[float, ...]:
    """What one more kWh in each month costs over the year [$], January first.

    It is spread over the hours of the month as the energy of the month is, evenly over a
    month without any. Amounts are not rounded, whatever the tariff's convention. The other
    parameters and errors are those of :func:`costcompare.billing.tariff.year_bill`.
    """
    year = checked_energy(kwh, len(index))[0]
    rows = np.tile(year, (13, 1))
    for span in month_spans(tariff, index, time_zone):
        used = year[span.hours]
        total = used.sum()
        rows[span.month, span.hours] += used / total if total > 0.0 else 1.0 / len(used)
    bills = year_bills(without_rounding(tariff), rows, index, time_zone).total_usd
    return tuple(float(with_it - bills[0]) for with_it in bills[1:])


def next_kwh_at(
    tariff: Tariff, kwh: Floats, index: pd.DatetimeIndex, time_zone: str, *, hour: int
) -> float:
    """What one more kWh in one hour costs over the year [$]; ``hour`` is its place."""
    rows = np.tile(checked_energy(kwh, len(index))[0], (2, 1))
    rows[1, hour] += 1.0
    bills = year_bills(without_rounding(tariff), rows, index, time_zone).total_usd
    return float(bills[1] - bills[0])
