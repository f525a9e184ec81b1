"""Sun on upright walls against the formulas of the literature, written out here.

Perez, Ineichen, Seals, Michalsky and Stewart (1990), "Modeling daylight availability and
irradiance components from direct and global irradiance", Solar Energy 44(5), 271-289:
equations 1 to 9 with the irradiance coefficients of table 6, typed in with the three digits
as printed. The even (isotropic) sky is that of Liu and Jordan (1963). The hours are those of
the TMY3 year of Greensboro NC that comes with pvlib.

Agreement reached: all parts within 1e-9 W/m2 in each of the hours with the sun more than 8
degrees high (closer to the horizon the program takes the sun midway while it is up). The
tolerance is 0.001 W/m2.
"""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pandas as pd
import pvlib
import pytest

from costcompare.weather import Sun, Weather, read_weather, sun_on
from costcompare.weather.sun import AZIMUTHS, ORDER

TABLE_6 = (
    # upper limit of the clearness, F11, F12, F13, F21, F22, F23
    (1.065, -0.008, 0.588, -0.062, -0.060, 0.072, -0.022),
    (1.230, 0.130, 0.683, -0.151, -0.019, 0.066, -0.029),
    (1.500, 0.330, 0.487, -0.221, 0.055, -0.064, -0.026),
    (1.950, 0.568, 0.187, -0.295, 0.109, -0.152, -0.014),
    (2.800, 0.873, -0.392, -0.362, 0.226, -0.462, 0.001),
    (4.500, 1.132, -1.237, -0.412, 0.288, -0.823, 0.056),
    (6.200, 1.060, -1.600, -0.359, 0.264, -1.127, 0.131),
    (np.inf, 0.678, -0.327, -0.250, 0.156, -1.377, 0.251),
)
SOLAR_CONSTANT = 1366.1
"""[W/m2] as pvlib takes it"""


@pytest.fixture(scope="module")
def weather() -> Weather:
    return read_weather(Path(pvlib.__file__).parent / "data" / "723170TYA.CSV")


@pytest.fixture(scope="module")
def sun(weather: Weather) -> Sun:
    return sun_on(weather)


@pytest.fixture(scope="module")
def position(weather: Weather) -> pd.DataFrame:
    """Zenith and azimuth of the sun at mid-hour, in radians."""
    middle = pd.DatetimeIndex(weather.table.index) + pd.Timedelta(minutes=30)
    found = pvlib.solarposition.get_solarposition(
        middle, weather.latitude, weather.longitude, weather.elevation
    )
    return np.radians(found[["apparent_zenith", "azimuth"]])


@pytest.fixture(scope="module")
def whole_hours(position: pd.DataFrame) -> np.ndarray:
    """Hours in which the sun is up all the time: at mid-hour more than 8 degrees high."""
    return (position["apparent_zenith"] < np.radians(82.0)).to_numpy()


def incidence_cosine(position: pd.DataFrame, azimuth: float) -> np.ndarray:
    """Between the sun and the normal of an upright wall: sin z cos(difference in azimuth)."""
    zenith, around = position["apparent_zenith"].to_numpy(), position["azimuth"].to_numpy()
    return np.asarray(np.sin(zenith) * np.cos(around - np.radians(azimuth)))


