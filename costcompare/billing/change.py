"""Why one bill is higher than another: days, weather, price and use, which add up to the change."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from costcompare.billing.bill_weather import LEAST_COVERAGE
from costcompare.billing.daily_temperatures import DailyTemperatures
from costcompare.billing.degree_days import DegreeDayFit
from costcompare.billing.reading.bills import Bill


@dataclass(frozen=True)
class BillChange:
    """From one bill to another, in parts; None where a part cannot be told."""

    earlier: str
    later: str
    change_kwh: float
    days_kwh: float
    """At the earlier bill's use a day"""
    weather_kwh: float | None
    """At the later bill's days, by the degree-day line"""
    use_kwh: float
    """What neither explains: habits, appliances, faults; with the weather where that is None"""
    change_usd: float | None
    days_usd: float | None
    weather_usd: float | None
    use_usd: float | None
    price_usd: float | None
    """The later bill's kWh at the change of its mean price, fixed charges inside"""


def between(
    earlier: Bill,
    later: Bill,
    line: DegreeDayFit | None = None,
    temperatures: DailyTemperatures | None = None,
) -> BillChange:
    """The change in parts that add up to it, to the cent and to the kilowatt hour.

    Energy is priced at the earlier bill's mean price, and what remains is the price. A mean price
    holds fixed charges: it is no price of the next kilowatt hour.
    """
    change = later.kwh - earlier.kwh
    days = (later.days - earlier.days) * earlier.kwh_per_day
    weather = _weather(earlier, later, line, temperatures)
    use = change - days - (weather or 0.0)
    told: dict[str, float | None] = {}
    if earlier.dollars is not None and later.dollars is not None and earlier.kwh and later.kwh:
        price = earlier.dollars / earlier.kwh
        told = {
            "change": later.dollars - earlier.dollars,
            "days": days * price,
            "weather": None if weather is None else weather * price,
            "use": use * price,
            "price": later.dollars - later.kwh * price,
        }
    return BillChange(
        earlier.dates,
        later.dates,
        change,
        days,
        weather,
        use,
        told.get("change"),
        told.get("days"),
        told.get("weather"),
        told.get("use"),
        told.get("price"),
    )


def _weather(
    earlier: Bill,
    later: Bill,
    line: DegreeDayFit | None,
    temperatures: DailyTemperatures | None,
) -> float | None:
    """What the weather changed [kWh] over the later bill's days; None where it cannot be told."""
    if line is None or temperatures is None or not line.is_weather_driven:
        return None
    found = [_computed_per_day(bill, line, temperatures) for bill in (earlier, later)]
    if found[0] is None or found[1] is None:
        return None
    return (found[1] - found[0]) * later.days


def _computed_per_day(
    bill: Bill, line: DegreeDayFit, temperatures: DailyTemperatures
) -> float | None:
    days = temperatures.between(bill.begins, bill.ends)
    there = days[np.isfinite(days)]
    if len(there) < LEAST_COVERAGE * len(days):
        return None
    return float(sum(part.mean() for part in line.per_day(there)))
