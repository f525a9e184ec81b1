"""Drawings as SVG text: a house cut open, with its ducts and what becomes of their heat.

Arrows are as wide as the energy they stand for and carry the numbers of :func:`duct_flows`,
so that the words can stand beside the drawing at a readable size on any screen.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from costcompare.comparison import DuctYear
from costcompare.views.figures.look import DEEP, FONT, INK, NOW, OTHER
from costcompare.views.wording.bill import heat_put_in

WIDTH, HEIGHT = 480, 300
"""Size of the drawing in its own units"""
FULL_WIDTH = 54.0
"""Width of an arrow that carries all heat put into the ducts, in drawing units"""
DUCT_FILL, ROOM_FILL, SPACE_FILL, GROUND_FILL = "#d9dde3", "#fdfaf3", "#eef0f2", "#e3e1db"


@dataclass(frozen=True)
class DuctFlow:
    """One way the heat of the ducts goes."""

    number: int
    key: str
    words: str
    kwh: float
    colour: str


@dataclass(frozen=True)
class _Place:
    """Where the parts of the house lie: ``side`` is +1 with the ducts below, -1 above."""

    plane: float
    """Height of the floor or ceiling between rooms and ducts"""
    side: int
    near: float
    far: float
    """The duct's two edges, as distances from the plane"""
    left: float
    right: float
    """The duct's two ends"""
    room_middle: float

    def height(self, distance: float) -> float:
        return self.plane + self.side * distance


_BELOW = _Place(plane=180, side=1, near=32, far=54, left=152, right=362, room_middle=128)
_ABOVE = _Place(plane=150, side=-1, near=26, far=44, left=150, right=338, room_middle=205)


def duct_flows(ducts: DuctYear, location: str) -> tuple[DuctFlow, ...]:
    """What becomes of the heat put into the ducts, in the order of the drawing's numbers."""
    return (
        DuctFlow(1, "delivered", "reaches the rooms", ducts.delivered_kwh, OTHER),
        DuctFlow(
            2,
            "conduction",
            "is lost through the walls of the ducts",
            ducts.lost_conduction_kwh,
            NOW,
        ),
        DuctFlow(
            3,
            "supply",
            "is lost with warm air that leaks out",
            ducts.lost_supply_leak_kwh,
            NOW,
        ),
        DuctFlow(
            4,
            "return",
            "goes into warming cold air that the ducts draw in",
            ducts.return_leak_kwh,
            DEEP,
        ),
        DuctFlow(
            5,
            "induced",
            "goes into warming cold air that the fan pulls into the rooms",
            ducts.induced_infiltration_kwh,
            DEEP,
        ),
        DuctFlow(
            6,
            "regained",
            f"comes back, because the ducts warm the {location}",
            ducts.regained_kwh,
            OTHER,
        ),
    )


def house_section(ducts: DuctYear, location: str) -> str:
    """The house cut open, as an SVG document; ducts in the attic are drawn above the rooms."""
    place = _ABOVE if location == "attic" else _BELOW
    flows = {flow.key: flow for flow in duct_flows(ducts, location)}
    heat_in = heat_put_in(ducts)
    unit = FULL_WIDTH / heat_in if heat_in > 0 else 0.0
    body = [*_house(place), *_duct(place), *_arrows(place, flows, unit)]
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {HEIGHT}" '
        f"font-family='{FONT}'>{''.join(body)}</svg>"
    )


def _house(place: _Place) -> list[str]:
    left, right = 84.0, 396.0
    if place.side > 0:
        eaves, floor, ground = 74.0, place.plane, 264.0
        below = _rectangle(left + 8, floor, right - left - 16, ground - floor, SPACE_FILL)
    else:
        eaves, floor, ground = place.plane, 262.0, 264.0
        below = ""
    apex, partition = 14.0, (place.left + place.right) / 2 + 22
    roof_fill = SPACE_FILL if place.side < 0 else "none"
    return [
        _rectangle(0, ground, WIDTH, HEIGHT - ground, GROUND_FILL),
        below,
        _rectangle(left, eaves, right - left, floor - eaves, ROOM_FILL),
        f'<path d="M{left - 22} {eaves} L{(left + right) / 2} {apex} L{right + 22} {eaves} Z" '
        f'fill="{roof_fill}" stroke="{INK}" stroke-width="2.5" stroke-linejoin="round"/>',
        _line(left, eaves, left, ground),
        _line(right, eaves, right, ground),
        _line(left, floor, right, floor),
        _line(partition, eaves, partition, floor, width=1.5),
    ]


