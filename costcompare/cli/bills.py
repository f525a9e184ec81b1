"""The commands about real bills: bills, verify."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from costcompare.cli.frame import ForceOption, JsonOption, check_target, command, show
from costcompare.cli.weather import place_of
from costcompare.errors import Fault, InputError

if TYPE_CHECKING:
    from costcompare.billing.daily_temperatures import DailyTemperatures

commands = typer.Typer()

EXAMPLE = "demo"
"""Name of the invented bills and temperatures that come with the program"""

TemperaturesOption = Annotated[
    str | None,
    typer.Option(
        "--temperatures",
        metavar="FILE",
        help="Daily means as CSV with F or C in the header, or any weather file.",
    ),
]
NearOption = Annotated[
    str | None,
    typer.Option("--near", metavar="LAT,LON", help="The place: its typical year is told too."),
]


@command(commands, "bills", "costcompare bills demo --temperatures demo")
def bills(
    file: Annotated[
        str,
        typer.Argument(
            metavar="FILE", help="Bills or meter readings (CSV, XML), or demo for invented ones."
        ),
    ],
    temperatures: TemperaturesOption = None,
    near: NearOption = None,
    json_target: JsonOption = None,
    force: ForceOption = False,
) -> None:
    """Base load, heating and cooling of real bills alone.

    From the bills and the temperatures of their days, with no model of the house; every trap of
    bills that was met is told.
    """
    from costcompare.billing.bill_report import reported
    from costcompare.billing.reading import read_bills
    from costcompare.views.bills_page import bills_page

    check_target(json_target, force)
    normal = typical_days(near)
    days = days_of(temperatures) if temperatures is not None else normal
    if days is None:
        instead = "--temperatures FILE with the days of the bills, or --near 37.27,-79.94"
        raise InputError([Fault("--temperatures", "is needed", instead=instead)])
    report = reported(read_bills(example_file(file, "example_bills_before.csv")), days, normal)
    show(bills_page(report), report, json_target)


def example_file(name: str, example: str) -> Path:
    """A file of that name, else the invented one."""
    path = Path(name)
    if name != EXAMPLE or path.exists():
        return path
    from importlib.resources import files

    return Path(str(files("costcompare"))) / "data" / example


def days_of(name: str) -> DailyTemperatures:
    """Daily means of a plain CSV, or of a year of any weather file, which stands for any year."""
    from costcompare.billing.daily_temperatures import of_hours
    from costcompare.billing.temperature_files import read_daily_temperatures
    from costcompare.weather import read_weather

    path = example_file(name, "example_temperatures.csv")
    days = read_daily_temperatures(path)
    if days is not None:
        return days
    year = read_weather(path)
    return of_hours(year.column("temperature_degc"), year.station)


def typical_days(near: str | None) -> DailyTemperatures | None:
    """The typical year of a place by the day; None without a place."""
    if near is None:
        return None
    from costcompare.billing.daily_temperatures import of_hours
    from costcompare.weather import typical_year

    year = typical_year(*place_of(near, []))
    return of_hours(year.column("temperature_degc"), f"a typical year of {year.station}")
