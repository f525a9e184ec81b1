"""Line charts as SVG text, drawn from plain numbers; small enough for paper and for a phone."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from html import escape
from itertools import pairwise

from costcompare.views.figures.look import CHOSEN, FONT, GRID, INK, NOW, OTHER, QUIET
from costcompare.views.report.pieces import Tone

TONES: dict[Tone, str] = {
    "now": NOW,
    "chosen": CHOSEN,
    "other": OTHER,
    "cold": OTHER,
    "taken": OTHER,
    "whole": INK,
}
LABEL = 8.5
"""[units] size of the type"""
APART = 10.0
"""[units] least distance of two labels"""


@dataclass(frozen=True)
class Line:
    """One line of a chart with the word at its end."""

    label: str
    tone: Tone
    values: tuple[float, ...]


@dataclass(frozen=True)
class Panel:
    """One panel: its title, its lines over the same places, how its scale is written."""

    title: str
    lines: tuple[Line, ...]
    write: Callable[[float], str]
    height: float
    least: float | None = None
    """The scale reaches at least down to here"""
    most: float | None = None
    """and up to here"""


def line_chart(
    panels: Sequence[Panel],
    ticks: Sequence[str],
    *,
    width: float = 250.0,
    marked: int | None = None,
) -> str:
    """Panels one below the other over one row of ticks; an empty tick is left out.

    ``marked``: the place at which every line carries a dot.
    """
    left, right, top = 47.0, width - 24.0, 0.0
    body: list[str] = []
    for panel in panels:
        body += _panel(panel, (left, right), (top + 18.0, top + panel.height - 6.0), marked)
        top += panel.height
    count = max(len(ticks) - 1, 1)
    for place, tick in enumerate(ticks):
        if tick:
            x = left + (right - left) * place / count
            body.append(_text(x, top + 8.0, tick, anchor="middle", colour=QUIET))
    height = top + 12.0
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width:.0f} {height:.0f}" '
        f"font-family='{FONT}' font-size=\"{LABEL}\">{''.join(body)}</svg>"
    )


def _panel(
    panel: Panel, across: tuple[float, float], down: tuple[float, float], marked: int | None
) -> list[str]:
    values = [value for line in panel.lines for value in line.values]
    values += [bound for bound in (panel.least, panel.most) if bound is not None]
    low, high, step = scale(min(values), max(values))

    def y(value: float) -> float:
        return down[1] - (down[1] - down[0]) * (value - low) / (high - low)

    body = [_text(across[0], down[0] - 9.0, panel.title, colour=QUIET)]
    at = low
    while at <= high + 1e-9 * step:
        colour, width = (QUIET, 1.0) if abs(at) < 1e-9 * step and low < 0.0 else (GRID, 0.8)
        body.append(
            f'<path d="M{across[0]:.1f} {y(at):.1f} H{across[1]:.1f}" stroke="{colour}" '
            f'stroke-width="{width}"/>'
        )
        text = panel.write(at)
        body.append(_text(across[0] - 6.0, y(at) + 3.0, text, anchor="end", colour=QUIET))
        at += step
    ends = spread([y(line.values[-1]) for line in panel.lines], down)
    for line, end in zip(panel.lines, ends, strict=True):
        body += _line(line, across, y, end, marked)
    return body


def _line(
    line: Line,
    across: tuple[float, float],
    y: Callable[[float], float],
    end: float,
    marked: int | None,
) -> list[str]:
    count = max(len(line.values) - 1, 1)
    places = [across[0] + (across[1] - across[0]) * n / count for n in range(len(line.values))]
    colour = TONES[line.tone]
    path = " L".join(f"{x:.1f} {y(v):.1f}" for x, v in zip(places, line.values, strict=True))
    # Today is dashed, so that the two strong lines differ without their colours.
    dash = ' stroke-dasharray="7 3"' if line.tone == "now" else ""
    thick = 1.2 if line.tone == "other" else 2.2
    drawn = [
        f'<path d="M{path}" fill="none" stroke="{colour}" stroke-width="{thick}" '
        f'stroke-linejoin="round"{dash}/>',
        _text(across[1] + 6.0, end + 3.0, line.label, weight=600),
    ]
    if marked is not None and marked < len(places) and line.tone != "other":
        drawn.append(
            f'<circle cx="{places[marked]:.1f}" cy="{y(line.values[marked]):.1f}" r="3.6" '
            f'fill="{colour}" stroke="#ffffff" stroke-width="1.4"/>'
        )
    return drawn


def scale(low: float, high: float) -> tuple[float, float, float]:
    """The two ends of a scale around two values, and its step: about four steps of 1, 2 or 5."""
    span = max(high - low, 1e-6)
    power = 1e-6
    while power * 50.0 < span:
        power *= 10.0
    step = next(power * factor for factor in (1, 2, 5, 10, 20, 50) if power * factor * 4.5 >= span)
    first = step * (low // step)
    last = -step * (-high // step)
    return first, last, step


def spread(wanted: Sequence[float], within: tuple[float, float]) -> list[float]:
    """Heights near those wanted, so far apart that their labels can be read."""
    order = sorted(range(len(wanted)), key=lambda n: wanted[n])
    placed = list(wanted)
    for before, after in pairwise(order):
        placed[after] = max(placed[after], placed[before] + APART)
    if order and placed[order[-1]] > within[1]:
        placed[order[-1]] = within[1]
        for after, before in pairwise(reversed(order)):
            placed[before] = min(placed[before], placed[after] - APART)
    return placed


def _text(
    x: float,
    y: float,
    text: str,
    *,
    anchor: str = "start",
    colour: str = INK,
    weight: int = 400,
) -> str:
    return (
        f'<text x="{x:.1f}" y="{y:.1f}" text-anchor="{anchor}" fill="{colour}" '
        f'font-weight="{weight}">{escape(text)}</text>'
    )
