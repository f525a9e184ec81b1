"""The cloudless sun and its parts."""

from __future__ import annotations

import numpy as np
import pytest

from costcompare.weather.clear_sky import (
    STRONGEST_BEAM,
    ClearSky,
    beam_beside,
    clear_sky,
    daily_clearness,
    split,
)
from costcompare.weather.table import hours_of_year


@pytest.fixture(scope="module")
def sky() -> ClearSky:
    return clear_sky(hours_of_year(2027, -8.0), latitude=48.8, longitude=-122.54, elevation=45.0)


def test_a_cloudless_year_at_the_coast(sky: ClearSky) -> None:
    # pvlib's own cloudless year at this place, at mid-hour: 1,679 kWh/m2
    assert sky.ghi.sum() / 1000.0 == pytest.approx(1679.0, rel=0.01)
    assert sky.ghi.min() == 0.0
    assert sky.ghi.max() < 1100.0


@pytest.mark.parametrize("clearness", [0.0, 0.2, 0.5, 0.8, 1.05])
def test_parts_make_up_the_level_sun(sky: ClearSky, clearness: float) -> None:
    ghi = clearness * sky.ghi
    dni, dhi = split(ghi, sky)
    np.testing.assert_allclose(dni * sky.sine_height + dhi, ghi, atol=1e-9)
    assert dni.min() >= 0.0
    assert dni.max() <= STRONGEST_BEAM
    assert (dhi <= ghi + 1e-9).all()


def test_clouds_leave_more_diffuse_sun(sky: ClearSky) -> None:
    shares = [split(k * sky.ghi, sky).dhi.sum() / (k * sky.ghi.sum()) for k in (0.2, 0.5, 0.9)]
    assert shares == sorted(shares, reverse=True)
    assert shares[0] > 0.95
    assert shares[2] < 0.5


def test_twilight_is_all_diffuse(sky: ClearSky) -> None:
    ghi = np.where(sky.share_up == 0.0, 4.0, 0.0)
    dni, dhi = beam_beside(ghi, 0.0 * ghi, sky)
    assert dni.max() == 0.0
    np.testing.assert_allclose(dhi, ghi)


def test_clearness_of_days(sky: ClearSky) -> None:
    np.testing.assert_allclose(daily_clearness(0.6 * sky.ghi, sky), 0.6)


def test_a_polar_night_has_no_clearness() -> None:
    sky = clear_sky(hours_of_year(2027, -9.0), latitude=71.3, longitude=-156.8, elevation=10.0)
    clearness = daily_clearness(sky.ghi, sky)
    assert np.isnan(clearness[[0, 364]]).all()
    assert np.isfinite(clearness[180])
