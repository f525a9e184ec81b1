"""Reading every kind of weather file, refusing others in words, writing our own."""

from __future__ import annotations

import gzip
from pathlib import Path

import numpy as np
import pandas as pd
import pytest

from costcompare.errors import InputError, OverwriteError, WeatherError
from costcompare.weather.files import read_weather, write_weather
from costcompare.weather.table import COLUMNS, HOURS, Weather

from .making import GREENSBORO, MIAMI, made_epw, sentences


@pytest.fixture(params=["TMY3", "TMY2", "EPW", "plain CSV", "gzipped"])
def any_file(
    request: pytest.FixtureRequest, plain: Weather, plain_frame: pd.DataFrame, tmp_path: Path
) -> Path:
    if request.param == "TMY3":
        return GREENSBORO
    if request.param == "TMY2":
        return MIAMI
    if request.param == "EPW":
        path = tmp_path / "no-telling-name"
        path.write_text(made_epw(plain_frame))
        return path
    path = tmp_path / ("year.csv.gz" if request.param == "gzipped" else "year.csv")
    write_weather(plain, path)
    return path


@pytest.mark.parametrize("calendar_year", [2027, 2028])
def test_every_format_gives_the_one_table(any_file: Path, calendar_year: int) -> None:
    weather = read_weather(any_file, calendar_year=calendar_year)
    assert list(weather.table.columns) == list(COLUMNS)
    assert len(weather.table) == HOURS
    hours = pd.DatetimeIndex(weather.table.index)
    assert set(hours.year) == {calendar_year}
    assert hours[0].hour == 0


def test_every_format_has_its_sun_in_the_right_hours(any_file: Path) -> None:
    # By the mean hour of the sun's light against noon at the place: an error of one hour in
    # the stamps shows as one hour here.
    weather = read_weather(any_file)
    hours = pd.DatetimeIndex(weather.table.index)
    middle = hours.hour.to_numpy() + 0.5
    offset = hours[0].utcoffset()
    assert offset is not None
    noon = 12.0 + offset.total_seconds() / 3600.0 - weather.longitude / 15.0
    light = weather.column("ghi_w_m2")
    assert np.average(middle, weights=light) == pytest.approx(noon, abs=0.45)


def test_a_gzipped_file_is_the_same_each_time(plain: Weather, tmp_path: Path) -> None:
    first, second = tmp_path / "one.csv.gz", tmp_path / "two.csv.gz"
    write_weather(plain, first)
    write_weather(plain, second)
    assert first.read_bytes() == second.read_bytes()


def test_nothing_is_overwritten_unless_asked(plain: Weather, plain_path: Path) -> None:
    plain_path.write_text("mine")
    with pytest.raises(OverwriteError, match="is there already and was not overwritten"):
        write_weather(plain, plain_path)
    assert plain_path.read_text() == "mine"
    write_weather(plain, plain_path, force=True)
    assert read_weather(plain_path).station == "A made-up place"


def test_writing_into_a_missing_folder_is_said(plain: Weather, tmp_path: Path) -> None:
    with pytest.raises(WeatherError, match="cannot be written"):
        write_weather(plain, tmp_path / "nowhere" / "year.csv")


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"\n\n",
        b"name,price\nhat,3\n",
        b"\x89PNG\r\n\x1a\n\x00\x00",
        b"LOCATION,a,b,c\n",
        b"LOCATION,Town,XX,USA,made,0,48,-122,-8,45\nnothing\n",
        b"1,x\nDate (MM/DD/YYYY),Time (HH:MM)\n",
        b" 12839 MIAMI                  FL  -5 N 25 48 W  80 16     2\n 62 1 1 1 short\n",
        b"time,temperature_degc\n",
        b"time,temperature_degc\n2027-01-01 00:00,4,5,6\n2027-01-01,1\n",
        b"\x1f\x8b damaged",
        gzip.compress(b"hello"),
    ],
)
def test_what_is_no_weather_is_refused_in_words(content: bytes, tmp_path: Path) -> None:
    path = tmp_path / "thing.epw"
    path.write_bytes(content)
    for text in sentences(path):
        assert text.startswith("thing.epw")
        assert "Traceback" not in text


@pytest.mark.parametrize("missing", ["no-such-file.csv", "."])
def test_a_file_that_is_not_there(tmp_path: Path, missing: str) -> None:
    with pytest.raises(InputError, match="cannot be read"):
        read_weather(tmp_path / missing)


@pytest.mark.parametrize("draw", range(12))
def test_damaged_files_are_read_or_refused_but_never_break(draw: int, tmp_path: Path) -> None:
    chance = np.random.default_rng(draw)
    content = bytearray((GREENSBORO, MIAMI)[draw % 2].read_bytes())
    for position in chance.integers(0, len(content), 20):
        content[position] = chance.choice(list(b'\x00,;"\n#-9Zx. \xff'))
    path = tmp_path / "damaged.csv"
    path.write_bytes(bytes(content))
    try:
        rows, paths = len(read_weather(path).table), []
    except WeatherError as reason:
        rows, paths = HOURS, [fault.path for fault in reason.faults]
    assert rows == HOURS
    assert all(path.startswith("damaged.csv") for path in paths)
