"""A typical year made from the monthly normals of the nearest station.

    station -> cloudless sun -> days of clouds -> sun          (made_sun)
            -> days -> hours -> temperature, humidity, wind    (made_air)
            -> height of the place, kind of winter -> checked table

docs/weather.md says how well the made year keeps the normals and what it cannot say.
"""

from __future__ import annotations

from typing import Literal, NamedTuple

import numpy as np
import pandas as pd
from pvlib import atmosphere

from costcompare.errors import Fault, WeatherError
from costcompare.weather.clear_sky import clear_sky
from costcompare.weather.curve import MONTH_OF_HOUR
from costcompare.weather.files import CALENDAR_YEAR
from costcompare.weather.humidity import dew_point, relative_humidity
from costcompare.weather.made_air import (
    daily_temperatures,
    day_shape,
    hourly_dew_points,
    hourly_temperatures,
    hourly_wind,
)
from costcompare.weather.made_sun import made_sun
from costcompare.weather.sky import OPAQUE_SHARE, sky_temperature
from costcompare.weather.stations import CREDIT, Station, nearest_station
from costcompare.weather.table import Weather, checked, hours_of_year

Winter = Literal["typical", "mild", "cold"]

WINTER_SHIFT: dict[str, float] = {"typical": 0.0, "mild": 1.4, "cold": -1.4}
"""[K] added to every hour from October to April: about one winter in ten is as mild or as
cold (judgement)"""

WINTER_MONTHS = (0, 1, 2, 3, 9, 10, 11)
"""October to April, January being 0"""

LAPSE_RATE = -0.0065
"""[K/m] US Standard Atmosphere 1976, layer from sea level to 11 km"""


class _Place(NamedTuple):
    latitude: float
    longitude: float
    height: float
    """[m]"""
    station: Station


def typical_year(
    latitude: float,
    longitude: float,
    elevation: float | None = None,
    winter: Winter = "typical",
    seed: int = 0,
    calendar_year: int = CALENDAR_YEAR,
) -> Weather:
    """A made year of weather at a place, the same for the same arguments.

    ``elevation`` [m] defaults to the station's; where given, temperatures are moved by
    6.5 K for each 1,000 m of difference. ``winter`` "mild" or "cold" moves October to April by
    1.4 K. ``seed`` draws another year with the same monthly normals. Raises
    :class:`WeatherError` where no station is near or a word or number is not understood.
    """
    faults = _faults(winter, seed, calendar_year)
    if faults:
        raise WeatherError(faults)
    station = nearest_station(latitude, longitude, elevation)
    height = station.elevation if elevation is None else elevation
    place = _Place(latitude, longitude, height, station)
    hours = hours_of_year(calendar_year, station.utc_offset_hours)
    return checked(
        _table(place, hours, seed=seed, winter=winter),
        latitude=latitude,
        longitude=longitude,
        elevation=height,
        source="typical",
        station=station.label,
        note=_note(place, winter),
    )


def _table(place: _Place, hours: pd.DatetimeIndex, *, seed: int, winter: Winter) -> pd.DataFrame:
    latitude, longitude, height, station = place
    sky = clear_sky(hours, latitude=latitude, longitude=longitude, elevation=height)
    # One stream of chance for each part: a change to one leaves the others as they were.
    for_sun, for_warmth, for_wind = np.random.default_rng(seed).spawn(3)
    clock = hours.hour.to_numpy() + 0.5
    solar_hour = np.mod(clock + longitude / 15.0 - station.utc_offset_hours, 24.0)
    sun = made_sun(station.months, sky, for_sun)
    days = daily_temperatures(station.months, for_warmth)
    shape = day_shape(solar_hour, sky.share_up.reshape(-1, 24).sum(axis=1))
    at_station = hourly_temperatures(station.months, days, shape=shape, clearness=sun.clearness)
    humidity = relative_humidity(at_station, hourly_dew_points(station.months, days, at_station))
    temperature = at_station + LAPSE_RATE * (height - station.elevation)
    temperature += np.where(np.isin(MONTH_OF_HOUR, WINTER_MONTHS), WINTER_SHIFT[winter], 0.0)
    table = pd.DataFrame(
        {
            "temperature_degc": temperature,
            "relative_humidity": humidity,
            "wind_speed_m_s": hourly_wind(station.months, solar_hour, for_wind),
            "pressure_pa": float(atmosphere.alt2pres(height)),
            "ghi_w_m2": sun.ghi,
            "dni_w_m2": sun.dni,
            "dhi_w_m2": sun.dhi,
        },
        index=hours,
    )
    table["sky_temperature_degc"] = sky_temperature(
        temperature,
        dew_point(temperature, humidity),
        OPAQUE_SHARE * sun.cloud,
        hour=clock,
        pressure=table["pressure_pa"].to_numpy(),
    )
    return table


def _faults(winter: str, seed: int, calendar_year: int) -> list[Fault]:
    faults = []
    if winter not in WINTER_SHIFT:
        rule = f"must be one of {', '.join(WINTER_SHIFT)}"
        faults.append(Fault("weather.winter", rule, given=str(winter), instead='"typical"'))
    if seed < 0:
        rule = "must be a whole number from 0 on"
        faults.append(Fault("weather.seed", rule, given=str(seed)))
    if not 1900 <= calendar_year <= 2200:
        rule = "must be a year from 1900 to 2200"
        faults.append(Fault("weather.calendar_year", rule, given=str(calendar_year)))
    return faults


def _note(place: _Place, winter: Winter) -> str:
    """What a reader should know of the made year, in words."""
    latitude, longitude, height, station = place
    away = station.distance(latitude, longitude) / 1000.0
    parts = [f"made from the monthly normals of {station.label}, {away:.0f} km away: {CREDIT}"]
    climb = height - station.elevation
    if abs(climb) >= 1.0:
        word, where = ("colder", "higher") if climb > 0.0 else ("warmer", "lower")
        shift = _difference(LAPSE_RATE * climb)
        parts.append(f"{shift} {word} because the place lies {abs(climb):.0f} m {where}")
    if winter != "typical":
        word = "warmer" if winter == "mild" else "colder"
        parts.append(
            f"a {winter} winter: October to April {_difference(WINTER_SHIFT[winter])} {word}, "
            "about one winter in ten (judgement)"
        )
    return "; ".join(parts)


def _difference(kelvin: float) -> str:
    return f"{abs(kelvin):.1f} K ({abs(kelvin) * 1.8:.1f} F)"
