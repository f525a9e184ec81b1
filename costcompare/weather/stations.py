"""Weather stations of the United States and their monthly normals.

The table in ``data/us_monthly_normals.csv.gz`` holds 1,003 stations. Its monthly values were
worked out from the US government's TMY3 data set (Wilcox and Marion 2008, Users Manual for
TMY3 Data Sets, NREL/TP-581-43156). They are months of typical years, not 30-year normals.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cache
from importlib import resources

import numpy as np
import pandas as pd

from costcompare.errors import Fault, WeatherError

CREDIT = (
    "months of typical years from the US government's TMY3 data set (Wilcox and Marion 2008, "
    "NREL/TP-581-43156), not 30-year normals"
)
"""To be shown wherever the table or what is made from it is shown."""

EARTH_RADIUS = 6_371_000.0
"""[m], mean"""

FARTHEST = 300_000.0
"""[m] A place farther than this from every station is not served (judgement)."""

METRES_PER_METRE_OF_HEIGHT = 100.0
"""[m/m] A station 100 m higher or lower counts as 10 km farther away (judgement)."""

_TABLE = "us_monthly_normals.csv.gz"
_FIELDS = {
    "temperature": "t_mean_c",
    "daily_high": "t_max_c",
    "daily_low": "t_min_c",
    "day_spread": "t_sd_daily_c",
    "degree_days_65f": "hdd65f",
    "dew_point": "dewpoint_c",
    "ghi": "ghi_kwh_m2_d",
    "dni": "dni_kwh_m2_d",
    "dhi": "dhi_kwh_m2_d",
    "cloud": "cloud_tenths",
    "wind_speed": "wind_m_s",
}
"""Fields of :class:`Normals` and the columns of the table they come from"""

_PER_UNIT = {"ghi": 1000.0 / 24.0, "dni": 1000.0 / 24.0, "dhi": 1000.0 / 24.0, "cloud": 0.1}
"""kWh/(m2 day) to W/m2; tenths to a share"""


@dataclass(frozen=True, eq=False)
class Normals:
    """Monthly values of a typical year, each an array of 12, January first."""

    temperature: np.ndarray
    """Mean [degC]"""
    daily_high: np.ndarray
    """Mean of the daily highest hours [degC]"""
    daily_low: np.ndarray
    """Mean of the daily lowest hours [degC]"""
    day_spread: np.ndarray
    """Standard deviation of the daily means within the month [K]"""
    degree_days_65f: np.ndarray
    """Heating degree days under 65 F, from daily means of hours [F day]"""
    dew_point: np.ndarray
    """Mean [degC]"""
    ghi: np.ndarray
    """Level sun, mean over day and night [W/m2]"""
    dni: np.ndarray
    """Sun straight on, mean over day and night [W/m2]"""
    dhi: np.ndarray
    """Level diffuse sun, mean over day and night [W/m2]"""
    cloud: np.ndarray
    """Share of the sky under clouds"""
    wind_speed: np.ndarray
    """Mean [m/s]"""


@dataclass(frozen=True)
class Station:
    """A place with monthly normals."""

    usaf: str
    """Station number of the US Air Force catalogue"""
    name: str
    state: str
    latitude: float
    longitude: float
    elevation: float
    """[m]"""
    utc_offset_hours: float
    """Standard time"""
    months: Normals = field(compare=False, repr=False)

    @property
    def label(self) -> str:
        """Name and state: ``Bellingham Intl Ap, WA``."""
        return f"{self.name}, {self.state}"

    def distance(self, latitude: float, longitude: float) -> float:
        """Great-circle distance to a place [m]."""
        here = np.array([self.latitude, self.longitude])
        return float(_distances(here[:1], here[1:], latitude=latitude, longitude=longitude)[0])


@cache
def all_stations() -> tuple[Station, ...]:
    """Every station of the table, in the order of their numbers."""
    source = resources.files("costcompare") / "data" / _TABLE
    with source.open("rb") as packed:
        table = pd.read_csv(packed, compression="gzip", dtype={"usaf": str})
    table = table.sort_values(["usaf", "month"], kind="stable")
    values = {
        name: table[column].to_numpy(dtype=float).reshape(-1, 12) * _PER_UNIT.get(name, 1.0)
        for name, column in _FIELDS.items()
    }
    first = table.iloc[::12]
    place = first[["lat", "lon", "elev", "tz"]].to_numpy(dtype=float)
    names = zip(first["usaf"], first["name"], first["state"], strict=True)
    return tuple(
        Station(
            usaf=str(usaf),
            name=str(name).title(),
            state=str(state),
            latitude=float(place[row, 0]),
            longitude=float(place[row, 1]),
            elevation=float(place[row, 2]),
            utc_offset_hours=float(place[row, 3]),
            months=Normals(**{name: block[row] for name, block in values.items()}),
        )
        for row, (usaf, name, state) in enumerate(names)
    )


def nearest_station(latitude: float, longitude: float, elevation: float | None = None) -> Station:
    """The station closest to a place, by distance and, where given, by height.

    ``elevation`` [m] adds 100 m of distance for each metre that the station lies higher or
    lower. Raises :class:`WeatherError` where no station lies within 300 km.
    """
    faults = [
        Fault(f"site.{name}", f"must lie between {-limit:g} and {limit:g} degrees", f"{value:g}")
        for name, value, limit in (("latitude", latitude, 90.0), ("longitude", longitude, 180.0))
        if not -limit <= value <= limit
    ]
    if faults:
        raise WeatherError(faults)
    stations = all_stations()
    places = np.array([(s.latitude, s.longitude, s.elevation) for s in stations])
    distance = _distances(places[:, 0], places[:, 1], latitude=latitude, longitude=longitude)
    if distance.min() > FARTHEST:
        closest = stations[int(np.argmin(distance))]
        raise WeatherError(
            [
                Fault(
                    "site",
                    f"no weather station lies within {FARTHEST / 1000.0:.0f} km",
                    given=f"{latitude:g}, {longitude:g}; the closest is {closest.label}, "
                    f"{distance.min() / 1000.0:,.0f} km away",
                    instead='weather.source = "file" with a weather file of the place '
                    "(EPW, TMY3, TMY2 or CSV), or check the signs: west is negative",
                )
            ]
        )
    apart = 0.0 if elevation is None else np.abs(places[:, 2] - elevation)
    farther = distance + METRES_PER_METRE_OF_HEIGHT * apart
    farther[distance > FARTHEST] = np.inf
    return stations[int(np.argmin(farther))]


def find_stations(text: str) -> tuple[Station, ...]:
    """Stations whose name, state or number holds every word of ``text``, by name.

    A word of two letters must be the state or a whole word of the name.
    """
    words = text.upper().replace(",", " ").split()
    found = [
        station for station in all_stations() if words and all(_holds(station, w) for w in words)
    ]
    return tuple(sorted(found, key=lambda station: (station.name, station.state)))


def _holds(station: Station, word: str) -> bool:
    name = station.name.upper()
    if len(word) <= 2:
        return word == station.state or word in name.split()
    return word in name or word == station.usaf


def _distances(
    latitudes: np.ndarray, longitudes: np.ndarray, *, latitude: float, longitude: float
) -> np.ndarray:
    """Great-circle distances [m] by the haversine formula."""
    there, here = np.radians(latitudes), np.radians(latitude)
    across = np.radians(longitudes - longitude)
    half = np.sin((there - here) / 2.0) ** 2
    half = half + np.cos(there) * np.cos(here) * np.sin(across / 2.0) ** 2
    return np.asarray(2.0 * EARTH_RADIUS * np.arcsin(np.sqrt(np.clip(half, 0.0, 1.0))))
