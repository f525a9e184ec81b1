"""EPW, TMY3 and TMY2 files."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pandas as pd
import pytest

from costcompare.weather.files import read_weather

from .making import GREENSBORO, MIAMI, SAND_POINT, made_epw, sentences


def test_tmy3_hours_begin_one_earlier_than_their_stamps() -> None:
    lines = GREENSBORO.read_text().splitlines()
    names = lines[1].split(",")
    at = names.index("Dry-bulb (C)")
    stated = [float(line.split(",")[at]) for line in lines[2:]]
    weather = read_weather(GREENSBORO)
    assert weather.column("temperature_degc").tolist() == stated
    assert weather.table.index[0].isoformat() == "2027-01-01T00:00:00-05:00"
    assert weather.station == "Greensboro Piedmont Triad Int, NC"


def test_tmy2_tenths_are_tenths() -> None:
    weather = read_weather(MIAMI)
    assert weather.column("temperature_degc").max() == pytest.approx(33.9)
    assert weather.column("wind_speed_m_s").max() == pytest.approx(13.9)
    assert 98_000 < weather.column("pressure_pa").mean() < 103_000


def test_tmy2_of_a_town_with_two_words(tmp_path: Path) -> None:
    path = tmp_path / "two.tm2"
    text = MIAMI.read_text()
    path.write_text(text.replace("MIAMI     ", "NEW MIAMI ", 1))
    assert read_weather(path).station == "New Miami, FL"


def test_epw_gives_the_sky_temperature(tmp_path: Path, plain_frame: pd.DataFrame) -> None:
    path = tmp_path / "year.epw"
    path.write_text(made_epw(plain_frame))
    weather = read_weather(path)
    # by hand: (300 / 5.670374e-8) ** 0.25 = 269.70 K
    np.testing.assert_allclose(weather.column("sky_temperature_degc"), -3.45, atol=0.01)
    np.testing.assert_allclose(weather.column("ghi_w_m2"), plain_frame["ghi_w_m2"])
    assert weather.note == ""


def test_epw_without_infrared_says_so(tmp_path: Path, plain_frame: pd.DataFrame) -> None:
    path = tmp_path / "year.epw"
    path.write_text(made_epw(plain_frame).replace(",0,0,300,", ",0,0,9999,", 5))
    weather = read_weather(path)
    assert weather.note == "sky temperature from humidity and clouds in 5 hours"
    assert (weather.column("sky_temperature_degc")[:5] < 10.0).all()


def test_a_cut_file_of_each_published_format_is_refused(tmp_path: Path) -> None:
    for source in (GREENSBORO, MIAMI):
        path = tmp_path / source.name
        path.write_text("\n".join(source.read_text().splitlines()[:-1]) + "\n")
        assert any("8,759 rows; a year has 8,760" in text for text in sentences(path))


def test_missing_marks_outside_the_columns_that_count_do_no_harm() -> None:
    assert "-9900" in SAND_POINT.read_text()
    assert read_weather(SAND_POINT).column("temperature_degc").min() == pytest.approx(-10.6)


def test_a_missing_mark_in_a_column_that_counts_is_said(tmp_path: Path) -> None:
    lines = GREENSBORO.read_text().splitlines()
    at = lines[1].split(",").index("Wspd (m/s)")
    fields = lines[50].split(",")
    fields[at] = "-9900"
    lines[50] = ",".join(fields)
    path = tmp_path / "gap.csv"
    path.write_text("\n".join(lines) + "\n")
    assert sentences(path) == [
        "gap.csv: wind_speed_m_s: must be a number in every hour "
        "(given: 1 without one, the first in row 49, 2027-01-03 00:00)."
    ]
