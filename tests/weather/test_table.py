"""The checked weather table."""

from __future__ import annotations

from typing import Any

import numpy as np
import pandas as pd
import pytest

from costcompare.errors import WeatherError
from costcompare.weather.table import COLUMNS, HOURS, Weather, checked, hours_of_year


def make(frame: pd.DataFrame, **changes: Any) -> Weather:
    place: dict[str, Any] = {
        "latitude": 48.8,
        "longitude": -122.5,
        "elevation": 45.0,
        "source": "file",
        "station": "made.csv",
    }
    return checked(frame, **(place | changes))


def faults(frame: pd.DataFrame, **changes: Any) -> list[str]:
    with pytest.raises(WeatherError) as caught:
        make(frame, **changes)
    return [fault.sentence() for fault in caught.value.faults]


def test_a_good_frame_is_taken_as_it_is(plain_frame: pd.DataFrame) -> None:
    weather = make(plain_frame.assign(further=1.0))
    assert list(weather.table.columns) == list(COLUMNS)
    assert weather.column("temperature_degc").shape == (HOURS,)
    assert weather.station == "made.csv"


def test_the_leap_day_is_dropped(plain_frame: pd.DataFrame) -> None:
    hours = pd.date_range("2028-01-01", "2028-12-31 23:00", freq="h", tz="Etc/GMT+8")
    leap = pd.DataFrame({name: plain_frame[name].iloc[0] for name in COLUMNS}, index=hours)
    leap.loc[(hours.month == 2) & (hours.day == 29), "temperature_degc"] = 55.0
    weather = make(leap)
    assert len(weather.table) == HOURS
    assert weather.column("temperature_degc").max() == 10.0


def test_a_missing_hour_is_said_with_both_numbers(plain_frame: pd.DataFrame) -> None:
    assert "8,759 rows; a year has 8,760" in faults(plain_frame.iloc[:-1])[0]


def test_a_doubled_hour_is_found(plain_frame: pd.DataFrame) -> None:
    index = plain_frame.index.to_series()
    index.iloc[100] = index.iloc[99]
    assert faults(plain_frame.set_axis(pd.DatetimeIndex(index))) == [
        "made.csv: time: must go in steps of one hour from 1 January 00:00 "
        "(given: row 101 is 2027-01-05 03:00, expected 2027-01-05 04:00)."
    ]


def test_half_hours_are_refused(plain_frame: pd.DataFrame) -> None:
    late = plain_frame.set_axis(plain_frame.index + pd.Timedelta(minutes=30))
    assert "row 1 is 2027-01-01 00:30" in faults(late)[0]


@pytest.mark.parametrize("zone", [None, "America/Los_Angeles"])
def test_the_offset_must_be_fixed(plain_frame: pd.DataFrame, zone: str | None) -> None:
    hours = pd.date_range("2027-01-01", periods=HOURS, freq="h", tz=zone)
    assert "must have one fixed offset from UTC" in faults(plain_frame.set_axis(hours))[0]


def test_every_fault_is_reported_at_once(plain_frame: pd.DataFrame) -> None:
    frame = plain_frame.drop(columns="pressure_pa").iloc[:-1]
    frame["relative_humidity"] = 85.0
    frame.iloc[5, 0] = np.nan
    found = faults(frame, latitude=99.0, source="guess")
    assert [text.split(" (")[0].split(". ")[0] for text in found] == [
        "made.csv: latitude: must lie between -90 and 90",
        "made.csv: source: must be one of typical, file, measured",
        "made.csv: time: must hold every hour of one year, 29 February left out",
        "made.csv: temperature_degc: must be a number in every hour",
        "made.csv: relative_humidity: must lie between 0 and 1",
        "made.csv: pressure_pa: is missing",
    ]
    assert "first in row 6, 2027-01-01 05:00" in found[3]
    assert "a share such as 0.85 instead of 85" in found[4]


@pytest.mark.parametrize("name", list(COLUMNS))
@pytest.mark.parametrize("end", [0, 1])
def test_every_column_has_a_lowest_and_a_highest_value(
    plain_frame: pd.DataFrame, name: str, end: int
) -> None:
    beyond = COLUMNS[name][end] + (1.0 if end else -1.0)
    frame = plain_frame.astype(float)
    frame.iloc[7, list(COLUMNS).index(name)] = beyond
    (found,) = faults(frame)
    assert f"1 outside, the first {beyond:g} in row 8" in found


def test_words_in_a_column_count_as_no_number(plain_frame: pd.DataFrame) -> None:
    frame = plain_frame.astype({"temperature_degc": object})
    frame.iloc[3, 0] = "cold"
    assert "1 without one, the first in row 4" in faults(frame)[0]


def test_an_index_without_dates_is_refused(plain_frame: pd.DataFrame) -> None:
    assert "must be dates with hours" in faults(plain_frame.reset_index(drop=True))[0]


def test_the_hours_of_a_year_begin_and_end_in_it() -> None:
    for year in (2027, 2028):
        hours = hours_of_year(year, -3.5)
        assert len(hours) == HOURS
        assert hours[0].isoformat() == f"{year}-01-01T00:00:00-03:30"
        assert hours[-1].isoformat() == f"{year}-12-31T23:00:00-03:30"
