"""Line charts: scales, labels that can be read, and drawings that are well formed."""

from __future__ import annotations

from itertools import pairwise
from xml.etree import ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as st

from costcompare.views.report.charts import APART, Line, Panel, line_chart, scale, spread

SVG = "{http://www.w3.org/2000/svg}"


@given(st.floats(-1e6, 1e6), st.floats(0.0, 1e6))
def test_a_scale_holds_both_values_in_few_steps(low: float, more: float) -> None:
    first, last, step = scale(low, low + more)
    assert first <= low + 1e-6 * step
    assert last >= low + more - 1e-6 * step
    assert step > 0.0
    assert (last - first) / step < 8.0


def test_a_scale_has_round_steps() -> None:
    assert scale(0.0, 5200.0) == (0.0, 6000.0, 2000.0)
    assert scale(0.0, 100.0)[:2] == (0.0, 100.0)
    assert scale(-21_500.0, 3_850.0)[2] == 10_000.0


@given(st.lists(st.floats(20.0, 80.0), max_size=6))
def test_labels_stand_apart_and_in_order(wanted: list[float]) -> None:
    placed = spread(wanted, (10.0, 90.0))
    order = sorted(range(len(wanted)), key=lambda n: wanted[n])
    for before, after in pairwise(order):
        assert placed[after] - placed[before] >= APART - 1e-9
    assert all(height <= 90.0 + 1e-9 for height in placed)


def test_labels_with_room_stay_where_they_are() -> None:
    assert spread([20.0, 60.0], (0.0, 90.0)) == [20.0, 60.0]


def chart(label: str = "A") -> ET.Element:
    lines = (Line("now", "now", (1.0, 3.0, 5.0)), Line(label, "chosen", (2.0, 2.0, 2.0)))
    panel = Panel("Bill", lines, lambda value: f"${value:.0f}", 90.0, least=0.0)
    return ET.fromstring(line_chart((panel,), ("58", "", "62"), marked=1))  # noqa: S314 our own text


def test_today_is_dashed_and_every_line_is_named() -> None:
    root = chart()
    texts = [element.text for element in root.iter(f"{SVG}text")]
    assert {"now", "A", "Bill", "58", "62", "$0"} <= set(texts)
    dashed = [path for path in root.iter(f"{SVG}path") if path.get("stroke-dasharray")]
    assert len(dashed) == 1
    assert len(list(root.iter(f"{SVG}circle"))) == 2


@pytest.mark.parametrize("label", ["<b>", "&", '"'])
def test_a_label_is_text(label: str) -> None:
    assert label in [element.text for element in chart(label).iter(f"{SVG}text")]
