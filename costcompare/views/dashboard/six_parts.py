"""The six parts of the page, with empty places for their sentences, charts and tables."""

from __future__ import annotations

from typing import Any

import dash_mantine_components as dmc
from dash import html

from costcompare.comparison import AS_LIVED, AS_WANTED
from costcompare.views.dashboard.against_bills import against_bills
from costcompare.views.dashboard.book import HELD, LOWERED, WANTED
from costcompare.views.dashboard.places import aria, drawn, figure, graph, on_demand
from costcompare.views.dashboard.workbench import SETTINGS_DEGF
from costcompare.views.figures import coldest_day, setting

PARTS = (
    ("bill", "Why the bill is what it is"),
    ("running", "What each choice costs to run"),
    ("rooms", "Which rooms stay warm"),
    ("thermostat", "If you move the thermostat"),
    ("money", "When the money comes back"),
    ("sure", "How sure we are"),
)
"""The six parts: their anchors and their names, in their order"""

MAPS_HEIGHT_PX = 700


def six_parts() -> list[html.Section]:
    """The six parts, each a card with its heading."""
    inside = (_bill(), _running(), _rooms(), _thermostat(), _money(), _sure())
    return [
        html.Section(
            [html.H2(name, id=f"{anchor}-name"), *children],
            id=anchor,
            className="card",
            **aria(labelledby=f"{anchor}-name"),
        )
        for (anchor, name), children in zip(PARTS, inside, strict=True)
    ]


def _bill() -> list[Any]:
    return [
        html.P(id="bill-answer", className="answer"),
        figure("bill-figure", drawn("bill-bars")),
        on_demand("Show these numbers as a table", "bill-table"),
        html.Div(
            [
                html.H3("Heat that never reaches a room"),
                html.P(id="ducts-answer", className="answer"),
                html.Div(
                    [
                        html.Img(id="ducts-drawing", className="drawing", alt=""),
                        drawn("ducts-key"),
                    ],
                    className="drawing-and-key",
                ),
            ],
            id="ducts",
        ),
    ]


def _running() -> list[Any]:
    return [
        html.P(id="running-answer", className="answer"),
        _warmth_switch("running-warmth"),
        figure("running-figure", drawn("running-rows")),
        html.P(id="summer-answer", className="aside"),
        on_demand("Show these numbers as a table", "running-table"),
    ]


def _rooms() -> list[Any]:
    return [
        html.P(id="rooms-answer", className="answer"),
        html.P(
            "In each room: how cold it gets at the coldest, and in how many of the hours it is "
            "used it is colder than you want.",
            className="aside",
        ),
        figure("plan-figure", drawn("plan")),
        drawn("plan-key"),
        html.P(id="plan-note", className="aside"),
        html.H3("Cold and warm hours, room by room"),
        figure("rooms-figure", drawn("rooms-strips")),
        html.P(id="hot-answer", className="aside"),
        on_demand("Show these numbers as a table", "rooms-table"),
        html.H3("Every hour of the year"),
        html.P(id="maps-answer", className="answer"),
        drawn("maps-key"),
        figure("maps-figure", graph("maps", MAPS_HEIGHT_PX)),
        html.H3("The coldest day"),
        html.P(id="day-answer", className="answer"),
        figure("day-figure", graph("day", coldest_day.HEIGHT_PX)),
        on_demand("Show these numbers as a table", "day-table"),
    ]


def _thermostat() -> list[Any]:
    first, last = SETTINGS_DEGF[0], SETTINGS_DEGF[-1]
    marks = [{"value": degf, "label": str(degf)} for degf in range(first, last + 1, 4)]
    return [
        html.P(id="setting-answer", className="answer"),
        html.P(id="sweeping", className="aside"),
        html.Div(
            [
                html.P("Thermostat setting, °F", className="control-label"),
                dmc.Slider(
                    id="setting",
                    min=first,
                    max=last,
                    step=1,
                    value=last,
                    marks=marks,
                    updatemode="drag",
                    thumbLabel="Thermostat setting in degrees Fahrenheit",
                    thumbSize=28,
                    size="lg",
                    labelAlwaysOn=True,
                    disabled=True,
                ),
                dmc.SegmentedControl(
                    id="night",
                    data=[
                        {"value": WANTED, "label": "As you want it"},
                        {"value": HELD, "label": "Same at night"},
                        {"value": LOWERED, "label": "Lower at night"},
                    ],
                    value=WANTED,
                    fullWidth=True,
                    size="md",
                    **aria(label="What the thermostat does at night"),
                ),
            ],
            className="control",
        ),
        html.Div(
            [
                html.Div(_setting_cells(), className="setting-cells"),
                html.P(id="night-answer", className="aside"),
                figure("setting-figure", graph("setting-chart", setting.HEIGHT_PX)),
            ],
            id="setting-shown",
        ),
        html.P(
            "A thermostat is a target, not a tap: a higher setting does not warm a room faster, "
            "it only goes on for longer.",
            className="aside",
        ),
        on_demand("Show these numbers as a table", "setting-table"),
    ]


