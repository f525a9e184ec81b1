"""Setpoints and inside gains hour by hour, on the family's own clock."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from costcompare.case.facts import Home
from costcompare.simulation.clock import Same, local_clock

Floats = NDArray[np.float64]

PERSON_HEAT = 70.0
"""Sensible heat of a person at home, mean of waking and sleeping [W] (ASHRAE Fundamentals
gives 75 W seated, 40 to 60 W asleep; from memory)"""
PRESENCE = 0.7
"""Share of the week that a person is at home (judgement)"""
RADIANT_SHARE = 0.6
"""Share of inside gains that warms surfaces first (ASHRAE Standard 140, gains of the test
cells)"""
SEASON_SWING = 0.08
"""Other use is this much higher in January and lower in July (judgement)"""
USE_BY_HOUR = np.array(
    (
        *(0.6, 0.55, 0.5, 0.5, 0.55, 0.7, 1.0, 1.2, 1.1, 1.0, 0.95, 0.95),
        *(1.0, 1.0, 0.95, 1.0, 1.15, 1.45, 1.6, 1.55, 1.45, 1.25, 1.0, 0.75),
    )
)
"""Shape of other use over the day, 1 on the mean after scaling (judgement: evening peak)"""


@dataclass(frozen=True)
class Setpoints:
    """What the thermostats are set to, by hour of the local day [degC], shape (24,)."""

    house: Floats
    cooling: float
    wanted: Floats
    """The warmth at which heads and heaters were given settings of their own"""

    def of_unit(self, own: float | None) -> Floats:
        """Hourly setpoint of a head or heater with a setting of its own, or None.

        Its setting goes with the wanted warmth: when the house is kept cooler, so is it.
        """
        if own is None:
            return self.house
        moved: Floats = own + self.house - self.wanted
        return moved

    def of_backup(self, own: float | None) -> Floats:
        """Hourly setpoint of a furnace; one kept as backup stays no higher than its own."""
        if own is None:
            return self.house
        return np.minimum(self.house, own)


def recovered(profile: Floats, hours: int) -> Floats:
    """A day's setpoints that climb to each higher setting over the ``hours`` before it [degC].

    0 leaves the profile as it is: the thermostat asks for all of the step at once.
    """
    ramped = profile.copy()
    for hour in range(24):
        rise = profile[hour] - profile[hour - 1]
        if rise <= 0.0:
            continue
        for ahead in range(1, hours + 1):
            place = (hour - ahead) % 24
            reached = profile[hour] - rise * ahead / (hours + 1)
            ramped[place] = max(ramped[place], reached)
    return ramped


def _by_clock(day: float, night: float, night_hours: tuple[bool, ...]) -> Floats:
    return np.where(np.array(night_hours), night, day).astype(float)


def wanted_by_hour(home: Home) -> Floats:
    """The warmth the family wants, by hour of the local day [degC], shape (24,)."""
    t = home.thermostat
    return _by_clock(t.wanted, t.wanted_night, t.night_hours)


def setpoints_as_lived(home: Home) -> Setpoints:
    """As the family lives now."""
    t = home.thermostat
    return Setpoints(_by_clock(t.day, t.night, t.night_hours), t.cooling, wanted_by_hour(home))


def setpoints_as_wanted(home: Home) -> Setpoints:
    """At the warmth the family wants."""
    wanted = wanted_by_hour(home)
    return Setpoints(wanted, home.thermostat.cooling, wanted)


def local_hours(index: pd.DatetimeIndex, time_zone: str) -> NDArray[np.int64]:
    """Hour of the local civil day, 0 to 23, of each standard-time stamp."""
    return local_clock(index, time_zone).hour


def other_use(home: Home, index: pd.DatetimeIndex) -> tuple[Floats, Floats]:
    """Power of other electricity and of hot water by hour [W]; the year's mean is kept."""
    use = home.other_use
    if use.profile == "flat":
        shape = np.ones(len(index))
    else:
        shape = _shape_of_use(Same(index), home.site.time_zone)
    return use.electricity * shape, use.hot_water * shape


@lru_cache(maxsize=64)
def _shape_of_use(key: Same, time_zone: str) -> Floats:
    """Other use over its mean of the year, by hour."""
    index = key.item
    assert isinstance(index, pd.DatetimeIndex)
    clock = local_clock(index, time_zone)
    season = 1.0 + SEASON_SWING * np.cos(2 * np.pi * (clock.day_of_year - 15) / 365)
    shape = USE_BY_HOUR[clock.hour] * season
    scaled: Floats = shape / shape.mean()
    return scaled


def inside_gains(home: Home, index: pd.DatetimeIndex) -> Floats:
    """Heat of people, appliances and hot water by hour [W], shape (hours,)."""
    electricity, hot_water = other_use(home, index)
    use = home.other_use
    people = home.house.people * PERSON_HEAT * PRESENCE
    return people + electricity * use.share_to_rooms + hot_water * use.hot_water_share_to_rooms


def shares_of_rooms(home: Home) -> Floats:
    """Share of each room in these gains, by its use or else by its floor, shape (rooms,)."""
    shares = np.array([room.use_share for room in home.rooms], dtype=float)
    if shares.sum() <= 0.0:
        shares = np.array([room.floor_area for room in home.rooms])
    of_all: Floats = shares / shares.sum()
    return of_all
