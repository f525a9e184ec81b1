"""Today's bill in parts that add up to it.

Each month's heating electricity is shared over the loads that called for it, over the days
on which heat was bought; free heat is a negative part. Every part is priced at that month's
own average energy price, so the parts add up to the bill. What a cure saves is never read
off here: it is the difference of two bills.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from costcompare.billing.clock import civil_hours
from costcompare.comparison import MonthParts, Part

if TYPE_CHECKING:
    from costcompare.billing.tariff import YearBill
    from costcompare.case.facts import Home
    from costcompare.simulation import HourlyResult

Floats = NDArray[np.float64]

HEAT_PARTS = (
    "walls and glass",
    "air leaking",
    "floor",
    "ducts by conduction",
    "supply leak",
    "return leak",
    "air pulled in by the fan",
    "free heat",
)
PARTS = (
    *HEAT_PARTS,
    "blower",
    "standby",
    "cooling",
    "hot water",
    "other use",
    "demand charges",
    "fixed charges",
    "taxes",
)
"""All parts in the order in which they are given"""


def explain_year(
    home: Home, result: HourlyResult, bill: YearBill, hot_water_share: float
) -> tuple[MonthParts, ...]:
    """The parts of each month's bill.

    ``hot_water_share`` is the share of the other use that heats water. The parts of a
    month add up to its bill, whatever its tariff.
    """
    month = civil_hours(result.index, home.site.time_zone).month
    loads = _loads_by_month(result, month)
    kwh = {
        "blower": _monthly(result.fan, month),
        "standby": _monthly(result.standby, month),
        "cooling": _monthly(result.cooling, month),
        "hot water": hot_water_share * _monthly(result.other_use, month),
        "other use": (1.0 - hot_water_share) * _monthly(result.other_use, month),
    }
    heating = _monthly(result.heating, month)
    bought = sum(loads.values(), np.zeros(12))
    scale = np.divide(heating, bought, out=np.zeros(12), where=np.abs(bought) > 1e-9)
    months = []
    for m in range(12):
        energy = {name: float(loads[name][m] * scale[m]) for name in HEAT_PARTS}
        energy |= {name: float(values[m]) for name, values in kwh.items()}
        months.append(_priced(m, energy, bill))
    return tuple(months)


def hot_water_share(home: Home) -> float:
    """Share of the other use that heats water."""
    use = home.other_use
    total = use.electricity + use.hot_water
    return use.hot_water / total if total > 0.0 else 0.0


def year_parts(months: tuple[MonthParts, ...]) -> tuple[Part, ...]:
    """The parts of the whole year: the sums of the months."""
    return tuple(
        Part(
            name,
            sum(p.kwh for m in months for p in m.parts if p.part == name),
            sum(p.usd for m in months for p in m.parts if p.part == name),
        )
        for name in PARTS
        if any(p.part == name for m in months for p in m.parts)
    )


def _priced(m: int, energy: dict[str, float], bill: YearBill) -> MonthParts:
    month = bill.months[m]
    used = sum(energy.values())
    price = month.energy_usd / used if used > 0.0 else 0.0
    parts = [Part(name, value, value * price) for name, value in energy.items() if value != 0.0]
    if month.demand_usd != 0.0:
        parts.append(Part("demand charges", 0.0, month.demand_usd))
    parts.append(Part("fixed charges", 0.0, month.fixed_usd))
    if month.tax_usd != 0.0:
        parts.append(Part("taxes", 0.0, month.tax_usd))
    return MonthParts(month.month, tuple(parts))


def _loads_by_month(result: HourlyResult, month: NDArray[np.int64]) -> dict[str, Floats]:
    """Heat called for by part and month [kWh], on days on which heat was bought."""
    loads, zero = result.loads, np.zeros_like(result.heating)
    ducts = result.ducts
    parts = {
        "walls and glass": loads.walls_and_glass,
        "air leaking": loads.air_leaking,
        "floor": loads.floor,
        "ducts by conduction": ducts.conduction if ducts else zero,
        "supply leak": ducts.supply_leak if ducts else zero,
        "return leak": ducts.return_leak if ducts else zero,
        "air pulled in by the fan": ducts.induced_infiltration if ducts else zero,
        "free heat": loads.stored - loads.sun - loads.inside_gains,
    }
    days = np.arange(len(result.heating)) // 24
    heated = np.bincount(days, weights=result.equipment_heat) > 0.0
    counted = heated[days]
    return {name: _monthly(np.where(counted, part, 0.0), month) for name, part in parts.items()}


def _monthly(watts: Floats, month: NDArray[np.int64]) -> Floats:
    """Sums by month [kWh] of an hourly power [W]; months count from 0."""
    result: Floats = np.bincount(month, weights=watts, minlength=12)[:12] / 1000.0
    return result
