"""Daily temperatures from plain files: F or C by the header, highs and lows, hours, many years."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import numpy as np
import pytest

from costcompare.billing.daily_temperatures import DailyTemperatures
from costcompare.billing.temperature_files import read_daily_temperatures
from costcompare.errors import BillsError


def read(tmp_path: Path, text: str) -> DailyTemperatures | None:
    path = tmp_path / "days.csv"
    path.write_text(text, encoding="utf-8")
    return read_daily_temperatures(path)


@pytest.mark.parametrize(
    "text",
    [
        "date,mean temperature (F)\n2026-01-01,32\n2026-01-02,50\n",
        "Date;temp_degC\n01/01/2026;0,0\n01/02/2026;10,0\n",
        "DATE,TMAX (°F),TMIN (°F)\n2026-01-01,40,24\n2026-01-02,60,40\n",
        "day,avg temp f\n1/1/26,32.0\n1/2/26,50.0\n",
    ],
)
def test_days(tmp_path: Path, text: str) -> None:
    found = read(tmp_path, text)
    assert found is not None
    assert found.first == date(2026, 1, 1)
    assert found.degc == pytest.approx([0.0, 10.0])


def test_without_a_unit_what_is_hot_is_in_f_and_what_is_not_is_asked(tmp_path: Path) -> None:
    found = read(tmp_path, "date,temperature\n2026-01-01,32\n2026-07-01,77\n")
    assert found is not None
    assert found.degc[-1] == pytest.approx(25.0)
    with pytest.raises(BillsError, match="must say whether it is in F or C"):
        read(tmp_path, "date,temperature\n2026-01-01,32\n2026-01-02,40\n")


def test_hours_make_days_and_half_days_make_none(tmp_path: Path) -> None:
    lines = [f"2026-01-{day:02d} {hour:02d}:00,{day}" for day in (1, 2) for hour in range(24)]
    found = read(tmp_path, "\n".join(["time,temperature_degc,sky_temperature_degc", *lines[:34]]))
    assert found is not None
    assert found.degc == pytest.approx([1.0])


def test_a_year_that_says_it_is_typical_stands_for_any(tmp_path: Path) -> None:
    days = np.datetime64("2027-01-01") + np.arange(365)
    lines = [f"{day},5.0" for day in days]
    found = read(tmp_path, "\n".join(["# source = typical", "time,temperature_degc", *lines]))
    assert found is not None
    assert found.repeats


def test_other_files_are_not_taken(tmp_path: Path) -> None:
    assert read(tmp_path, "LOCATION,Somewhere\n1,2,3\n") is None
    assert read(tmp_path, "from,to,kwh\n2026-01-01,2026-02-01,3\n") is None
    with pytest.raises(BillsError, match="no place on earth"):
        read(tmp_path, "date,temp c\n2026-01-01,300\n2026-01-02,400\n")
    with pytest.raises(BillsError, match="no line with a day and a temperature"):
        read(tmp_path, "date,temp c\nx,y\n")
