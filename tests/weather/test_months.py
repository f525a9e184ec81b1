"""A year and a station described month by month, on years that can be counted by hand."""

from __future__ import annotations

import numpy as np
import pandas as pd
import pytest

from costcompare.weather import checked, nearest_station
from costcompare.weather.months import station_year, weather_year
from costcompare.weather.table import COLUMNS, Weather, hours_of_year
from costcompare.weather.typical import typical_year


def made(temperature: np.ndarray, ghi: np.ndarray) -> Weather:
    """A year with that temperature [degC] and sun on level ground [W/m2], all else steady."""
    index = hours_of_year(2027, -5.0)
    frame = pd.DataFrame(
        {
            "temperature_degc": temperature,
            "relative_humidity": 0.6,
            "wind_speed_m_s": 4.4704,
            "pressure_pa": 100_000.0,
            "ghi_w_m2": ghi,
            "dni_w_m2": 0.0,
            "dhi_w_m2": ghi,
            "sky_temperature_degc": -10.0,
        },
        index=index,
    )[list(COLUMNS)]
    return checked(
        frame,
        latitude=37.0,
        longitude=-80.0,
        elevation=304.8,
        source="file",
        station="made",
        note="by hand",
    )


def test_a_year_that_can_be_counted() -> None:
    hours = hours_of_year(2027, -5.0)
    afternoon = np.asarray(hours.hour == 15)
    january = np.asarray(hours.month == 1)
    temperature = np.where(afternoon, 20.0, 10.0)
    temperature[5] = -20.0
    noon = np.where(np.asarray(hours.hour == 12) & january, 1000.0, 0.0)
    year = weather_year(made(temperature, noon))
    assert (year.source, year.station, year.note) == ("file", "made", "by hand")
    assert year.elevation_ft == pytest.approx(1000.0)
    assert [month.month for month in year.months] == list(range(1, 13))
    first, second = year.months[:2]
    assert second.daily_high_degf == pytest.approx(68.0)
    assert second.daily_low_degf == pytest.approx(50.0)
    assert second.mean_temperature_degf == pytest.approx(50.0 + 18.0 / 24.0)
    assert second.wind_speed_mph == pytest.approx(10.0)
    assert second.sun_kwh_m2_day == 0.0
    assert first.lowest_temperature_degf == pytest.approx(-4.0)
    assert first.daily_low_degf == pytest.approx(50.0 - 54.0 / 31.0)
    assert first.sun_kwh_m2_day == pytest.approx(1.0)
    assert year.design_temperature_degf == pytest.approx(50.0)


def test_a_made_year_keeps_what_its_station_says() -> None:
    station = station_year(nearest_station(37.27, -79.94))
    year = weather_year(typical_year(37.27, -79.94))
    assert station.station == "Roanoke Regional Ap, VA"
    assert station.number == "724110"
    means = [month.mean_temperature_degf for month in year.months]
    assert means == pytest.approx(station.mean_temperature_degf, abs=0.5)
    assert year.heating_degree_days_65f == pytest.approx(station.heating_degree_days_65f, rel=0.02)
