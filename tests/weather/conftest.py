"""A made-up year for the tests of the weather package."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pandas as pd
import pytest

from costcompare.weather.files import write_weather
from costcompare.weather.table import Weather, checked, hours_of_year


@pytest.fixture
def plain_frame() -> pd.DataFrame:
    """An even year at 10 degC with a clear square of sun from 8 to 16 o'clock."""
    hours = hours_of_year(2027, -8.0)
    day = np.asarray((hours.hour >= 8) & (hours.hour < 16), dtype=float)
    return pd.DataFrame(
        {
            "temperature_degc": 10.0,
            "relative_humidity": 0.5,
            "wind_speed_m_s": 3.0,
            "pressure_pa": 101_325.0,
            "ghi_w_m2": 300.0 * day,
            "dni_w_m2": 400.0 * day,
            "dhi_w_m2": 100.0 * day,
            "sky_temperature_degc": 0.0,
        },
        index=hours,
    )


@pytest.fixture
def plain(plain_frame: pd.DataFrame) -> Weather:
    return checked(
        plain_frame,
        latitude=48.8,
        longitude=-122.54,
        elevation=45.0,
        source="measured",
        station="A made-up place",
        note="made by hand",
    )


@pytest.fixture
def plain_path(plain: Weather, tmp_path: Path) -> Path:
    path = tmp_path / "year.csv"
    write_weather(plain, path)
    return path
