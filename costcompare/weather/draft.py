"""What a file says of a year, before its gaps are filled and all of it is checked."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import timedelta, timezone

import numpy as np
import pandas as pd
from pvlib import atmosphere

from costcompare.errors import WeatherError
from costcompare.weather.clear_sky import ClearSky, clear_sky, daily_clearness, split
from costcompare.weather.humidity import dew_point
from costcompare.weather.sky import OPAQUE_SHARE, cloud_from_clearness, sky_temperature
from costcompare.weather.table import (
    COLUMNS,
    HOURS,
    Weather,
    checked,
    is_leap_day,
    place_faults,
    table_faults,
)

REQUIRED = ("temperature_degc", "relative_humidity", "wind_speed_m_s", "ghi_w_m2")
"""Columns that nothing can stand in for."""

CLOUD_WITHOUT_SUN = 0.6
"""Share of the sky under clouds where no day of the year has sun to tell it by (judgement)"""


@dataclass(frozen=True)
class Draft:
    """A year as a file tells it, in SI units, nan where the file has no value."""

    columns: Mapping[str, np.ndarray]
    """Columns of the weather table that the file has"""
    hours: pd.DatetimeIndex
    """Hour beginnings in standard time, without a time zone, of any year"""
    latitude: float
    longitude: float
    elevation: float
    utc_offset_hours: float
    station: str
    file: str
    """The file's name, for saying where a fault is"""
    source: str = "file"
    cloud: np.ndarray | None = None
    """Share of the sky under clouds one cannot see through, where the file has it"""
    notes: tuple[str, ...] = ()


def finished(draft: Draft, calendar_year: int) -> Weather:
    """The draft moved to a calendar year, its gaps filled and said, and checked.

    Raises :class:`WeatherError` with every fault of what the file itself says. A year that
    begins on another day (a measured one from July to June) is put in calendar order.
    """
    frame, notes = _in_calendar_order(draft, calendar_year)
    place = (draft.latitude, draft.longitude, draft.elevation)
    given = [name for name in COLUMNS if name in frame or name in REQUIRED]
    partly = [name for name in given if name not in REQUIRED and bool(frame[name].isna().any())]
    found = place_faults(*place, source=draft.source, station=draft.file)
    found += table_faults(frame, draft.file, [name for name in given if name not in partly])
    if found:
        raise WeatherError(found)
    notes += _fill(frame, draft)
    return checked(
        frame,
        latitude=draft.latitude,
        longitude=draft.longitude,
        elevation=draft.elevation,
        source=draft.source,
        station=draft.station,
        note="; ".join([*draft.notes, *notes]),
    )


def _in_calendar_order(draft: Draft, calendar_year: int) -> tuple[pd.DataFrame, list[str]]:
    """The columns (and ``cloud``) on the hours of the year asked for, from 1 January on."""
    frame = pd.DataFrame(dict(draft.columns), index=draft.hours).astype(float)
    frame["cloud"] = np.nan if draft.cloud is None else draft.cloud
    frame = frame[~is_leap_day(draft.hours)]
    at = pd.DatetimeIndex(frame.index)
    notes = []
    first = np.flatnonzero((at.month == 1) & (at.day == 1) & (at.hour == 0))
    if first.size and first[0] > 0 and len(frame) == HOURS:
        frame = pd.concat([frame.iloc[first[0] :], frame.iloc[: first[0]]])
        at = pd.DatetimeIndex(frame.index)
        notes.append(f"measured from {draft.hours[0]:%d %B %Y} on, put in calendar order")
    parts = {"year": calendar_year, "month": at.month, "day": at.day, "hour": at.hour}
    moved = pd.DatetimeIndex(pd.to_datetime(pd.DataFrame(parts | {"minute": at.minute})))
    zone = timezone(timedelta(hours=draft.utc_offset_hours))
    return frame.set_axis(moved.tz_localize(zone)), notes


def _fill(frame: pd.DataFrame, draft: Draft) -> list[str]:
    """Put values where the file has none; what was put where, in words."""
    if not any(_missing(frame, name).any() for name in COLUMNS):
        return []
    sky = clear_sky(
        pd.DatetimeIndex(frame.index),
        latitude=draft.latitude,
        longitude=draft.longitude,
        elevation=draft.elevation,
    )
    notes = _put(
        frame, "pressure_pa", _pressure(draft.elevation), what="air pressure from the height"
    )
    ghi = frame["ghi_w_m2"].to_numpy()
    parts = split(ghi, sky)
    either = _missing(frame, "dni_w_m2") | _missing(frame, "dhi_w_m2")
    for name, values in (("dni_w_m2", parts.dni), ("dhi_w_m2", parts.dhi)):
        frame[name] = np.where(either, values, frame.get(name, np.nan))
    if either.any():
        notes.append(f"beam and diffuse sun from the level sun {_in_hours(either)}")
    return notes + _put(
        frame,
        "sky_temperature_degc",
        _sky_temperature(frame, ghi, sky),
        what="sky temperature from humidity and clouds",
    )


def _missing(frame: pd.DataFrame, name: str) -> np.ndarray:
    if name not in frame:
        return np.ones(len(frame), dtype=bool)
    return frame[name].isna().to_numpy()


def _put(frame: pd.DataFrame, name: str, values: np.ndarray | float, *, what: str) -> list[str]:
    missing = _missing(frame, name)
    if not missing.any():
        return []
    frame[name] = np.where(missing, values, frame.get(name, np.nan))
    return [f"{what} {_in_hours(missing)}"]


def _in_hours(missing: np.ndarray) -> str:
    return "in every hour" if missing.all() else f"in {int(missing.sum()):,} hours"


def _pressure(elevation: float) -> float:
    return float(atmosphere.alt2pres(elevation))


def _sky_temperature(frame: pd.DataFrame, ghi: np.ndarray, sky: ClearSky) -> np.ndarray:
    """[degC]; clouds as the file has them, else from each day's share of the cloudless sun."""
    by_sun = pd.Series(OPAQUE_SHARE * cloud_from_clearness(daily_clearness(ghi, sky)))
    daily = by_sun.interpolate(limit_direction="both").fillna(CLOUD_WITHOUT_SUN).to_numpy()
    temperature = frame["temperature_degc"].to_numpy()
    return sky_temperature(
        temperature,
        dew_point(temperature, frame["relative_humidity"].to_numpy()),
        frame["cloud"].fillna(pd.Series(np.repeat(daily, 24), index=frame.index)).to_numpy(),
        hour=sky.hours.hour.to_numpy() + 0.5,
        pressure=frame["pressure_pa"].to_numpy(),
    )
