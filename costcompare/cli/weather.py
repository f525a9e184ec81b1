"""Commands about weather: stations, make, show."""

from __future__ import annotations

import math
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, cast

import typer

from costcompare.cli.frame import (
    ForceOption,
    JsonOption,
    check_target,
    command,
    measured,
    show,
    tell,
)
from costcompare.errors import Fault, InputError

if TYPE_CHECKING:
    from costcompare.weather import Station
    from costcompare.weather.typical import Winter

commands = typer.Typer(
    help="Stations, typical years, weather files.",
    epilog="Example: costcompare weather stations roanoke va",
    no_args_is_help=True,
    rich_markup_mode=None,
)


@command(commands, "stations", "costcompare weather stations roanoke va")
def stations(
    words: Annotated[
        list[str] | None,
        typer.Argument(metavar="[WORD]...", help="Parts of a name, a state, or a number."),
    ] = None,
    near: Annotated[
        str | None,
        typer.Option("--near", metavar="LAT,LON", help="Take the station that is nearest."),
    ] = None,
    json_target: JsonOption = None,
    force: ForceOption = False,
) -> None:
    """Find weather stations.

    By every word of a name or a state, or the one that is nearest to a place, with the monthly
    normals that a typical year is made from.
    """
    from costcompare.views.weather_pages import stations_page
    from costcompare.weather import find_stations, nearest_station
    from costcompare.weather.months import station_year

    check_target(json_target, force)
    found: tuple[Station, ...]
    if near is not None:
        found = (nearest_station(*place_of(near, [])),)
    elif words:
        found = find_stations(" ".join(words))
    else:
        raise InputError([Fault("weather stations", "needs a word or --near", instead="asheville")])
    if not found:
        rule = "no station has all of these words"
        raise InputError([Fault(" ".join(words or []), rule, instead="fewer words, or --near")])
    years = tuple(station_year(station) for station in found)
    show(stations_page(years), years, json_target)


@command(commands, "make", "costcompare weather make year.csv --near 37.27,-79.94")
def make(
    file: Annotated[Path, typer.Argument(metavar="FILE", help="Where to write; .csv or .csv.gz.")],
    near: Annotated[str, typer.Option("--near", metavar="LAT,LON", help="The place.")],
    elevation: Annotated[
        str | None, typer.Option("--elevation", help='Its height, such as "2100 ft".')
    ] = None,
    winter: Annotated[
        str, typer.Option("--winter", help="mild, typical or cold: one winter in ten.")
    ] = "typical",
    calendar_year: Annotated[
        int, typer.Option("--calendar-year", help="Year of the stamps.")
    ] = 2027,
    seed: Annotated[int, typer.Option("--seed", help="Another year of the same kind.")] = 0,
    json_target: JsonOption = None,
    force: ForceOption = False,
) -> None:
    """Make a typical year and write it to a file.

    It is made from the monthly normals of the nearest station: no year that was ever measured.
    """
    from costcompare.views.weather_pages import weather_page
    from costcompare.weather import typical_year, write_weather
    from costcompare.weather.months import weather_year

    check_target(file, force)
    check_target(json_target, force)
    faults: list[Fault] = []
    height = None if elevation is None else measured("--elevation", elevation, "length", faults)
    place = place_of(near, faults)
    # The kind of winter is checked, with the other arguments, where it is used.
    kind = cast("Winter", winter)
    year = typical_year(*place, height, kind, seed, calendar_year)
    write_weather(year, file, force=force)
    tell(f"Wrote {file}")
    described = weather_year(year)
    show(weather_page(described), described, json_target)


@command(commands, "show", "costcompare weather show year.csv")
def show_weather(
    file: Annotated[Path, typer.Argument(metavar="FILE", help="EPW, TMY3, TMY2 or plain CSV.")],
    json_target: JsonOption = None,
    force: ForceOption = False,
) -> None:
    """Describe a weather file.

    Where it is from, what had to be filled in, its degree days and its months.
    """
    from costcompare.views.weather_pages import weather_page
    from costcompare.weather import read_weather
    from costcompare.weather.months import weather_year

    check_target(json_target, force)
    described = weather_year(read_weather(file))
    show(weather_page(described), described, json_target)


def place_of(text: str, faults: list[Fault]) -> tuple[float, float]:
    """Latitude and longitude [degrees] of ``37.27,-79.94``; raises with the faults so far."""
    latitude, _, longitude = text.partition(",")
    try:
        place = float(latitude), float(longitude)
    except ValueError:
        rule = "must be latitude and longitude in degrees, west negative"
        faults.append(Fault("--near", rule, text, "for example 37.27,-79.94"))
        place = (math.nan, math.nan)
    if faults:
        raise InputError(faults)
    return place
