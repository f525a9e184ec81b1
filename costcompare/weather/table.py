"""The one hourly weather table that the rest of the program reads.

8,760 rows, fixed-offset standard time, each value the mean over the hour that begins at
the stamp. The 29th of February is dropped. :func:`checked` is the only way to make one.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta, timezone

import numpy as np
import pandas as pd

from costcompare.errors import Fault, WeatherError

HOURS = 8760
LEAP_HOURS = 8784

COLUMNS: dict[str, tuple[float, float]] = {
    "temperature_degc": (-70.0, 60.0),
    "relative_humidity": (0.0, 1.0),
    "wind_speed_m_s": (0.0, 60.0),
    "pressure_pa": (45_000.0, 110_000.0),
    "ghi_w_m2": (0.0, 1500.0),
    "dni_w_m2": (0.0, 1500.0),
    "dhi_w_m2": (0.0, 1200.0),
    "sky_temperature_degc": (-110.0, 60.0),
}
"""Columns in order, each with the lowest and highest value that is taken as possible."""

SOURCES = ("typical", "file", "measured")


@dataclass(frozen=True)
class Weather:
    """A checked year of weather and where it comes from."""

    table: pd.DataFrame
    """Columns of :data:`COLUMNS`; index is timezone-aware with a fixed offset"""
    latitude: float
    longitude: float
    elevation: float
    """[m]"""
    source: str
    """``typical`` (made from monthly normals), ``file`` or ``measured``"""
    station: str
    """Name of the station or of the file"""
    note: str = ""
    """What a reader should know: distance to the station, what was filled in"""

    def column(self, name: str) -> np.ndarray:
        """One column as a float array of 8,760 values."""
        return self.table[name].to_numpy(dtype=float)


def hours_of_year(calendar_year: int, utc_offset_hours: float) -> pd.DatetimeIndex:
    """The 8,760 hour beginnings of a year in standard time, 29 February left out."""
    zone = timezone(timedelta(hours=utc_offset_hours))
    first, last = f"{calendar_year}-01-01", f"{calendar_year}-12-31 23:00"
    hours = pd.date_range(first, last, freq="h", tz=zone)
    return hours[~is_leap_day(hours)]


def checked(
    frame: pd.DataFrame,
    *,
    latitude: float,
    longitude: float,
    elevation: float,
    source: str,
    station: str,
    note: str = "",
) -> Weather:
    """A frame as :class:`Weather`, or :class:`WeatherError` with everything that is wrong.

    ``frame`` has the columns of :data:`COLUMNS` (further ones are left out) and an index of
    hour beginnings in fixed-offset standard time from 1 January 00:00 to 31 December 23:00
    of one year. 8,784 rows of a leap year are taken and their 29 February dropped.
    """
    if isinstance(frame.index, pd.DatetimeIndex) and len(frame) == LEAP_HOURS:
        frame = frame[~is_leap_day(frame.index)]
    found = place_faults(latitude, longitude, elevation, source=source, station=station)
    found += table_faults(frame, station, tuple(COLUMNS))
    if found:
        raise WeatherError(found)
    return Weather(
        table=frame[list(COLUMNS)].astype(float),
        latitude=float(latitude),
        longitude=float(longitude),
        elevation=float(elevation),
        source=source,
        station=station,
        note=note,
    )


def is_leap_day(index: pd.DatetimeIndex) -> np.ndarray:
    """True in the hours of 29 February."""
    return np.asarray((index.month == 2) & (index.day == 29))


def table_faults(frame: pd.DataFrame, station: str, columns: Sequence[str]) -> list[Fault]:
    """What is wrong with the hours and with these columns of a frame; empty when nothing is."""
    found = _time_faults(frame.index, station)
    for name in columns:
        found += _column_faults(frame, name, station)
    return found


def place_faults(
    latitude: float, longitude: float, elevation: float, *, source: str, station: str
) -> list[Fault]:
    """What is wrong with the place and the source; empty when nothing is."""
    limits = (
        ("latitude", latitude, -90.0, 90.0, "degrees north"),
        ("longitude", longitude, -180.0, 180.0, "degrees east, negative in America"),
        ("elevation", elevation, -450.0, 6000.0, "metres above sea level"),
    )
    faults = [
        Fault(
            f"{station}: {name}",
            f"must lie between {low:g} and {high:g} ({unit})",
            given=f"{value:g}",
        )
        for name, value, low, high, unit in limits
        if not low <= value <= high
    ]
    if source not in SOURCES:
        faults.append(
            Fault(f"{station}: source", f"must be one of {', '.join(SOURCES)}", given=source)
        )
    return faults


def _time_faults(index: pd.Index, station: str) -> list[Fault]:
    where = f"{station}: time"
    if not isinstance(index, pd.DatetimeIndex):
        return [Fault(where, "must be dates with hours", given=f"{type(index).__name__}")]
    faults = []
    if len(index) != HOURS:
        faults.append(
            Fault(
                where,
                "must hold every hour of one year, 29 February left out",
                given=f"{len(index):,} rows; a year has {HOURS:,}",
            )
        )
    offset = None if index.tz is None else index.tz.utcoffset(None)
    if offset is None:
        given = "no offset" if index.tz is None else f"{index.tz}, which changes with the season"
        instead = "standard time all year with a fixed offset, for example 2027-01-01T00:00-08:00"
        return [*faults, Fault(where, "must have one fixed offset from UTC", given, instead)]
    if index.hasnans:
        empty = np.asarray(index.isna())
        first = int(np.argmax(empty)) + 1
        given = f"{int(empty.sum()):,} rows without one, the first row {first:,}"
        return [*faults, Fault(where, "must be a date and an hour in every row", given)]
    if len(index) == 0:
        return faults
    expected = hours_of_year(int(index[0].year), offset.total_seconds() / 3600.0)
    length = min(len(index), HOURS)
    wrong = np.flatnonzero(np.asarray(index[:length] != expected[:length]))
    if wrong.size:
        row = int(wrong[0])
        faults.append(
            Fault(
                where,
                "must go in steps of one hour from 1 January 00:00",
                given=f"row {row + 1:,} is {_stamp(index[row])}, expected {_stamp(expected[row])}",
            )
        )
    return faults


def _stamp(moment: pd.Timestamp) -> str:
    return moment.strftime("%Y-%m-%d %H:%M")


def _column_faults(frame: pd.DataFrame, name: str, station: str) -> list[Fault]:
    where = f"{station}: {name}"
    low, high = COLUMNS[name]
    if name not in frame.columns:
        return [Fault(where, "is missing", instead=f"a column of this name, {low:g} to {high:g}")]
    values = pd.to_numeric(frame[name], errors="coerce").to_numpy(dtype=float)
    faults = []
    empty = ~np.isfinite(values)
    if empty.any():
        faults.append(
            Fault(
                where,
                "must be a number in every hour",
                given=f"{int(empty.sum()):,} without one, the first {_row_text(frame, empty)}",
            )
        )
    outside = ~empty & ((values < low) | (values > high))
    if outside.any():
        first = values[int(np.argmax(outside))]
        hint = "a share such as 0.85 instead of 85" if name == "relative_humidity" else ""
        faults.append(
            Fault(
                where,
                f"must lie between {low:g} and {high:g}",
                given=f"{int(outside.sum()):,} outside, the first {first:g} "
                f"{_row_text(frame, outside)}",
                instead=hint,
            )
        )
    return faults


def _row_text(frame: pd.DataFrame, mask: np.ndarray) -> str:
    row = int(np.argmax(mask))
    moment = frame.index[row]
    when = f", {_stamp(moment)}" if isinstance(moment, pd.Timestamp) else ""
    return f"in row {row + 1:,}{when}"
