"""Every dial of the home reads back what it was turned to and leaves all else alone."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest

from costcompare.case import example_names, example_path, read_case
from costcompare.case.facts import Home
from costcompare.uncertainty.dials import Dial
from costcompare.uncertainty.home_dials import HOME_DIALS, LEAST_GAP

BY_FACT = {dial.fact: dial for dial in HOME_DIALS}
FOLLOWERS = {"thermostat.night", "thermostat.wanted"}
"""Differences to the day's setting, which stay when it moves"""


UNDER_FLOOR = {"house.floor_insulation", "crawlspace.vents", "crawlspace.wall"}


@cache
def home_of(name: str) -> Home:
    return read_case(example_path(name)).home


@pytest.mark.parametrize("name", example_names())
@pytest.mark.parametrize("dial", HOME_DIALS, ids=lambda dial: dial.fact)
def test_a_dial_reads_what_it_was_turned_to(dial: Dial[Home], name: str) -> None:
    home = home_of(name)
    value = dial.read(home)
    if home.crawlspace is None and dial.fact in UNDER_FLOOR:
        assert value is None  # a house on a slab has nothing there
        return
    assert value is not None
    step = 1.0 if dial.fact == "site.shelter" else 0.03 * abs(value) or 0.5
    turned = dial.turn(home, value + step)
    assert dial.read(turned) == pytest.approx(value + step)
    for other in HOME_DIALS:
        if other.fact != dial.fact:
            assert other.read(turned) == pytest.approx(other.read(home)), other.fact
    back = dial.read(dial.turn(turned, value))
    assert back == pytest.approx(value)


def test_every_heating_setting_moves_with_the_day() -> None:
    stat = home_of("demo").thermostat
    moved = BY_FACT["thermostat.day"].turn(home_of("demo"), stat.day + 1.0).thermostat
    for key in ("day", "night", "wanted", "wanted_night"):
        assert getattr(moved, key) == pytest.approx(getattr(stat, key) + 1.0)


def test_cooling_stays_above_heating() -> None:
    home = home_of("demo")
    warmest = max(home.thermostat.day, home.thermostat.wanted)
    turned = BY_FACT["thermostat.cooling"].turn(home, warmest - 3.0)
    assert turned.thermostat.cooling == pytest.approx(warmest + LEAST_GAP)


def test_sloped_ceilings_go_with_the_flat_ones() -> None:
    home = home_of("demo")
    before = home.house.constructions
    dial = BY_FACT["house.attic_insulation"]
    after = dial.turn(home, 0.9 * before.ceiling.resistance).house.constructions
    assert after.sloped_ceiling.resistance == pytest.approx(0.9 * before.sloped_ceiling.resistance)
    assert after.wall == before.wall


def test_a_home_without_a_part_has_no_such_fact() -> None:
    house = replace(home_of("demo").house, foundation="slab")
    home = replace(home_of("demo"), house=house, crawlspace=None)
    for fact in ("crawlspace.vents", "crawlspace.wall", "house.floor_insulation"):
        assert BY_FACT[fact].read(home) is None


def test_a_stated_exchange_of_air_is_turned_as_such() -> None:
    house = home_of("demo").house
    leak = replace(house.leakage, flow_at_50_pa=None, air_changes=0.4)
    home = replace(home_of("demo"), house=replace(house, leakage=leak))
    dial = BY_FACT["house.air_leakage_at_50_pa"]
    assert dial.read(home) == 0.4
    assert dial.turn(home, 0.5).house.leakage.air_changes == 0.5
    assert BY_FACT["house.floor_share"].read(home) is None
