"""The clock on the wall: which month, weekday and hour each hour of the year is locally.

The model runs in standard time all year. Tariffs, thermostat schedules and a family's day
follow the local civil clock, with daylight-saving time. An hour is labelled by its start.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import pandas as pd
from numpy.typing import ArrayLike, NDArray

WINTER = (11, 0, 1)
"""December to February, January being 0"""


@dataclass(frozen=True)
class CivilHours:
    """The local civil stamp of every hour, each an integer array of the index's length."""

    month: NDArray[np.int64]
    """0 for January to 11 for December"""
    weekday: NDArray[np.int64]
    """0 for Monday to 6 for Sunday"""
    hour: NDArray[np.int64]
    """0 to 23, the hour at which it begins"""
    day: NDArray[np.int64]
    """Proleptic ordinal of the date, as ``datetime.date.toordinal``"""

    @property
    def billing_day(self) -> NDArray[np.int64]:
        """``day``, but the nearest day of ``month`` where the local clock is in another month."""
        months = np.datetime64(0, "D") + (self.day - ORDINAL_OF_1970)
        strayed = months.astype("datetime64[M]").astype(np.int64) % 12 != self.month
        day = self.day.copy()
        for place in np.flatnonzero(strayed):
            day[place] += 1 if place < len(day) // 2 else -1
        return day

    @property
    def weekend(self) -> NDArray[np.bool_]:
        """Saturday or Sunday."""
        weekend: NDArray[np.bool_] = self.weekday >= 5
        return weekend


ORDINAL_OF_1970 = 719_163
"""``date(1970, 1, 1).toordinal()``: days between the two ways of counting."""


def civil_hours(index: pd.DatetimeIndex, time_zone: str) -> CivilHours:
    """The local civil month, weekday, hour and day of hours stamped in standard time.

    Parameters
    ----------
    index
        Hour-beginning stamps with a fixed offset.
    time_zone
        IANA name, for example ``America/New_York``.

    A year that begins at midnight of standard time may begin or end in another calendar
    year by the local clock. Such an hour keeps the month of its standard stamp, so that the
    twelve months add up to the year; weekday and hour are those of the local clock.
    """
    if index.tz is None:
        raise ValueError("the hours must carry a fixed offset from UTC")
    return _civil_hours(_Stamps(index), time_zone)


@dataclass(frozen=True)
class StandardHours:
    """The stamp of every hour in standard time, each an integer array of the index's length."""

    month: NDArray[np.int64]
    """0 for January to 11 for December"""
    hour: NDArray[np.int64]
    """0 to 23, the hour at which it begins"""


def standard_hours(index: pd.DatetimeIndex) -> StandardHours:
    """Month and hour of hour-beginning stamps as they stand there."""
    return _standard_hours(_Stamps(index))


class _Stamps:
    """An index as a key: the same hours are found again, whoever holds them."""

    def __init__(self, index: pd.DatetimeIndex) -> None:
        self.index = index
        self.content = (index.asi8.tobytes(), str(index.dtype))

    def __hash__(self) -> int:
        return hash(self.content)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Stamps) and other.content == self.content


@lru_cache(maxsize=32)
def _standard_hours(stamps: _Stamps) -> StandardHours:
    index = stamps.index
    return StandardHours(_shared(index.month - 1), _shared(index.hour))


@lru_cache(maxsize=32)
def _civil_hours(stamps: _Stamps, time_zone: str) -> CivilHours:
    index = stamps.index
    local = index.tz_convert(time_zone)
    wall = local.tz_localize(None)
    years = wall.year.to_numpy()
    outside = (years < index[0].year) | (years > index[-1].year)
    month = np.where(outside, index.month.to_numpy(), wall.month.to_numpy()) - 1
    days = wall.to_numpy().astype("datetime64[D]").astype(np.int64) + ORDINAL_OF_1970
    return CivilHours(
        month=_shared(month),
        weekday=_shared(wall.day_of_week),
        hour=_shared(wall.hour),
        day=_shared(days),
    )


def _shared(numbers: ArrayLike) -> NDArray[np.int64]:
    """Whole numbers that many hold at once, so that nobody may write on them."""
    found = np.array(numbers, dtype=np.int64)
    found.setflags(write=False)
    return found
