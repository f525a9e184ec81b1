"""Air that fans and a fire take out of the rooms hour by hour, and the heat of the fire.

Fans follow the family's clock; their electricity is part of the other use. The draught of a
fire is taken as steady while it burns and as nothing when it is out: what a warm chimney or an
open damper draws afterwards is part of the leakage with a flue.
"""

from __future__ import annotations

from functools import lru_cache

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from costcompare.case.facts import ExhaustFan, Fireplace, Home
from costcompare.simulation.clock import Same, local_clock

Floats = NDArray[np.float64]

FIRE_RADIANT_SHARE = 0.8
"""Share of a fire's heat that warms surfaces first (judgement: an open fire mostly radiates)"""


def extraction(home: Home, index: pd.DatetimeIndex) -> Floats:
    """Air taken out of each room [m3/s], shape (hours, rooms); homes of like fans share it."""
    rooms = tuple(room.name for room in home.rooms)
    return _taken(tuple(home.house.fans), home.fireplace, rooms, home.site.time_zone, Same(index))


@lru_cache(maxsize=8)
def _taken(
    fans: tuple[ExhaustFan, ...],
    fire: Fireplace | None,
    rooms: tuple[str, ...],
    time_zone: str,
    key: Same,
) -> Floats:
    index = key.item
    assert isinstance(index, pd.DatetimeIndex)
    clock = local_clock(index, time_zone).hour
    taken = np.zeros((len(index), len(rooms)))
    for fan in fans:
        taken[:, rooms.index(fan.room)] += fan.airflow * np.array(fan.hours, dtype=float)[clock]
    if fire is not None:
        taken[:, rooms.index(fire.room)] += fire.draught * burning(fire, time_zone, index)
    return taken


def fire_heat(fire: Fireplace, time_zone: str, index: pd.DatetimeIndex) -> Floats:
    """Heat of the fire into its room [W], shape (hours,)."""
    return fire.heat * burning(fire, time_zone, index).astype(float)


def burning(fire: Fireplace, time_zone: str, index: pd.DatetimeIndex) -> NDArray[np.bool_]:
    """Whether the fire burns in each hour."""
    local = local_clock(index, time_zone)
    by_hour = np.array(fire.hours)[local.hour]
    by_month = np.array(fire.months)[local.month]
    burns: NDArray[np.bool_] = by_hour & by_month & fire.used
    return burns
