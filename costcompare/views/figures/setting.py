"""Bill and warm hours over the thermostat's setting, with the setting that is shown marked."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import plotly.graph_objects as go
from plotly.subplots import make_subplots

from costcompare.comparison import AS_WANTED, Comparison
from costcompare.thermostat import SettingYear, Sweep, SweepChoice
from costcompare.views import numbers
from costcompare.views.figures.look import CHOSEN, GRID, NOW, TEMPLATE, as_text, panel_title
from costcompare.views.wording.headline import YearShown, year_of_choice, year_of_setting
from costcompare.views.wording.setting import swept

HEIGHT_PX = 420
LINES_ARE_HELD = "Bill a year; lines: one setting all day"
MARKS = (1, 3, 5, 7)
"""Which traces are marks: bill and warm hours of today, then of the choice"""


def setting_chart(sweep: Sweep, name: str, *, held: bool) -> go.Figure:
    """Both choices over all settings, the marks on the warmth that the family wants.

    Traces by choice: the bill, its mark, the warm hours, their mark; today first. The
    first shape is the line through the marks.
    """
    start = nearest(sweep.settings_degf, sweep.wanted_degf)
    years = [year_of_setting(choice.at(start, held=held), "") for choice in _both(sweep, name)]
    return _chart(sweep, name, start, years, held=held)


def wanted_chart(comparison: Comparison, sweep: Sweep, name: str) -> go.Figure:
    """As :func:`setting_chart`, the marks on the two bills at the wanted warmth.

    They may lie off the lines, which hold the setting at night, as the title then says.
    """
    start = nearest(sweep.settings_degf, sweep.wanted_degf)
    years = [
        year_of_choice(comparison.choice(which, AS_WANTED), "")
        for which in (comparison.today.name, name)
    ]
    figure = _chart(sweep, name, start, years, held=True)
    figure.layout.annotations[0].text = LINES_ARE_HELD
    return figure


def nearest(settings_degf: tuple[float, ...], wanted_degf: float) -> float:
    """The swept setting that lies nearest to a temperature."""
    return min(settings_degf, key=lambda setting: abs(setting - wanted_degf))


def _both(sweep: Sweep, name: str) -> tuple[SweepChoice, SweepChoice]:
    return swept(sweep, None), swept(sweep, name)


def _chart(
    sweep: Sweep, name: str, start: float, marked: Sequence[YearShown], *, held: bool
) -> go.Figure:
    figure = make_subplots(
        rows=2, cols=1, shared_xaxes=True, row_heights=[0.6, 0.4], vertical_spacing=0.14
    )
    looks = ((NOW, "today’s system"), (CHOSEN, "this choice"))
    for choice, year, (colour, label) in zip(_both(sweep, name), marked, looks, strict=True):
        _curves(figure, _years(choice, held=held), colour, label)
        _marks(figure, start, year, colour)
    # Curve and mark alternate: bill, its mark, warm hours, their mark.
    figure.data = [figure.data[place] for place in (0, 2, 1, 3, 4, 6, 5, 7)]
    figure.update_layout(
        template=TEMPLATE,
        height=HEIGHT_PX,
        showlegend=False,
        margin={"l": 62, "r": 14, "t": 30, "b": 44},
        annotations=[
            panel_title("Bill a year", y=1.01),
            panel_title("Warm hours of 100", y=0.345),
        ],
        shapes=[_upright(start)],
    )
    first, last = sweep.settings_degf[0], sweep.settings_degf[-1]
    figure.update_xaxes(range=[first - 0.5, last + 0.5], ticksuffix=" °F", dtick=4, tick0=first)
    # A bill is never below 0, so that the sign of money may simply stand before the number.
    figure.update_yaxes(
        row=1,
        tickformat=",.0f",
        tickprefix=as_text(numbers.money_prefix()),
        rangemode="tozero",
        nticks=5,
    )
    figure.update_yaxes(row=2, range=[0, 104], tickvals=[0, 50, 100])
    return figure


def _upright(setting_degf: float) -> dict[str, Any]:
    """The line through the marks."""
    return {
        "type": "line",
        "xref": "x",
        "yref": "paper",
        "x0": setting_degf,
        "x1": setting_degf,
        "y0": 0,
        "y1": 1,
        "line": {"color": GRID, "width": 2},
        "layer": "below",
    }


def _years(choice: SweepChoice, *, held: bool) -> list[SettingYear]:
    return sorted(
        (year for year in choice.years if year.held == held),
        key=lambda year: year.setting_degf,
    )


def _curves(figure: go.Figure, years: list[SettingYear], colour: str, label: str) -> None:
    money = as_text(numbers.money_prefix())
    values = (
        (1, [year.bill_usd for year in years], f"{money}%{{y:,.0f}} a year"),
        (2, [_of_100(year_of_setting(year, "")) for year in years], "%{y:.0f} of 100 hours warm"),
    )
    for row, y, words in values:
        figure.add_scatter(
            x=[year.setting_degf for year in years],
            y=y,
            mode="lines",
            line={"color": colour, "width": 3},
            hovertemplate=f"%{{x:.0f}} °F: {words}, {label}<extra></extra>",
            row=row,
            col=1,
        )


def _marks(figure: go.Figure, start: float, year: YearShown, colour: str) -> None:
    for row, value in ((1, year.bill_usd), (2, _of_100(year))):
        figure.add_scatter(
            x=[start],
            y=[value],
            mode="markers",
            marker={"color": colour, "size": 15, "line": {"color": "#ffffff", "width": 2}},
            hoverinfo="skip",
            row=row,
            col=1,
        )


def _of_100(year: YearShown) -> float:
    return 100.0 * year.warm_share
