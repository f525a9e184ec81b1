"""The table of stations and the search in it."""

from __future__ import annotations

import numpy as np
import pytest

from costcompare.errors import WeatherError
from costcompare.weather.stations import (
    CREDIT,
    FARTHEST,
    Station,
    all_stations,
    find_stations,
    nearest_station,
)

RANGES = {
    # field: lowest and highest monthly value that is taken as possible
    "temperature": (-35.0, 40.0),
    "daily_high": (-32.0, 45.0),
    "daily_low": (-38.0, 33.0),
    "day_spread": (0.1, 16.0),
    "degree_days_65f": (0.0, 3000.0),
    "dew_point": (-40.0, 28.0),
    "ghi": (0.0, 400.0),
    "dni": (0.0, 450.0),
    "dhi": (0.0, 160.0),
    "cloud": (0.0, 1.0),
    "wind_speed": (0.1, 20.0),
}


def test_the_table_is_whole() -> None:
    stations = all_stations()
    assert len(stations) == 1003
    assert len({station.usaf for station in stations}) == 1003
    assert len({station.state for station in stations}) == 50
    assert "Wilcox and Marion 2008" in CREDIT
    assert "not 30-year normals" in CREDIT


@pytest.mark.parametrize("name", list(RANGES))
def test_every_row_lies_in_its_range(name: str) -> None:
    low, high = RANGES[name]
    for station in all_stations():
        values = getattr(station.months, name)
        assert values.shape == (12,)
        assert low <= values.min(), station
        assert values.max() <= high, station


def test_every_place_lies_in_the_country() -> None:
    for station in all_stations():
        assert 18.0 < station.latitude < 72.0
        assert -180.0 < station.longitude < -66.0 or station.longitude > 172.0
        assert -50.0 < station.elevation < 3100.0
        assert station.utc_offset_hours in {-5.0, -6.0, -7.0, -8.0, -9.0, -10.0}
        assert station.name.strip()


def test_values_of_a_station_agree_with_each_other() -> None:
    for station in all_stations():
        months = station.months
        assert (months.daily_low <= months.temperature).all()
        assert (months.temperature <= months.daily_high).all()
        assert (months.dew_point <= months.temperature).all()
        assert (months.dhi <= months.ghi + 0.5).all()
        days = np.array([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31])
        least = days * np.maximum(65.0 - (1.8 * months.temperature + 32.0), 0.0)
        # days above 65 F add none and take none, so the mean alone gives the least
        assert (months.degree_days_65f > least - 0.6).all(), station


def test_units_come_in_as_si() -> None:
    (station,) = find_stations("bellingham wa")
    assert station.months.ghi[0] == pytest.approx(1.03 * 1000.0 / 24.0)
    assert station.months.cloud[0] == pytest.approx(0.692)
    assert station.label == "Bellingham Intl Ap, WA"


@pytest.mark.parametrize(
    ("latitude", "longitude", "name"),
    [
        (48.75, -122.48, "Bellingham Intl Ap"),
        (36.07, -79.79, "Greensboro Piedmont Triad Int"),
        (25.77, -80.19, "Miami Intl Ap"),
        (52.3, 179.9, "Adak Nas"),  # across the date line
    ],
)
def test_nearest(latitude: float, longitude: float, name: str) -> None:
    assert nearest_station(latitude, longitude).name == name


def test_distance_by_hand() -> None:
    (station,) = find_stations("bellingham wa")
    # one degree of latitude is pi / 180 x 6,371 km
    assert station.distance(station.latitude + 1.0, station.longitude) == pytest.approx(
        111_195.0, rel=1e-4
    )


def test_height_makes_a_station_farther() -> None:
    def height(station: Station) -> float:
        return station.elevation

    low, high = nearest_station(39.7, -105.6, 1600.0), nearest_station(39.7, -105.6, 2900.0)
    assert height(low) < height(high)


def test_far_away_there_is_none_and_what_to_do_is_said() -> None:
    with pytest.raises(WeatherError) as caught:
        nearest_station(48.8, 122.5)
    (fault,) = caught.value.faults
    assert fault.path == "site"
    assert fault.rule == f"no weather station lies within {FARTHEST / 1000:.0f} km"
    assert "Shemya Afb, AK" in fault.given
    assert 'weather.source = "file"' in fault.instead


def test_impossible_places_are_said_together() -> None:
    with pytest.raises(WeatherError) as caught:
        nearest_station(148.8, float("nan"))
    assert [fault.path for fault in caught.value.faults] == ["site.latitude", "site.longitude"]


def test_finding_by_words() -> None:
    assert [s.label for s in find_stations("denver, co")] == [
        "Denver Intl Ap, CO",
        "Denver/Centennial [Golden - Nrel], CO",
    ]
    assert {s.state for s in find_stations("wa")} == {"WA"}
    assert [s.name for s in find_stations("727976")] == ["Bellingham Intl Ap"]
    assert find_stations("atlantis") == ()
    assert find_stations("  ") == ()
