"""Rooms over the year: mean temperature by month and hour, now beside afterwards."""

from __future__ import annotations

from dataclasses import dataclass

import plotly.graph_objects as go
from plotly.subplots import make_subplots

from costcompare.comparison import AS_WANTED, Choice, Comparison
from costcompare.views import numbers
from costcompare.views.figures.look import NOW, QUIET, TEMPLATE, as_text

STEPS_BELOW_F = (3.0, 7.0)
"""Where the two colder bands begin, in degrees below the coldest warm temperature (judgement)"""
COLDEST, COLDER, COOL, WARM, HOT = "#2b5c8a", "#7fa6cc", "#d7dfe8", "#fbf0d9", NOW
"""Darker is worse: lightness L* of the cold bands 38, 67 and 88, of warm 95"""
ROW_PX = 112
"""Height of one room's map [px]"""


@dataclass(frozen=True)
class Band:
    """One colour of the maps with its meaning in words."""

    colour: str
    words: str


@dataclass(frozen=True)
class ComfortLimits:
    """Between these a room is warm [degF]."""

    cold_below: float
    hot_above: float


def bands(limits: ComfortLimits) -> tuple[Band, ...]:
    """The colours of the maps, coldest first."""
    edges = _edges(limits)
    low, middle, cold, hot = (numbers.degrees(edge) for edge in edges)
    return (
        Band(COLDEST, f"below {low}"),
        Band(COLDER, f"{low} to {middle}"),
        Band(COOL, f"{middle} to {cold}"),
        Band(WARM, "as warm as you want"),
        Band(HOT, f"above {hot}"),
    )


def room_maps(comparison: Comparison, name: str, limits: ComfortLimits) -> go.Figure:
    """A map for every room, today as you live now beside the choice at the warmth you want."""
    today, chosen = comparison.today, comparison.choice(name, AS_WANTED)
    rooms = tuple(today.mean_degf_by_month_and_hour)
    height = len(rooms) * ROW_PX + 60
    figure = make_subplots(
        rows=len(rooms), cols=2, vertical_spacing=26.0 / height, horizontal_spacing=0.04
    )
    for row, room in enumerate(rooms, start=1):
        figure.add_trace(_map(today, room, limits, "now"), row=row, col=1)
        figure.add_trace(_map(chosen, room, limits, "after"), row=row, col=2)
    figure.update_layout(
        template=TEMPLATE,
        height=height,
        margin={"l": 34, "r": 8, "t": 26, "b": 34},
    )
    figure.update_xaxes(ticks="", tickvals=[0, 6, 12, 18], showticklabels=False, range=[-0.5, 23.5])
    figure.update_xaxes(row=len(rooms), showticklabels=True, ticktext=["0 h", "6", "12", "18"])
    figure.update_yaxes(
        ticks="", autorange=False, range=[11.5, -0.5], showgrid=False, showticklabels=False
    )
    figure.update_yaxes(
        col=1, showticklabels=True, tickvals=[0, 6], ticktext=["Jan", "Jul"], tickfont_size=12
    )
    for row, room in enumerate(rooms, start=1):
        for column, words in ((1, "now"), (2, "after")):
            _title(figure, row, column, f"{room[:1].upper()}{room[1:]}, {words}")
    return figure


def _edges(limits: ComfortLimits) -> tuple[float, float, float, float]:
    middle, low = (limits.cold_below - step for step in STEPS_BELOW_F)
    return low, middle, limits.cold_below, limits.hot_above


def _band(temperature: float, limits: ComfortLimits) -> int:
    """The number of the band; a limit itself is still warm."""
    *cold_edges, hot_above = _edges(limits)
    return sum(temperature >= edge for edge in cold_edges) + (temperature > hot_above)


def _map(choice: Choice, room: str, limits: ComfortLimits, words: str) -> go.Heatmap:
    temperatures = choice.mean_degf_by_month_and_hour[room]
    colours = (COLDEST, COLDER, COOL, WARM, HOT)
    scale = [
        [edge / len(colours), colour]
        for number, colour in enumerate(colours)
        for edge in (number, number + 1)
    ]
    return go.Heatmap(
        z=[[_band(value, limits) for value in hours] for hours in temperatures],
        zmin=-0.5,
        zmax=len(colours) - 0.5,
        colorscale=scale,
        showscale=False,
        customdata=[
            [f"{numbers.month_name(month + 1)}, {hour} h" for hour in range(24)]
            for month in range(12)
        ],
        text=[[numbers.degrees(value) for value in hours] for hours in temperatures],
        hovertemplate=f"%{{customdata}}: %{{text}} {words}<extra></extra>",
    )


def _title(figure: go.Figure, row: int, column: int, text: str) -> None:
    """A title above one map, in the map's own coordinates."""
    figure.add_annotation(
        text=as_text(text),
        row=row,
        col=column,
        x=-0.5,
        y=-0.5,
        yshift=2,
        xanchor="left",
        yanchor="bottom",
        showarrow=False,
        font={"size": 13, "color": QUIET},
    )
