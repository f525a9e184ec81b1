"""Checks of the tables of tariffs: what each needs, and whether it can price the year."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from itertools import pairwise

from costcompare.case.checks.rooms import repeated
from costcompare.case.checks.tariff_rules import tariff_faults
from costcompare.case.document import Document
from costcompare.case.facts import WeatherChoice
from costcompare.case.paths import join
from costcompare.case.tariff_document import PricesTable, SeasonTable, TariffTable, TierTable
from costcompare.case.tariffs import UNNAMED, tariff_of
from costcompare.errors import Fault

PRICE_EXAMPLE = 'for example price = "0.125 $/kWh"'


def tariff_table_faults(document: Document) -> Iterator[Fault]:
    """What the tables of tariffs lack, and values in them that exclude each other."""
    if document.tariff is not None:
        yield from _tariff(document.tariff, "tariff")
    others = document.other_tariffs or []
    for number, other in enumerate(others, 1):
        at = join(["other_tariffs", other.name or number])
        if other.name is None and "name" not in other.model_fields_set:
            yield Fault(f"{at}.name", "is needed", "", 'for example name = "time of use"')
        yield from _tariff(other, at)
    names = [other.name for other in others]
    first = document.tariff.name if document.tariff is not None else None
    yield from repeated("other_tariffs", [first or UNNAMED, *names])


def pricing_faults(document: Document) -> Iterator[Fault]:
    """Whether tariffs without other faults can price the year that is worked out."""
    rows = [("tariff", document.tariff)]
    rows += [
        (join(["other_tariffs", other.name or number]), other)
        for number, other in enumerate(document.other_tariffs or [], 1)
    ]
    for at, table in rows:
        yield from tariff_faults(tariff_of(table), at)
        yield from _year_faults(document, table, at)


def _year_faults(document: Document, table: TariffTable, at: str) -> Iterator[Fault]:
    """Days that have passed by the year that is worked out; a measured year has its own."""
    weather = document.weather
    if weather is None or weather.source not in {"typical", None}:
        return
    year = weather.calendar_year or WeatherChoice().calendar_year
    if table.ends is not None and table.ends < date(year, 12, 31):
        rule = f"must not end before the year that is worked out, {year}, does"
        instead = "the prices that follow, as a row of changes, and leave ends out"
        yield Fault(f"{at}.ends", rule, table.ends.isoformat(), instead)
    days = [day for day in table.holidays or [] if isinstance(day, date)]
    if days and not any(day.year == year for day in days):
        rule = f"none of the days lies in the year that is worked out, {year}"
        instead = 'holidays of every year by name, such as ["usual six"]'
        yield Fault(f"{at}.holidays", rule, days[0].isoformat(), instead)


def _tariff(table: TariffTable, at: str) -> Iterator[Fault]:
    given = table.model_fields_set
    if not given & {"price", "tiers"} and not _priced_otherwise(table):
        yield Fault(f"{at}.price", "is needed", "", PRICE_EXAMPLE)
    yield from _prices(table, at)
    for number, change in enumerate(table.changes or [], 1):
        yield from _prices(change, f"{at}.changes.{number}")


def _priced_otherwise(table: TariffTable) -> bool:
    """Whether periods or seasons are stated that may price every hour."""
    return bool(table.periods or table.seasons)


def _prices(table: PricesTable, at: str) -> Iterator[Fault]:
    given = table.model_fields_set
    if {"price", "tiers"} <= given:
        yield Fault(f"{at}.price", "give either price or tiers, not both")
    if {"tax", "taxes"} <= given:
        yield Fault(f"{at}.tax", "give either tax or taxes, not both")
    if table.tiers is not None:
        yield from _tiers(f"{at}.tiers", table.tiers)
    yield from _seasons(table.seasons or [], at)
    for number, period in enumerate(table.periods or [], 1):
        if {"months", "dates"} <= period.model_fields_set:
            path = join([at, "periods", period.name or number])
            yield Fault(path, "give either months or dates, not both")
    for number, rider in enumerate(table.riders or [], 1):
        amounts = {"per_kwh", "per_month", "share"} & rider.model_fields_set
        if len(amounts) != 1:
            path = join([at, "riders", rider.name or number])
            given_text = ", ".join(sorted(amounts)) or ""
            rule = "needs one of per_kwh, per_month and share"
            yield Fault(path, rule, given_text, 'for example per_kwh = "0.004 $/kWh"')


def _seasons(seasons: Sequence[SeasonTable], at: str) -> Iterator[Fault]:
    taken: dict[int, str] = {}
    for number, season in enumerate(seasons, 1):
        path = join([at, "seasons", season.name or number])
        stated = {"months", "dates"} & season.model_fields_set
        if len(stated) != 1:
            rule = "needs months or dates" if not stated else "give either months or dates"
            yield Fault(path, rule, "", 'for example months = "6-9"')
        yield from _tiers(f"{path}.tiers", season.tiers or [])
        for month, inside in enumerate(season.months or (), 1):
            if inside and month in taken:
                rule = f"month {month} is in the season {taken[month]} already"
                yield Fault(f"{path}.months", rule)
                break
            if inside:
                taken[month] = season.name or "above"


def _tiers(path: str, tiers: Sequence[TierTable]) -> Iterator[Fault]:
    if not tiers:
        yield Fault(
            path, "must hold at least one tier", "", 'for example [{ price = "0.12 $/kWh" }]'
        )
        return
    ends = [tier.up_to if tier.up_to_daily is None else tier.up_to_daily for tier in tiers]
    keys = {"up_to", "up_to_daily"}
    if keys & tiers[-1].model_fields_set:
        yield Fault(path, "the last tier must have no up_to: it holds all that is left")
    if any(not keys & tier.model_fields_set for tier in tiers[:-1]):
        yield Fault(path, "every tier but the last must have up_to", "", 'up_to = "800 kWh/month"')
    if len(set().union(*(keys & tier.model_fields_set for tier in tiers))) > 1:
        yield Fault(path, "give up_to in every tier, or up_to_daily in every tier")
    known = [end for end in ends if end is not None]
    if any(high <= low for low, high in pairwise(known)):
        yield Fault(path, "every up_to must be above the one before")
