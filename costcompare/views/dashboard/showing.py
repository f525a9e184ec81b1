"""Filling the parts of the page whenever the home or the choice changes."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import asdict
from typing import Any

from dash import Dash, Input, Output, State, no_update

from costcompare.comparison import AS_LIVED, AS_WANTED
from costcompare.errors import CostCompareError
from costcompare.views.dashboard.against_bills import bills_part
from costcompare.views.dashboard.browser_side import answered_in_browser
from costcompare.views.dashboard.filling import (
    Filled,
    bill_part,
    money_part,
    running_part,
    sure_part,
)
from costcompare.views.dashboard.filling_rooms import rooms_part
from costcompare.views.dashboard.filling_trade import trade_part
from costcompare.views.dashboard.onlookers import CONTRACTOR
from costcompare.views.dashboard.places import tree_of
from costcompare.views.dashboard.skeleton import PATIENCE_WITH_SETTINGS
from costcompare.views.dashboard.workbench import Workbench, Worked
from costcompare.views.dashboard.writing import in_its_money
from costcompare.views.wording.headline import headline
from costcompare.views.wording.naming import choosable

Places = Mapping[str, tuple[str, str]]
"""The id and the property of the page that each filling goes to"""

BILL: Places = {
    "answer": ("bill-answer", "children"),
    "figure": ("bill-figure", "aria-label"),
    "bars": ("bill-bars-tree", "data"),
    "table": ("bill-table-tree", "data"),
    "ducts_class": ("ducts", "className"),
    "ducts_answer": ("ducts-answer", "children"),
    "drawing": ("ducts-drawing", "src"),
    "drawing_alt": ("ducts-drawing", "alt"),
    "key": ("ducts-key-tree", "data"),
}
RUNNING: Places = {
    "answer": ("running-answer", "children"),
    "figure": ("running-figure", "aria-label"),
    "rows": ("running-rows-tree", "data"),
    "summer": ("summer-answer", "children"),
    "table": ("running-table-tree", "data"),
}
ROOMS: Places = {
    "answer": ("rooms-answer", "children"),
    "figure": ("rooms-figure", "aria-label"),
    "plan_figure": ("plan-figure", "aria-label"),
    "plan": ("plan-tree", "data"),
    "plan_key": ("plan-key-tree", "data"),
    "plan_note": ("plan-note", "children"),
    "strips": ("rooms-strips-tree", "data"),
    "hot": ("hot-answer", "children"),
    "table": ("rooms-table-tree", "data"),
    "maps_answer": ("maps-answer", "children"),
    "maps_figure": ("maps-figure", "aria-label"),
    "maps": ("maps", "figure"),
    "maps_style": ("maps", "style"),
    "maps_key": ("maps-key-tree", "data"),
    "day_answer": ("day-answer", "children"),
    "day_figure": ("day-figure", "aria-label"),
    "day": ("day", "figure"),
    "day_table": ("day-table-tree", "data"),
}
MONEY: Places = {
    "answer": ("money-answer", "children"),
    "figure": ("money-figure", "aria-label"),
    "rows": ("money-rows-tree", "data"),
    "savings": ("savings-tree", "data"),
    "incentives": ("incentives-answer", "children"),
    "basis": ("money-basis", "children"),
    "more": ("money-more-tree", "data"),
    "table": ("money-table-tree", "data"),
    "loan_class": ("loan", "className"),
    "loan_answer": ("loan-answer-tree", "data"),
    "loan_figure": ("loan-figure", "aria-label"),
    "loan_rows": ("loan-rows-tree", "data"),
    "loan_table": ("loan-table-tree", "data"),
}
SURE: Places = {
    "answer": ("sure-answer", "children"),
    "counts": ("sure-counts-tree", "data"),
    "cautions": ("cautions-tree", "data"),
    "weather": ("weather-answer", "children"),
    "assumptions": ("assumptions-tree", "data"),
    "facts": ("facts-table-tree", "data"),
}

AGAINST_BILLS: Places = {
    "class": ("against-bills", "className"),
    "stands": ("stands-on", "children"),
    "stands_class": ("stands", "className"),
    "answer": ("measured-answer", "children"),
    "figure": ("measured-figure", "aria-label"),
    "chart": ("measured-chart", "figure"),
    "shown": ("measured-shown", "children"),
    "table": ("measured-table-tree", "data"),
    "more": ("measured-more", "children"),
    "held": ("measured-held", "children"),
    "findings": ("measured-findings-tree", "data"),
    "moved": ("moved-answer", "children"),
    "facts": ("moved-facts-tree", "data"),
    "open": ("moved-open", "children"),
    "facts_table": ("moved-table-tree", "data"),
}
TRADE: Places = {
    "answer": ("trade-answer", "children"),
    "conditions": ("trade-conditions", "children"),
    "rooms": ("trade-rooms-tree", "data"),
    "fit": ("trade-fit", "children"),
    "machines": ("trade-machines-tree", "data"),
    "notes": ("trade-notes-tree", "data"),
    "panel": ("trade-panel", "children"),
    "circuits": ("trade-circuits-tree", "data"),
    "settings": ("trade-settings-tree", "data"),
    "questions": ("trade-questions-tree", "data"),
    "estimate": ("trade-estimate", "children"),
}
DRAWN = (
    *("bill-bars", "bill-table", "ducts-key", "running-rows", "running-table", "rooms-strips"),
    *(
        "plan",
        "plan-key",
        "rooms-table",
        "maps-key",
        "day-table",
        "setting-table",
        "money-rows",
        "savings",
    ),
    *("money-more", "money-table", "sure-counts", "cautions", "assumptions", "facts-table"),
    *("trade-rooms", "trade-machines", "trade-notes", "trade-circuits", "trade-settings"),
    "trade-questions",
    *("loan-answer", "loan-rows", "loan-table"),
    *("drivers", "ranges-table", "years-range-bars", "years-range-table"),
    *("measured-table", "measured-findings", "moved-facts", "moved-table"),
)
"""Places whose elements the browser makes from a tree"""


def register(app: Dash, bench: Workbench) -> None:
    """Connect every part to the workbench."""
    _fill_for_home(app, bench, bill_part, BILL)
    _fill_for_choice(app, bench, running_part, RUNNING, {"at": "running-warmth"})
    _fill_for_choice(app, bench, rooms_part, ROOMS)
    _fill_for_choice(app, bench, money_part, MONEY, {"at": "money-warmth"})
    _fill_for_home(app, bench, sure_part, SURE)
    _fill_for_home(app, bench, bills_part, AGAINST_BILLS)
    _fill_trade(app, bench)
    _fill_for_choice(app, bench, _first, {"first": ("first", "data")})
    for identity in DRAWN:
        answered_in_browser(app, "draw", Input(tree_of(identity), "data"), State(identity, "id"))


def shown_home(bench: Workbench, worked: Any) -> Worked | None:
    """The home that the page shows; None before there is one.

    The page holds a visitor's document, not results: those are looked up, or worked out once
    more where they are no longer kept.
    """
    if not isinstance(worked, Mapping):
        return None
    try:
        return bench.worked(worked.get("document"))
    except CostCompareError:
        return None


def shown_choice(bench: Workbench, worked: Any, name: Any) -> tuple[Worked, str] | None:
    """The home and the choice that the page shows; None where the home has no such choice."""
    known = shown_home(bench, worked)
    if known is None or name not in choosable(known.comparison):
        return None
    return known, name


def _first(worked: Worked, name: str) -> Filled:
    """The headline of a choice at the wanted warmth, until the slider's book is there."""
    texts = asdict(headline(worked.comparison, name))
    return {
        "first": {
            "key": worked.key,
            "choice": name,
            "headline": texts,
            "waiting": PATIENCE_WITH_SETTINGS,
        }
    }


