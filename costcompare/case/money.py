"""From a checked document to money over the years: incentives, loans, the old system."""

from __future__ import annotations

from datetime import date

from costcompare.case.defaults import option_default
from costcompare.case.document import Document
from costcompare.case.facts import (
    Emissions,
    Fact,
    Finance,
    Incentive,
    MoneyFacts,
    OldSystemFacts,
    WeatherChoice,
)
from costcompare.case.ledger import Ledger
from costcompare.case.money_document import (
    EmissionsTable,
    FinanceTable,
    IncentiveTable,
    OldSystemTable,
)

CALENDAR_YEAR = WeatherChoice().calendar_year
MONTHS_A_YEAR = 12


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
        inflation=ledger.measure(table.inflation, "money.inflation"),
        move_in_years=table.move_in_years,
        old_system=_old_system(table.old_system, document.today.kind, ledger),
        finance=tuple(_finance(way) for way in table.finance or []),
        emissions=_emissions(table.emissions),
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
        amount=table.amount or 0.0,
        status=table.status,
        starts=table.starts,
        expires=table.expires,
        options=tuple(table.options or ()),
        share=table.share,
        cap=table.cap,
        payer=table.payer or "",
        kind=table.kind or "after the work",
        income_test=table.income_test or "none",
        apply_before_work=bool(table.apply_before_work),
        applied_on=table.applied_on,
        not_with=tuple(table.not_with or ()),
        tax_owed=table.tax_owed,
        source=table.source or "",
        checked_on=table.checked_on,
    )


def _old_system(table: OldSystemTable | None, kind: str, ledger: Ledger) -> OldSystemFacts | None:
    if table is None:
        return None
    life = table.life
    if life is None:
        usual = option_default(kind)
        path = "money.old_system.life"
        life = ledger.filled(path, usual.life, "duration_years", source=usual.source)
    return OldSystemFacts(
        remaining_life=table.remaining_life,
        replacement_cost=table.replacement_cost,
        life=life,
        counted=table.counted is not False,
        options=None if table.options is None else tuple(table.options),
    )


def _finance(table: FinanceTable) -> Finance:
    return Finance(
        name=table.name,
        kind=table.kind,
        rate=table.rate or 0.0,
        months=round((table.term or 0.0) * MONTHS_A_YEAR),
        dealer_fee=table.dealer_fee or 0.0,
        down_payment=table.down_payment or 0.0,
        payment=table.payment,
        payment_growth=table.payment_growth or 0.0,
        buyout=table.buyout or 0.0,
        options=tuple(table.options or ()),
    )


def _emissions(table: EmissionsTable | None) -> Emissions | None:
    return None if table is None else Emissions(table.factor, table.source)
