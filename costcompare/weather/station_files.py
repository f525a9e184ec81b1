"""The three published formats of station years: EPW, TMY3 and TMY2, read with pvlib.

Each format stamps its hours in its own way: EPW and TMY2, as pvlib gives them, by the
beginning of the hour, TMY3 by its end. All come out as hour beginnings. A typical year is
put together from months of many years; only month, day and hour are kept.
"""

from __future__ import annotations

import io
import re
import tempfile
import warnings
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import numpy as np
import pandas as pd
from pvlib import iotools

from costcompare.errors import Fault, WeatherError
from costcompare.weather.draft import Draft
from costcompare.weather.sky import sky_temperature_from_infrared

TENTHS = 0.1
HECTOPASCAL = 100.0

# The lowest number that stands for "no value" in a column, by the manual of each format.
_EPW_MISSING = {
    "temp_air": 99.9,
    "relative_humidity": 999.0,
    "atmospheric_pressure": 999_999.0,
    "ghi_infrared": 9999.0,
    "ghi": 9999.0,
    "dni": 9999.0,
    "dhi": 9999.0,
    "wind_speed": 999.0,
    "opaque_sky_cover": 99.0,
    "total_sky_cover": 99.0,
}
_TMY2_MISSING = {
    "DryBulb": 9999.0,
    "RHum": 999.0,
    "Pressure": 9999.0,
    "GHI": 9999.0,
    "DNI": 9999.0,
    "DHI": 9999.0,
    "Wspd": 999.0,
    "OpqCld": 99.0,
    "TotCld": 99.0,
}
_LOWEST = -900.0
"""TMY3 writes -9900 where there is no value, and nothing real in any format lies below this."""

_TMY2_STATION = re.compile(
    r"^ (?P<number>\d{5}) (?P<city>.{22}) (?P<state>[A-Z]{2})"
    r"(?P<rest> +-?\d+ +[NS] +\d+ +\d+ +[EW] +\d+ +\d+ +-?\d+)\s*$"
)


def is_epw(lines: list[str]) -> bool:
    """True where the first line is the place line of an EPW file."""
    return lines[0].upper().startswith("LOCATION,")


def is_tmy3(lines: list[str]) -> bool:
    """True where the second line names TMY3's date and time columns."""
    return len(lines) > 1 and lines[1].startswith("Date (MM/DD/YYYY),Time (HH:MM)")


def is_tmy2(lines: list[str]) -> bool:
    """True where the first line is the station line of a TMY2 file."""
    return _TMY2_STATION.match(lines[0]) is not None


def epw_draft(text: str, path: Path) -> Draft:
    """An EPW file; its horizontal infrared gives the sky temperature."""
    data, meta = _read(lambda: iotools.read_epw(io.StringIO(text)), path, "an EPW")
    column = _columns(data, _EPW_MISSING)
    return Draft(
        columns={
            "temperature_degc": column("temp_air"),
            "relative_humidity": column("relative_humidity") / 100.0,
            "wind_speed_m_s": column("wind_speed"),
            "pressure_pa": column("atmospheric_pressure"),
            "ghi_w_m2": column("ghi"),
            "dni_w_m2": column("dni"),
            "dhi_w_m2": column("dhi"),
            "sky_temperature_degc": sky_temperature_from_infrared(column("ghi_infrared")),
        },
        hours=_local(data),
        latitude=meta["latitude"],
        longitude=meta["longitude"],
        elevation=meta["altitude"],
        utc_offset_hours=meta["TZ"],
        station=_named(meta["city"], meta["state-prov"]),
        file=path.name,
        cloud=_cloud(column("opaque_sky_cover"), column("total_sky_cover")),
    )


def tmy3_draft(text: str, path: Path) -> Draft:
    """A TMY3 file; stamps are moved from the end of the hour to its beginning."""
    data, meta = _read(lambda: iotools.read_tmy3(io.StringIO(text)), path, "a TMY3")
    column = _columns(data, {})
    return Draft(
        columns={
            "temperature_degc": column("temp_air"),
            "relative_humidity": column("relative_humidity") / 100.0,
            "wind_speed_m_s": column("wind_speed"),
            "pressure_pa": column("pressure") * HECTOPASCAL,
            "ghi_w_m2": column("ghi"),
            "dni_w_m2": column("dni"),
            "dhi_w_m2": column("dhi"),
        },
        hours=_tmy3_hours(data),
        latitude=meta["latitude"],
        longitude=meta["longitude"],
        elevation=meta["altitude"],
        utc_offset_hours=meta["TZ"],
        station=_named(meta["Name"], meta["State"]),
        file=path.name,
        cloud=_cloud(column("OpqCld (tenths)"), column("TotCld (tenths)")),
    )


