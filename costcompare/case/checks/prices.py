"""Checks of bills and of the weather asked for; tariffs and money have checks of their own."""

from __future__ import annotations

from collections.abc import Iterator

from costcompare.case.checks.tariffs import tariff_table_faults
from costcompare.case.document import Document
from costcompare.errors import Fault


def price_faults(document: Document) -> list[Fault]:
    """Everything about tariffs, bills and weather that does not fit together."""
    return [
        *tariff_table_faults(document),
        *_weather(document),
        *_bills(document),
    ]


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
    if bills is not None and bills.file is not None and bills.rows:
        yield Fault("bills", "give either file or rows, not both")
    for number, bill in enumerate((bills.rows if bills is not None else None) or [], 1):
        if bill.from_ is not None and bill.to is not None and bill.to <= bill.from_:
            yield Fault(f"bills.{number}.to", "must be after from", bill.to.isoformat())