def _fill_trade(app: Dash, bench: Workbench) -> None:
    """The contractor's part, worked out only where somebody looks at it."""

    @app.callback(
        output={key: Output(*place) for key, place in TRADE.items()},
        inputs={
            "worked": Input("worked", "data"),
            "name": Input("choice", "value"),
            "view": Input("view", "data"),
        },
        prevent_initial_call=True,
        running=[(Output("trade-waiting", "children"), "Sizing every room and machine …", "")],
    )
    def show(worked: Any, name: Any, view: Any) -> Any:
        shown = shown_choice(bench, worked, name) if view == CONTRACTOR else None
        if shown is None:
            return no_update
        try:
            with in_its_money(shown[0].comparison):
                return trade_part(*bench.trade(*shown))
        except CostCompareError:
            return no_update


def _fill_for_home(
    app: Dash, bench: Workbench, fill: Callable[[Worked], Filled], places: Places
) -> None:
    """A part that shows the same whichever option is chosen."""

    @app.callback(
        output={key: Output(*place) for key, place in places.items()},
        inputs={"worked": Input("worked", "data")},
        prevent_initial_call=True,
    )
    def show(worked: Any) -> Any:
        known = shown_home(bench, worked)
        if known is None:
            return no_update
        with in_its_money(known.comparison):
            return fill(known)


def _fill_for_choice(
    app: Dash,
    bench: Workbench,
    fill: Callable[..., Filled],
    places: Places,
    controls: Mapping[str, str] | None = None,
) -> None:
    """A part that shows the chosen option, and what its own controls say."""
    own = {key: Input(identity, "value") for key, identity in (controls or {}).items()}

    @app.callback(
        output={key: Output(*place) for key, place in places.items()},
        inputs={"worked": Input("worked", "data"), "name": Input("choice", "value"), **own},
        prevent_initial_call=True,
    )
    def show(worked: Any, name: str | None, **at: Any) -> Any:
        shown = shown_choice(bench, worked, name)
        known = all(warmth in (AS_LIVED, AS_WANTED) for warmth in at.values())
        if shown is None or not known:
            return no_update
        with in_its_money(shown[0].comparison):
            return fill(*shown, **at)
