"""What ``bills`` prints: the line through the bills, each bill beside it, what was found."""

from __future__ import annotations

from collections.abc import Sequence

from costcompare.billing.bill_report import BillReport
from costcompare.billing.degree_days import BillFit
from costcompare.views import numbers
from costcompare.views.terminal import Block, Heading, Page, Points, Sentences, Table
from costcompare.views.wording.bills_alone import (
    SUMMARY,
    bills_answer,
    change_answer,
    line_answer,
    notes_said,
    weather_answer,
    year_answer,
)


def bills_page(report: BillReport) -> Page:
    """The answer first, then each bill, then what was found in them."""
    line = report.line
    page: list[Block] = [
        Heading("What the bills say"),
        Sentences(f"{bills_answer(report)} {weather_answer(report)}"),
        Sentences(line_answer(line)),
    ]
    for said in (year_answer(report.year), change_answer(report.change)):
        page += [Sentences(said)] if said else []
    page += [Heading("Each bill, measured and by the line"), bill_table(line.bills)]
    page += [Sentences(SUMMARY)] if line.is_weather_driven else []
    if line.cautions:
        page += [Heading("Look out for"), Points(line.cautions)]
    if report.notes:
        page += [Heading("Found in the bills"), Points(tuple(notes_said(report)))]
    return page


def bill_table(bills: Sequence[BillFit]) -> Table:
    """One line a bill."""
    columns = ("from", "to", "days", "outdoors", "kWh", "by the line", "base", "heating", "cooling")
    rows = tuple(
        (
            bill.begins,
            bill.ends,
            numbers.count(bill.days),
            numbers.degrees(bill.mean_degf),
            numbers.count(bill.kwh),
            numbers.count(bill.computed_kwh),
            numbers.count(bill.base_kwh),
            numbers.count(bill.heating_kwh),
            numbers.count(bill.cooling_kwh),
        )
        for bill in bills
    )
    return Table(columns, rows, left=frozenset({0, 1}))
