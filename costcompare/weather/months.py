"""A year of weather, or of normals, month by month, as people describe it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import pandas as pd

from costcompare.weather.design import (
    design_temperature,
    heating_degree_days_65f,
    mean_temperature,
)
from costcompare.weather.stations import Station
from costcompare.weather.table import Weather

METRES_PER_FOOT = 0.3048
"""Exact, by definition of the foot"""

MILES_PER_HOUR = 3600.0 / 1609.344
"""[mph] in 1 m/s, by definition of the mile"""

WH_PER_KWH = 1000.0


@dataclass(frozen=True)
class WeatherMonth:
    """One month of standard time."""

    month: int
    """1 to 12"""
    mean_temperature_degf: float
    daily_high_degf: float
    """Mean of the daily highest hours"""
    daily_low_degf: float
    """Mean of the daily lowest hours"""
    lowest_temperature_degf: float
    """The coldest hour"""
    sun_kwh_m2_day: float
    """Sun on level ground"""
    wind_speed_mph: float
    """Mean"""


@dataclass(frozen=True)
class WeatherYear:
    """What a year comes to, and its months."""

    source: str
    station: str
    note: str
    latitude: float
    longitude: float
    elevation_ft: float
    heating_degree_days_65f: float
    """[F day]"""
    mean_temperature_degf: float
    design_temperature_degf: float
    """The 1 % hour of this year"""
    months: tuple[WeatherMonth, ...]


@dataclass(frozen=True)
class StationYear:
    """What the normals of a station come to."""

    station: str
    number: str
    """Of the US Air Force catalogue"""
    latitude: float
    longitude: float
    elevation_ft: float
    heating_degree_days_65f: float
    """[F day]"""
    mean_temperature_degf: tuple[float, ...]
    """By month, January first"""


def station_year(station: Station) -> StationYear:
    """Describe a station by its normals."""
    return StationYear(
        station=station.label,
        number=station.usaf,
        latitude=station.latitude,
        longitude=station.longitude,
        elevation_ft=station.elevation / METRES_PER_FOOT,
        heating_degree_days_65f=float(station.months.degree_days_65f.sum()),
        mean_temperature_degf=tuple(_degf(float(t)) for t in station.months.temperature),
    )


def weather_year(weather: Weather) -> WeatherYear:
    """Describe a year of weather."""
    return WeatherYear(
        source=weather.source,
        station=weather.station,
        note=weather.note,
        latitude=weather.latitude,
        longitude=weather.longitude,
        elevation_ft=weather.elevation / METRES_PER_FOOT,
        heating_degree_days_65f=heating_degree_days_65f(weather),
        mean_temperature_degf=_degf(mean_temperature(weather)),
        design_temperature_degf=_degf(design_temperature(weather)),
        months=tuple(_month(weather, month) for month in range(1, 13)),
    )


def _month(weather: Weather, month: int) -> WeatherMonth:
    stamps = pd.DatetimeIndex(weather.table.index)
    inside = stamps.month.to_numpy() == month
    days = weather.column("temperature_degc")[inside].reshape(-1, 24)
    sun = weather.column("ghi_w_m2")[inside]
    return WeatherMonth(
        month=month,
        mean_temperature_degf=_degf(float(days.mean())),
        daily_high_degf=_degf(float(days.max(axis=1).mean())),
        daily_low_degf=_degf(float(days.min(axis=1).mean())),
        lowest_temperature_degf=_degf(float(days.min())),
        sun_kwh_m2_day=float(np.mean(sun)) * 24.0 / WH_PER_KWH,
        wind_speed_mph=float(weather.column("wind_speed_m_s")[inside].mean()) * MILES_PER_HOUR,
    )


def _degf(degc: float) -> float:
    return 1.8 * degc + 32.0
