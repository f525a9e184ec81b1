"""The page without a home in it: headings, controls, empty places that callbacks fill."""

from __future__ import annotations

from typing import Any

import dash_mantine_components as dmc
from dash import dcc, html

from costcompare.views import numbers
from costcompare.views.dashboard.drawer import NAME as DRAWER_NAME
from costcompare.views.dashboard.drawer import drawer
from costcompare.views.dashboard.onlookers import (
    PAPERS_NAME,
    TRADE_NAME,
    papers_card,
    trade_card,
    views,
)
from costcompare.views.dashboard.places import aria
from costcompare.views.dashboard.six_parts import PARTS, six_parts
from costcompare.weather.table import HOURS

PATIENCE = f"Working out {numbers.count(HOURS)} hours for every choice …"
FIRST_TIME = "The very first time on a computer takes longer."
PATIENCE_WITH_BILLS = "First its bills."
PATIENCE_WITH_SETTINGS = "Working out every thermostat setting …"
THEME = {
    "primaryColor": "deep",
    "primaryShade": 7,
    "fontFamily": "var(--type)",
    "defaultRadius": "md",
    "colors": {
        "deep": [
            "#eef3f8",
            "#dbe5ee",
            "#b7c9da",
            "#90abc4",
            "#6b8fae",
            "#4a7399",
            "#2c5a80",
            "#12324f",
            "#0e2941",
            "#0a1f32",
        ]
    },
}


def skeleton() -> Any:
    """The whole page; nothing of a case is in it."""
    return dmc.MantineProvider(
        [
            *_stores(),
            html.A("Skip to the answer", href="#main", className="skip"),
            html.Main(
                [
                    _top(),
                    _head(),
                    _choice_label(),
                    _chooser(),
                    _tiles(),
                    _contents(),
                    *six_parts(),
                    trade_card(),
                    papers_card(),
                ],
                id="main",
                tabIndex="-1",
            ),
            _foot(),
            _busy(),
            drawer(),
        ],
        forceColorScheme="light",
        theme=THEME,
    )


def _stores() -> list[Any]:
    return [
        dcc.Store(id="opened"),
        dcc.Store(id="history", storage_type="session"),
        dcc.Store(id="document"),
        dcc.Store(id="worked"),
        dcc.Store(id="first"),
        dcc.Store(id="view"),
        dcc.Store(id="sweep-on"),
        dcc.Store(id="swept"),
        dcc.Store(id="book"),
        dcc.Store(id="range-on"),
        dcc.Store(id="ranged"),
    ]


def _top() -> html.Div:
    return html.Div(
        [
            html.Span("costcompare", className="wordmark"),
            views(),
            html.Button(
                DRAWER_NAME,
                id="open-facts",
                className="quiet-button not-family",
                **aria(expanded="false", controls="visit"),
            ),
        ],
        className="top",
    )


def _head() -> html.Div:
    return html.Div(
        [
            html.P(id="title", className="eyebrow"),
            html.H1("What does it cost to keep this home warm?"),
            html.P(f"{PATIENCE} {FIRST_TIME}", id="lead", className="answer"),
            html.P(
                [html.Span(id="stands-on"), " ", html.A("How far it moved", href="#against-bills")],
                id="stands",
                className="absent",
            ),
            html.Div(id="trouble", role="alert"),
        ],
        className="head",
    )


def _choice_label() -> html.Label:
    """Outside the part that stays in sight, so that little of a phone is covered."""
    return html.Label("Set against today", htmlFor="choice", className="choice-label")


def _chooser() -> html.Div:
    """Which option is set against today; stays in sight with the slim result line."""
    return html.Div(
        [
            dmc.Select(
                id="choice",
                data=[],
                allowDeselect=False,
                checkIconPosition="right",
                size="md",
                comboboxProps={"zIndex": 60},
            ),
            html.P(
                [html.Span(id="slim-bill"), html.Span(id="slim-warmth")],
                className="slim",
                **aria(hidden="true"),
            ),
        ],
        id="chooser",
        className="chooser",
    )


def _tiles() -> html.Div:
    return html.Div(
        [
            _tile("A year now", [html.Span(id="now")], "now-note", "now"),
            _tile("A year after", [html.Span(id="after")], "after-note", "chosen"),
            _tile(
                "Warm hours",
                [
                    html.Span(id="warm-now", className="figure-now"),
                    html.Span(" → ", className="to", **aria(label="now, then")),
                    html.Span(id="warm-after"),
                ],
                "warm-note",
                "plain",
            ),
            html.P(id="spoken", className="unseen", **aria(live="polite")),
        ],
        id="tiles",
        className="tiles",
    )


def _tile(label: str, figure: list[Any], note: str, tone: str) -> html.Div:
    return html.Div(
        [
            html.P(label, className="tile-label"),
            html.P(figure, className="tile-figure"),
            html.P(id=note, className="tile-note"),
        ],
        className=f"tile tile-{tone}",
    )


def _contents() -> html.Nav:
    links = [html.Li(html.A(name, href=f"#{anchor}")) for anchor, name in PARTS]
    links += [
        html.Li(html.A(TRADE_NAME, href="#trade"), className="only-contractor"),
        html.Li(html.A(PAPERS_NAME, href="#papers")),
    ]
    return html.Nav(html.Ol(links), className="contents", **aria(label="On this page"))


def _busy() -> html.P:
    """The sign of work; assets/bills.css adds its second line where a home has bills."""
    told: dict[str, Any] = {"data-with-bills": PATIENCE_WITH_BILLS}
    return html.P(id="busy", role="status", className="busy", **told)


def _foot() -> html.Footer:
    return html.Footer(
        html.P(
            "Worked out hour by hour from the facts of this home. The page needs no internet and "
            "sends nothing out."
        )
    )
