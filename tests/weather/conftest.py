"""A made-up year for the tests of the weather package."""

from __future__ import annotations

import numpy as np
import pandas as pd
import pytest

from costcompare.weather.table import hours_of_year


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
