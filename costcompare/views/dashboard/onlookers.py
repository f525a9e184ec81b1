"""Whose page it is: family, adviser or contractor; and what only some of them see."""

from __future__ import annotations

from typing import Any

from dash import html

from costcompare.views.dashboard.papers import BUTTONS
from costcompare.views.dashboard.places import aria, drawn, on_demand

TRADE_NAME = "Sizes, limits and circuits"
PAPERS_NAME = "What to leave on the table"
FAMILY, ADVISER, CONTRACTOR = "family", "adviser", "contractor"
VIEWS = ((FAMILY, "Family"), (ADVISER, "Adviser"), (CONTRACTOR, "Contractor"))
"""The family's page has no form; the contractor's one part more. ``?view=family`` opens it so"""


def views() -> html.Nav:
    """Links between the views; assets/visit.js changes over without loading the page again."""
    links = [html.Li(html.A(name, href=f"?view={key}", id=f"view-{key}")) for key, name in VIEWS]
    return html.Nav(html.Ul(links), className="views", **aria(label="Whose page it is"))


def trade_card() -> html.Section:
    """The contractor's part, with empty places."""
    return html.Section(
        [
            html.H2(TRADE_NAME, id="trade-name"),
            html.P(id="trade-waiting", role="status", className="aside"),
            html.P(id="trade-answer", className="answer"),
            html.P(id="trade-conditions", className="aside"),
            drawn("trade-rooms"),
            html.H3("The machines against the house"),
            html.P(id="trade-fit", className="answer"),
            drawn("trade-machines"),
            on_demand("What that means, machine by machine", "trade-notes"),
            html.H3("Electricity"),
            html.P(id="trade-panel", className="answer"),
            drawn("trade-circuits"),
            html.H3("What to set"),
            drawn("trade-settings"),
            html.H3("Ask on site"),
            drawn("trade-questions"),
            html.P(id="trade-estimate", className="aside"),
        ],
        id="trade",
        className="card only-contractor",
        **aria(labelledby="trade-name"),
    )


def papers_card() -> html.Section:
    """What can be left behind, made for the choice that is set against today."""
    buttons: list[Any] = [
        html.Button(words, id=f"paper-{key}", className="quiet-button") for key, words in BUTTONS
    ]
    return html.Section(
        [
            html.H2(PAPERS_NAME, id="papers-name"),
            html.P(
                "For the choice that is set against today, with the facts as they stand now.",
                className="aside",
            ),
            html.P(
                "How sure the figures are is still being worked out: a report that is made now "
                "is without ranges, and says so.",
                id="papers-without-ranges",
                className="aside",
            ),
            html.Div(buttons, className="visit-buttons"),
            html.P(id="papers-said", role="status", className="said"),
        ],
        id="papers",
        className="card",
        **aria(labelledby="papers-name"),
    )
