"""The drawer's callbacks: change facts, undo, go back; a wrong value loses nothing."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from dash import Dash, Input, Output, State, ctx, html, no_update

from costcompare.errors import CaseError, CostCompareError
from costcompare.views.dashboard.browser_side import answered_in_browser
from costcompare.views.dashboard.callbacks import failure_words
from costcompare.views.dashboard.facts_offered import OFFERED, path_in, stated
from costcompare.views.dashboard.history import current, stepped, steps_of, undone
from costcompare.views.dashboard.skeleton import PATIENCE
from costcompare.views.dashboard.workbench import Workbench
from costcompare.views.wording import sureness
from costcompare.views.wording.changing import change_answer

FIELDS = {fact.key: fact for fact in OFFERED}


def register(app: Dash, bench: Workbench) -> None:
    """Connect the drawer to the workbench."""
    answered_in_browser(
        app,
        "openFacts",
        Output("facts", "opened"),
        Input("open-facts", "n_clicks"),
        prevent_initial_call=True,
    )
    _register_changing(app, bench)
    _register_fields(app, bench)


def _register_changing(app: Dash, bench: Workbench) -> None:
    @app.callback(
        output={
            "history": Output("history", "data"),
            "faults": Output("faults", "children"),
            "said": Output("said", "children"),
            "errors": {key: Output(f"fact-{key}", "error") for key in FIELDS},
        },
        inputs={
            "again": Input("again", "n_clicks"),
            "undo": Input("undo", "n_clicks"),
            "reopen": Input("reopen", "n_clicks"),
            "entered": {key: Input(f"fact-{key}", "n_submit") for key in FIELDS},
        },
        state={
            "history": State("history", "data"),
            "texts": {key: State(f"fact-{key}", "value") for key in FIELDS},
        },
        running=[
            (Output("said", "children"), PATIENCE, ""),
            (Output("again", "disabled"), True, False),
        ],
        prevent_initial_call=True,
    )
    def change(
        again: int, undo: int, reopen: int, entered: Any, history: Any, texts: dict[str, str]
    ) -> Any:
        del again, undo, reopen, entered  # which one it was stands in the context
        if ctx.triggered_id == "undo":
            return _accepted(bench, history, undone(history, bench.opened_key))
        if ctx.triggered_id == "reopen":
            return _accepted(bench, history, stepped(history, bench.opened_key, {}))
        return _entered(bench, history, texts)


def _entered(bench: Workbench, history: Any, texts: dict[str, str]) -> dict[str, Any]:
    """Take over what the fields say; with faults, say them and change nothing."""
    before = current(history, bench.opened_key)
    document = bench.changed(before)
    changes = dict(before)
    for key, fact in FIELDS.items():
        text = (texts.get(key) or "").strip()
        path = path_in(document, fact)
        if text and text != stated(document, path):
            changes[path] = text
    if changes == before:
        return _answer(no_update, said="Nothing was changed.")
    try:
        bench.worked(changes)
    except CostCompareError as error:
        return _refused(document, error)
    return _accepted(bench, history, stepped(history, bench.opened_key, changes))


def _accepted(bench: Workbench, before: Any, after: dict[str, Any]) -> dict[str, Any]:
    """Take over a history, and say what it did to today's bill."""
    new = bench.worked(current(after, bench.opened_key))
    try:
        old = bench.worked(current(before, bench.opened_key))
    except CostCompareError:  # kept by the browser from an earlier visit, and no longer valid
        old = new
    return _answer(after, said=change_answer(old.comparison, new.comparison))


def _refused(document: dict[str, Any], error: CostCompareError) -> dict[str, Any]:
    """Every reason in the drawer under the name of its field, and the fields marked."""
    errors = {}
    sentences = failure_words(error)
    if isinstance(error, CaseError):
        offered = {path_in(document, fact): fact for fact in OFFERED}
        named = [(offered.get(fault.path), fault) for fault in error.faults]
        errors = {fact.key: True for fact, _fault in named if fact}
        sentences = [
            (replace(fault, path=fact.label) if fact else fault).sentence() for fact, fault in named
        ]
    listed = html.Ul([html.Li(text) for text in sentences])
    return _answer(no_update, faults=listed, said="Nothing was changed.", errors=errors)


def _answer(
    history: Any, *, faults: Any = "", said: str = "", errors: dict[str, Any] | None = None
) -> dict[str, Any]:
    marked = errors or {}
    return {
        "history": history,
        "faults": faults,
        "said": said,
        "errors": {key: marked.get(key, False) for key in FIELDS},
    }


def _register_fields(app: Dash, bench: Workbench) -> None:
    @app.callback(
        output={
            "values": {key: Output(f"fact-{key}", "value") for key in FIELDS},
            "placeholders": {key: Output(f"fact-{key}", "placeholder") for key in FIELDS},
            "undo": Output("undo", "disabled"),
        },
        inputs={"worked": Input("worked", "data")},
        prevent_initial_call=True,
    )
    def show_fields(worked: dict[str, Any] | None) -> Any:
        if not worked:
            return no_update
        history = worked["history"]
        known = bench.worked(current(history, bench.opened_key))
        filled = {
            fact.path: f"{sureness.fact_value(fact)} ({fact.known})"
            for fact in known.comparison.facts
        }
        return {
            "values": {
                key: stated(known.document, path_in(known.document, fact)) or ""
                for key, fact in FIELDS.items()
            },
            "placeholders": {
                key: filled.get(path_in(known.document, fact), "not stated")
                for key, fact in FIELDS.items()
            },
            "undo": not steps_of(history, bench.opened_key),
        }
