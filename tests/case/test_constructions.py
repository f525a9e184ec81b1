"""Effective values of constructions against hand calculation and usual U-factors."""

from __future__ import annotations

import pytest

from costcompare.case.constructions import (
    Framing,
    bridged,
    ceiling,
    crawlspace_wall,
    floor,
    roof,
    sloped_ceiling,
    wall,
)
from costcompare.case.facts import Construction
from costcompare.units import parse

from .cases import case

WALL_FILMS = 0.12 + 0.03  # [m2 K/W] inside and outside air, ASHRAE Fundamentals, from memory
FLOOR_FILMS = 0.17 + 0.17  # [m2 K/W] still air above and below, EN ISO 6946, from memory
CEILING_FILMS = 0.10 + 0.10  # [m2 K/W] still air, heat flowing up, EN ISO 6946, from memory


def r(nominal: float) -> float:
    return parse(f"R-{nominal}", "resistance")


def u_factor(construction: Construction, films: float) -> float:
    return 1.0 / (construction.resistance + films)


def test_two_paths_side_by_side() -> None:
    # A quarter of wood at 1 m2 K/W, three quarters of insulation at 3: 1/(0.25 + 0.25) = 2
    framing = Framing(0.25, 0.12)  # 0.12 m of softwood at 0.12 W/(m K)
    assert bridged(3.0, framing).resistance == pytest.approx(2.0)


def test_usual_u_factors() -> None:
    # ASHRAE Fundamentals, from memory: R-11 walls 0.094 to 0.100 Btu/h/ft2/F (0.53 to 0.57),
    # R-19 under an attic 0.049 to 0.057 (0.28 to 0.32), bare walls 0.22 to 0.27 (1.25 to 1.5).
    assert 0.53 <= u_factor(wall(r(11)), WALL_FILMS) <= 0.57
    assert 1.25 <= u_factor(wall(0.0), WALL_FILMS) <= 1.55
    assert 0.28 <= u_factor(ceiling(r(19)), CEILING_FILMS) <= 0.32


@pytest.mark.parametrize(
    ("nominal", "condition", "expected"),
    [(0.0, "tight", 1.3), (19.0, "sagging", 0.50), (19.0, "tight", 0.28)],
)
def test_floors_over_a_crawlspace(nominal: float, condition: str, expected: float) -> None:
    # The three floors of the crawlspace check cases; agreement within 2 %.
    found = u_factor(floor(r(nominal), condition), FLOOR_FILMS)
    assert found == pytest.approx(expected, rel=0.02)


def test_a_crawlspace_wall_of_block() -> None:
    assert u_factor(crawlspace_wall(), 0.16) == pytest.approx(3.0, rel=0.02)


@pytest.mark.parametrize("build", [wall, ceiling, sloped_ceiling, lambda x: floor(x, "tight")])
def test_more_insulation_never_lets_more_through(build: object) -> None:
    values = [build(r(n)).resistance for n in (0, 5, 11, 15, 19, 30, 49)]  # type: ignore[operator]
    assert values == sorted(values)
    assert values[0] > 0.0


def test_roofs_are_dark() -> None:
    assert roof().solar_absorptance == 0.85
    assert sloped_ceiling(r(19)).solar_absorptance == 0.85


def test_stated_layers_replace_the_insulation_line() -> None:
    concrete = {
        "thickness": "0.2 m",
        "conductivity": "1 W/m/K",
        "density": "2000 kg/m3",
        "heat_capacity": "1000 J/kg/K",
    }
    layers = [{"resistance": "1 m2 K/W"}, concrete]
    made = case(constructions={"wall": {"layers": layers, "solar_absorptance": 0.3}})
    built = made.home.house.constructions.wall
    assert [layer.resistance for layer in built.layers] == pytest.approx([1.0, 0.2])
    assert [layer.capacity for layer in built.layers] == pytest.approx([0.0, 400_000.0])
    assert (built.solar_absorptance, built.emissivity) == (0.3, 0.9)
    assert "constructions.wall.effective_resistance" not in {f.path for f in made.facts}


def test_the_effective_value_is_told() -> None:
    facts = {f.path: f for f in case(house={"wall_insulation": "R-11"}).facts}
    told = facts["constructions.wall.effective_resistance"]
    assert told.value == pytest.approx(9.24, abs=0.01)
    assert "R-11 nominal" in told.source


def test_batts_said_to_sag_do_less() -> None:
    tight = case(house={"floor_insulation": "R-19"})
    sagging = case(house={"floor_insulation": "R-19", "floor_insulation_condition": "sagging"})
    assert (
        sagging.home.house.constructions.floor.resistance
        < tight.home.house.constructions.floor.resistance
    )
