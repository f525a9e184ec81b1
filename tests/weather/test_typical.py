"""Typical years made from monthly normals."""

from __future__ import annotations

import numpy as np
import pandas as pd
import pytest

from costcompare.errors import WeatherError
from costcompare.weather.curve import MONTH_OF_HOUR
from costcompare.weather.stations import Station, all_stations, find_stations
from costcompare.weather.table import Weather
from costcompare.weather.typical import WINTER_MONTHS, Winter, typical_year

PLACE = (48.8, -122.5)


@pytest.fixture(scope="module")
def year() -> Weather:
    return typical_year(*PLACE)


def test_the_same_arguments_make_the_same_year(year: Weather) -> None:
    pd.testing.assert_frame_equal(typical_year(*PLACE).table, year.table)


def test_another_seed_makes_another_year(year: Weather) -> None:
    other = typical_year(*PLACE, seed=1)
    assert np.abs(other.column("temperature_degc") - year.column("temperature_degc")).max() > 3.0


def test_what_a_reader_should_know_is_said(year: Weather) -> None:
    assert year.source == "typical"
    assert year.station == "Bellingham Intl Ap, WA"
    assert year.note.startswith(
        "made from the monthly normals of Bellingham Intl Ap, WA, 2 km away: months of typical "
        "years"
    )
    assert "NREL/TP-581-43156), not 30-year normals" in year.note


@pytest.mark.parametrize(("winter", "shift"), [("mild", 1.4), ("cold", -1.4)])
def test_a_mild_or_cold_winter(year: Weather, winter: Winter, shift: float) -> None:
    other = typical_year(*PLACE, winter=winter)
    moved = other.column("temperature_degc") - year.column("temperature_degc")
    in_winter = np.isin(MONTH_OF_HOUR, WINTER_MONTHS)
    np.testing.assert_allclose(moved[in_winter], shift, atol=1e-9)
    np.testing.assert_allclose(moved[~in_winter], 0.0, atol=1e-9)
    np.testing.assert_array_equal(other.column("ghi_w_m2"), year.column("ghi_w_m2"))
    np.testing.assert_array_equal(
        other.column("relative_humidity"), year.column("relative_humidity")
    )
    word = "warmer" if shift > 0 else "colder"
    assert (
        f"a {winter} winter: October to April 1.4 K (2.5 F) {word}, about one winter in ten"
        in other.note
    )


def test_height_makes_it_colder(year: Weather) -> None:
    high = typical_year(*PLACE, elevation=355.0)
    fell = year.column("temperature_degc") - high.column("temperature_degc")
    assert fell.mean() == pytest.approx(0.0065 * 310.0, abs=1e-6)
    assert "2.0 K (3.6 F) colder because the place lies 310 m higher" in high.note
    assert high.column("pressure_pa")[0] < year.column("pressure_pa")[0] - 3000.0
    assert high.elevation == 355.0


def test_a_lower_place_is_warmer() -> None:
    (denver,) = find_stations("denver intl")
    low = typical_year(denver.latitude, denver.longitude, denver.elevation - 100.0)
    assert "0.7 K (1.2 F) warmer because the place lies 100 m lower" in low.note


def test_a_leap_year_has_no_29_february() -> None:
    hours = pd.DatetimeIndex(typical_year(*PLACE, calendar_year=2028).table.index)
    assert set(hours.year) == {2028}
    assert not ((hours.month == 2) & (hours.day == 29)).any()


@pytest.mark.parametrize("station", all_stations()[::83], ids=lambda station: station.label)
def test_years_all_over_the_country_can_be_made(station: Station) -> None:
    made = typical_year(station.latitude, station.longitude)
    sky, air = made.column("sky_temperature_degc"), made.column("temperature_degc")
    assert (sky < air).mean() > 0.99
    assert (made.column("dhi_w_m2") <= made.column("ghi_w_m2") + 1e-6).all()


@pytest.mark.parametrize("name", ["selawik", "mount washington", "barrow w post"])
def test_the_hardest_places_can_be_made(name: str) -> None:
    (station,) = find_stations(name)
    made = typical_year(station.latitude, station.longitude, winter="cold")
    assert -70.0 < made.column("temperature_degc").min() < -30.0
    assert made.column("wind_speed_m_s").max() <= 45.0


def test_wrong_words_are_said_together() -> None:
    with pytest.raises(WeatherError) as caught:
        typical_year(*PLACE, winter="icy", seed=-1, calendar_year=27)  # type: ignore[arg-type]
    assert [fault.sentence() for fault in caught.value.faults] == [
        'weather.winter: must be one of typical, mild, cold (given: icy). Write "typical".',
        "weather.seed: must be a whole number from 0 on (given: -1).",
        "weather.calendar_year: must be a year from 1900 to 2200 (given: 27).",
    ]
