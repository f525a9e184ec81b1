"""Real bills against the house: what was measured beside what is computed, and what moved."""

from __future__ import annotations

from typing import Any

from dash import html

from costcompare.comparison import Band
from costcompare.fitting.results import FittedFact, HouseFit
from costcompare.views import numbers
from costcompare.views.dashboard import pieces
from costcompare.views.dashboard.pieces import Tree, node
from costcompare.views.dashboard.places import drawn, figure, graph, on_demand
from costcompare.views.dashboard.workbench import Worked
from costcompare.views.figures.measured import HEIGHT_PX, MOST_BILLS, bills_chart
from costcompare.views.wording import fitting as words
from costcompare.views.wording.naming import capital

PICTURED = 6
"""Facts in the picture of what moved; the table has all of them"""
KEY = (
    ("key-bar", "measured, on the bill"),
    ("key-ring", "computed from what is said of the house"),
    ("key-diamond", "computed with the bills; the line holds 8 of 10 homes that explain them"),
)


def against_bills() -> html.Div:
    """The empty place, not shown without bills."""
    return html.Div(
        [
            html.H3("Your real bills against this house", id="against-bills-name", tabIndex="-1"),
            html.P(id="measured-answer", className="answer"),
            figure("measured-figure", graph("measured-chart", HEIGHT_PX)),
            html.Ul(
                [html.Li([html.Span(className=f"mark {mark}"), text]) for mark, text in KEY],
                className="marks-key",
            ),
            html.P(id="measured-shown", className="aside"),
            on_demand("Show each bill as a table", "measured-table"),
            html.P(id="measured-more"),
            html.P(id="measured-held", className="aside"),
            drawn("measured-findings"),
            html.H3("What the bills say of the house"),
            html.P(id="moved-answer", className="answer"),
            drawn("moved-facts"),
            html.P(id="moved-open", className="aside"),
            on_demand("Show every fact before and after", "moved-table"),
        ],
        id="against-bills",
        className="absent",
    )


def bills_part(worked: Worked) -> dict[str, Any]:
    """What stands there for a home."""
    stands = words.stands_answer(worked.comparison)
    if worked.fitted is None:
        return {**EMPTY, "chart": {"data": [], "layout": {"height": HEIGHT_PX}}}
    fit = worked.fitted.report
    answer = words.explained_answer(fit)
    left = len(fit.bills) - MOST_BILLS
    return {
        "class": "",
        "stands": stands,
        "stands_class": "stands",
        "answer": answer,
        "figure": answer,
        "chart": bills_chart(fit).to_plotly_json(),
        "shown": f"The chart shows the latest {MOST_BILLS}; the table has all." if left > 0 else "",
        "table": _bills_table(fit),
        "more": f"{words.heating_answer(fit)} {words.next_answer(fit)}",
        "held": f"{words.agreement_answer(fit)} {words.weather_answer(fit)}",
        "findings": _findings(fit),
        "moved": words.moved_answer(fit),
        "facts": node("div", [_fact(fact) for fact in fit.facts[:PICTURED]], class_="moves"),
        "open": words.open_answer(fit),
        "facts_table": _facts_table(fit),
    }


EMPTY: dict[str, Any] = {
    "class": "absent",
    "stands": "",
    "stands_class": "absent",
    **dict.fromkeys(("answer", "shown", "more", "held", "moved", "open"), ""),
    "figure": "No bill is there yet",
    **dict.fromkeys(("table", "findings", "facts", "facts_table")),
}


def _bills_table(fit: HouseFit) -> Tree:
    head = ("Bill", "Days", "Read", "Measured", "As said", "With the bills", "8 of 10 within")
    rows = [
        (
            words.bill_label(bill),
            numbers.count(bill.days),
            bill.read,
            numbers.kwh(bill.measured_kwh),
            numbers.kwh(bill.said_kwh.likely or 0.0),
            numbers.kwh(bill.computed_kwh.likely or 0.0),
            f"{numbers.kwh(bill.computed_kwh.low or 0.0)} to "
            f"{numbers.kwh(bill.computed_kwh.high or 0.0)}",
        )
        for bill in fit.bills
    ]
    return pieces.table("Each bill, measured and computed", head, rows)


def _findings(fit: HouseFit) -> Tree | None:
    """What does not fit, then what the reading of the bills found; None where there is neither."""
    told = dict.fromkeys((*map(words.finding_sentence, fit.findings), *fit.notes))
    return pieces.bullet_list(told, class_="cautions") if told else None


def _facts_table(fit: HouseFit) -> Tree:
    """Likely, low and high before and after."""
    triple = ("likely", "low", "high")
    times = ("As said", "With the bills")
    head = ("Fact", *(f"{which}, {one}" for which in times for one in triple))
    rows = [words.fact_triples(fact) for fact in fit.facts]
    return pieces.table("Every fact before and after", (*head, "Narrower by", "The bills"), rows)


def _fact(fact: FittedFact) -> Tree:
    """One fact as two lines on one scale, before and after, with its values in words."""
    said, fitted = words.fact_cells(fact)[1:3]
    ends = [band.low or 0.0 for band in (fact.said, fact.fitted)]
    ends += [band.high or 0.0 for band in (fact.said, fact.fitted)]
    low, high = min(ends), max(ends)
    still = [] if words.has_moved(fact) else [node("span", " hardly moved", class_="still")]
    return node(
        "div",
        [
            node("p", [capital(fact.words), *still], class_="move-name"),
            _line("as said", fact.said, said, (low, high), "said"),
            _line("with the bills", fact.fitted, fitted, (low, high), "fitted"),
        ],
        class_="move",
    )


def _line(when: str, band: Band, text: str, ends: tuple[float, float], tone: str) -> Tree:
    low, width = ends[0], (ends[1] - ends[0]) or 1.0
    start, middle, end = (
        100.0 * ((value or 0.0) - low) / width for value in (band.low, band.likely, band.high)
    )
    marks = [
        node("span", class_="move-span", style=f"left:{start:.2f}%;width:{end - start:.2f}%"),
        node("span", class_="move-dot", style=f"left:{middle:.2f}%"),
    ]
    return node(
        "div",
        [
            node("span", when, class_="move-when"),
            node("span", marks, class_="move-track"),
            node("span", text, class_="move-text"),
        ],
        class_=f"move-line move-{tone}",
    )
