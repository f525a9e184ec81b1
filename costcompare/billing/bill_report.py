"""What real bills say alone: base load, heating and cooling, a year, why the last one changed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta

from costcompare.billing.change import BillChange, between
from costcompare.billing.daily_temperatures import DailyTemperatures
from costcompare.billing.degree_days import DegreeDayFit, fit
from costcompare.billing.normal_year import YearUse, year_use
from costcompare.billing.reading.bills import Bill, Bills, Note

A_YEAR = timedelta(days=365)
SAME_SEASON = timedelta(days=20)
"""By which the bill of a year before may begin earlier or later (judgement)"""


@dataclass(frozen=True)
class BillReport:
    """The answer of real bills, with no model of the house."""

    source: str
    bill_count: int
    left_out: tuple[str, ...]
    """Days of the bills that were read and not used"""
    total_kwh: float
    total_days: int
    total_usd: float | None
    """None where one of the bills has no dollars that can be used"""
    notes: tuple[Note, ...]
    temperatures: str
    is_own_weather: bool
    """False where a year that stands for any is taken for the days of the bills"""
    line: DegreeDayFit
    year: YearUse | None
    """None where use is not weather-driven or no year of weather is there"""
    change: BillChange | None
    """From the bill a year before, else the one before, to the last"""


def reported(
    bills: Bills, temperatures: DailyTemperatures, normal: DailyTemperatures | None = None
) -> BillReport:
    """What the bills say with these temperatures.

    ``normal`` is the year that the yearly use is told for; without it the mean year of the
    temperatures. Where the temperatures hold no day of the bills but a whole year, that year
    stands for the days of the bills. Raises :class:`BillsError` where there is neither.
    """
    days, is_own = for_days_of(bills.bills, temperatures)
    line = fit(bills, days)
    year = normal or days
    pair = comparable(bills.bills)
    dollars = [bill.dollars for bill in bills.bills if bill.dollars is not None]
    return BillReport(
        source=bills.source,
        bill_count=len(bills.bills),
        left_out=tuple(bill.dates for bill in bills.left_out),
        total_kwh=bills.kwh,
        total_days=bills.days,
        total_usd=sum(dollars) if dollars and len(dollars) == len(bills.bills) else None,
        notes=bills.notes,
        temperatures=days.source,
        is_own_weather=is_own,
        line=line,
        year=year_use(line, year) if line.is_weather_driven else None,
        change=between(*pair, line, days) if pair else None,
    )


def for_days_of(
    bills: Sequence[Bill], temperatures: DailyTemperatures
) -> tuple[DailyTemperatures, bool]:
    """The temperatures for these bills, and whether they are those of their own days."""
    if temperatures.repeats or not bills:
        return temperatures, not temperatures.repeats
    inside = any(
        bill.begins <= temperatures.last and bill.ends > temperatures.first for bill in bills
    )
    year = None if inside else temperatures.mean_year()
    return (temperatures, True) if year is None else (year, False)


def comparable(bills: Sequence[Bill]) -> tuple[Bill, Bill] | None:
    """The last bill and the one it is best held against: a year before, else the one before."""
    if len(bills) < 2:
        return None
    last = bills[-1]
    a_year_before = [
        bill for bill in bills[:-1] if abs(last.begins - bill.begins - A_YEAR) <= SAME_SEASON
    ]
    nearest = min(
        a_year_before, key=lambda bill: abs(last.begins - bill.begins - A_YEAR), default=bills[-2]
    )
    return nearest, last
