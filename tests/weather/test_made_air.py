"""Temperature, humidity and wind of a made year."""

from __future__ import annotations

import numpy as np
import pytest

from costcompare.weather.curve import MONTH_OF_DAY, month_means, month_means_of_hours
from costcompare.weather.made_air import (
    daily_temperatures,
    day_shape,
    hourly_dew_points,
    hourly_temperatures,
    hourly_wind,
)
from costcompare.weather.stations import Normals, find_stations

SOLAR_HOUR = np.tile(np.arange(24) + 0.5, 365)
DAYLIGHT = np.full(365, 12.0)


@pytest.fixture(
    params=["bellingham wa", "denver intl", "minneapolis-st", "phoenix sky", "barrow w post"]
)
def normals(request: pytest.FixtureRequest) -> Normals:
    (station,) = find_stations(request.param)
    return station.months


@pytest.fixture
def days(normals: Normals) -> np.ndarray:
    return daily_temperatures(normals, np.random.default_rng(3))


@pytest.fixture
def hours(normals: Normals, days: np.ndarray) -> np.ndarray:
    clearness = np.random.default_rng(4).uniform(0.2, 1.0, 365)
    return hourly_temperatures(
        normals, days, shape=day_shape(SOLAR_HOUR, DAYLIGHT), clearness=clearness
    )


def test_days_keep_means_spread_and_degree_days(normals: Normals, days: np.ndarray) -> None:
    np.testing.assert_allclose(month_means(days), normals.temperature, atol=1e-6)
    apart = days - normals.temperature[MONTH_OF_DAY]
    spread = np.sqrt(month_means(apart**2))
    assert (spread > 0.49 * normals.day_spread).all()
    assert (spread < 1.51 * normals.day_spread).all()
    found = np.bincount(MONTH_OF_DAY, weights=np.maximum(65.0 - (1.8 * days + 32.0), 0.0))
    np.testing.assert_allclose(found, normals.degree_days_65f, atol=12.0)  # [F day]
    assert found.sum() == pytest.approx(normals.degree_days_65f.sum(), rel=0.01)


def test_warm_days_follow_warm_days(days: np.ndarray) -> None:
    apart = days - month_means(days)[MONTH_OF_DAY]
    assert np.corrcoef(apart[:-1], apart[1:])[0, 1] > 0.5


def test_hours_keep_the_days_and_their_range(
    normals: Normals, days: np.ndarray, hours: np.ndarray
) -> None:
    by_day = hours.reshape(-1, 24)
    np.testing.assert_allclose(by_day.mean(axis=1), days, atol=1e-9)
    found = month_means(np.ptp(by_day, axis=1))
    wanted = normals.daily_high - normals.daily_low
    # Where day follows day in great steps (polar winters) the steps alone exceed the range.
    assert (found > wanted - 0.5).all()
    assert np.median(np.abs(found - wanted)) < 0.2


def test_clear_days_swing_wider() -> None:
    (station,) = find_stations("denver intl")
    days = np.repeat(station.months.temperature, np.bincount(MONTH_OF_DAY))
    clearness = np.where(np.arange(365) % 2 == 0, 1.0, 0.3)
    hours = hourly_temperatures(
        station.months, days, shape=day_shape(SOLAR_HOUR, DAYLIGHT), clearness=clearness
    )
    swing = np.ptp(hours.reshape(-1, 24), axis=1)
    assert swing[::2].mean() > 1.5 * swing[1::2].mean()


def test_the_day_is_coldest_at_sunrise_and_warmest_at_three() -> None:
    shape = day_shape(SOLAR_HOUR, DAYLIGHT).reshape(-1, 24)
    np.testing.assert_allclose(shape.mean(axis=1), 0.0, atol=1e-12)
    assert shape[0].argmin() in (5, 6)
    assert shape[0].argmax() in (14, 15)


def test_dew_points_keep_their_means_below_the_temperature(
    normals: Normals, days: np.ndarray, hours: np.ndarray
) -> None:
    dew = hourly_dew_points(normals, days, hours)
    assert (dew <= hours).all()
    np.testing.assert_allclose(month_means_of_hours(dew), normals.dew_point, atol=0.1)


def test_wind_keeps_its_means_and_blows_by_day(normals: Normals) -> None:
    wind = hourly_wind(normals, SOLAR_HOUR, np.random.default_rng(5))
    np.testing.assert_allclose(month_means_of_hours(wind), normals.wind_speed, rtol=1e-9)
    assert wind.min() >= 0.0
    by_hour = wind.reshape(-1, 24).mean(axis=0)
    assert by_hour[14] > 1.3 * by_hour[2]
    assert 0.45 < wind.std() / wind.mean() < 0.85
    assert np.corrcoef(wind[:-1], wind[1:])[0, 1] > 0.6
