"""Maps from the points of a sheet: what is kept, what is filled, what is refused."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from costcompare.equipment import MapPoint, heating_year, map_from_points
from costcompare.equipment.machine import EXTENDED, W_PER_KBTU_H, Speed, celsius
from costcompare.equipment.population import population

LIKE = "single-zone cold-climate"


def point(fahrenheit: float, speed: Speed, capacity: float, cop: float) -> MapPoint:
    return MapPoint(celsius(fahrenheit), speed, capacity, capacity / cop)


FULL = [
    point(t, speed, capacity, cop)
    for t, rows in {
        47: ((900, 5.5), (3600, 4.0), (4500, 3.4)),
        17: ((850, 3.5), (2900, 2.8), (4000, 2.4)),
        5: ((800, 2.9), (3300, 2.2), (3500, 2.1)),
    }.items()
    for speed, (capacity, cop) in zip(("min", "rated", "max"), rows, strict=True)
]


def test_published_points_are_kept_as_they_are() -> None:
    unit = map_from_points(FULL, like=LIKE)
    assert unit.heating_temperature == pytest.approx([celsius(t) for t in (5, 17, 47)])
    assert unit.heating_capacity[0] == pytest.approx([800, 3300, 3500])
    assert unit.heating_power[2] == pytest.approx([900 / 5.5, 900, 4500 / 3.4])
    assert unit.filled == ("all of cooling",)


def test_a_speed_is_filled_by_how_this_machine_lies_to_others() -> None:
    """Its minimum at 47 F is twice the usual share of rated: so it is at 17 F (by hand)."""
    usual = population("heating", single_speed=False)
    share_47, share_17 = (usual.at(celsius(t))[0][0] / usual.at(celsius(t))[0][1] for t in (47, 17))
    given_points = [
        point(47, "rated", 4000, 4.0),
        point(47, "min", 2 * share_47 * 4000, 5.0),
        point(17, "rated", 3000, 3.0),
    ]
    unit = map_from_points(given_points, like=LIKE)
    row = int(np.argmin(np.abs(unit.heating_temperature - celsius(17))))
    assert unit.heating_capacity[row, 0] == pytest.approx(2 * share_17 * 3000)
    assert "minimum at 17 F" in unit.filled
    assert "rated at 17 F" not in unit.filled


def test_a_sheet_in_celsius_lands_on_the_standard_points() -> None:
    unit = map_from_points([MapPoint(8.3, "rated", 4000, 1000)], like=LIKE)
    assert unit.heating_temperature == pytest.approx([celsius(t) for t in (5, 17, 47)])


def test_no_standard_point_is_put_between_close_ones() -> None:
    """17 to -13 F is no wide gap: 5 F is not filled in; 47 to 5 F is: 17 F is."""
    close = [point(17, "max", 3000, 2.4), point(-13, "max", 2000, 1.7)]
    assert "maximum at 5 F" not in map_from_points(close, like=LIKE).filled
    wide = [point(47, "max", 4000, 3.4), point(5, "max", 3000, 2.0)]
    assert "maximum at 17 F" in map_from_points(wide, like=LIKE).filled


def test_how_far_down_a_machine_is_rated() -> None:
    """15 F below the coldest published point, or the coldest filled one where that is lower."""
    assert map_from_points(FULL, like=LIKE).rated_down_to == pytest.approx(celsius(5) - EXTENDED)
    one = map_from_points(FULL[:1], like=LIKE)
    assert one.rated_down_to == pytest.approx(celsius(5))
    hours = np.array([celsius(5.1), celsius(4.9)])
    year = heating_year(one, hours, np.full(2, 0.8))
    assert list(year.not_rated) == [False, True]
    assert year.most[0] > 0.0
    assert year.most[1] == 0.0


def test_the_cut_out_has_a_memory() -> None:
    """Off below 0 F, on again from 5 F: an hour at 2 F is on while falling, off while rising."""
    unit = map_from_points(FULL, like=LIKE, cut_out=celsius(0), cut_in=celsius(5))
    hours = np.array([celsius(t) for t in (10, 2, -1, 2, 4.9, 5, 2)])
    year = heating_year(unit, hours, np.full(hours.shape, 0.8))
    assert list(year.cut_out) == [False, False, True, True, True, False, False]


def test_points_with_frost_in_them_are_not_frosted_twice() -> None:
    wet, dry = np.full(1, 0.9), np.full(1, 0.2)
    at_35 = np.array([celsius(35)])
    held = map_from_points(FULL, like=LIKE, frost=False)
    assert heating_year(held, at_35, wet).most == pytest.approx(heating_year(held, at_35, dry).most)
    bare = map_from_points(FULL, like=LIKE)
    assert heating_year(bare, at_35, wet).most[0] < 0.91 * heating_year(bare, at_35, dry).most[0]


def test_a_published_cooling_point_is_kept() -> None:
    cool = MapPoint(celsius(95), "rated", 3500.0, 1000.0, "cooling")
    unit = map_from_points([*FULL, cool], like=LIKE)
    assert unit.nominal == 3500.0
    row = int(np.argmin(np.abs(unit.cooling_temperature - celsius(95))))
    assert unit.cooling_capacity[row, 1] == 3500.0
    assert "rated at 82 F, cooling" in unit.filled


@pytest.mark.parametrize(("like", "nominal"), [(LIKE, 12.0), ("multi-zone standard", 24.0)])
def test_a_size_that_is_not_said_follows_the_rated_heating(like: str, nominal: float) -> None:
    """The size table: 12 kBtu/h gives 13.6 at 47 F alone, an outdoor unit of 24 gives 25."""
    rated = {12.0: 13.6, 24.0: 25.0}[nominal] * W_PER_KBTU_H
    unit = map_from_points([point(47, "rated", rated, 3.8)], like=like)
    assert unit.nominal / W_PER_KBTU_H == pytest.approx(nominal, rel=2e-3)


def test_what_makes_no_map_is_refused() -> None:
    with pytest.raises(ValueError, match="at least one heating point"):
        map_from_points([MapPoint(celsius(95), "rated", 3500.0, 1000.0, "cooling")], like=LIKE)
    wrong = [point(47, "rated", 4000, 4.0), point(47, "max", 3000, 3.0)]
    with pytest.raises(ValueError, match="at 47 F a faster speed gives less"):
        map_from_points(wrong, like=LIKE)


@given(
    chosen=st.lists(st.sampled_from(FULL), min_size=1, max_size=9, unique=True),
    scale=st.floats(0.5, 4.0),
)
@settings(max_examples=60, derandomize=True, deadline=None)
def test_any_subset_makes_a_map(chosen: list[MapPoint], scale: float) -> None:
    scaled = [
        MapPoint(p.outdoor, p.speed, p.capacity * scale, p.power * scale, p.mode) for p in chosen
    ]
    unit = map_from_points(scaled, like=LIKE)
    assert (np.diff(unit.heating_capacity, axis=1) >= 0.0).all()
    assert (unit.heating_power > 0.0).all()
    assert len(unit.filled) - 1 + len(chosen) == 3 * len(unit.heating_temperature)
