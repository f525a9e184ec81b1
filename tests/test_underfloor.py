"""Under the floor: figures counted by hand, and what vents, cover and ducts change."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Any

import numpy as np
import pytest

from costcompare import typical_year
from costcompare.case import case_from_document
from costcompare.case.facts import Case, Crawlspace, Home
from costcompare.comparison import CrawlspaceYear
from costcompare.simulation import HourlyResult, setpoints_as_wanted, simulate_home
from costcompare.underfloor import coldest_night, crawlspace_year, floor_face
from costcompare.weather import Weather


@cache
def weather() -> Weather:
    return typical_year(44.5, -73.2)


@cache
def case_of(ducted: bool) -> Case:
    today: dict[str, Any] = {"kind": "room heaters", "output": "25 kW"}
    if ducted:
        today = {"output": "18 kW", "ducts": {"condition": "old, never sealed"}}
    return case_from_document(
        {
            "site": {"latitude": 44.5, "longitude": -73.2},
            "house": {
                "floor_area": "1500 ft2",
                "built": 1984,
                "foundation": "vented crawlspace",
                "people": 3,
            },
            "crawlspace": {"vents": "open", "ground_cover": False},
            "thermostat": {"day": "68 F"},
            "today": today,
            "tariff": {"price": "0.125 $/kWh"},
        }
    )


@cache
def run(ducted: bool) -> HourlyResult:
    case = case_of(ducted)
    return simulate_home(case.home, case.today, weather(), setpoints_as_wanted(case.home))


def found(case: Case, home: Home, year: HourlyResult) -> CrawlspaceYear:
    space = crawlspace_year(home, case.today, year, weather())
    assert space is not None
    return space


def changed(**changes: Any) -> tuple[Case, Home, HourlyResult]:
    """The house without ducts, its crawlspace changed, and its year."""
    case = case_of(ducted=False)
    assert case.home.crawlspace is not None
    home = replace(case.home, crawlspace=replace(case.home.crawlspace, **changes))
    return case, home, simulate_home(home, case.today, weather(), setpoints_as_wanted(home))


def test_hours_are_counted() -> None:
    case, year = case_of(ducted=False), run(ducted=False)
    space = found(case, case.home, year)
    air = year.space_temperature["crawlspace"]
    assert space.hours_below_freezing == int((air < 0.0).sum()) > 0
    outdoor = weather().column("temperature_degc") * 1.8 + 32.0
    assert space.hours_outdoors_below_20f == int((outdoor < 20.0).sum()) > 0
    assert space.minimum_temperature_degc == air.min()
    assert air.min() <= space.coldest_night_degc < space.winter_mean_degc
    for name in ("minimum_temperature", "coldest_night", "winter_mean", "floor_winter"):
        degf, degc = (getattr(space, f"{name}_{unit}") for unit in ("degf", "degc"))
        assert degf == pytest.approx(degc * 1.8 + 32.0)


def test_the_coldest_night_by_hand() -> None:
    """Three days; the second night is 4 K colder from 22:00 to 6:00."""
    air, hour = np.full(72, 10.0), np.tile(np.arange(24), 3)
    air[24 + 22 : 24 + 30] -= 4.0
    air[24 + 12] = -20.0  # a cold noon is no night
    assert coldest_night(air, hour) == pytest.approx(6.0)


def test_the_floor_lies_between_the_room_and_the_crawlspace() -> None:
    """A share of the way down: the film over floor and both films."""
    case, year = case_of(ducted=False), run(ducted=False)
    rooms = np.array([room.floor_area for room in case.home.rooms])
    above = year.room_temperature @ (rooms / rooms.sum())
    below = year.space_temperature["crawlspace"]
    resistance = case.home.house.constructions.floor.resistance
    expected = above - 0.17 / (0.34 + resistance) * (above - below)
    assert floor_face(case.home, year) == pytest.approx(expected)


def test_without_ducts_it_is_colder_and_damper_under_the_floor() -> None:
    with_ducts, without = case_of(ducted=True), case_of(ducted=False)
    warm = found(with_ducts, with_ducts.home, run(ducted=True))
    cold = found(without, without.home, run(ducted=False))
    assert cold.winter_mean_degf < warm.winter_mean_degf
    assert cold.coldest_night_degf < warm.coldest_night_degf
    assert cold.hours_below_freezing > warm.hours_below_freezing
    assert cold.damp_share > warm.damp_share
    assert cold.hours_outdoors_below_20f == warm.hours_outdoors_below_20f


def test_a_ground_cover_dries_and_closed_vents_warm() -> None:
    open_bare = found(case_of(ducted=False), case_of(ducted=False).home, run(ducted=False))
    covered = found(*changed(ground_cover=True))
    assert covered.damp_share < 0.8 * open_bare.damp_share
    assert covered.winter_mean_degf == open_bare.winter_mean_degf
    closed_bare = found(*changed(vents="closed"))
    assert closed_bare.winter_mean_degf > open_bare.winter_mean_degf + 1.0
    assert closed_bare.damp_share > open_bare.damp_share
    closed_covered = found(*changed(vents="closed", ground_cover=True))
    assert closed_covered.damp_share < closed_bare.damp_share


def test_no_crawlspace_no_figures() -> None:
    case, year = case_of(ducted=False), run(ducted=False)
    bare = replace(case.home, crawlspace=None)
    assert crawlspace_year(bare, case.today, year, weather()) is None
    assert isinstance(case.home.crawlspace, Crawlspace)


def test_rooms_that_lie_elsewhere_have_no_floor_over_it() -> None:
    case, year = case_of(ducted=False), run(ducted=False)
    rooms = tuple(replace(room, below="ground") for room in case.home.rooms)
    assert np.isnan(floor_face(replace(case.home, rooms=rooms), year)).all()