def _setting_cells() -> list[Any]:
    """Today and the choice at the setting: bill, warm hours, one more degree."""
    heads = ("At this setting", "A year", "Warm hours", "One degree more")
    rows = (("now", "Today’s system", "today"), ("chosen", "This choice", "chosen"))
    return [
        html.Table(
            [
                html.Caption("The two at this setting", className="unseen"),
                html.Thead(html.Tr([html.Th(head, scope="col") for head in heads])),
                html.Tbody(
                    [
                        html.Tr(
                            [
                                html.Th(name, scope="row"),
                                html.Td(id=f"{key}-at-bill"),
                                html.Td(id=f"{key}-at-warm"),
                                html.Td(id=f"{key}-at-degree"),
                            ],
                            className=f"tone-{tone}",
                        )
                        for tone, name, key in rows
                    ]
                ),
            ]
        )
    ]


def _money() -> list[Any]:
    return [
        html.P(id="money-answer", className="answer"),
        _warmth_switch("money-warmth"),
        html.P(
            "Money out of pocket so far, year by year: below the line it is still out, above the "
            "line it has come back. In today’s value of money.",
            className="aside",
        ),
        figure("money-figure", drawn("money-rows")),
        drawn("savings"),
        html.Div(_years_range(), id="years-range-shown", hidden=True),
        html.Div(
            [
                html.H3("Payments beside the saving, in the first year"),
                drawn("loan-answer"),
                figure("loan-figure", drawn("loan-rows")),
                on_demand("Show these numbers as a table", "loan-table"),
            ],
            id="loan",
            className="absent",
        ),
        html.P(id="incentives-answer", className="aside"),
        html.P(id="money-basis", className="aside"),
        on_demand("Show what a degree, a cold night and the years ahead cost", "money-more"),
        on_demand("Show these numbers as a table", "money-table"),
    ]


def _years_range() -> html.Div:
    """The years with their range; ``hidden`` until it is there, ``absent`` where there is none."""
    return html.Div(
        [
            html.H3("How far it may come out otherwise"),
            html.P(id="years-range-answer"),
            html.P(
                "Each bar holds eight of ten homes at the end of that year; the dark line across "
                "it is the middle, the thin line is 0.",
                className="aside",
            ),
            html.Figure(
                drawn("years-range-bars"),
                id="years-range-figure",
                role="img",
                **aria(label="Money over the years with its range"),
            ),
            on_demand("Show these numbers as a table", "years-range-table"),
        ],
        id="years-range",
        className="absent",
    )


def _sure() -> list[Any]:
    return [
        html.P(id="sure-answer", className="answer"),
        drawn("sure-counts"),
        against_bills(),
        html.P(id="ranging", className="aside"),
        html.Div(
            [
                html.P(id="range-answer"),
                html.P(id="saving-range-answer"),
                html.P(id="drivers-says", className="aside"),
                html.Figure(
                    drawn("drivers"),
                    id="drivers-figure",
                    role="img",
                    **aria(label="What drives the range"),
                ),
                html.P(id="ranges-hold", className="aside"),
                on_demand("Show the range of every choice as a table", "ranges-table"),
            ],
            id="ranges",
            hidden=True,
        ),
        html.H3("Things to check at this house"),
        drawn("cautions"),
        html.H3("What was assumed"),
        html.P(id="weather-answer"),
        drawn("assumptions"),
        on_demand("Show every fact with its source", "facts-table"),
    ]


def _warmth_switch(identity: str) -> dmc.SegmentedControl:
    return dmc.SegmentedControl(
        id=identity,
        data=[
            {"value": AS_LIVED, "label": AS_LIVED.capitalize()},
            {"value": AS_WANTED, "label": AS_WANTED.capitalize()},
        ],
        value=AS_WANTED,
        fullWidth=True,
        size="md",
        className="warmth-switch",
        **aria(label="How warm the home is kept"),
    )
