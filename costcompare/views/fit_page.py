"""The house fitted to its bills, as blocks for a terminal."""

from __future__ import annotations

from costcompare.comparison import Band
from costcompare.fitting.results import HouseFit
from costcompare.views import numbers
from costcompare.views.terminal import Heading, Page, Points, Sentences, Table
from costcompare.views.wording import fitting as words

FACTS_SHOWN = 10


def fit_page(fit: HouseFit) -> Page:
    """Bills measured against computed, the facts that moved, what does not fit, what to ask."""
    page: list[Heading | Sentences | Points | Table] = [
        Heading(f"{fit.title}: the house against its bills"),
        Sentences(words.heating_answer(fit)),
        Sentences(words.weather_answer(fit)),
        _bills(fit),
        Sentences(words.agreement_answer(fit)),
    ]
    page += [Sentences(text) for text in (words.owner_answer(fit),) if text]
    page += [
        Heading("What moved"),
        Table(
            ("fact", "as said", "with the bills", "narrower by"),
            tuple(words.fact_cells(fact) for fact in fit.facts[:FACTS_SHOWN]),
        ),
    ]
    page += [Sentences(text) for text in (words.open_answer(fit),) if text]
    if fit.findings:
        told = tuple(dict.fromkeys(words.finding_sentence(one) for one in fit.findings))
        page += [Heading("What does not fit"), Points(told)]
    page += [Heading("What to ask for next"), Sentences(words.next_answer(fit))]
    if fit.notes:
        page += [Heading("Found in the bills"), Points(fit.notes)]
    return page


def _bills(fit: HouseFit) -> Table:
    rows = tuple(
        (
            bill.begins,
            bill.ends,
            numbers.count(bill.days),
            bill.read,
            numbers.kwh(bill.measured_kwh),
            _cell(bill.computed_kwh),
            _cell(bill.said_kwh),
        )
        for bill in fit.bills
    )
    columns = ("from", "to", "days", "read", "measured", "computed", "as said alone")
    return Table(columns, rows, left=frozenset({0, 1, 3}))


def _cell(band: Band) -> str:
    low, likely, high = (numbers.kwh(value or 0.0) for value in (band.low, band.likely, band.high))
    return f"{likely} ({low.removesuffix(' kWh')} to {high.removesuffix(' kWh')})"
