"""What an hour of heating costs when it is so and so cold outdoors."""

from __future__ import annotations

import numpy as np

from costcompare.billing.clock import civil_hours
from costcompare.billing.tariff import YearBill
from costcompare.billing.tariff_year import needs_hours, year_bills
from costcompare.case.facts import Tariff
from costcompare.comparison import OutdoorHour
from costcompare.simulation import HourlyResult

STEP_DEGF = 10
"""[F] between the temperatures that hours are gathered round"""
FEWEST_HOURS = 12
"""Fewer hours of the year say little about an hour (judgement)"""


def hours_by_outdoors(
    year: HourlyResult, tariff: Tariff, bill: YearBill, time_zone: str
) -> tuple[OutdoorHour, ...]:
    """The mean hour within 5 F of each ten degrees outdoors in which heating runs.

    An hour costs what the year's bill would be less without the heating of these hours:
    the last kWh of a tier, not the average price.
    """
    outdoors = year.outdoor_temperature * 1.8 + 32.0
    nearest = STEP_DEGF * np.floor(outdoors / STEP_DEGF + 0.5)
    heating = np.where(year.equipment_heat > 0.0, year.heating + year.fan, 0.0)
    gathered = []
    for degf in np.unique(nearest):
        those = (nearest == degf) & (heating > 0.0)
        hours = int((nearest == degf).sum())
        if hours >= FEWEST_HOURS and those.sum() >= FEWEST_HOURS:
            gathered.append((float(degf), hours, np.where(those, heating, 0.0)))
    if not gathered:
        return ()
    without = np.array([year.electricity - heat for _, _, heat in gathered]) / 1000.0
    if not needs_hours(tariff):
        month = civil_hours(year.index, time_zone).month
        without = np.array([np.bincount(month, weights=kwh, minlength=12) for kwh in without])
    less = year_bills(tariff, without, year.index, time_zone).total_usd
    return tuple(
        OutdoorHour(
            outdoor_degf=degf,
            hours=hours,
            heating_kw=float(heat.sum()) / hours / 1000.0,
            usd_per_hour=(bill.total_usd - float(usd)) / hours,
        )
        for (degf, hours, heat), usd in zip(gathered, less, strict=True)
    )


def at_outdoors(hours: tuple[OutdoorHour, ...], outdoor_degf: float) -> float | None:
    """What an hour costs at a temperature outdoors [$], between those that the year has.

    None where the year is never so cold, or so warm that nothing heats.
    """
    if not hours:
        return None
    known = [hour.outdoor_degf for hour in hours]
    half = STEP_DEGF / 2
    if not known[0] - half <= outdoor_degf <= known[-1] + half:
        return None
    return float(np.interp(outdoor_degf, known, [hour.usd_per_hour for hour in hours]))
