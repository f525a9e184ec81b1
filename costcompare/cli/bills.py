"""The commands about real bills: bills, verify."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any, NamedTuple

import typer

from costcompare.cli.frame import (
    ForceOption,
    JsonOption,
    check_target,
    command,
    measured,
    read_home,
    show,
)
from costcompare.cli.weather import place_of
from costcompare.errors import Fault, InputError

if TYPE_CHECKING:
    from costcompare.billing.daily_temperatures import DailyTemperatures
    from costcompare.billing.promise import Promise
    from costcompare.billing.second_winter import Habits

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


@command(commands, "verify", "costcompare verify --before demo --after demo --temperatures demo")
def verify(
    before: Annotated[str, typer.Option("--before", metavar="FILE", help="Bills before the work.")],
    after: Annotated[str, typer.Option("--after", metavar="FILE", help="Bills after the work.")],
    temperatures: Annotated[
        str,
        typer.Option(
            "--temperatures",
            metavar="FILE",
            help="Daily means as CSV with F or C in the header, or any weather file.",
        ),
    ],
    case: Annotated[
        str | None,
        typer.Argument(
            metavar="[CASE]",
            help="Its place gives the normal year; its options are "
            "what was promised, unless --promise says.",
        ),
    ] = None,
    promise: Annotated[
        str | None,
        typer.Option("--promise", metavar="FILE", help="What compare --json wrote at the sale."),
    ] = None,
    option: Annotated[
        str | None, typer.Option("--option", help="The option that was built; the first without.")
    ] = None,
    warmer_by: Annotated[
        str, typer.Option("--warmer-by", help='Rooms are kept warmer now by, such as "4 F".')
    ] = "0 F",
    car: Annotated[
        str, typer.Option("--car", help='A car charged since, such as "250 kWh/month".')
    ] = "0 kWh/month",
    json_target: JsonOption = None,
    force: ForceOption = False,
) -> None:
    """What was saved, with the weather taken out.

    The second-winter check: bills before and after the work, the saving with its uncertainty,
    held against what was promised, why it fell short, and a letter that says it.
    """
    from costcompare.billing.reading import read_bills
    from costcompare.billing.second_winter import checked_winter
    from costcompare.views.second_winter_page import second_winter_page

    check_target(json_target, force)
    habits = _habits(warmer_by, car)
    home = _home(case, promise)
    check = checked_winter(
        read_bills(example_file(before, "example_bills_before.csv")),
        read_bills(example_file(after, "example_bills_after.csv")),
        days_of(temperatures),
        normal=home.normal,
        habits=habits,
        promises=_promises(promise, option, home),
    )
    show(second_winter_page(check), check, json_target)


def _habits(warmer_by: str, car: str) -> Habits:
    from costcompare.billing.second_winter import Habits
    from costcompare.units import HOURS_A_MONTH

    faults: list[Fault] = []
    kelvin = measured("--warmer-by", warmer_by, "temperature_difference", faults)
    watts = measured("--car", car, "energy_rate", faults)
    if faults:
        raise InputError(faults)
    return Habits(warmer_degf=1.8 * kelvin, car_kwh_per_month=watts * HOURS_A_MONTH / 1000.0)


class _Home(NamedTuple):
    """What a case adds: the normal year of its place, and what it promises."""

    normal: DailyTemperatures | None = None
    comparison: Any = None


def _home(case: str | None, promise: str | None) -> _Home:
    """Nothing without a case; compared anew only where no promise was saved."""
    if case is None:
        return _Home()
    from costcompare.billing.daily_temperatures import of_hours
    from costcompare.comparing import compare, weather_of
    from costcompare.comparison import as_document
    from costcompare.views.terminal import Waiting

    home = read_home(case, None)
    year = weather_of(home)
    normal = of_hours(year.column("temperature_degc"), year.station)
    if promise is not None:
        return _Home(normal)
    with Waiting() as progress:
        return _Home(normal, as_document(compare(home, weather=year, progress=progress)))


def _promises(promise: str | None, option: str | None, home: _Home) -> tuple[Promise, ...]:
    from costcompare.billing.promise import promises_of, read_promises

    if promise is not None:
        return read_promises(Path(promise), option)
    return () if home.comparison is None else promises_of(home.comparison, option)
