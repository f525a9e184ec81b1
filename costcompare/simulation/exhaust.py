"""Air that fans and a fire take out of the rooms hour by hour, and the heat of the fire.

Fans follow the family's clock; their electricity is part of the other use. The draught of a
fire is taken as steady while it burns and as nothing when it is out: what a warm chimney or an
open damper draws afterwards is part of the leakage with a flue.
"""

from __future__ import annotations

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from costcompare.case.facts import Fireplace, Home
from costcompare.simulation.clock import local_clock

Floats = NDArray[np.float64]

FIRE_RADIANT_SHARE = 0.8
"""Share of a fire's heat that warms surfaces first (judgement: an open fire mostly radiates)"""


def extraction(home: Home, index: pd.DatetimeIndex) -> Floats:
    """Air taken out of each room [m3/s], shape (hours, rooms)."""
    clock = local_clock(index, home.site.time_zone).hour
    place = {room.name: number for number, room in enumerate(home.rooms)}
    taken = np.zeros((len(index), len(home.rooms)))
    for fan in home.house.fans:
        taken[:, place[fan.room]] += fan.airflow * np.array(fan.hours, dtype=float)[clock]
    if home.fireplace is not None:
        burns = burning(home.fireplace, home.site.time_zone, index)
        taken[:, place[home.fireplace.room]] += home.fireplace.draught * burns
    return taken


def fire_heat(home: Home, index: pd.DatetimeIndex) -> Floats:
    """Heat of the fire into each room [W], shape (hours, rooms)."""
    given = np.zeros((len(index), len(home.rooms)))
    fire = home.fireplace
    if fire is not None:
        number = next(n for n, room in enumerate(home.rooms) if room.name == fire.room)
        given[:, number] = fire.heat * burning(fire, home.site.time_zone, index)
    return given


def burning(fire: Fireplace, time_zone: str, index: pd.DatetimeIndex) -> NDArray[np.bool_]:
    """Whether the fire burns in each hour."""
    local = local_clock(index, time_zone)
    by_hour = np.array(fire.hours)[local.hour]
    by_month = np.array(fire.months)[local.month]
    burns: NDArray[np.bool_] = by_hour & by_month & fire.used
    return burns
