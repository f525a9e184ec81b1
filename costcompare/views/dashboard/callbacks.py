"""From a visitor's changes to the filled page.

``history`` (the visitor's changes) leads to ``worked`` (what was worked out), that to the
parts (``showing``) and to the slider's ``book``; the slider itself is answered in the browser.
"""

from __future__ import annotations

from typing import Any

from dash import Dash, Input, Output, State, no_update

from costcompare.errors import CostCompareError, InputError
from costcompare.views.dashboard import filling
from costcompare.views.dashboard.book import make_book
from costcompare.views.dashboard.browser_side import answered_in_browser, replaceable
from costcompare.views.dashboard.history import current
from costcompare.views.dashboard.showing import shown_choice
from costcompare.views.dashboard.skeleton import PATIENCE, PATIENCE_WITH_SETTINGS
from costcompare.views.dashboard.workbench import Workbench
from costcompare.views.wording.naming import choosable

REPAINTED = (
    Output("lead", "children"),
    Output("now", "children"),
    Output("now-note", "children"),
    Output("after", "children"),
    Output("after-note", "children"),
    Output("warm-now", "children"),
    Output("warm-after", "children"),
    Output("warm-note", "children"),
    Output("slim-bill", "children"),
    Output("slim-warmth", "children"),
    Output("setting-answer", "children"),
    Output("night-answer", "children"),
    Output("today-at-bill", "children"),
    Output("today-at-warm", "children"),
    Output("today-at-degree", "children"),
    Output("chosen-at-bill", "children"),
    Output("chosen-at-warm", "children"),
    Output("chosen-at-degree", "children"),
    Output("setting-chart", "figure"),
    Output("setting-figure", "aria-label"),
    Output("setting-shown", "className"),
)
"""Everything that the slider moves, in the order in which assets/page.js gives it"""


def register(app: Dash, bench: Workbench) -> None:
    """Connect the page to the workbench."""
    _register_working_out(app, bench)
    _register_sweep(app, bench)
    _register_repainting(app)


def _register_repainting(app: Dash) -> None:
    answered_in_browser(
        app,
        "agree",
        Output("setting", "value"),
        Output("night", "value"),
        Input("setting", "value"),
        Input("night", "value"),
        Input("book", "data"),
        prevent_initial_call=True,
    )
    answered_in_browser(
        app,
        "repaint",
        *REPAINTED,
        Input("setting", "value"),
        Input("night", "value"),
        Input("book", "data"),
        State("first", "data"),
    )
    # Dash holds back whatever waits for the book while settings are being worked out, so the
    # first headline of a choice is painted by a call of its own.
    answered_in_browser(
        app,
        "paintFirst",
        *(replaceable(output) for output in REPAINTED),
        Input("first", "data"),
        State("setting", "value"),
        State("night", "value"),
        State("book", "data"),
        prevent_initial_call=True,
    )
    answered_in_browser(
        app,
        "speak",
        Output("spoken", "children"),
        Input("lead", "children"),
        prevent_initial_call=True,
    )


def failure_words(error: CostCompareError) -> list[str]:
    """Why something could not be worked out, a sentence a reason."""
    if isinstance(error, InputError):
        return [fault.sentence() for fault in error.faults]
    return [str(error)]


def _register_working_out(app: Dash, bench: Workbench) -> None:
    @app.callback(
        Output("worked", "data"),
        Output("choice", "data"),
        Output("choice", "value"),
        Output("title", "children"),
        Output("trouble", "children"),
        Input("history", "data"),
        State("choice", "value"),
        running=[(Output("busy", "children"), PATIENCE, "")],
    )
    def work_out(history: Any, chosen: str | None) -> tuple[Any, ...]:
        try:
            worked = bench.worked(current(history, bench.opened_key))
        except CostCompareError as error:
            return no_update, no_update, no_update, no_update, "\n".join(failure_words(error))
        names = choosable(worked.comparison)
        return (
            {"key": worked.key, "history": history},
            [{"value": name, "label": name} for name in names],
            chosen if chosen in names else names[0],
            worked.comparison.title,
            "",
        )


def _register_sweep(app: Dash, bench: Workbench) -> None:
    @app.callback(
        Output("book", "data"),
        Output("setting-table-tree", "data"),
        Input("worked", "data"),
        Input("choice", "value"),
        prevent_initial_call=True,
        running=[
            (Output("busy", "children"), PATIENCE_WITH_SETTINGS, ""),
            (Output("setting", "disabled"), True, False),
        ],
    )
    def sweep(worked: Any, name: str | None) -> tuple[Any, Any]:
        shown = shown_choice(bench, worked, name)
        if shown is None:
            return no_update, no_update
        known, name = shown
        swept = bench.swept(known, name)
        book = make_book(known.comparison, swept, name, known.key)
        return book, filling.setting_table(swept, name)
