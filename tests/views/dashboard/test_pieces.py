"""Bars, rows, strips and tables as trees."""

from __future__ import annotations

from collections.abc import Iterator

from costcompare.views.dashboard.pieces import (
    Tree,
    bar_list,
    bar_rows,
    bullet_list,
    node,
    room_list,
    table,
    texts,
)
from costcompare.views.figures.rows import Bar, BarRow, RoomStrips, Strip


def of_class(tree: Tree, name: str) -> Iterator[Tree]:
    """Every element of a class."""
    if name in tree["attributes"].get("class", "").split():
        yield tree
    for child in tree["inside"]:
        if not isinstance(child, str):
            yield from of_class(child, name)


def style(tree: Tree) -> str:
    return str(tree["attributes"]["style"])


def test_bars_reach_over_the_whole_width_and_back() -> None:
    bars = bar_list(
        [
            Bar("ducts", 0.0, 300.0, "$300", "now"),
            Bar("walls", 300.0, 100.0, "$100", "other"),
            Bar("sun", 400.0, -200.0, "-$200", "taken"),
            Bar("together", 0.0, 200.0, "$200", "whole"),
        ]
    )
    assert [style(fill) for fill in of_class(bars, "bar-fill")] == [
        "left:0.00%;width:75.00%",
        "left:75.00%;width:25.00%",
        "left:50.00%;width:50.00%",
        "left:0.00%;width:50.00%",
    ]
    assert texts(bars)[:2] == ["ducts", "$300"]


def test_upright_bars_share_one_scale_and_hang_below_the_line() -> None:
    up = BarRow("a", "about $4", "now", (3.0, 1.0), ("$3", "$1"), ("J", "F"), 0)
    down = BarRow("b", "about $1", "other", (-1.0, 0.0), ("-$1", "$0"), ("J", "F"), 1)
    fills = list(of_class(bar_rows([up, down]), "cell-fill"))
    assert [style(fill) for fill in fills] == [
        "bottom:25.00%;height:75.00%",
        "bottom:25.00%;height:25.00%",
        "bottom:0.00%;height:25.00%",
        "bottom:25.00%;height:0.00%",
    ]
    assert "below" in fills[2]["attributes"]["class"]


def test_strips_are_shares_of_the_hours_in_use() -> None:
    now = Strip("now", "now", 500, 450, 50, 1000)
    later = Strip("after", "chosen", 0, 1000, 0, 1000)
    rooms = room_list([RoomStrips("hall", now, later)])
    assert [style(part) for part in of_class(rooms, "hours-cold")] == ["width:50.00%"]
    assert [style(part) for part in of_class(rooms, "hours-warm")] == [
        "width:45.00%",
        "width:100.00%",
    ]
    assert [words["inside"][0] for words in of_class(rooms, "strip-words")] == [
        "500 cold, 50 hot",
        "0 cold",
    ]


def test_a_table_names_its_rows_columns_and_itself() -> None:
    tree = table("Bills", ("Month", "Now"), [("January", "$520")], total=("A year", "$520"))
    assert tree["attributes"]["aria-label"] == "Bills"
    assert texts(tree) == ["Bills", "Month", "Now", "January", "$520", "A year", "$520"]


def test_names_stay_text() -> None:
    tree = bullet_list(["<b>bold</b>", [node("strong", "one"), " two"]], class_="plain")
    assert texts(tree) == ["<b>bold</b>", "one", " two"]
