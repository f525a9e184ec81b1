"""Our own plain CSV."""

from __future__ import annotations

from pathlib import Path

import numpy as np

from costcompare.weather.files import read_weather
from costcompare.weather.plain_file import DECIMALS
from costcompare.weather.table import Weather

from .making import edited, sentences


def test_what_is_written_is_read_again(plain: Weather, plain_path: Path) -> None:
    again = read_weather(plain_path)
    for name, digits in DECIMALS.items():
        np.testing.assert_allclose(
            again.column(name), plain.column(name), atol=0.51 * 10.0**-digits, rtol=0.0
        )
    assert (again.latitude, again.longitude, again.elevation) == (48.8, -122.54, 45.0)
    assert (again.source, again.station, again.note) == (
        "measured",
        "A made-up place",
        "made by hand",
    )
    assert again.table.index.equals(plain.table.index)


def test_stamps_may_carry_the_offset(plain_path: Path) -> None:
    text = plain_path.read_text().replace("# utc_offset_hours = -8\n", "")
    table = text.replace(":00,", ":00-08:00,")
    plain_path.write_text(table)
    assert read_weather(plain_path).table.index[5].isoformat() == "2027-01-01T05:00:00-08:00"


def test_daylight_saving_stamps_are_refused(plain_path: Path) -> None:
    text = plain_path.read_text().replace(":00,", ":00-08:00,")
    plain_path.write_text(text.replace("2027-07-01 00:00-08:00", "2027-07-01 00:00-07:00"))
    assert any("must have one offset from UTC all year" in text for text in sentences(plain_path))


def test_every_fault_of_a_file_at_once(plain_path: Path) -> None:
    lines = plain_path.read_text().splitlines()
    lines.pop()
    lines[8] = lines[8].replace(",10.00,", ",,")
    lines[9] = lines[9].replace(",0.500,", ",85,")
    plain_path.write_text("\n".join(lines).replace("# latitude = 48.8", "# latitude = 148"))
    found = "\n".join(sentences(plain_path))
    assert "latitude: must lie between -90 and 90" in found
    assert "8,759 rows; a year has 8,760" in found
    assert "temperature_degc: must be a number in every hour" in found
    assert "a share such as 0.85 instead of 85" in found


def test_missing_place_and_column_are_said_together(plain_path: Path) -> None:
    text = plain_path.read_text().replace("# longitude = -122.54\n", "")
    plain_path.write_text(text.replace("wind_speed_m_s", "breeze"))
    found = sentences(plain_path)
    assert found[0].startswith("year.csv: longitude: must stand on top of the file as a number.")
    assert "Write a line '# longitude = ...' (degrees east, for example -122.54)" in found[0]
    assert found[1] == "year.csv: wind_speed_m_s: is missing. Write a column of this name."


def test_unreadable_dates_are_said_with_their_row(plain_path: Path) -> None:
    path = edited(plain_path, "2027-01-01 03:00", "third hour")
    assert "1 are not, the first 'third hour' in row 4" in sentences(path)[0]
