"""From a checked document to the money over the years."""

from __future__ import annotations

from datetime import date

from costcompare.case.document import Document, IncentiveTable
from costcompare.case.facts import (
    Fact,
    Incentive,
    MoneyFacts,
    WeatherChoice,
)
from costcompare.case.ledger import Ledger

CALENDAR_YEAR = WeatherChoice().calendar_year


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
