"""Empty places of the page that callbacks fill, and how to speak of them."""

from __future__ import annotations

from typing import Any

from dash import dcc, html

GRAPH_CONFIG: Any = {"displayModeBar": False, "responsive": True}


def aria(**attributes: str) -> dict[str, Any]:
    """Accessible names and states: ``aria(label="…")`` is ``aria-label="…"``."""
    return {f"aria-{name}": value for name, value in attributes.items()}


def drawn(identity: str) -> html.Div:
    """A place whose tree (:mod:`pieces`) the browser turns into elements.

    The tree lies in the store ``<identity>-tree``.
    """
    return html.Div([html.Div(id=identity), dcc.Store(id=tree_of(identity))])


def tree_of(identity: str) -> str:
    """The store that holds the tree of a drawn place."""
    return f"{identity}-tree"


def figure(identity: str, child: Any) -> html.Figure:
    """A chart for the eye; its name says in words what it shows, its table has the numbers."""
    return html.Figure(child, id=identity, role="img", **aria(label="A chart"))


def on_demand(summary: str, identity: str) -> html.Details:
    """A table, or more words, behind a line that opens."""
    return html.Details([html.Summary(summary), drawn(identity)], className="on-demand")


def graph(identity: str, height: int) -> dcc.Graph:
    """A plotly figure that keeps its height while it loads."""
    hidden = {"visible": False}
    empty = {"data": [], "layout": {"height": height, "xaxis": hidden, "yaxis": hidden}}
    return dcc.Graph(
        id=identity, figure=empty, config=GRAPH_CONFIG, style={"height": f"{height}px"}
    )
