"""What the house of a degree-day fit uses in a year of weather, and how sure that is.

Balance point and slope are far less certain than their sum over a year: report the sum.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy import stats

from costcompare.billing.daily_temperatures import DAYS, DailyTemperatures
from costcompare.billing.degree_days import DegreeDayFit
from costcompare.billing.goodness import k_of


@dataclass(frozen=True)
class YearUse:
    """A year's use at the weather of one year."""

    kwh: float
    base_kwh: float
    heating_kwh: float
    cooling_kwh: float
    low_kwh: float
    high_kwh: float
    """Nine in ten such years of this house lie between"""
    weather: str
    heating_share: float


def year_use(line: DegreeDayFit, weather: DailyTemperatures) -> YearUse | None:
    """The use in a year of 365 days of that weather; None where it holds less than a year.

    Of several years each day has the mean of its uses, not the use at its mean temperature, which
    would be too little near the balance point.

    The range is that of a saving by ASHRAE Guideline 14: the scatter of the bills about the line,
    independent from bill to bill, t of the bills less the fitted numbers, and the error of the
    line itself in (1 + 2/P) and the factor k. Made-up years with bills that scatter by 3 % lie in
    it in about nine cases of ten (a test counts them).
    """
    daily = [weather.by_day_of_year(part) for part in line.per_day(weather.degc)]
    if any(part is None for part in daily):
        return None
    base, heating, cooling = (float(part.sum()) for part in daily if part is not None)
    total = base + heating + cooling
    half = _half(line, DAYS)
    return YearUse(
        total,
        base,
        heating,
        cooling,
        total - half,
        total + half,
        weather.source,
        heating / total if total > 0.0 else 0.0,
    )


def _half(line: DegreeDayFit, days: int) -> float:
    """Half the range [kWh]: t k RMSE sqrt(Q (1 + 2/P)) with Q bills in the year."""
    freedom = line.bill_count - line.parameters
    if freedom <= 0 or not line.is_weighted:
        return float("nan")
    bills = days / (line.days / line.bill_count)
    t = float(stats.t.ppf(0.95, freedom))
    return t * k_of(bills) * line.rmse * float(np.sqrt(bills * (1.0 + 2.0 / line.bill_count)))
