"""Checks of prices and money: tiers, seasons, incentives; and of the weather asked for."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from costcompare.case.checks.rooms import repeated
from costcompare.case.document import Document, TierTable
from costcompare.case.paths import join
from costcompare.case.values import nearest
from costcompare.errors import Fault


def price_faults(document: Document) -> list[Fault]:
    """Everything about prices, money and weather that does not fit together."""
    return [*_tariff(document), *_incentives(document), *_weather(document), *_bills(document)]


def _tariff(document: Document) -> Iterator[Fault]:
    tariff = document.tariff
    if tariff is None:
        return
    given = tariff.model_fields_set
    if not given & {"price", "tiers"}:
        yield Fault("tariff.price", "is needed", "", 'for example price = "0.125 $/kWh"')
    if {"price", "tiers"} <= given:
        yield Fault("tariff.price", "give either price or tiers, not both")
    if tariff.tiers is not None:
        yield from _tiers("tariff.tiers", tariff.tiers)
    taken: dict[int, str] = {}
    for number, season in enumerate(tariff.seasons or [], 1):
        path = join(["tariff", "seasons", season.name or number])
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
    ends = [tier.up_to for tier in tiers]
    if "up_to" in tiers[-1].model_fields_set:
        yield Fault(path, "the last tier must have no up_to: it holds all that is left")
    if any("up_to" not in tier.model_fields_set for tier in tiers[:-1]):
        yield Fault(path, "every tier but the last must have up_to", "", 'up_to = "800 kWh/month"')
    known = [end for end in ends if end is not None]
    if any(high <= low for low, high in pairwise(known)):
        yield Fault(path, "every up_to must be above the one before")


def _incentives(document: Document) -> Iterator[Fault]:
    incentives = (document.money.incentives if document.money is not None else None) or []
    names = [option.name for option in document.options or [] if option.name]
    yield from repeated("money.incentives", [item.name for item in incentives])
    for number, item in enumerate(incentives, 1):
        path = join(["money", "incentives", item.name or number])
        for name in item.options or []:
            if name not in names:
                known = "; ".join(names) if names else "the case has none"
                rule = f"must be an option of the case: {known}"
                yield Fault(f"{path}.options", rule, name, nearest(name, names))
        if item.starts is not None and item.expires is not None and item.expires < item.starts:
            yield Fault(f"{path}.expires", "must not be before starts", item.expires.isoformat())


def _weather(document: Document) -> Iterator[Fault]:
    weather = document.weather
    if weather is None:
        return
    if weather.source in {"file", "measured"} and "file" not in weather.model_fields_set:
        rule = f'is needed where source is "{weather.source}"'
        yield Fault("weather.file", rule, "", 'for example file = "my-year.csv"')
    if weather.file is not None and weather.source in {"typical", None}:
        rule = "a file is read only where source says so"
        yield Fault("weather.source", rule, weather.source or "nothing", '"file" or "measured"')


def _bills(document: Document) -> Iterator[Fault]:
    bills = document.bills
    for number, bill in enumerate((bills.rows if bills is not None else None) or [], 1):
        if bill.from_ is not None and bill.to is not None and bill.to <= bill.from_:
            yield Fault(f"bills.{number}.to", "must be after from", bill.to.isoformat())
