"""Ranges on the page: worked out a step at a time, after all that somebody waits for."""

from __future__ import annotations

from typing import Any

from dash import Dash, Input, Output, State, no_update

from costcompare.comparison import AS_WANTED, Comparison
from costcompare.views.dashboard import pieces
from costcompare.views.dashboard.browser_side import answered_in_browser
from costcompare.views.dashboard.filling_years import years_part
from costcompare.views.dashboard.showing import shown_choice
from costcompare.views.dashboard.workbench import Workbench
from costcompare.views.dashboard.writing import in_its_money
from costcompare.views.figures.drivers import driver_bars
from costcompare.views.ranges_page import choice_rows
from costcompare.views.wording import sureness
from costcompare.views.wording.naming import listed


def register(app: Dash, bench: Workbench) -> None:
    """Connect part six to the workbench."""

    @app.callback(
        Output("ranged", "data"),
        Output("range-answer", "children"),
        Output("saving-range-answer", "children"),
        Output("drivers-says", "children"),
        Output("drivers-figure", "aria-label"),
        Output("drivers-tree", "data"),
        Output("ranges-hold", "children"),
        Output("ranges-table-tree", "data"),
        Output("years-range", "className"),
        Output("years-range-answer", "children"),
        Output("years-range-figure", "aria-label"),
        Output("years-range-bars-tree", "data"),
        Output("years-range-table-tree", "data"),
        Input("range-on", "data"),
        State("worked", "data"),
        State("choice", "value"),
        prevent_initial_call=True,
    )
    def go_on(_asked: Any, worked: Any, name: Any) -> tuple[Any, ...]:
        shown = shown_choice(bench, worked, name)
        if shown is None:
            return (no_update,) * 13
        known, name = shown
        share, whole = bench.ranges_on(known)
        ranged = {"key": known.key, "choice": name, "share": share}
        if whole is None:
            return ranged, *(no_update,) * 12
        with in_its_money(whole):
            years = years_part(whole, name, known.case.money.installed_on)
            return ranged, *range_part(whole, name), *years

    answered_in_browser(
        app,
        "rangeOn",
        Output("ranging", "children"),
        Output("ranges", "hidden"),
        Output("years-range-shown", "hidden"),
        Output("papers-without-ranges", "hidden"),
        Input("first", "data"),
        Input("ranged", "data"),
        Input("book", "data"),
        State("worked", "data"),
        prevent_initial_call=True,
    )


def range_part(comparison: Comparison, name: str) -> tuple[Any, ...]:
    """Today's range, that of the choice, what drives it, what it holds, and all as a table.

    What drives it: whose figure the bars move, in words, then as a label, then drawn.
    """
    chosen = comparison.choice(name, AS_WANTED)
    bars = driver_bars(comparison.today if chosen.is_today else chosen)
    label = f"What drives the range most: {listed([f'{bar.label} {bar.text}' for bar in bars])}"
    columns, rows = choice_rows(comparison)
    return (
        sureness.range_answer(comparison),
        sureness.saving_range_answer(comparison, name, AS_WANTED),
        sureness.drivers_say(comparison, name, AS_WANTED),
        label,
        pieces.bar_list(bars),
        sureness.what_ranges_hold(comparison),
        pieces.table("The range of every choice", columns, rows),
    )
