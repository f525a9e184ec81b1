"""The adviser's drawer: the frame of the visit form; assets/visit.js fills and runs it."""

from __future__ import annotations

from typing import Any

from dash import html

from costcompare.views.dashboard.places import aria

NAME = "Facts of this home"


def drawer() -> html.Section:
    """The closed drawer."""
    return html.Section(
        [
            html.Div(
                [
                    html.H2(NAME, id="visit-name", tabIndex="-1"),
                    html.Button("Close", id="close-facts", className="quiet-button"),
                ],
                className="visit-head",
            ),
            html.Div(
                [
                    html.P(
                        [html.Span(id="visit-bill"), html.Span(id="visit-warmth")],
                        **aria(hidden="true"),
                    ),
                    html.P(id="narrowed", role="status"),
                ],
                className="visit-line",
            ),
            html.Div(_buttons(), className="visit-buttons"),
            html.P(id="said", role="status", className="said"),
            html.Div(id="faults", role="alert"),
            html.P(
                "Ask along the walk through the house. An empty field is not known: it is filled "
                "with a guess, and the guess is shown. A bare number takes the unit of its label.",
                className="aside",
            ),
            html.Div(id="visit-form"),
        ],
        id="visit",
        className="visit",
        hidden=True,
        role="complementary",
        **aria(labelledby="visit-name"),
    )


def _buttons() -> list[Any]:
    named = (
        ("undo", "Undo"),
        ("redo", "Redo"),
        ("save-case", "Save this case"),
        ("open-case", "Open a case"),
        ("new-home", "Start a new home"),
        ("reopen", "Back to the case as opened"),
    )
    return [html.Button(words, id=key, className="quiet-button") for key, words in named]
