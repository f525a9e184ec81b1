"""Our own plain file: one line an hour, names with units, a few lines about the place on top.

    # latitude = 48.80
    # longitude = -122.54
    # elevation_m = 45
    # utc_offset_hours = -8
    # station = A made-up place
    time,temperature_degc,relative_humidity,wind_speed_m_s,pressure_pa,ghi_w_m2,...
    2027-01-01 00:00,4.1,0.86,2.3,100785,0,...

docs/weather.md describes it in full.
"""

from __future__ import annotations

import io
import re
from pathlib import Path

import numpy as np
import pandas as pd

from costcompare.errors import Fault, WeatherError
from costcompare.weather.draft import REQUIRED, Draft
from costcompare.weather.table import COLUMNS, SOURCES, Weather

PLACE = {
    "latitude": "degrees north, for example 48.80",
    "longitude": "degrees east, for example -122.54",
    "elevation_m": "metres above sea level, for example 45",
}
"""What the lines on top must say, each with what to write."""

OFFSET = "utc_offset_hours"

DECIMALS = {
    "temperature_degc": 2,
    "relative_humidity": 3,
    "wind_speed_m_s": 2,
    "pressure_pa": 0,
    "ghi_w_m2": 1,
    "dni_w_m2": 1,
    "dhi_w_m2": 1,
    "sky_temperature_degc": 2,
}
"""Digits after the point that a written file keeps"""

_HEADER = re.compile(r"^#\s*(?P<key>[A-Za-z_]+)\s*=\s*(?P<value>.*?)\s*$")
_STAMP_OFFSET = re.compile(r"(?P<offset>Z|[+-]\d{2}:?\d{2})$")


def is_plain(lines: list[str]) -> bool:
    """True where the first line that is no comment names our columns."""
    names = next((line for line in lines if line.strip() and not line.startswith("#")), "")
    found = {name.strip() for name in names.split(",")}
    return "time" in found and bool(found & set(COLUMNS))


def plain_draft(text: str, path: Path) -> Draft:
    """One of our own files, or :class:`WeatherError` with all that its lines on top lack."""
    head = _head(text)
    try:
        data = pd.read_csv(io.StringIO(text), comment="#", skipinitialspace=True, low_memory=False)
    except (pd.errors.ParserError, pd.errors.EmptyDataError) as reason:
        rule = "must have as many values in each line as the line of names has"
        raise WeatherError([Fault(path.name, rule, given=str(reason))]) from reason
    faults: list[Fault] = []
    place = {name: _number(head, name, path, faults=faults) for name in PLACE}
    missing = [name for name in REQUIRED if name not in data]
    faults += [
        Fault(f"{path.name}: {name}", "is missing", instead="a column of this name")
        for name in missing
    ]
    hours, offset = _hours(data["time"].astype(str), head, path, faults=faults)
    if faults:
        raise WeatherError(faults)
    return Draft(
        columns={
            name: pd.to_numeric(data[name], errors="coerce").to_numpy(dtype=float)
            for name in COLUMNS
            if name in data
        },
        hours=hours,
        latitude=place["latitude"],
        longitude=place["longitude"],
        elevation=place["elevation_m"],
        utc_offset_hours=offset,
        station=head.get("station") or path.name,
        file=path.name,
        source=head.get("source", "file") if head.get("source") in SOURCES else "file",
        notes=(head["note"],) if head.get("note") else (),
    )


def plain_text(weather: Weather) -> str:
    """The weather as the text of one of our own files."""
    hours = pd.DatetimeIndex(weather.table.index)
    offset = hours[0].utcoffset()
    assert offset is not None  # checked() makes no other
    head = {
        "latitude": f"{weather.latitude:g}",
        "longitude": f"{weather.longitude:g}",
        "elevation_m": f"{weather.elevation:g}",
        OFFSET: f"{offset.total_seconds() / 3600.0:g}",
        "station": weather.station,
        "source": weather.source,
        "note": " ".join(weather.note.split()),
    }
    columns = {"time": list(hours.strftime("%Y-%m-%d %H:%M"))}
    for name, digits in DECIMALS.items():
        columns[name] = [f"{value:.{digits}f}" for value in weather.column(name)]
    table = pd.DataFrame(columns).to_csv(index=False, lineterminator="\n")
    return "".join(f"# {key} = {value}\n" for key, value in head.items()) + table


def _head(text: str) -> dict[str, str]:
    head = {}
    for line in text.splitlines():
        if not line.startswith("#"):
            break
        if match := _HEADER.match(line):
            head[match["key"].lower()] = match["value"]
    return head


def _number(head: dict[str, str], name: str, path: Path, *, faults: list[Fault]) -> float:
    try:
        return float(head[name])
    except (KeyError, ValueError):
        faults.append(
            Fault(
                f"{path.name}: {name}",
                "must stand on top of the file as a number",
                given=head.get(name, ""),
                instead=f"a line '# {name} = ...' ({PLACE.get(name, 'hours from UTC')})",
            )
        )
        return float("nan")


def _hours(
    stamps: pd.Series, head: dict[str, str], path: Path, *, faults: list[Fault]
) -> tuple[pd.DatetimeIndex, float]:
    """Hours in standard time without zone, and the offset from the stamps or the lines on top."""
    where = f"{path.name}: time"
    stamps = stamps.str.strip()
    offsets = stamps.str.extract(_STAMP_OFFSET, expand=False).where(stamps.str.len() > 11)
    plain = stamps.where(offsets.isna(), stamps.str.replace(_STAMP_OFFSET, "", regex=True))
    moments = pd.to_datetime(plain, errors="coerce", format="ISO8601")
    if moments.isna().any():
        row = int(np.argmax(moments.isna().to_numpy()))
        faults.append(
            Fault(
                where,
                "must be a date and an hour in every line",
                given=f"{int(moments.isna().sum()):,} are not, the first '{stamps.iloc[row]}' in "
                f"row {row + 1:,}",
                instead='for example "2027-01-01 00:00"',
            )
        )
    kinds = offsets.unique()
    if len(kinds) > 1:
        faults.append(
            Fault(
                where,
                "must have one offset from UTC all year (standard time, no daylight-saving time)",
                given=", ".join(kind if isinstance(kind, str) else "none" for kind in kinds),
            )
        )
    if len(kinds) == 1 and isinstance(kinds[0], str):
        return pd.DatetimeIndex(moments), _offset_hours(kinds[0])
    return pd.DatetimeIndex(moments), _number(head, OFFSET, path, faults=faults)


def _offset_hours(text: str) -> float:
    if text == "Z":
        return 0.0
    sign = -1.0 if text[0] == "-" else 1.0
    return sign * (int(text[1:3]) + int(text[-2:]) / 60.0)