def _duct(place: _Place) -> list[str]:
    top = min(place.height(place.near), place.height(place.far))
    thick = place.far - place.near
    box_x, box_height = place.left - 36, 62.0
    box_y = place.plane - box_height if place.side > 0 else place.plane
    middle = box_x + 14
    neck_y = min(place.plane, place.height(place.far))
    return [
        _rectangle(middle - 9, neck_y, 18, abs(place.height(place.far) - place.plane), DUCT_FILL),
        _rectangle(middle - 9, top, place.right - middle + 9, thick, DUCT_FILL),
        f'<rect x="{box_x}" y="{box_y}" width="28" height="{box_height}" rx="3" '
        f'fill="#ffffff" stroke="{INK}" stroke-width="2"/>',
    ]


def _arrows(place: _Place, flows: Mapping[str, DuctFlow], unit: float) -> list[str]:
    """Every arrow with its number; the heat to the rooms leaves through two registers."""
    near, far = place.height(place.near), place.height(place.far)
    middle = (near + far) / 2
    first, second = place.left + 78, place.right - 34
    out = place.height(place.far + 30)
    inside = place.height(-34)
    width = {key: flow.kwh * unit for key, flow in flows.items()}
    half = width["delivered"] / 2
    between = (first + second) / 2
    return [
        _arrow((first, near), (first, inside), half, flows["delivered"].colour),
        _arrow((second, near), (second, inside), half, flows["delivered"].colour),
        _badge(first, place.height(-58), flows["delivered"]),
        _badge(second, place.height(-58), flows["delivered"]),
        _arrow((between, far), (between, out), width["conduction"], NOW),
        _badge(between + 26, place.height(place.far + 15), flows["conduction"]),
        _arrow((place.right, middle), (place.right + 58, middle), width["supply"], NOW),
        _badge(place.right + 82, middle, flows["supply"]),
        _arrow((44, middle), (place.left - 34, middle), width["return"], DEEP),
        _badge(26, middle, flows["return"]),
        _arrow((44, place.room_middle), (104, place.room_middle), width["induced"], DEEP),
        _badge(26, place.room_middle, flows["induced"]),
        _arrow(
            (place.left + 26, near), (place.left + 26, place.height(-22)), width["regained"], OTHER
        ),
        _badge(place.left + 26, place.height(-46), flows["regained"]),
    ]


def _arrow(start: tuple[float, float], end: tuple[float, float], width: float, colour: str) -> str:
    """A straight arrow; one that carries nothing is left out, a thin one stays visible."""
    if width <= 0:
        return ""
    width = max(width, 2.0)
    length = math.dist(start, end)
    head = min(max(width * 0.7, 8.0), length * 0.6)
    spread = width / 2 + max(width * 0.28, 4.0)
    along = ((end[0] - start[0]) / length, (end[1] - start[1]) / length)
    across = (-along[1], along[0])

    def point(distance: float, offset: float) -> str:
        x = start[0] + along[0] * distance + across[0] * offset
        y = start[1] + along[1] * distance + across[1] * offset
        return f"{x:.1f},{y:.1f}"

    outline: Sequence[tuple[float, float]] = (
        (0, width / 2),
        (length - head, width / 2),
        (length - head, spread),
        (length, 0),
        (length - head, -spread),
        (length - head, -width / 2),
        (0, -width / 2),
    )
    points = " ".join(point(distance, offset) for distance, offset in outline)
    return f'<polygon points="{points}" fill="{colour}"/>'


def _badge(x: float, y: float, flow: DuctFlow) -> str:
    """The number of a flow in a ring; nothing where the flow is nothing."""
    if flow.kwh <= 0:
        return ""
    return (
        f'<circle cx="{x:.1f}" cy="{y:.1f}" r="13" fill="#ffffff" stroke="{flow.colour}" '
        f'stroke-width="2"/><text x="{x:.1f}" y="{y + 6:.1f}" text-anchor="middle" '
        f'font-size="17" font-weight="600" fill="{INK}">{flow.number}</text>'
    )


def _rectangle(x: float, y: float, width: float, height: float, fill: str) -> str:
    return f'<rect x="{x}" y="{y}" width="{width}" height="{height}" fill="{fill}"/>'


def _line(x0: float, y0: float, x1: float, y1: float, *, width: float = 2.5) -> str:
    return (
        f'<line x1="{x0}" y1="{y0}" x2="{x1}" y2="{y1}" stroke="{INK}" '
        f'stroke-width="{width}" stroke-linecap="round"/>'
    )