def perez_sky(weather: Weather, position: pd.DataFrame, azimuth: float) -> np.ndarray:
    """Equation 9 for a slope of 90 degrees; nan without diffuse sun."""
    zenith = position["apparent_zenith"].to_numpy()
    dni, dhi = weather.column("dni_w_m2"), weather.column("dhi_w_m2")
    dhi = np.where(dhi > 0.0, dhi, np.nan)
    day = pd.DatetimeIndex(weather.table.index).day_of_year.to_numpy()
    angle = 2.0 * np.pi * (day - 1) / 365.0  # Spencer (1971)
    extra = SOLAR_CONSTANT * (
        1.00011
        + 0.034221 * np.cos(angle)
        + 0.00128 * np.sin(angle)
        + 0.000719 * np.cos(2 * angle)
        + 7.7e-5 * np.sin(2 * angle)
    )
    degrees = np.minimum(np.degrees(zenith), 90.0)
    airmass = 1.0 / (np.cos(np.radians(degrees)) + 0.50572 * (96.07995 - degrees) ** -1.6364)
    cube = 1.041 * zenith**3
    clearness = ((dhi + dni) / dhi + cube) / (1.0 + cube)
    brightness = dhi * airmass / extra
    row = np.searchsorted([limit for limit, *_ in TABLE_6], clearness, side="right")
    f = np.array([values for _, *values in TABLE_6])[np.minimum(row, 7)]
    circumsolar = np.maximum(f[:, 0] + f[:, 1] * brightness + f[:, 2] * zenith, 0.0)
    horizon = f[:, 3] + f[:, 4] * brightness + f[:, 5] * zenith
    a = np.maximum(incidence_cosine(position, azimuth), 0.0)
    b = np.maximum(np.cos(zenith), np.cos(np.radians(85.0)))
    sky = dhi * ((1.0 - circumsolar) * 0.5 + circumsolar * a / b + horizon)
    return np.asarray(np.maximum(sky, 0.0))


@pytest.mark.parametrize("wall", ORDER)
def test_sky_by_perez_1990(
    weather: Weather, sun: Sun, position: pd.DataFrame, whole_hours: np.ndarray, wall: str
) -> None:
    column = ORDER.index(wall)
    expected = perez_sky(weather, position, AZIMUTHS[column])[whole_hours]
    found = sun.sky[whole_hours, column]
    has_diffuse = np.isfinite(expected)
    assert has_diffuse.sum() > 3500
    np.testing.assert_allclose(found[has_diffuse], expected[has_diffuse], atol=1e-3)  # W/m2


@pytest.mark.parametrize("wall", ORDER)
def test_beam_by_the_angle_of_incidence(
    weather: Weather, sun: Sun, position: pd.DataFrame, whole_hours: np.ndarray, wall: str
) -> None:
    column = ORDER.index(wall)
    cosine = np.maximum(incidence_cosine(position, AZIMUTHS[column]), 0.0)
    expected = (weather.column("dni_w_m2") * cosine)[whole_hours]
    np.testing.assert_allclose(sun.beam[whole_hours, column], expected, atol=1e-3)  # W/m2


def test_ground_as_an_even_mirror_of_the_level_sun(weather: Weather, sun: Sun) -> None:
    # Liu and Jordan: albedo (1 - cos 90) / 2 of the level sun, albedo 0.2
    np.testing.assert_allclose(sun.ground, 0.1 * weather.column("ghi_w_m2"))


def test_the_even_sky_lies_within_the_four_walls(
    weather: Weather, sun: Sun, whole_hours: np.ndarray
) -> None:
    """Perez' sky brightens the sunny sides and darkens the others: the even sky is between.

    In the year: north 0.78, south 1.16, the mean of the four walls 1.01 of the even sky.
    """
    even = 0.5 * weather.column("dhi_w_m2")[whole_hours].sum()
    walls = dict(zip(ORDER, sun.sky[whole_hours].sum(axis=0), strict=True))
    assert walls["north"] < even < walls["south"]
    assert np.mean(list(walls.values())) / even == pytest.approx(1.0, abs=0.05)


def test_a_covered_sky_lies_between_the_even_and_the_overcast_sky(
    weather: Weather, sun: Sun, whole_hours: np.ndarray
) -> None:
    """Hours without any beam: less than from an even sky, more than from Moon and Spencer's.

    Their standard overcast sky (1942), three times brighter overhead than at the horizon,
    gives an upright wall 0.396 of the level sun, 0.79 of what the even sky gives. Reached here:
    0.80 (north) to 0.92 (south).
    """
    covered = whole_hours & (weather.column("dni_w_m2") == 0.0)
    assert covered.sum() > 300
    even = 0.5 * weather.column("dhi_w_m2")[covered].sum()
    walls = sun.sky[covered].sum(axis=0) / even
    assert ((walls > 0.79) & (walls < 1.0)).all()
