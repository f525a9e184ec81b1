"""What real bills say alone, in sentences: the line, the year, the change to the last bill."""

from __future__ import annotations

from collections.abc import Sequence

from costcompare.billing.bill_report import BillReport
from costcompare.billing.change import BillChange
from costcompare.billing.degree_days import DegreeDayFit
from costcompare.billing.normal_year import YearUse
from costcompare.views import numbers
from costcompare.views.wording.naming import listed, plural

NEARLY_ALL = 0.99
"""R2 above which whole percents would claim everything (judgement)"""

SUMMARY = (
    "The line is a summary of the bills, no model of the house: the use of a year is far surer "
    "than the balance point or the slope alone. Heat from lights and appliances is in the base."
)


def bills_answer(report: BillReport) -> str:
    """How many bills there are and what they add up to."""
    count = f"{numbers.count(report.bill_count)} {plural(report.bill_count, 'bill', 'bills')}"
    money = "" if report.total_usd is None else f", {numbers.dollars(report.total_usd)}"
    return (
        f"{count} of {numbers.count(report.total_days)} days: "
        f"{numbers.count(report.total_kwh)} kWh{money}."
    )


def weather_answer(report: BillReport) -> str:
    """Whose temperatures were taken."""
    if report.is_own_weather:
        return f"Temperatures of the days themselves, from {report.temperatures}."
    return (
        f"No temperatures of the days themselves: {report.temperatures} stands for them, so the "
        "line is less sure than it looks."
    )


def line_answer(line: DegreeDayFit) -> str:
    """Base, heating and cooling, or why the weather does not drive the use."""
    base = f"{numbers.quantity(round(line.base_kwh_per_day, 1))} kWh a day"
    if not line.is_weather_driven:
        return (
            f"Not weather-driven: {line.reason}. No part of these bills is called heating or "
            f"cooling; the mean is {base}."
        )
    parts = []
    if line.heating_kwh_per_degf_day is not None and line.heating_balance_degf is not None:
        parts.append(
            f"{_per_degree(line.heating_kwh_per_degf_day)} for each degree a day below "
            f"{numbers.degrees(line.heating_balance_degf)}"
        )
    if line.cooling_kwh_per_degf_day is not None and line.cooling_balance_degf is not None:
        parts.append(
            f"{_per_degree(line.cooling_kwh_per_degf_day)} for each degree a day above "
            f"{numbers.degrees(line.cooling_balance_degf)}"
        )
    return f"Base load {base}, and {listed(parts)}. {_how_well(line)}"


def _per_degree(per_degf: float) -> str:
    shown = per_degf * 1.8 if numbers.in_si() else per_degf
    return f"{shown:.2f} kWh"


def _how_well(line: DegreeDayFit) -> str:
    range_text = ""
    if line.balance_low_degf is not None and line.balance_high_degf is not None:
        low, high = line.balance_low_degf, line.balance_high_degf
        if round(high) > round(low):
            range_text = (
                f" Balance points from {numbers.degrees(low)} to {numbers.degrees(high)} explain "
                "the bills as well."
            )
    return (
        f"The line explains {_share(line.r_squared)} of how the bills differ and misses "
        f"a bill by {numbers.percent(line.cv_rmse)} of the mean.{range_text}"
    )


def _share(r_squared: float) -> str:
    return "nearly all" if r_squared > NEARLY_ALL else numbers.percent(r_squared)


def year_answer(year: YearUse | None) -> str:
    """The use of a year of weather in parts, with its range."""
    if year is None:
        return ""
    parts = [f"{numbers.kwh(year.base_kwh)} of base load"]
    if year.heating_kwh > 0.0:
        parts.append(f"{numbers.kwh(year.heating_kwh)} of heating")
    if year.cooling_kwh > 0.0:
        parts.append(f"{numbers.kwh(year.cooling_kwh)} of cooling")
    return (
        f"In a year of this weather ({year.weather}): about {numbers.kwh(year.kwh)}, in nine of "
        f"ten such years {numbers.kwh(year.low_kwh)} to {numbers.kwh(year.high_kwh)}: "
        f"{listed(parts)}."
    )


def change_answer(change: BillChange | None) -> str:
    """Why the last bill differs from the one it is held against."""
    if change is None:
        return ""
    parts = [f"{_signed(change.days_kwh)} by the number of days"]
    if change.weather_kwh is not None:
        parts.append(f"{_signed(change.weather_kwh)} by the weather")
    other = "by use" if change.weather_kwh is not None else "by weather and use together"
    parts.append(f"{_signed(change.use_kwh)} {other}")
    text = (
        f"From the bill of {change.earlier} to that of {change.later}: "
        f"{_signed(change.change_kwh)}: {listed(parts)}."
    )
    return text + _money(change)


def _money(change: BillChange) -> str:
    if change.change_usd is None or change.price_usd is None:
        return ""
    parts = [
        (change.days_usd, "days"),
        (change.weather_usd, "weather"),
        (change.use_usd, "use" if change.weather_usd is not None else "weather and use"),
        (change.price_usd, "price"),
    ]
    told = listed([f"{_dollars(usd)} {name}" for usd, name in parts if usd is not None])
    return f" In money {_dollars(change.change_usd)}: {told}; mean prices hold fixed charges."


def _signed(kwh: float) -> str:
    sign = "+" if round(kwh) > 0 else ""
    return f"{sign}{numbers.count(kwh)} kWh"


def _dollars(usd: float) -> str:
    return f"{'+' if round(usd) > 0 else ''}{numbers.dollars(usd)}"


def notes_said(report: BillReport) -> Sequence[str]:
    """What was found in the bills and done about it, each once."""
    return tuple(dict.fromkeys(note.sentence() for note in report.notes))
