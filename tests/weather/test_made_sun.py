"""The sun of a made year."""

from __future__ import annotations

import numpy as np
import pytest

from costcompare.weather.clear_sky import ClearSky, clear_sky
from costcompare.weather.curve import month_means_of_hours
from costcompare.weather.made_sun import MadeSun, made_sun
from costcompare.weather.stations import Station, find_stations
from costcompare.weather.table import hours_of_year


def sky_at(station: Station) -> ClearSky:
    return clear_sky(
        hours_of_year(2027, station.utc_offset_hours),
        latitude=station.latitude,
        longitude=station.longitude,
        elevation=station.elevation,
    )


@pytest.fixture(
    scope="module", params=["bellingham wa", "denver intl", "minneapolis-st", "phoenix sky"]
)
def made(request: pytest.FixtureRequest) -> tuple[Station, ClearSky, MadeSun]:
    (station,) = find_stations(request.param)
    sky = sky_at(station)
    return station, sky, made_sun(station.months, sky, np.random.default_rng(1))


def test_months_keep_their_sun(made: tuple[Station, ClearSky, MadeSun]) -> None:
    station, _, sun = made
    np.testing.assert_allclose(month_means_of_hours(sun.ghi), station.months.ghi, rtol=0.02)
    np.testing.assert_allclose(month_means_of_hours(sun.dhi), station.months.dhi, rtol=0.05)
    # beam follows from the two and from which hours are clear: within a sixth in a year
    assert sun.dni.mean() == pytest.approx(station.months.dni.mean(), rel=0.17)
    np.testing.assert_allclose(month_means_of_hours(sun.cloud), station.months.cloud, atol=0.06)


def test_parts_make_up_the_level_sun(made: tuple[Station, ClearSky, MadeSun]) -> None:
    _, sky, sun = made
    np.testing.assert_allclose(sun.dni * sky.sine_height + sun.dhi, sun.ghi, atol=1e-6)
    assert sun.dni.min() >= 0.0
    assert (sun.ghi[sky.ghi == 0.0] == 0.0).all()


def test_clouds_come_with_dark_days(made: tuple[Station, ClearSky, MadeSun]) -> None:
    _, _, sun = made
    noon_cloud = sun.cloud.reshape(-1, 24)[:, 12]
    assert np.corrcoef(noon_cloud, sun.clearness)[0, 1] < -0.5
    assert sun.clearness.std() > 0.05


def test_another_draw_is_another_year_with_the_same_months() -> None:
    (station,) = find_stations("bellingham wa")
    sky = sky_at(station)
    first, second = (made_sun(station.months, sky, np.random.default_rng(n)) for n in (1, 2))
    assert np.abs(first.ghi - second.ghi).max() > 100.0
    assert first.ghi.sum() == pytest.approx(second.ghi.sum(), rel=1e-3)


def test_a_month_without_recorded_clouds_has_those_of_its_sun() -> None:
    (station,) = find_stations("winslow az")
    march = 2
    assert station.months.cloud[march] == 0.0
    sun = made_sun(station.months, sky_at(station), np.random.default_rng(1))
    assert 0.05 < month_means_of_hours(sun.cloud)[march] < 0.6


def test_a_polar_winter_is_dark() -> None:
    (station,) = find_stations("barrow w post")
    sun = made_sun(station.months, sky_at(station), np.random.default_rng(1))
    assert np.isfinite(sun.ghi).all()
    assert sun.ghi[:24].max() == 0.0
    assert (sun.clearness[:5] == 1.0).all()
