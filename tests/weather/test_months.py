"""A year month by month."""

from __future__ import annotations

import pandas as pd
import pytest

from costcompare.weather.months import station_year, weather_year
from costcompare.weather.stations import find_stations
from costcompare.weather.table import Weather


def test_an_even_year(plain: Weather) -> None:
    year = weather_year(plain)
    assert [month.month for month in year.months] == list(range(1, 13))
    assert year.elevation_ft == pytest.approx(147.6, abs=0.1)
    assert year.heating_degree_days_65f == pytest.approx(15.0 * 365)
    march = year.months[2]
    assert march.mean_temperature_degf == pytest.approx(50.0)
    assert march.lowest_temperature_degf == pytest.approx(50.0)
    assert march.sun_kwh_m2_day == pytest.approx(8 * 0.3)  # eight hours of 300 W/m2
    assert march.wind_speed_mph == pytest.approx(3.0 * 2.23694, rel=1e-4)


def test_months_are_those_of_the_calendar(plain: Weather) -> None:
    hours = pd.DatetimeIndex(plain.table.index)
    plain.table.loc[(hours.month == 2) & (hours.hour == 4), "temperature_degc"] = -10.0
    february = weather_year(plain).months[1]
    assert february.lowest_temperature_degf == pytest.approx(14.0)
    assert february.daily_low_degf == pytest.approx(14.0)
    assert february.daily_high_degf == pytest.approx(50.0)
    assert weather_year(plain).months[2].lowest_temperature_degf == pytest.approx(50.0)


def test_a_station_by_its_normals() -> None:
    (station,) = find_stations("bellingham wa")
    year = station_year(station)
    assert year.station == "Bellingham Intl Ap, WA"
    assert year.heating_degree_days_65f == pytest.approx(5791.0, abs=1.0)
    assert year.mean_temperature_degf[0] == pytest.approx(39.7, abs=0.1)
