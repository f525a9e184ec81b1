"""What bills say: frozen results, one line a step of the tariff."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import get_args

from costcompare.billing.tariff_lines import Line
from costcompare.billing.tariff_year import PricedBill
from costcompare.case.tariff_facts import LineGroup


@dataclass(frozen=True)
class Usage:
    """What a meter says for one bill, where it says more than kilowatt hours."""

    kwh: float | Mapping[str, float]
    """Energy bought, by period where periods hold"""
    demand_kw: float | Mapping[str, float] = 0.0
    """Highest mean; by the name of the demand charge where there are several"""
    exported_kwh: float | Mapping[str, float] = 0.0
    """Energy fed into the grid, by period where periods hold"""
    banked_kwh: float = 0.0
    """Exported energy left over from the bill before, where it is netted by the month"""


@dataclass(frozen=True)
class BillLine:
    """One line of a bill: the amount times the price, to the cent where lines are rounded."""

    name: str
    kwh: float | None
    """Energy priced by this line, None for a line that is not energy"""
    usd: float
    group: LineGroup | None = None
    """Kind of the line, None for the rounding of a total"""
    amount: float | None = None
    unit: str = ""
    """Unit of the amount: kWh, kW month, month, day, or $ for a share"""
    price: float | None = None
    """[$] for each unit"""


@dataclass(frozen=True)
class YearLine:
    """The lines of one name over a year."""

    name: str
    group: LineGroup | None
    kwh: float | None
    usd: float
    amount: float | None
    unit: str
    price: float | None


@dataclass(frozen=True)
class MonthBill:
    """One bill; its lines add up to it."""

    month: int
    """1 to 12"""
    kwh: float
    """Bought, before exported energy is taken off"""
    lines: tuple[BillLine, ...]
    """Lines that come to nothing are left out"""
    energy_usd: float
    """Energy, riders, credit for export"""
    fixed_usd: float
    """Fixed charges, what is missing to the minimum bill, percentage riders on these"""
    tax_usd: float
    demand_usd: float = 0.0
    exported_kwh: float = 0.0
    banked_kwh: float = 0.0
    """Exported energy that later bills take off"""

    @property
    def total_usd(self) -> float:
        """What is owed."""
        return self.energy_usd + self.demand_usd + self.fixed_usd + self.tax_usd


@dataclass(frozen=True)
class YearBill:
    """Twelve months, January first; each sum is that of its months."""

    months: tuple[MonthBill, ...]
    energy_usd: float
    fixed_usd: float
    tax_usd: float
    total_usd: float
    demand_usd: float = 0.0
    lines: tuple[YearLine, ...] = field(default=())
    """The lines of the year, each name once"""


def year_lines(months: Sequence[MonthBill]) -> tuple[YearLine, ...]:
    """The lines of the year, each name once, in the order in which bills show them."""
    found: dict[tuple[str, LineGroup | None], list[BillLine]] = {}
    for month in months:
        for line in month.lines:
            found.setdefault((line.name, line.group), []).append(line)
    groups: list[LineGroup | None] = [*get_args(LineGroup), None]
    ordered = sorted(found.items(), key=lambda item: groups.index(item[0][1]))
    return tuple(
        YearLine(
            name=name,
            group=group,
            kwh=sum(line.kwh or 0.0 for line in lines) if group == "energy" else None,
            usd=sum(line.usd for line in lines),
            amount=None if group is None else sum(line.amount or 0.0 for line in lines),
            unit=lines[0].unit,
            price=lines[0].price if len({line.price for line in lines}) == 1 else None,
        )
        for (name, group), lines in ordered
    )


def month_bill(one: PricedBill) -> MonthBill:
    """The bill of the first home of a priced bill."""
    lines = tuple(_line(line) for line in one.priced.lines if _is_shown(line))

    def of(*groups: LineGroup | None) -> float:
        return sum(line.usd for line in lines if line.group in groups)

    on_fixed = float(one.priced.fixed_in_percentages[0])
    return MonthBill(
        month=one.span.month,
        kwh=float(one.kwh[0]),
        lines=lines,
        energy_usd=of("energy", "riders", "percentages", "credits") - on_fixed,
        fixed_usd=of("fixed", "minimum", None) + on_fixed,
        tax_usd=of("taxes"),
        demand_usd=of("demand"),
        exported_kwh=float(one.exported[0]),
        banked_kwh=float(one.banked[0]),
    )


def _is_shown(line: Line) -> bool:
    """Fixed charges and taxes always, other lines where they come to something."""
    if line.group in ("fixed", "taxes"):
        return True
    amount = line.usd if line.amount is None else line.amount
    return bool(amount[0] != 0.0)


def _line(line: Line) -> BillLine:
    amount = None if line.amount is None else float(line.amount[0])
    kwh = amount if line.group == "energy" else None
    return BillLine(line.name, kwh, float(line.usd[0]), line.group, amount, line.unit, line.price)
