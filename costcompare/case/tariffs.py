"""From a checked document to the prices of electricity."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Any

from costcompare.case.document import Document
from costcompare.case.ledger import Ledger
from costcompare.case.tariff_document import (
    ChangeTable,
    DemandTable,
    ExportTable,
    PeriodTable,
    PricesTable,
    RiderTable,
    SeasonTable,
    TariffTable,
    TaxTable,
    TierTable,
)
from costcompare.case.tariff_facts import (
    ALL_HOURS,
    ALL_MONTHS,
    HOLIDAY_SETS,
    Change,
    Conventions,
    DemandCharge,
    Export,
    Period,
    Rider,
    Season,
    Tariff,
    Tax,
    Tier,
)

UNNAMED = "electricity"


def build_tariff(document: Document, ledger: Ledger) -> Tariff:
    """The price of electricity; a customer charge that is left out is noted."""
    table = document.tariff
    if table.customer_charge is None and table.daily_charge is None:
        source = "the case names none"
        ledger.filled("tariff.customer_charge", 0.0, "money_per_month", source=source)
    return tariff_of(table)


def tariff_of(table: TariffTable) -> Tariff:
    """The facts of one table of prices."""
    holidays = table.holidays or []
    names: dict[str, None] = {}
    for name in (day for day in holidays if isinstance(day, str)):
        names.update(dict.fromkeys(HOLIDAY_SETS.get(name, (name,))))
    tariff = Tariff(
        name=table.name or UNNAMED,
        customer_charge=0.0,
        tiers=(),
        holidays=tuple(day for day in holidays if isinstance(day, date)),
        holiday_names=tuple(names),
        ends=table.ends,
        export=_export(table.export),
        conventions=Conventions(**_given(table, _CONVENTIONS)),
        **_given(table, {"currency": "currency", "holidays_observed": "observed"}),
    )
    if table.minimum_counts:
        tariff = replace(tariff, minimum_counts=tuple(table.minimum_counts))
    tariff = _with_prices(tariff, table)
    return replace(tariff, changes=_changes(tariff, table.changes or []))


_CONVENTIONS = {
    key: key for key in ("proration", "whole_month", "split", "rounding", "reads", "overlaps")
}


def _given(table: TariffTable | ExportTable, keys: dict[str, str]) -> dict[str, Any]:
    """What a table states, by the names of the facts."""
    stated = ((fact, getattr(table, key)) for key, fact in keys.items())
    return {fact: value for fact, value in stated if value is not None}


def _export(table: ExportTable | None) -> Export:
    if table is None:
        return Export()
    stated = _given(table, {key: key for key in ("netting", "price", "true_up", "unused")})
    if table.offsets:
        stated["offsets"] = tuple(table.offsets)
    return Export(**stated)


def _changes(tariff: Tariff, tables: list[ChangeTable]) -> tuple[Change, ...]:
    """Each change keeps what the one before it left."""
    changes = []
    now = tariff
    for table in tables:
        now = _with_prices(now, table)
        changes.append(Change(table.from_, now))
    return tuple(changes)


def _with_prices(tariff: Tariff, table: PricesTable) -> Tariff:
    """A tariff with the prices that a table states in place of its own."""
    stated: dict[str, Any] = {}
    for key in ("customer_charge", "daily_charge", "minimum_bill"):
        if (value := getattr(table, key)) is not None:
            stated[key] = value
    if table.price is not None or table.tiers is not None:
        flat = (Tier(None, table.price),) if table.price is not None else ()
        stated["tiers"] = flat or _tiers(table.tiers or [])
    if table.tax is not None or table.taxes is not None:
        stated["tax"] = table.tax or 0.0
        stated["taxes"] = tuple(_tax(one) for one in table.taxes or [])
    lists: tuple[tuple[str, Any], ...] = (
        ("seasons", _season),
        ("periods", _period),
        ("riders", _rider),
    )
    for key, made in lists:
        if (rows := getattr(table, key)) is not None:
            stated[key] = tuple(made(row) for row in rows)
    if table.demand is not None:
        stated["demand"] = tuple(_demand(row, n) for n, row in enumerate(table.demand, 1))
    return replace(tariff, **stated)


def _tiers(tables: list[TierTable]) -> tuple[Tier, ...]:
    return tuple(
        Tier(
            tier.up_to if tier.up_to_daily is None else tier.up_to_daily,
            tier.price,
            daily=tier.up_to_daily is not None,
        )
        for tier in tables
    )


def _season(table: SeasonTable) -> Season:
    return Season(table.name, table.months or ALL_MONTHS, _tiers(table.tiers), table.dates)


def _period(table: PeriodTable) -> Period:
    return Period(
        table.name,
        table.months or ALL_MONTHS,
        table.days or "all",
        table.hours or ALL_HOURS,
        table.price,
        table.dates,
    )


def _demand(table: DemandTable, number: int) -> DemandCharge:
    return DemandCharge(
        name=table.name or ("demand" if number == 1 else f"demand {number}"),
        price=table.price,
        months=table.months or ALL_MONTHS,
        days=table.days or "all",
        hours=table.hours or ALL_HOURS,
        ratchet=table.ratchet or 0.0,
    )


def _rider(table: RiderTable) -> Rider:
    rider = Rider(
        name=table.name,
        per_kwh=table.per_kwh or 0.0,
        per_month=table.per_month or 0.0,
        share=table.share or 0.0,
        months=table.months or ALL_MONTHS,
    )
    return replace(rider, on=tuple(table.on)) if table.on else rider


def _tax(table: TaxTable) -> Tax:
    tax = Tax(table.name, table.share)
    return replace(tax, on=tuple(table.on)) if table.on else tax
