"""Temperature, humidity and wind of a made year, from the monthly normals.

Where a number stands for how weather behaves, it was taken from the station years of
Greensboro NC, Sand Point AK and Miami FL (TMY3 and TMY2, as they come with pvlib), unless
said otherwise.
"""

from __future__ import annotations

import numpy as np
from scipy.special import gamma, ndtr

from costcompare.weather.curve import (
    DAYS_IN_MONTH,
    MONTH_OF_DAY,
    MONTH_OF_HOUR,
    lasting_noise,
    month_means,
    month_means_of_hours,
    through_means,
)
from costcompare.weather.stations import Normals

BASE_65F = 18.0 + 1.0 / 3.0
"""65 F in [degC]"""

DAY_PERSISTENCE = 0.7
"""Correlation of one day's temperature with the next; 0.65 to 0.79 in the station years"""

LEAST_NOISE = 0.3
"""Share of a month's spread that is day-to-day noise at least, however steep its trend
(judgement)"""

FARTHEST_DAY = 2.2
"""Times the month's spread that a day may lie from its mean. The farthest day of each whole
station year lay at 2.5 to 3.2; a month's farthest lies nearer, and a typical year should not
hold a record cold day in every month (judgement)"""

NEAR_ENOUGH = 0.01
"""[K] a day of degree days that is not worth stretching a month for (judgement)"""

COLDEST_HOUR = -62.0
"""[degC] coldest on record in the United States: Prospect Creek, Alaska, 1971 (from memory)"""

RANGE_PER_CLEARNESS = 0.9
"""How much wider, as a share, the day's range is per unit of clearness; 0.1 to 1.4"""

PEAK_HOUR = 15.0
"""Solar time of the warmest moment (common practice; 14 to 15 in the station years)"""

DEW_PER_DEGREE = 0.9
"""[K/K] by which the dew point follows a warm or cold day in the heating season; 0.9 to 1.3"""

WIND_PERSISTENCE = 0.82
"""Correlation of one hour's wind with the next; 0.77 to 0.91"""

WIND_SHAPE = 1.7
"""Weibull shape; the deviation then is 0.6 of the mean, 0.49 to 0.66 in the station years"""

STRONGEST_WIND = 45.0
"""[m/s] in an hour, beyond any house (judgement); met on mountain tops only"""

WIND_BY_DAY = 0.25
"""Share by which the wind at 14 o'clock solar time exceeds its mean"""


def daily_temperatures(normals: Normals, chance: np.random.Generator) -> np.ndarray:
    """Mean temperature of each day [degC], shape (365,).

    A smooth curve through the months with day-to-day noise, moved and spread month by month
    so that the mean is kept, the spread of the days is kept, and where days lie on both
    sides of 65 F the spread is changed (by at most half) to keep the heating degree days.
    """
    curve = through_means(normals.temperature, DAYS_IN_MONTH)
    trend = np.sqrt(month_means(curve**2) - month_means(curve) ** 2)
    noise = np.sqrt(
        np.maximum(normals.day_spread**2 - trend**2, (LEAST_NOISE * normals.day_spread) ** 2)
    )
    days = curve + noise[MONTH_OF_DAY] * lasting_noise(chance, len(curve), DAY_PERSISTENCE)
    apart = days - month_means(days)[MONTH_OF_DAY]
    for _ in range(3):
        apart *= (normals.day_spread / np.sqrt(month_means(apart**2)))[MONTH_OF_DAY]
        farthest = FARTHEST_DAY * normals.day_spread
        apart = np.clip(apart, -farthest[MONTH_OF_DAY], farthest[MONTH_OF_DAY])
        apart -= month_means(apart)[MONTH_OF_DAY]
    return _kept_degree_days(normals, apart)


def _kept_degree_days(normals: Normals, apart: np.ndarray) -> np.ndarray:
    """Days whose distance from the monthly mean is stretched to meet the degree days [degC]."""
    wanted = normals.degree_days_65f / 1.8 / DAYS_IN_MONTH
    mean = normals.temperature[MONTH_OF_DAY]
    low, high = np.full(12, 0.5), np.full(12, 1.5)
    for _ in range(30):  # degree days grow with the stretch, so halving finds it
        middle = 0.5 * (low + high)
        found = month_means(np.maximum(BASE_65F - mean - middle[MONTH_OF_DAY] * apart, 0.0))
        low, high = np.where(found < wanted, middle, low), np.where(found < wanted, high, middle)
    stretch = 0.5 * (low + high)
    # A month on one side of 65 F meets its degree days as it is: stretching it until a single
    # day crosses 65 F would only chase the rounding of the normals.
    as_it_is = month_means(np.maximum(BASE_65F - mean - apart, 0.0))
    stretch = np.where(np.abs(as_it_is - wanted) > NEAR_ENOUGH, stretch, 1.0)
    return np.asarray(mean + stretch[MONTH_OF_DAY] * apart)


