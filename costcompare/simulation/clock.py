"""The local clock of the hours of a year, worked out once a year and time zone."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import pandas as pd
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]


class Same:
    """An object as a key: equal to itself alone. It keeps the object, so its place stays its."""

    def __init__(self, item: object) -> None:
        self.item = item

    def __hash__(self) -> int:
        return id(self.item)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Same) and other.item is self.item


@dataclass(frozen=True)
class Clock:
    """The local clock of every hour."""

    hour: Ints
    """0 to 23"""
    month: Ints
    """0 for January"""
    day_of_year: Ints
    """Of the standard-time stamp, 1 for the first"""


def local_clock(index: pd.DatetimeIndex, time_zone: str) -> Clock:
    """Hour and month of the local clock of each standard-time stamp, once an index."""
    return _clock(Same(index), time_zone)


@lru_cache(maxsize=64)
def _clock(key: Same, time_zone: str) -> Clock:
    index = key.item
    assert isinstance(index, pd.DatetimeIndex)
    local = index.tz_convert(time_zone)
    return Clock(
        np.asarray(local.hour, dtype=np.int64),
        np.asarray(local.month, dtype=np.int64) - 1,
        np.asarray(index.day_of_year, dtype=np.int64),
    )
