"""The sun of a cloudless year, and the parts of the sun under clouds.

Cloudless sun by Ineichen and Perez (2002) with the monthly turbidity map that comes with
pvlib; beam and diffuse from the global sun by the continuous form of Erbs et al. (1982)
that pvlib calls ``erbs_driesse``.
"""

from __future__ import annotations

import warnings
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
import pandas as pd
from pvlib import atmosphere, clearsky, irradiance

from costcompare.weather.sun import sun_position

LOWEST_HEIGHT = 0.5
"""[degrees] The sun counts as at least this high when beam is worked out from the level sun:
closer to the horizon the division says nothing (judgement)."""

STRONGEST_BEAM = 1100.0
"""[W/m2] straight on, more than the ground at 3,000 m ever sees in an hour (judgement)"""


@dataclass(frozen=True)
class ClearSky:
    """A cloudless year, hour by hour; every value is the mean over the hour."""

    hours: pd.DatetimeIndex
    ghi: np.ndarray
    """Level sun without clouds [W/m2]"""
    zenith: np.ndarray
    """[degrees], at the middle of the part of the hour with the sun up"""
    share_up: np.ndarray
    """Share of the hour with the sun up"""

    @property
    def sine_height(self) -> np.ndarray:
        """Sine of the sun's height, not less than at :data:`LOWEST_HEIGHT`."""
        floor = np.sin(np.radians(LOWEST_HEIGHT))
        return np.asarray(np.maximum(np.cos(np.radians(self.zenith)), floor))


class Split(NamedTuple):
    """Beam straight on and level diffuse sun [W/m2]."""

    dni: np.ndarray
    dhi: np.ndarray


def clear_sky(
    hours: pd.DatetimeIndex, *, latitude: float, longitude: float, elevation: float
) -> ClearSky:
    """The cloudless sun at a place in the hours that begin at ``hours``."""
    position = sun_position(hours, latitude=latitude, longitude=longitude, elevation=elevation)
    day = position.zenith < 90.0  # pvlib divides by zero in the dark
    airmass = atmosphere.get_absolute_airmass(
        atmosphere.get_relative_airmass(position.zenith[day]),
        atmosphere.alt2pres(elevation),
    )
    with warnings.catch_warnings():
        # pvlib still asks pandas for `dayofyear` here, which pandas is about to drop.
        warnings.filterwarnings("ignore", message=".*dayofyear.*")
        turbidity = clearsky.lookup_linke_turbidity(hours[day], latitude, longitude).to_numpy()
    level = np.zeros(len(hours))
    level[day] = clearsky.ineichen(
        position.zenith[day],
        airmass,
        turbidity,
        altitude=elevation,
        dni_extra=irradiance.get_extra_radiation(hours[day]).to_numpy(),
    )["ghi"]
    return ClearSky(
        hours=hours,
        ghi=np.maximum(level, 0.0) * position.share_up,
        zenith=position.zenith,
        share_up=position.share_up,
    )


def split(ghi: np.ndarray, sky: ClearSky) -> Split:
    """Beam and diffuse of the level sun [W/m2]; ghi = dni x sine of height + dhi in each hour."""
    share = np.where(sky.share_up > 0.0, sky.share_up, 1.0)
    diffuse = irradiance.erbs_driesse(ghi / share, sky.zenith, sky.hours)["dhi"]
    return beam_beside(ghi, np.nan_to_num(np.asarray(diffuse)) * share, sky)


def beam_beside(ghi: np.ndarray, dhi: np.ndarray, sky: ClearSky) -> Split:
    """Beam that makes up the level sun beside ``dhi``; diffuse takes what no beam can carry."""
    diffuse = np.where(sky.share_up > 0.0, np.clip(dhi, 0.0, ghi), ghi)
    beam = np.minimum((ghi - diffuse) / sky.sine_height, STRONGEST_BEAM)
    return Split(dni=beam, dhi=np.maximum(ghi - beam * sky.sine_height, 0.0))


def daily_clearness(ghi: np.ndarray, sky: ClearSky) -> np.ndarray:
    """Each day's sun as a share of its cloudless sun, shape (365,); nan where there is none."""
    actual = ghi.reshape(-1, 24).sum(axis=1)
    cloudless = sky.ghi.reshape(-1, 24).sum(axis=1)
    none = np.full_like(actual, np.nan)
    return np.asarray(np.divide(actual, cloudless, out=none, where=cloudless > 24.0))