def hourly_temperatures(
    normals: Normals, days: np.ndarray, *, shape: np.ndarray, clearness: np.ndarray
) -> np.ndarray:
    """Hourly temperature [degC] whose days have the means ``days``.

    ``shape`` is :func:`day_shape`. Clear days have the wider range; each month's mean range
    is that between its mean daily high and low.
    """
    usual = month_means(clearness)[MONTH_OF_DAY]
    width = np.clip(1.0 + RANGE_PER_CLEARNESS * (clearness - usual), 0.3, 1.4)
    smooth = through_means(days, 24)
    wanted = normals.daily_high - normals.daily_low
    swing = 0.5 * wanted
    hours = smooth
    for _ in range(6):  # the smooth part has a range of its own, so the swing is found by steps
        hours = smooth + np.repeat(swing[MONTH_OF_DAY] * width, 24) * shape
        found = month_means(np.ptp(hours.reshape(-1, 24), axis=1))
        swing = np.maximum(swing + 0.5 * (wanted - found), 0.0)
    if hours.min() < COLDEST_HOUR:  # a few places in Alaska
        usual = month_means_of_hours(hours)
        for _ in range(10):
            hours = np.maximum(hours, COLDEST_HOUR)
            hours = hours + (usual - month_means_of_hours(hours))[MONTH_OF_HOUR]
    return np.asarray(hours)


def day_shape(solar_hour: np.ndarray, daylight: np.ndarray) -> np.ndarray:
    """The course of a day between -1 and 1 about, with mean 0 over each day.

    Half a cosine from sunrise up to 15 o'clock solar time and half a cosine down to the next
    sunrise. ``solar_hour`` of shape (8760,) in 0 to 24, ``daylight`` the hours with the sun
    up on each day, shape (365,).
    """
    sunrise = np.repeat(np.clip(12.0 - 0.5 * daylight, 4.0, 9.0), 24)
    since = np.mod(solar_hour - sunrise, 24.0)
    rise = PEAK_HOUR - sunrise
    up = -np.cos(np.pi * since / rise)
    down = np.cos(np.pi * (since - rise) / (24.0 - rise))
    shape = np.where(since < rise, up, down).reshape(-1, 24)
    return np.asarray((shape - shape.mean(axis=1, keepdims=True)).ravel())


def hourly_dew_points(normals: Normals, days: np.ndarray, hours: np.ndarray) -> np.ndarray:
    """Hourly dew point [degC], never above the temperature ``hours``, monthly means kept."""
    usual = through_means(normals.temperature, DAYS_IN_MONTH)
    daily = through_means(normals.dew_point, DAYS_IN_MONTH) + DEW_PER_DEGREE * (days - usual)
    wanted = through_means(daily, 24)
    dew = np.minimum(wanted, hours)
    for _ in range(20):  # saturation takes from the mean what the drier hours must give back
        short = normals.dew_point - month_means_of_hours(dew)
        wanted = wanted + short[MONTH_OF_HOUR]
        dew = np.minimum(wanted, hours)
    return np.asarray(dew)


def hourly_wind(
    normals: Normals, solar_hour: np.ndarray, chance: np.random.Generator
) -> np.ndarray:
    """Hourly wind speed [m/s]: Weibull-distributed, lasting, stronger by day, means kept."""
    luck = ndtr(lasting_noise(chance, len(solar_hour), WIND_PERSISTENCE))
    drawn = (-np.log1p(-np.minimum(luck, 1.0 - 1e-9))) ** (1.0 / WIND_SHAPE)
    by_day = 1.0 + WIND_BY_DAY * np.cos(2.0 * np.pi * (solar_hour - 14.0) / 24.0)
    wind = drawn / gamma(1.0 + 1.0 / WIND_SHAPE) * by_day
    for _ in range(4):
        wind = wind * (normals.wind_speed / month_means_of_hours(wind))[MONTH_OF_HOUR]
        wind = np.minimum(wind, STRONGEST_WIND)
    return np.asarray(wind)
