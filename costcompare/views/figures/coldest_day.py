"""The coldest day hour by hour: outdoors, the coldest room, and the power it takes."""

from __future__ import annotations

import plotly.graph_objects as go
from plotly.subplots import make_subplots

from costcompare.comparison import AS_WANTED, Choice, Comparison
from costcompare.views import numbers
from costcompare.views.figures.look import CHOSEN, NOW, OTHER, QUIET, TEMPLATE, panel_title
from costcompare.views.figures.maps import ComfortLimits
from costcompare.views.wording.warmth import coldest_room_of_the_day

HEIGHT_PX = 430


def coldest_day(comparison: Comparison, name: str, limits: ComfortLimits) -> go.Figure:
    """Temperature of the coldest room and power from the grid, now and with the choice."""
    today, chosen = comparison.today, comparison.choice(name, AS_WANTED)
    room = coldest_room_of_the_day(today)
    figure = make_subplots(
        rows=2, cols=1, shared_xaxes=True, row_heights=[0.6, 0.4], vertical_spacing=0.14
    )
    hours = list(range(24))
    figure.add_scatter(
        x=hours,
        y=today.coldest_day.outdoor_degf,
        name="outdoors",
        line={"color": OTHER, "width": 2, "dash": "dot"},
        hovertemplate="%{x} h: %{y:.0f} °F outdoors<extra></extra>",
        row=1,
        col=1,
    )
    for choice, label, colour in ((today, "now", NOW), (chosen, "after", CHOSEN)):
        _lines(figure, choice, room, label, colour)
    figure.add_hline(
        y=limits.cold_below, line={"color": QUIET, "width": 1, "dash": "dash"}, row=1, col=1
    )
    figure.add_annotation(
        text=f"too cold below {numbers.degrees(limits.cold_below)}",
        x=23,
        y=limits.cold_below,
        xanchor="right",
        yanchor="bottom",
        showarrow=False,
        font={"size": 12, "color": QUIET},
        row=1,
        col=1,
    )
    figure.update_layout(
        template=TEMPLATE,
        height=HEIGHT_PX,
        margin={"l": 44, "r": 12, "t": 66, "b": 40},
        # In a narrow figure a legend that is placed by the panel slips into it.
        legend={"yref": "container", "y": 1.0, "yanchor": "top"},
        annotations=[
            *figure.layout.annotations,
            panel_title(f"{room[:1].upper()}{room[1:]}, °F", y=1.0),
            panel_title("Power from the grid, kW", y=0.345),
        ],
    )
    figure.update_xaxes(range=[-0.3, 23.4], tickvals=[0, 6, 12, 18, 23])
    figure.update_xaxes(row=2, ticktext=["0 h", "6 h", "noon", "18 h", "23 h"])
    figure.update_yaxes(nticks=5)
    figure.update_yaxes(row=2, rangemode="tozero")
    return figure


def _lines(figure: go.Figure, choice: Choice, room: str, label: str, colour: str) -> None:
    hours = list(range(24))
    figure.add_scatter(
        x=hours,
        y=choice.coldest_day.rooms_degf[room],
        name=label,
        line={"color": colour, "width": 3},
        hovertemplate=f"%{{x}} h: %{{y:.0f}} °F {label}<extra></extra>",
        row=1,
        col=1,
    )
    figure.add_scatter(
        x=hours,
        y=choice.coldest_day.power_kw,
        name=label,
        showlegend=False,
        line={"color": colour, "width": 3, "shape": "hvh"},
        hovertemplate=f"%{{x}} h: %{{y:.1f}} kW {label}<extra></extra>",
        row=2,
        col=1,
    )
