"""From a visitor's document to the filled page.

The browser keeps ``history`` (the visitor's steps); its ``document`` leads to ``worked`` (what
was worked out), that to the parts (``showing``) and to the slider's ``book``; the slider itself is
answered in the browser.
"""

from __future__ import annotations

from typing import Any

from dash import Dash, Input, Output, State, no_update

from costcompare.errors import CostCompareError, InputError
from costcompare.views.dashboard import filling
from costcompare.views.dashboard.book import make_book
from costcompare.views.dashboard.browser_side import answered_in_browser
from costcompare.views.dashboard.showing import shown_choice, shown_home
from costcompare.views.dashboard.skeleton import PATIENCE
from costcompare.views.dashboard.workbench import SETTINGS_DEGF, Workbench
from costcompare.views.dashboard.writing import in_its_money
from costcompare.views.wording.changing import change_answer
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
    Output("visit-bill", "children"),
    Output("visit-warmth", "children"),
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
    _register_beginning(app, bench)
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
        Input("first", "data"),
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


def _register_beginning(app: Dash, bench: Workbench) -> None:
    @app.callback(Output("opened", "data"), Input("opened", "id"))
    def give_opened(_identity: str) -> dict[str, Any]:
        return {"key": bench.opened_key, "document": bench.opened}

    answered_in_browser(
        app,
        "begin",
        Output("history", "data"),
        Output("document", "data"),
        Input("opened", "data"),
        State("history", "data"),
        prevent_initial_call=True,
    )


def _register_working_out(app: Dash, bench: Workbench) -> None:
    @app.callback(
        Output("worked", "data"),
        Output("choice", "data"),
        Output("choice", "value"),
        Output("title", "children"),
        Output("trouble", "children"),
        Output("said", "children"),
        Input("document", "data"),
        State("choice", "value"),
        State("worked", "data"),
        running=[(Output("busy", "children"), PATIENCE, "")],
        prevent_initial_call=True,
    )
    def work_out(document: Any, chosen: Any, before: Any) -> tuple[Any, ...]:
        try:
            worked = bench.worked(document)
        except CostCompareError as error:
            same = no_update
            return same, same, same, same, "\n".join(failure_words(error)), ""
        names = choosable(worked.comparison)
        old = shown_home(bench, before)
        with in_its_money(worked.comparison):
            changed = change_answer(old.comparison, worked.comparison) if old else ""
        return (
            {"key": worked.key, "document": document},
            [{"value": name, "label": name} for name in names],
            chosen if chosen in names else names[0],
            worked.comparison.title,
            "",
            changed,
        )


def _register_sweep(app: Dash, bench: Workbench) -> None:
    """A few settings at a time: the browser asks on until all are there, or moves on."""

    @app.callback(
        Output("swept", "data"),
        Output("book", "data"),
        Output("setting-table-tree", "data"),
        Input("sweep-on", "data"),
        State("worked", "data"),
        State("choice", "value"),
        prevent_initial_call=True,
    )
    def sweep(_asked: Any, worked: Any, name: Any) -> tuple[Any, Any, Any]:
        shown = shown_choice(bench, worked, name)
        if shown is None:
            return no_update, no_update, no_update
        known, name = shown
        there, of = bench.sweep_on(known, name), len(SETTINGS_DEGF)
        swept = {"key": known.key, "choice": name, "there": there, "of": of}
        if there < of:
            return swept, no_update, no_update
        whole = bench.swept(known, name)
        with in_its_money(known.comparison):
            book = make_book(known.comparison, whole, name, known.key)
            return swept, book, filling.setting_table(whole, name)

    answered_in_browser(
        app,
        "sweepOn",
        Output("sweeping", "children"),
        Input("first", "data"),
        Input("swept", "data"),
        State("book", "data"),
        prevent_initial_call=True,
    )
    answered_in_browser(
        app,
        "isUnready",
        Output("setting", "disabled"),
        Input("first", "data"),
        Input("book", "data"),
    )
