"""The house cut open."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from dataclasses import replace

import pytest

from costcompare.comparison import Comparison, DuctYear
from costcompare.views.drawings import FULL_WIDTH, HEIGHT, WIDTH, duct_flows, house_section

DUCTS = DuctYear(700.0, 150.0, 100.0, 50.0, 30.0, 80.0, 0.70, 0.75)
SVG = "{http://www.w3.org/2000/svg}"


def corner_of(text: str) -> tuple[float, float]:
    x, y = text.split(",")
    return float(x), float(y)


def arrows(svg: str) -> list[list[tuple[float, float]]]:
    """The corners of every arrow."""
    root = ET.fromstring(svg)  # noqa: S314 - our own drawing
    return [
        [
            (float(x), float(y))
            for x, y in (corner.split(",") for corner in shape.get("points", "").split())
        ]
        for shape in root.iter(f"{SVG}polygon")
    ]


@pytest.mark.parametrize("location", ["crawlspace", "attic", "basement", "garage"])
def test_every_arrow_lies_inside_the_drawing(location: str) -> None:
    for corners in arrows(house_section(DUCTS, location)):
        for x, y in corners:
            assert 0.0 <= x <= WIDTH
            assert 0.0 <= y <= HEIGHT


def test_arrows_are_as_wide_as_their_energy() -> None:
    """1,000 kWh go in, so 700 are drawn with 70 % of the full width, over two arrows."""
    first = arrows(house_section(DUCTS, "crawlspace"))[0]
    (left, _), (right, _) = first[0], first[-1]
    assert abs(left - right) == pytest.approx(0.5 * 0.70 * FULL_WIDTH, abs=0.1)


def test_what_is_nothing_is_not_drawn() -> None:
    tight = replace(DUCTS, return_leak_kwh=0.0, induced_infiltration_kwh=0.0)
    drawn, full = (house_section(ducts, "crawlspace") for ducts in (tight, DUCTS))
    assert len(arrows(full)) - len(arrows(drawn)) == 2
    assert ">4<" not in drawn
    assert ">5<" not in drawn


def test_the_numbers_beside_the_drawing_are_those_of_the_result(comparison: Comparison) -> None:
    ducts = comparison.today.ducts
    assert ducts is not None
    flows = duct_flows(ducts, "crawlspace")
    assert [flow.number for flow in flows] == [1, 2, 3, 4, 5, 6]
    assert sum(flow.kwh for flow in flows) == pytest.approx(
        ducts.delivered_kwh
        + ducts.lost_conduction_kwh
        + ducts.lost_supply_leak_kwh
        + ducts.return_leak_kwh
        + ducts.induced_infiltration_kwh
        + ducts.regained_kwh
    )
    assert "crawlspace" in flows[-1].words
