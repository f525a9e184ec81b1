"""Colours and type of every chart.

The three strong colours stay apart for every kind of colour vision: smallest distance 37
in CAM02-UCS over normal sight and complete loss of each cone type (measured with
colorspacious); contrast on white 5.5, 3.5 and 13.2.
"""

from __future__ import annotations

import html
from typing import Any

import plotly.graph_objects as go

NOW = "#B24700"
"""Today, and what the ducts lose"""
CHOSEN = "#2F8FD8"
"""The option that is set against today"""
DEEP = "#12324F"
"""A third line, and cold air"""
OTHER = "#8A8F98"
"""Everything that is not the message"""
INK = "#1d2733"
QUIET = "#5a6675"
GRID = "#e6e9ee"

FONT = 'Inter, system-ui, -apple-system, "Segoe UI", Roboto, "Helvetica Neue", Arial, sans-serif'

TEMPLATE = go.layout.Template(
    layout={
        "font": {"family": FONT, "size": 14, "color": INK},
        "paper_bgcolor": "rgba(0,0,0,0)",
        "plot_bgcolor": "rgba(0,0,0,0)",
        "separators": ".,",
        "margin": {"l": 52, "r": 12, "t": 30, "b": 40},
        "dragmode": False,
        "hoverlabel": {
            "bgcolor": "#ffffff",
            "bordercolor": GRID,
            "font": {"family": FONT, "size": 14, "color": INK},
        },
        "legend": {
            "orientation": "h",
            "x": 0,
            "xanchor": "left",
            "y": 1.02,
            "yanchor": "bottom",
        },
        "xaxis": {
            "fixedrange": True,
            "showgrid": False,
            "zeroline": False,
            "ticklabelstandoff": 6,
            "linecolor": GRID,
        },
        "yaxis": {
            "fixedrange": True,
            "gridcolor": GRID,
            "zeroline": False,
            "ticklabelstandoff": 6,
        },
    }
)


def as_text(name: str) -> str:
    """A name for a figure: plotly reads markup in its texts, and a name may hold any sign."""
    return html.escape(name, quote=False)


def panel_title(text: str, *, y: float) -> dict[str, Any]:
    """The title of one panel of a figure, above its left edge; ``y`` in paper units."""
    return {
        "text": as_text(text),
        "x": 0,
        "y": y,
        "xref": "paper",
        "yref": "paper",
        "xanchor": "left",
        "yanchor": "bottom",
        "showarrow": False,
        "font": {"size": 14, "color": QUIET},
    }
