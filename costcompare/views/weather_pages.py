"""What the weather commands print, as blocks for :mod:`costcompare.views.terminal`."""

from __future__ import annotations

from collections.abc import Sequence

from costcompare.views import numbers
from costcompare.views.terminal import Heading, Page, Sentences, Table
from costcompare.views.wording.naming import capital
from costcompare.weather.months import StationYear, WeatherMonth, WeatherYear
from costcompare.weather.stations import CREDIT


def stations_page(stations: Sequence[StationYear]) -> Page:
    """``weather stations``: the stations found, and where their normals come from."""
    columns = (
        "station",
        "number",
        "latitude",
        "longitude",
        "height",
        "degree days",
        "January",
        "July",
    )
    rows = tuple(
        (
            station.station,
            station.number,
            _coordinate(station.latitude),
            _coordinate(station.longitude),
            f"{numbers.count(station.elevation_ft)} ft",
            numbers.count(station.heating_degree_days_65f),
            numbers.degrees(station.mean_temperature_degf[0]),
            numbers.degrees(station.mean_temperature_degf[6]),
        )
        for station in stations
    )
    return [
        Table(columns, rows, left=frozenset({0, 1})),
        Sentences(
            "Degree days are heating degree days under 65 °F a year, January and July the means of "
            f"those months: {CREDIT}."
        ),
    ]


def weather_page(year: WeatherYear) -> Page:
    """``weather make`` and ``weather show``: the year and its months."""
    height = f"{numbers.count(year.elevation_ft)} ft"
    place = f"{_coordinate(year.latitude)}, {_coordinate(year.longitude)}, {height}"
    return [
        Heading(f"{year.station} ({place})"),
        Sentences(f"{capital(year.source)}: {year.note}" if year.note else capital(year.source)),
        Sentences(
            f"{numbers.count(year.heating_degree_days_65f)} heating degree days (65 °F), mean "
            f"{numbers.degrees(year.mean_temperature_degf)}, colder than "
            f"{numbers.degrees(year.design_temperature_degf)} in 1 of 100 hours."
        ),
        _months(year.months),
    ]


def _months(months: Sequence[WeatherMonth]) -> Table:
    columns = ("month", "mean", "daily high", "daily low", "coldest hour", "sun", "wind")
    rows = tuple(
        (
            numbers.month_name(month.month),
            numbers.degrees(month.mean_temperature_degf),
            numbers.degrees(month.daily_high_degf),
            numbers.degrees(month.daily_low_degf),
            numbers.degrees(month.lowest_temperature_degf),
            f"{numbers.ratio(month.sun_kwh_m2_day)} kWh/m²/day",
            f"{numbers.count(month.wind_speed_mph)} mph",
        )
        for month in months
    )
    return Table(columns, rows)


def _coordinate(degrees: float) -> str:
    """A latitude or longitude to a hundredth of a degree, north and east positive."""
    return f"{numbers.MINUS if degrees < 0 else ''}{abs(degrees):.2f}"
