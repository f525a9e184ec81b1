"""Reading every kind of weather file, saying what is wrong with others, writing our own."""

from __future__ import annotations

import gzip
from pathlib import Path

import numpy as np
import pandas as pd
import pvlib
import pytest

from costcompare.errors import FileExists, InputError, WeatherError
from costcompare.weather.files import read_weather, write_weather
from costcompare.weather.plain_file import DECIMALS
from costcompare.weather.table import COLUMNS, HOURS, Weather, checked

WHEEL = Path(pvlib.__file__).parent / "data"
GREENSBORO = WHEEL / "723170TYA.CSV"
SAND_POINT = WHEEL / "703165TY.csv"
MIAMI = WHEEL / "12839.tm2"


@pytest.fixture
def plain(plain_frame: pd.DataFrame) -> Weather:
    return checked(
        plain_frame,
        latitude=48.8,
        longitude=-122.54,
        elevation=45.0,
        source="measured",
        station="A made-up place",
        note="made by hand",
    )


@pytest.fixture
def plain_path(plain: Weather, tmp_path: Path) -> Path:
    path = tmp_path / "year.csv"
    write_weather(plain, path)
    return path


def sentences(path: Path) -> list[str]:
    with pytest.raises(WeatherError) as caught:
        read_weather(path)
    return [fault.sentence() for fault in caught.value.faults]


def edited(path: Path, old: str, new: str) -> Path:
    text = path.read_text()
    assert old in text
    path.write_text(text.replace(old, new, 1))
    return path


def made_epw(frame: pd.DataFrame) -> str:
    """An EPW file with the values of a frame; only the fields that are read are filled."""
    lines = ["LOCATION,Madeupville,XX,USA,made,000000,48.80,-122.54,-8.0,45.0", *["-"] * 7]
    hours = pd.DatetimeIndex(frame.index)
    for hour, (temperature, humidity, wind, pressure, ghi, dni, dhi, _) in zip(
        hours, frame.to_numpy(), strict=True
    ):
        start = f"1999,{hour.month},{hour.day},{hour.hour + 1},60,?"
        air = f"{temperature:.2f},0,{100 * humidity:.0f},{pressure:.0f},0,0,300"
        sun = f"{ghi:.0f},{dni:.0f},{dhi:.0f},0,0,0,0,0"
        lines.append(f"{start},{air},{sun},{wind:.1f},5,4" + ",0" * 11)
    return "\n".join(lines) + "\n"


# ------------------------------------------------------------------ one contract for all formats


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


# ------------------------------------------------------------------ each format


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


# ------------------------------------------------------------------ our own format


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


def test_a_gzipped_file_is_the_same_each_time(plain: Weather, tmp_path: Path) -> None:
    first, second = tmp_path / "one.csv.gz", tmp_path / "two.csv.gz"
    write_weather(plain, first)
    write_weather(plain, second)
    assert first.read_bytes() == second.read_bytes()


def test_nothing_is_overwritten_unless_asked(plain: Weather, plain_path: Path) -> None:
    plain_path.write_text("mine")
    with pytest.raises(FileExists, match="is there already and was not overwritten"):
        write_weather(plain, plain_path)
    assert plain_path.read_text() == "mine"
    write_weather(plain, plain_path, force=True)
    assert read_weather(plain_path).station == "A made-up place"


def test_writing_into_a_missing_folder_is_said(plain: Weather, tmp_path: Path) -> None:
    with pytest.raises(WeatherError, match="cannot be written"):
        write_weather(plain, tmp_path / "nowhere" / "year.csv")


def test_missing_columns_are_worked_out_and_said(plain_path: Path) -> None:
    table = pd.read_csv(plain_path, comment="#")
    head = [line for line in plain_path.read_text().splitlines() if line.startswith("#")]
    kept = table.drop(
        columns=["pressure_pa", "dni_w_m2", "dhi_w_m2", "sky_temperature_degc"]
    ).to_csv(index=False)
    plain_path.write_text("\n".join(head) + "\n" + kept)
    weather = read_weather(plain_path)
    assert weather.note == (
        "made by hand; air pressure from the height in every hour; beam and diffuse sun from the "
        "level sun in every hour; sky temperature from humidity and clouds in every hour"
    )
    assert weather.column("pressure_pa")[0] == pytest.approx(100_785, abs=20)  # 45 m up
    assert (weather.column("dhi_w_m2") <= weather.column("ghi_w_m2") + 1e-9).all()


def test_stamps_may_carry_the_offset(plain_path: Path) -> None:
    text = plain_path.read_text().replace("# utc_offset_hours = -8\n", "")
    table = text.replace(":00,", ":00-08:00,")
    plain_path.write_text(table)
    assert read_weather(plain_path).table.index[5].isoformat() == "2027-01-01T05:00:00-08:00"


def test_daylight_saving_stamps_are_refused(plain_path: Path) -> None:
    text = plain_path.read_text().replace(":00,", ":00-08:00,")
    plain_path.write_text(text.replace("2027-07-01 00:00-08:00", "2027-07-01 00:00-07:00"))
    assert any("must have one offset from UTC all year" in text for text in sentences(plain_path))


def test_a_measured_year_from_july_on_is_put_in_calendar_order(plain_path: Path) -> None:
    lines = plain_path.read_text().splitlines()
    first = next(n for n, line in enumerate(lines) if line.startswith("2027-01-01 00:00"))
    july = next(n for n, line in enumerate(lines) if line.startswith("2027-07-01 00:00"))
    lines[july] = lines[july].replace(",10.00,", ",21.00,")
    summer = [line.replace("2027-", "2025-") for line in lines[july:]]
    winter = [line.replace("2027-", "2026-") for line in lines[first:july]]
    plain_path.write_text("\n".join([*lines[:first], *summer, *winter]))
    weather = read_weather(plain_path)
    assert weather.table["temperature_degc"]["2027-07-01 00:00:00-08:00"] == 21.0
    assert "measured from 01 July 2025 on, put in calendar order" in weather.note


# ------------------------------------------------------------------ what is wrong, in words


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


def test_a_cut_file_of_each_published_format_is_refused(tmp_path: Path) -> None:
    for source in (GREENSBORO, MIAMI):
        path = tmp_path / source.name
        path.write_text("\n".join(source.read_text().splitlines()[:-1]) + "\n")
        assert any("8,759 rows; a year has 8,760" in text for text in sentences(path))


@pytest.mark.parametrize("missing", ["no-such-file.csv", "."])
def test_a_file_that_is_not_there(tmp_path: Path, missing: str) -> None:
    with pytest.raises(InputError, match="cannot be read"):
        read_weather(tmp_path / missing)
