"""From a checked document to a case: home, system, options, prices, and the list of facts."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import NamedTuple

from costcompare.case.bill_facts import StatedBill, StatedBills
from costcompare.case.defaults import option_default
from costcompare.case.document import Document, OptionTable
from costcompare.case.facts import Case, Fact, Home, Option, System, WeatherChoice
from costcompare.case.heat_pumps import note_field_factor
from costcompare.case.homes import build_home
from costcompare.case.ledger import Ledger
from costcompare.case.money import build_money
from costcompare.case.paths import join
from costcompare.case.systems import option_system, today_system
from costcompare.case.tariffs import build_tariff, tariff_of

SECTIONS = tuple(Document.model_fields)
_OF_SECTION = {"window_area": "rooms", "ceiling_height": "rooms"}
"""Facts that belong to a section without being one of its keys"""


class Changed(NamedTuple):
    """What an option's ``set`` makes of the case."""

    document: Document
    stated: tuple[Fact, ...]
    """The facts that it states"""


def build_case(
    document: Document,
    changed: Mapping[str, Changed],
    stated: list[Fact],
    *,
    directory: Path | None,
) -> Case:
    """The whole case.

    ``changed`` holds, by option, what its ``set`` makes of the document;
    ``stated`` the facts that the case states.
    """
    ledger = Ledger(document.house.built)
    home = build_home(document, ledger)
    today = today_system(document, home, ledger)
    options = tuple(
        _option(option, changed.get(option.name), document, home=home, today=today, ledger=ledger)
        for option in document.options
    )
    note_field_factor(document, (today, *(option.system for option in options)), ledger)
    tariff = build_tariff(document, ledger)
    money = build_money(document, stated, ledger)
    return Case(
        title=document.title or "A home",
        home=home,
        weather=_weather(document),
        today=today,
        options=options,
        tariff=tariff,
        money=money,
        facts=_in_order([*stated, *ledger.facts]),
        directory=directory,
        other_tariffs=tuple(tariff_of(table) for table in document.other_tariffs),
        bills=_bills(document),
    )


def _bills(document: Document) -> StatedBills | None:
    table = document.bills
    if table is None or (table.file is None and not table.rows):
        return None
    rows = [
        StatedBill(row.from_, row.to, row.kwh, row.dollars, row.read or "unknown")
        for row in table.rows or []
    ]
    return StatedBills(Path(table.file) if table.file else None, tuple(rows))


def _weather(document: Document) -> WeatherChoice:
    table, usual = document.weather, WeatherChoice()
    return WeatherChoice(
        source=table.source or usual.source,
        file=Path(table.file) if table.file else None,
        winter=table.winter or usual.winter,
        calendar_year=table.calendar_year or usual.calendar_year,
    )


def _option(
    option: OptionTable,
    changed: Changed | None,
    document: Document,
    *,
    home: Home,
    today: System,
    ledger: Ledger,
) -> Option:
    if changed is not None:
        # What a change fills in again is no news: only the option's own facts are kept.
        document = changed.document
        aside = Ledger(document.house.built)
        home = build_home(document, aside)
        today = today_system(document, home, aside)
    path = join(["options", option.name])
    usual = option_default(option.kind)
    life, maintenance = option.life, option.maintenance
    if life is None:
        life = ledger.filled(f"{path}.life", usual.life, "duration_years", source=usual.source)
    if maintenance is None:
        maintenance = ledger.filled(
            f"{path}.maintenance", usual.maintenance, "money_per_year", source=usual.source
        )
    return Option(
        name=option.name,
        kind=option.kind,
        home=home,
        system=option_system(option, document, home, today=today, ledger=ledger),
        installed_cost=option.installed_cost,
        life=life,
        maintenance=maintenance,
        changed=changed.stated if changed is not None else (),
    )


def _in_order(facts: list[Fact]) -> tuple[Fact, ...]:
    """Facts by section of the case; stated before filled within one."""
    rank = {section: number for number, section in enumerate(SECTIONS)}

    def place(fact: Fact) -> int:
        section = fact.path.split(".")[0]
        return rank.get(_OF_SECTION.get(section, section), len(rank))

    return tuple(sorted(facts, key=place))
