"""Small parts of the page: bars, rows of bars, strips, tables, lists.

They are plain trees that assets/page.js turns into elements, text as text. Made of Dash
components instead, every cell would be a component of its own: measured with Dash 4.4, a
table of 230 facts then kept a browser busy for half a minute.
"""

from __future__ import annotations

import base64
from collections.abc import Iterable, Sequence
from typing import Any

from costcompare.views import numbers
from costcompare.views.figures.rows import Bar, BarRow, RoomStrips, Strip, span

Tree = dict[str, Any]
"""``tag``, ``attributes`` and ``inside``: texts and further trees"""


def node(tag: str, inside: Iterable[Tree | str] | str = (), **attributes: str) -> Tree:
    """One element; ``class_`` is its class, other attributes go by their own names."""
    return {
        "tag": tag,
        "attributes": {
            name.rstrip("_").replace("_", "-"): text for name, text in attributes.items()
        },
        "inside": [inside] if isinstance(inside, str) else list(inside),
    }


def texts(tree: Tree | str | None) -> list[str]:
    """Every text of a tree in its order."""
    if tree is None:
        return []
    if isinstance(tree, str):
        return [tree]
    return [text for child in tree["inside"] for text in texts(child)]


def bar_list(bars: Sequence[Bar]) -> Tree:
    """Horizontal bars, each where its own start lies."""
    ends = [edge for bar in bars for edge in (bar.start, bar.start + bar.value)]
    low, high = min(0.0, *ends), max(0.0, *ends)
    return node("div", [_bar(bar, low, (high - low) or 1.0) for bar in bars], class_="bars")


def _bar(bar: Bar, low: float, width: float) -> Tree:
    left = min(bar.start, bar.start + bar.value)
    style = f"left:{100.0 * (left - low) / width:.2f}%;width:{100.0 * abs(bar.value) / width:.2f}%"
    return node(
        "div",
        [
            node("span", bar.label, class_="bar-label"),
            node("span", [node("span", class_="bar-fill", style=style)], class_="bar-track"),
            node("span", bar.text, class_="bar-value"),
        ],
        class_=f"bar tone-{bar.tone}",
    )


def bar_rows(rows: Sequence[BarRow]) -> Tree:
    """Rows of small upright bars, all on one scale, each beside its title."""
    low, high = span(rows)
    return node("div", [_row(row, low, (high - low) or 1.0) for row in rows], class_="rows")


def _row(row: BarRow, low: float, height: float) -> Tree:
    zero = 100.0 * -low / height
    cells = [_cell(row, place, zero, height) for place in range(len(row.values))]
    line = node("span", class_="zero-line", style=f"bottom:{zero:.2f}%")
    title = [node("div", row.title), node("div", row.figure, class_="row-figure")]
    chart = [
        node("div", [*cells, line], class_="row-bars"),
        node("div", [node("span", tick) for tick in row.ticks], class_="row-ticks"),
    ]
    return node(
        "div",
        [node("div", title, class_="row-title"), node("div", chart)],
        class_=f"row tone-{row.tone}",
    )


def _cell(row: BarRow, place: int, zero: float, height: float) -> Tree:
    """One upright bar, above or below the line; the one called out with its value."""
    value = row.values[place]
    size = 100.0 * abs(value) / height
    bottom = zero if value >= 0 else zero - size
    style = f"bottom:{bottom:.2f}%;height:{size:.2f}%"
    inside = [node("span", class_="cell-fill below" if value < 0 else "cell-fill", style=style)]
    if place == row.called_out:
        top = zero + (size if value >= 0 else 0.0)
        inside.append(
            node("span", row.texts[place], class_="cell-text", style=f"bottom:{top:.2f}%")
        )
    return node("span", inside, class_="cell", title=row.texts[place])


def room_list(rooms: Sequence[RoomStrips]) -> Tree:
    """For every room two strips of cold, warm and hot hours: now and afterwards."""
    return node("div", [_room(room) for room in rooms], class_="rooms")


def _room(room: RoomStrips) -> Tree:
    name = room.room[:1].upper() + room.room[1:]
    strips = [_strip(room.now, "now"), _strip(room.later, "after")]
    return node("div", [node("div", name, class_="room-name"), node("div", strips)], class_="room")


def _strip(strip: Strip, when: str) -> Tree:
    total = strip.wanted_hours or 1
    parts = (("cold", strip.cold_hours), ("warm", strip.warm_hours), ("hot", strip.hot_hours))
    pieces = [
        node("span", class_=f"hours-{kind}", style=f"width:{100.0 * hours / total:.2f}%")
        for kind, hours in parts
        if hours
    ]
    words = f"{numbers.count(strip.cold_hours)} cold"
    if strip.hot_hours:
        words += f", {numbers.count(strip.hot_hours)} hot"
    return node(
        "div",
        [
            node("span", when, class_="strip-when"),
            node("span", pieces, class_="strip-bar"),
            node("span", words, class_="strip-words"),
        ],
        class_=f"strip tone-{strip.tone}",
    )


def table(
    caption: str,
    head: Sequence[str],
    rows: Sequence[Sequence[str]],
    *,
    total: Sequence[str] | None = None,
) -> Tree:
    """A table whose first column names the rows; wide ones scroll inside their own frame."""
    parts = [
        node("caption", caption),
        node("thead", [node("tr", [node("th", text, scope="col") for text in head])]),
        node("tbody", [_table_row(row) for row in rows]),
    ]
    if total is not None:
        parts.append(node("tfoot", [_table_row(total)]))
    return node(
        "div",
        [node("table", parts)],
        class_="table-frame",
        tabindex="0",
        role="region",
        aria_label=caption,
    )


def _table_row(row: Sequence[str]) -> Tree:
    first, *others = row
    return node("tr", [node("th", first, scope="row"), *(node("td", text) for text in others)])


def bullet_list(items: Iterable[Iterable[Tree | str] | str], *, class_: str) -> Tree:
    """An unordered list."""
    return node("ul", [node("li", item) for item in items], class_=class_)


def svg_source(svg: str) -> str:
    """A drawing as the source of an image element."""
    return f"data:image/svg+xml;base64,{base64.b64encode(svg.encode()).decode()}"
