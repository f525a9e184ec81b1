"""How cold the sky looks."""

from __future__ import annotations

import numpy as np
import pytest

from costcompare.weather.sky import (
    clear_sky_emissivity,
    cloud_from_clearness,
    cloudy_sky_emissivity,
    sky_temperature,
    sky_temperature_from_infrared,
)


def test_clear_sky_by_hand() -> None:
    # dew point 10 degC at 6 o'clock and 1000 hPa: 0.711 + 0.056 + 0.0073
    assert clear_sky_emissivity(10.0, 6.0, 100_000.0) == pytest.approx(0.7743)
    assert clear_sky_emissivity(10.0, 0.0, 80_000.0) == pytest.approx(0.7743 + 0.013 - 0.024)


def test_clouds_by_hand() -> None:
    # all covered from 2 km up: 0.75 + 0.25 exp(-2 / 8.2)
    assert cloudy_sky_emissivity(0.75, 1.0) == pytest.approx(0.75 + 0.25 * 0.78355, abs=1e-4)
    assert cloudy_sky_emissivity(0.75, 0.0) == 0.75


def test_the_sky_is_colder_than_the_air_and_coldest_when_clear_and_dry() -> None:
    clouds = np.linspace(0.0, 1.0, 11)
    humid, dry = (sky_temperature(5.0, dew, clouds) for dew in (4.0, -10.0))
    assert (np.diff(humid) > 0.0).all()
    assert (dry < humid).all()
    assert (humid < 5.0).all()


def test_very_dry_air_keeps_the_lowest_value_of_the_fit() -> None:
    assert clear_sky_emissivity(-70.0, 6.0) == clear_sky_emissivity(-38.4, 6.0)


def test_infrared_by_hand() -> None:
    # 315.66 W/m2 is what a black body at 0 degC sends out
    assert sky_temperature_from_infrared(315.66) == pytest.approx(0.0, abs=0.01)


def test_clouds_from_clearness() -> None:
    clear, half, dark = cloud_from_clearness([1.05, 1.0 - 0.75 * 0.5**3.4, 0.1])
    assert (clear, dark) == (0.0, 1.0)
    assert half == pytest.approx(0.5)
