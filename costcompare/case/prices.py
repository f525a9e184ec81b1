"""From a checked document to the price of electricity and the money over the years."""

from __future__ import annotations

from datetime import date

from costcompare.case.document import Document, IncentiveTable, TierTable
from costcompare.case.facts import (
    Fact,
    Incentive,
    MoneyFacts,
    Period,
    Season,
    Tariff,
    Tier,
    WeatherChoice,
)
from costcompare.case.ledger import Ledger

CALENDAR_YEAR = WeatherChoice().calendar_year
_ALL_MONTHS, _ALL_HOURS = (True,) * 12, (True,) * 24


def build_tariff(document: Document, ledger: Ledger) -> Tariff:
    """The price of electricity."""
    table = document.tariff
    tiers = (Tier(None, table.price),) if table.price is not None else _tiers(table.tiers or [])
    customer_charge = table.customer_charge
    if customer_charge is None:
        source = "the case names none"
        path = "tariff.customer_charge"
        customer_charge = ledger.filled(path, 0.0, "money_per_month", source=source)
    return Tariff(
        name=table.name or "electricity",
        customer_charge=customer_charge,
        tiers=tiers,
        seasons=tuple(Season(s.name, s.months, _tiers(s.tiers)) for s in table.seasons or []),
        periods=tuple(
            Period(p.name, p.months or _ALL_MONTHS, p.days or "all", p.hours or _ALL_HOURS, p.price)
            for p in table.periods or []
        ),
        holidays=tuple(table.holidays or ()),
        tax=table.tax or 0.0,
        minimum_bill=table.minimum_bill or 0.0,
        currency=table.currency or Tariff.currency,
    )


def _tiers(tables: list[TierTable]) -> tuple[Tier, ...]:
    return tuple(Tier(tier.up_to, tier.price) for tier in tables)


def build_money(document: Document, facts: list[Fact], ledger: Ledger) -> MoneyFacts:
    """How money over the years is counted; ``facts`` hold the stated range of price growth."""
    table = document.money
    installed_on = table.installed_on
    if installed_on is None:
        installed_on = date(document.weather.calendar_year or CALENDAR_YEAR, 1, 1)
        source = "judgement: the first day of the year that is worked out"
        ledger.note("money.installed_on", installed_on.isoformat(), source)
    growth = ledger.measure(table.price_growth, "money.price_growth")
    low, high = _growth_range(growth, table.price_growth is None, facts, ledger=ledger)
    return MoneyFacts(
        installed_on=installed_on,
        study_years=ledger.count(table.study_years, "money.study_years"),
        discount_rate=ledger.measure(table.discount_rate, "money.discount_rate"),
        price_growth=growth,
        price_growth_low=low,
        price_growth_high=high,
        incentives=tuple(_incentive(i) for i in table.incentives or []),
    )


def _growth_range(
    growth: float, filled: bool, facts: list[Fact], *, ledger: Ledger
) -> tuple[float, float]:
    """As stated; as wide as the default around what is stated; the default."""
    stated = next((f for f in facts if f.path == "money.price_growth"), None)
    if stated is not None and stated.low is not None and stated.high is not None:
        return stated.low / 100.0, stated.high / 100.0
    low = ledger.measure(None, "money.price_growth_low")
    high = ledger.measure(None, "money.price_growth_high")
    return (low, high) if filled else (min(low, growth), max(high, growth))


def _incentive(table: IncentiveTable) -> Incentive:
    return Incentive(
        name=table.name,
        amount=table.amount,
        status=table.status,
        starts=table.starts,
        expires=table.expires,
        options=tuple(table.options or ()),
    )
