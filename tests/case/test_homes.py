"""The home around the rooms: leakage, settings, other use, crawlspace."""

from __future__ import annotations

import pytest

from .cases import TWO_ROOMS, case

CFM = 0.3048**3 / 60.0  # [m3/s]


def degf(value: float) -> float:
    return (value - 32.0) / 1.8


def test_leakage_follows_the_years_and_the_volume() -> None:
    # 11 air changes an hour at 50 Pa in a 1974 house of 12,000 ft3: 2,200 cfm
    leakage = case(rooms=TWO_ROOMS).home.house.leakage
    assert leakage.flow_at_50_pa == pytest.approx(11 * 12000 / 60 * CFM)
    assert leakage.air_changes is None


def test_a_constant_exchange_takes_the_place_of_the_blower_door() -> None:
    leakage = case(house={"air_changes": "0.414 1/h"}).home.house.leakage
    assert (leakage.flow_at_50_pa, leakage.air_changes) == (None, 0.414)


def test_what_the_family_would_like_is_what_they_have_unless_said() -> None:
    thermostat = case().home.thermostat
    assert thermostat.night == thermostat.day == thermostat.wanted == thermostat.wanted_night
    thermostat = case(thermostat={"night": "58 F", "wanted": "70 F"}).home.thermostat
    assert thermostat.night == pytest.approx(degf(58))
    assert thermostat.wanted == thermostat.wanted_night == pytest.approx(degf(70))
    assert [h for h in range(24) if thermostat.night_hours[h]] == [0, 1, 2, 3, 4, 5, 22, 23]


def test_filled_cooling_stays_above_the_heating() -> None:
    assert case().home.thermostat.cooling == pytest.approx(degf(76))
    warm = case(thermostat={"wanted": "78 F"}).home.thermostat
    assert warm.cooling == pytest.approx(warm.wanted + 2.0)


def test_other_use_by_people() -> None:
    use = case().home.other_use
    assert use.electricity == pytest.approx(425 / 0.73)
    assert use.hot_water == pytest.approx(260 / 0.73)
    assert (use.share_to_rooms, use.hot_water_share_to_rooms) == pytest.approx((0.6, 0.15))


def test_a_crawlspace_where_the_house_has_one() -> None:
    crawlspace = case().home.crawlspace
    assert crawlspace is not None
    assert (crawlspace.vents, crawlspace.water_pipes) == ("half", True)
    closed = case(house={"foundation": "closed crawlspace"}).home.crawlspace
    assert closed is not None
    assert closed.vents == "closed"
    slab = case(house={"foundation": "slab"}, today={"ducts": None}).home
    assert slab.crawlspace is None


def test_windows_by_panes_and_years() -> None:
    windows = case(house={"window_panes": 2, "window_solar_gain": 0.5}).home.house.windows
    assert windows.u_factor == pytest.approx(0.75 * 5.678263, rel=1e-6)
    assert (windows.solar_gain, windows.shading) == pytest.approx((0.5, 0.65))


def test_a_place_the_case_does_not_describe() -> None:
    site = case().home.site
    assert (site.elevation, site.time_zone, site.shelter) == (None, "America/New_York", 3)
    assert site.design_temperature is None
