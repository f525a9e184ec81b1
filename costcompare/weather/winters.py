"""The same year with a milder or a colder winter."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from costcompare.weather.curve import MONTH_OF_HOUR
from costcompare.weather.table import Weather
from costcompare.weather.typical import WINTER_MONTHS


def with_winter(weather: Weather, shift: float) -> Weather:
    """The year with October to April warmer by ``shift`` [K]; the year itself for 0.

    The sky follows the air; humidity, wind and sun stay as they are.
    """
    if shift == 0.0:
        return weather
    moved = np.where(np.isin(MONTH_OF_HOUR, WINTER_MONTHS), shift, 0.0)
    table = weather.table.assign(
        temperature_degc=weather.column("temperature_degc") + moved,
        sky_temperature_degc=weather.column("sky_temperature_degc") + moved,
    )
    return replace(weather, table=table)
