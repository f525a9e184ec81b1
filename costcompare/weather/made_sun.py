"""The sun of a made year: a cloudless year dimmed by days of clouds to the monthly normals.

How clear the days are, how long it lasts and how much the hours of a day differ was taken
from the station years of Greensboro NC, Sand Point AK and Miami FL (TMY3 and TMY2, as they
come with pvlib): from one day to the next the clearness correlates by 0.24 to 0.31, and its
deviation is 0.32 to 0.55 times sqrt(R (1.05 - R)) in a month of mean clearness R.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from scipy.special import ndtr
from scipy.stats import beta

from costcompare.weather.clear_sky import ClearSky, beam_beside, daily_clearness, split
from costcompare.weather.curve import (
    MONTH_OF_DAY,
    MONTH_OF_HOUR,
    lasting_noise,
    month_means,
    month_means_of_hours,
)
from costcompare.weather.sky import cloud_from_clearness
from costcompare.weather.stations import Normals

DAY_PERSISTENCE = 0.3
DAY_SPREAD = 0.45
"""Times sqrt(R (1.05 - R))"""
HOUR_PERSISTENCE = 0.4
HOUR_SPREAD = 0.9
"""Times k (1.05 - k) on a day of clearness k: 0.22 on half-clear days, as in the station years"""
DARKEST, CLEAREST = 0.12, 1.08
"""Clearness of the darkest and the clearest days of the station years (1st and 99th in 100:
0.21 to 0.37 and 1.05 to 1.10); above 1 because the turbidity map is a mean"""


class MadeSun(NamedTuple):
    """Hourly sun [W/m2], the clearness of each day and its clouds."""

    ghi: np.ndarray
    dni: np.ndarray
    dhi: np.ndarray
    clearness: np.ndarray
    """Sun of each day as a share of its cloudless sun, shape (365,); 1 where there is no sun"""
    cloud: np.ndarray
    """Share of the sky under clouds in each hour, shape (8760,)"""


def made_sun(normals: Normals, sky: ClearSky, chance: np.random.Generator) -> MadeSun:
    """A year of sun whose months have the global and diffuse sun of the normals."""
    cloudless = month_means_of_hours(sky.ghi)
    clearness = np.divide(normals.ghi, cloudless, out=np.ones(12), where=cloudless > 1.0)
    top = np.maximum(CLEAREST, 1.1 * clearness)
    days = _days(clearness, top, chance)
    ghi = _hours(days, top, sky, chance=chance)
    for _ in range(4):  # the limits take a little away, so the months are met by steps
        ghi = np.minimum(ghi * _factor(normals.ghi, ghi), top[MONTH_OF_HOUR] * sky.ghi)
    dhi = split(ghi, sky).dhi
    for _ in range(8):
        dhi = np.minimum(dhi * _factor(normals.dhi, dhi), ghi)
        dhi = beam_beside(ghi, dhi, sky).dhi
    parts = beam_beside(ghi, dhi, sky)
    clear = np.nan_to_num(daily_clearness(ghi, sky), nan=1.0)
    cloud = _clouds(normals.cloud, clear)
    return MadeSun(ghi=ghi, dni=parts.dni, dhi=parts.dhi, clearness=clear, cloud=cloud)


def _days(clearness: np.ndarray, top: np.ndarray, chance: np.random.Generator) -> np.ndarray:
    """Clearness of each day: beta-distributed in the month's limits, lasting a little."""
    place = np.clip((clearness - DARKEST) / (top - DARKEST), 0.03, 0.97)
    spread = DAY_SPREAD * np.sqrt(np.clip(clearness * (1.05 - clearness), 0.01, None))
    share = (spread / (top - DARKEST)) ** 2 / (place * (1.0 - place))
    weight = 1.0 / np.clip(share, 0.02, 0.7) - 1.0
    luck = ndtr(lasting_noise(chance, len(MONTH_OF_DAY), DAY_PERSISTENCE))
    drawn = beta.ppf(luck, (place * weight)[MONTH_OF_DAY], ((1 - place) * weight)[MONTH_OF_DAY])
    return np.asarray(DARKEST + (top - DARKEST)[MONTH_OF_DAY] * drawn)


def _hours(
    days: np.ndarray, top: np.ndarray, sky: ClearSky, *, chance: np.random.Generator
) -> np.ndarray:
    """Level sun of each hour: the day's clearness with passing clouds [W/m2]."""
    spread = HOUR_SPREAD * days * np.clip(1.05 - days, 0.05, None)
    noise = lasting_noise(chance, len(sky.ghi), HOUR_PERSISTENCE)
    hourly = np.repeat(days, 24) + np.repeat(spread, 24) * noise
    ghi = np.clip(hourly, 0.5 * DARKEST, top[MONTH_OF_HOUR]) * sky.ghi
    wanted = days * sky.ghi.reshape(-1, 24).sum(axis=1)
    found = ghi.reshape(-1, 24).sum(axis=1)
    factor = np.divide(wanted, found, out=np.ones_like(days), where=found > 0.0)
    return np.asarray(np.minimum(ghi * np.repeat(factor, 24), top[MONTH_OF_HOUR] * sky.ghi))


def _factor(wanted: np.ndarray, hourly: np.ndarray) -> np.ndarray:
    """What each hour is to be multiplied with for its month to have the mean wanted."""
    found = month_means_of_hours(hourly)
    factor = np.divide(wanted, found, out=np.ones(12), where=found > 1e-6)
    return np.asarray(np.clip(factor, 0.2, 5.0)[MONTH_OF_HOUR])


def _clouds(wanted: np.ndarray, clearness: np.ndarray) -> np.ndarray:
    """Cloud cover that follows the clearness of the days and has the monthly means wanted.

    A month without any cloud is one in which clouds were not recorded: its sun decides.
    """
    cover = np.maximum(cloud_from_clearness(clearness), 0.02)
    for _ in range(6):
        factor = np.where(wanted > 0.0, wanted / month_means(cover), 1.0)
        cover = np.clip(cover * factor[MONTH_OF_DAY], 0.0, 1.0)
    noon = 24.0 * np.arange(len(cover)) + 12.0
    hours = np.arange(24 * len(cover)) + 0.5
    return np.asarray(np.interp(hours, noon, cover, period=24.0 * len(cover)))