def tmy2_draft(text: str, path: Path) -> Draft:
    """A TMY2 file; temperatures and wind stand in tenths there."""
    first, _, rest = text.partition("\n")
    station = _TMY2_STATION.match(first)
    assert station is not None  # is_tmy2() said so
    # pvlib splits this line at blanks, which fails on a name of two words, and opens this
    # format by the name of a file alone.
    head = f" {station['number']} NAME {station['state']}{station['rest']}"
    with tempfile.TemporaryDirectory() as folder:
        plain = Path(folder) / "year.tm2"
        plain.write_text(f"{head}\n{rest}", encoding="utf-8")
        data, meta = _read(lambda: iotools.read_tmy2(str(plain)), path, "a TMY2")
    column = _columns(data, _TMY2_MISSING)
    return Draft(
        columns={
            "temperature_degc": column("DryBulb") * TENTHS,
            "relative_humidity": column("RHum") / 100.0,
            "wind_speed_m_s": column("Wspd") * TENTHS,
            "pressure_pa": column("Pressure") * HECTOPASCAL,
            "ghi_w_m2": column("GHI"),
            "dni_w_m2": column("DNI"),
            "dhi_w_m2": column("DHI"),
        },
        hours=_local(data),
        latitude=meta["latitude"],
        longitude=meta["longitude"],
        elevation=meta["altitude"],
        utc_offset_hours=float(meta["TZ"]),
        station=_named(station["city"], station["state"]),
        file=path.name,
        cloud=_cloud(column("OpqCld"), column("TotCld")),
    )


def _read(
    reader: Callable[[], tuple[pd.DataFrame, dict[str, Any]]], path: Path, kind: str
) -> tuple[pd.DataFrame, dict[str, Any]]:
    """pvlib's answer, or a :class:`WeatherError` where the file breaks its own format."""
    try:
        with warnings.catch_warnings():
            # A damaged file mixes words into a column; the check of that column says so.
            warnings.simplefilter("ignore", pd.errors.DtypeWarning)
            return reader()
    except (ValueError, KeyError, IndexError, TypeError, AttributeError, OverflowError) as reason:
        rule = f"begins like {kind} file but goes on differently"
        given = f"{type(reason).__name__}: {reason}"[:200]
        instead = "the file as it was published, not edited or cut"
        raise WeatherError([Fault(path.name, rule, given, instead)]) from reason


def _local(data: pd.DataFrame) -> pd.DatetimeIndex:
    return pd.DatetimeIndex(data.index).tz_localize(None)


def _tmy3_hours(data: pd.DataFrame) -> pd.DatetimeIndex:
    """Hour beginnings from the file's own date and hour (1 to 24, the end of the hour).

    Not from pvlib's index: in a leap year it makes 1 March of the end of 28 February.
    """
    clock = data["Time (HH:MM)"].str.extract(r"^\s*(\d+):(\d+)").astype(float)
    days = pd.to_datetime(data["Date (MM/DD/YYYY)"], format="%m/%d/%Y", errors="coerce")
    begin = pd.to_timedelta(60.0 * (clock[0] - 1.0) + clock[1], unit="min")
    return pd.DatetimeIndex(pd.Series(days.to_numpy() + begin.to_numpy()))


def _columns(data: pd.DataFrame, missing: Mapping[str, float]) -> Callable[[str], np.ndarray]:
    """A function that gives a column as numbers, nan where it has none or is not there."""

    def column(name: str) -> np.ndarray:
        if name not in data:
            return np.full(len(data), np.nan)
        values = pd.to_numeric(data[name], errors="coerce").to_numpy(dtype=float)
        absent = (values <= _LOWEST) | (values >= missing.get(name, np.inf))
        return np.where(absent, np.nan, values)

    return column


def _cloud(opaque_tenths: np.ndarray, total_tenths: np.ndarray) -> np.ndarray:
    """Share of the sky under clouds one cannot see through, or under any where that is missing."""
    tenths = np.where(np.isfinite(opaque_tenths), opaque_tenths, total_tenths)
    return np.asarray(tenths * TENTHS)


def _named(name: str, state: str) -> str:
    plain = name.replace('"', "").strip().title()
    return f"{plain}, {state.strip()}"
