"""The lines of bills as a comparison shows them, under the tariff of the case and under others."""

from __future__ import annotations

from collections.abc import Iterable

from costcompare.billing.tariff import BillLine, YearBill, YearLine, year_bill
from costcompare.billing.tariff_margins import next_kwh
from costcompare.case.facts import Case
from costcompare.comparison import ChargeLine, MonthCharges, OtherTariffYear
from costcompare.simulation import HourlyResult

ROUNDING = "rounding"
"""Kind of the line that rounding a total adds"""


def charge_lines(lines: Iterable[BillLine | YearLine]) -> tuple[ChargeLine, ...]:
    """Lines of a month or of a year, in their order."""
    return tuple(
        ChargeLine(
            line=line.name,
            kind=line.group or ROUNDING,
            kwh=line.kwh,
            amount=line.amount,
            unit=line.unit,
            price=line.price,
            usd=line.usd,
        )
        for line in lines
    )


def month_charges(bill: YearBill) -> tuple[MonthCharges, ...]:
    """The lines of each month."""
    return tuple(MonthCharges(month.month, charge_lines(month.lines)) for month in bill.months)


def margins(case: Case, year: HourlyResult) -> tuple[float, ...]:
    """What one more kWh costs in each month under the tariff of the case [$]."""
    return next_kwh(case.tariff, year.electricity / 1000.0, year.index, case.home.site.time_zone)


def other_tariffs(case: Case, year: HourlyResult) -> tuple[OtherTariffYear, ...]:
    """The year under each other tariff of the case."""
    kwh, zone = year.electricity / 1000.0, case.home.site.time_zone
    bills = [(one.name, year_bill(one, kwh, year.index, zone)) for one in case.other_tariffs]
    return tuple(
        OtherTariffYear(
            tariff=name,
            bill_usd=bill.total_usd,
            monthly_bill_usd=tuple(month.total_usd for month in bill.months),
            bill_lines=charge_lines(bill.lines),
        )
        for name, bill in bills
    )


def tariff_notes(case: Case) -> tuple[str, ...]:
    """What bills under these tariffs rest on, beside the prices."""
    tariffs = (case.tariff, *case.other_tariffs)
    charged = [one.name for one in tariffs if one.demand]
    if not charged:
        return ()
    named = ", ".join(f"“{name}”" for name in charged)
    return (
        f"Demand charges ({named}) are worked out from the highest mean of an hour; a meter that "
        "looks at 15 or 30 minutes shows more, so such a charge comes out low.",
    )
