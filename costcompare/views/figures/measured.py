"""Bills as they were measured beside what the model computes, before and after the fit."""

from __future__ import annotations

from datetime import date

import plotly.graph_objects as go

from costcompare.fitting.results import FittedBill, HouseFit
from costcompare.views import numbers
from costcompare.views.figures.look import DEEP, NOW, OTHER, TEMPLATE, panel_title
from costcompare.views.wording.fitting import bill_label

HEIGHT_PX = 380
MOST_BILLS = 24
"""The latest of them that the chart shows; the table shows all (judgement: still told apart on a
phone)"""


def bills_chart(fit: HouseFit) -> go.Figure:
    """A bar for each bill; a ring for the house as said, a diamond for the fitted one.

    The diamonds carry the range in which 8 of 10 homes that explain the bills lie.
    """
    bills = fit.bills[-MOST_BILLS:]
    places, labels = list(range(len(bills))), [bill_label(bill) for bill in bills]
    figure = go.Figure()
    figure.add_bar(
        x=places,
        y=[bill.measured_kwh for bill in bills],
        name="measured",
        marker={"color": OTHER, "opacity": 0.55},
        customdata=labels,
        hovertemplate="%{customdata}<br>%{y:,.0f} kWh measured<extra></extra>",
    )
    figure.add_scatter(
        x=places,
        y=[bill.said_kwh.likely for bill in bills],
        name="as said",
        mode="markers",
        marker={"symbol": "circle-open", "size": 12, "color": NOW, "line": {"width": 3}},
        customdata=labels,
        hovertemplate="%{customdata}<br>%{y:,.0f} kWh as said<extra></extra>",
    )
    figure.add_scatter(
        x=places,
        y=[bill.computed_kwh.likely for bill in bills],
        error_y=_spread(bills),
        name="with the bills",
        mode="markers",
        marker={"symbol": "diamond", "size": 10, "color": DEEP},
        customdata=labels,
        hovertemplate="%{customdata}<br>%{y:,.0f} kWh with the bills<extra></extra>",
    )
    every = max(1, len(bills) // 6)
    figure.update_layout(
        template=TEMPLATE,
        height=HEIGHT_PX,
        margin={"l": 56, "r": 12, "t": 34, "b": 56},
        xaxis={
            "tickvals": places[::every],
            "ticktext": [_tick(bill) for bill in bills[::every]],
            "tickangle": 0,
            "range": [-0.7, max(len(bills), 3) - 0.3],
        },
        yaxis={"rangemode": "tozero"},
        annotations=[panel_title("kWh of each bill", y=1.02)],
        showlegend=False,
        bargap=0.35,
    )
    return figure


def _spread(bills: tuple[FittedBill, ...]) -> dict[str, object]:
    """From the middle of each computed bill to its high and its low."""
    bands = [bill.computed_kwh for bill in bills]
    return {
        "type": "data",
        "array": [(band.high or 0.0) - (band.likely or 0.0) for band in bands],
        "arrayminus": [(band.likely or 0.0) - (band.low or 0.0) for band in bands],
        "color": DEEP,
        "thickness": 2,
        "width": 5,
    }


def _tick(bill: FittedBill) -> str:
    """Where a bill begins, with its year below."""
    begins = date.fromisoformat(bill.begins)
    return f"{numbers.month_name(begins.month)[:3]} {begins.day}<br>{begins.year}"
