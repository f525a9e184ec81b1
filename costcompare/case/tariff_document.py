"""The shape of the tables that say what electricity costs; docs/tariffs.md explains each key."""

from __future__ import annotations

from typing import Annotated, get_args

from pydantic import Field

from costcompare.case import values as v
from costcompare.case.table import Table
from costcompare.case.tariff_facts import (
    DayKind,
    LineGroup,
    MidBillSplit,
    Netting,
    Observed,
    Overlaps,
    Proration,
    ReadingTime,
    Rounding,
    Unused,
)

Days = Annotated[DayKind, v.Words(get_args(DayKind))]
Lines = list[Annotated[LineGroup, v.Words(get_args(LineGroup))]]


class TierTable(Table):
    """One block of a tiered price."""

    up_to: v.MonthlyEnergy | None = None
    up_to_daily: v.DailyEnergy | None = None
    price: v.Price


class SeasonTable(Table):
    """Tiers of a part of the year."""

    name: v.Name
    months: v.Months | None = None
    dates: v.Dates | None = None
    tiers: list[TierTable]


class PeriodTable(Table):
    """A price of some hours."""

    name: v.Name
    months: v.Months | None = None
    dates: v.Dates | None = None
    days: Days | None = None
    hours: v.Hours | None = None
    price: v.Price


class DemandTable(Table):
    """A price of the highest hour."""

    name: v.Name | None = None
    price: v.KwPrice
    months: v.Months | None = None
    days: Days | None = None
    hours: v.Hours | None = None
    ratchet: v.Share | None = None


class RiderTable(Table):
    """An amount on top."""

    name: v.Name
    per_kwh: v.Price | None = None
    per_month: v.AnyMoneyMonthly | None = None
    share: v.AnyShare | None = None
    on: Lines | None = None
    months: v.Months | None = None


class TaxTable(Table):
    """A tax or fee."""

    name: v.Name
    share: v.Share
    on: Lines | None = None


class ExportTable(Table):
    """Credit for energy fed into the grid."""

    netting: Annotated[Netting, v.Words(get_args(Netting))] | None = None
    price: v.Price | None = None
    offsets: Lines | None = None
    true_up: Annotated[int, v.Whole(1, 12)] | None = None
    unused: Annotated[Unused, v.Words(get_args(Unused))] | None = None


class PricesTable(Table):
    """What may change in the middle of a bill."""

    customer_charge: v.MoneyMonthly | None = None
    daily_charge: v.MoneyDaily | None = None
    price: v.Price | None = None
    tiers: list[TierTable] | None = None
    seasons: list[SeasonTable] | None = None
    periods: list[PeriodTable] | None = None
    demand: list[DemandTable] | None = None
    riders: list[RiderTable] | None = None
    tax: v.Share | None = None
    taxes: list[TaxTable] | None = None
    minimum_bill: v.MoneyMonthly | None = None


class ChangeTable(PricesTable):
    """Prices that hold from a day on."""

    from_: v.DayOfYear = Field(alias="from")


class TariffTable(PricesTable):
    """Prices with the conventions by which they are counted."""

    name: v.Name | None = None
    currency: Annotated[str, v.Text(4)] | None = None
    overlaps: Annotated[Overlaps, v.Words(get_args(Overlaps))] | None = None
    holidays: list[v.HolidayName] | None = None
    holidays_observed: Annotated[Observed, v.Words(get_args(Observed))] | None = None
    minimum_counts: Lines | None = None
    export: ExportTable | None = None
    proration: Annotated[Proration, v.Words(get_args(Proration))] | None = None
    whole_month: v.BillDays | None = None
    split: Annotated[MidBillSplit, v.Words(get_args(MidBillSplit))] | None = None
    rounding: Annotated[Rounding, v.Words(get_args(Rounding))] | None = None
    reads: Annotated[ReadingTime, v.Words(get_args(ReadingTime))] | None = None
    ends: v.DayOfYear | None = None
    changes: list[ChangeTable] | None = None
