"""The local civil clock of a year of standard-time hours."""

from __future__ import annotations

from datetime import date

import numpy as np
import pandas as pd
import pytest

from costcompare.billing.clock import civil_hours, standard_hours


def year_index(year: int, offset: str) -> pd.DatetimeIndex:
    hours = pd.date_range(f"{year}-01-01", periods=8784, freq="h", tz=offset)
    leap_day = (hours.month == 2) & (hours.day == 29)
    return hours[~leap_day][:8760]


def test_months_have_743_and_721_hours_where_clocks_change() -> None:
    clock = civil_hours(year_index(2026, "-05:00"), "America/New_York")
    hours = np.bincount(clock.month, minlength=12)
    assert hours[2] == 743
    assert hours[10] == 721
    assert hours.sum() == 8760
    assert hours[0] == 744


def test_a_summer_hour_is_labelled_by_the_clock_on_the_wall() -> None:
    index = year_index(2026, "-05:00")
    clock = civil_hours(index, "America/New_York")
    july_first_six_standard = index.get_loc(pd.Timestamp("2026-07-01 06:00", tz="-05:00"))
    assert clock.hour[july_first_six_standard] == 7
    assert clock.weekday[july_first_six_standard] == 2  # 1 July 2026 is a Wednesday
    assert clock.day[july_first_six_standard] == date(2026, 7, 1).toordinal()


def test_the_same_hours_in_two_time_zones_are_not_mixed_up() -> None:
    index = year_index(2026, "-07:00")
    july_first = index.get_loc(pd.Timestamp("2026-07-01 06:00", tz="-07:00"))
    hours = [
        civil_hours(index, f"America/{city}").hour[july_first] for city in ("Denver", "Phoenix")
    ]
    assert hours == [7, 6]
    # The same instants under another offset are other stamps.
    moved = index.tz_convert("-06:00")
    assert standard_hours(index).hour[july_first] == 6
    assert standard_hours(moved).hour[july_first] == 7
    assert standard_hours(index).month[[0, -1]].tolist() == [0, 11]


def test_the_last_standard_hour_of_june_belongs_to_july() -> None:
    index = year_index(2026, "-05:00")
    clock = civil_hours(index, "America/New_York")
    last = index.get_loc(pd.Timestamp("2026-06-30 23:00", tz="-05:00"))
    assert (clock.month[last], clock.hour[last]) == (6, 0)


@pytest.mark.parametrize(
    ("offset", "zone", "edge", "month", "hour"),
    [
        # Summer time at the turn of the year: the last standard hour is 0 h of next January.
        ("+10:00", "Australia/Sydney", -1, 11, 0),
        # A file stamped an hour east of the zone: its first hour is 23 h of last December.
        ("-05:00", "America/Chicago", 0, 0, 23),
    ],
)
def test_an_hour_outside_the_year_stays_in_its_own_month(
    offset: str, zone: str, edge: int, month: int, hour: int
) -> None:
    clock = civil_hours(year_index(2026, offset), zone)
    assert clock.month[edge] == month
    assert clock.hour[edge] == hour
    assert np.bincount(clock.month, minlength=12).sum() == 8760


def test_a_leap_year_without_its_leap_day_keeps_twelve_months() -> None:
    clock = civil_hours(year_index(2028, "-05:00"), "America/New_York")
    assert np.bincount(clock.month, minlength=12)[1] == 28 * 24


def test_a_year_that_begins_in_july_keeps_its_months() -> None:
    index = pd.date_range("2025-07-01", periods=8760, freq="h", tz="-05:00")
    hours = np.bincount(civil_hours(index, "America/New_York").month, minlength=12)
    assert hours[11] == hours[0] == 744
    assert hours.sum() == 8760


def test_hours_without_an_offset_are_refused() -> None:
    index = pd.date_range("2026-01-01", periods=8760, freq="h")
    with pytest.raises(ValueError, match="fixed offset"):
        civil_hours(index, "America/New_York")
