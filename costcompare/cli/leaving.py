"""The command that writes what is left behind on the table: report."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, cast, get_args

import typer

from costcompare.cli.frame import (
    CaseArgument,
    ForceOption,
    JsonOption,
    SetOption,
    WeatherOption,
    check_target,
    command,
    read_home,
    read_year,
    write,
    write_json,
)
from costcompare.errors import Fault, InputError

if TYPE_CHECKING:
    from costcompare.case.facts import Case
    from costcompare.views.numbers import Units

commands = typer.Typer()

ENDS = (".pdf", ".html")
"""What the file's name may end in"""
NO_DATE = "none"


@command(commands, "report", "costcompare report demo -o demo.pdf")
def report(
    case: CaseArgument,
    out: Annotated[
        Path, typer.Option("--out", "-o", metavar="FILE", help="A name that ends in .pdf or .html.")
    ],
    option: Annotated[
        str | None,
        typer.Option("--option", metavar="NAME", help="Which option to set against today."),
    ] = None,
    units: Annotated[str, typer.Option("--units", help="customary or si.")] = "customary",
    day: Annotated[
        str | None,
        typer.Option("--date", metavar="DATE", help="The day to print; none for no date."),
    ] = None,
    changes: SetOption = None,
    weather: WeatherOption = None,
    json_target: JsonOption = None,
    force: ForceOption = False,
) -> None:
    """What is left on the table: one or two pages.

    Why the bill is what it is, every choice at both warmths, the rooms, the thermostat, the
    money, how sure it all is, and what to look out for.
    """
    from costcompare.views.terminal import Waiting

    check_target(out, force)
    check_target(json_target, force)
    understood, in_units, made_on = _asked(case, changes, out, option, units, day)
    with Waiting() as progress:
        year = read_year(weather, understood)
        from costcompare.comparing import TODAY, compare
        from costcompare.thermostat import sweep
        from costcompare.views import numbers, report
        from costcompare.views.wording.naming import choosable

        comparison = compare(understood, weather=year, progress=progress)
        name = choosable(comparison)[0] if option is None else option
        with numbers.written(in_units):
            settings = report.tried_settings(understood.home.thermostat.wanted)
        swept = sweep(understood, settings, only={TODAY, name}, weather=year, progress=progress)
        make = report.report_pdf if out.suffix.lower() == ".pdf" else report.report_html
        made = make(
            comparison, understood, option=name, sweep=swept, made_on=made_on, units=in_units
        )
    write(out, made)
    write_json(comparison, json_target)


def _asked(
    case: str,
    changes: list[str] | None,
    out: Path,
    option: str | None,
    units: str,
    day: str | None,
) -> tuple[Case, Units, date | None]:
    """The case, the units and the date; every fault of all of them at once."""
    from costcompare.views.numbers import Units

    faults: list[Fault] = []
    if out.suffix.lower() not in ENDS:
        faults.append(Fault("--out", "must end in .pdf or .html", str(out), "report.pdf"))
    if units not in get_args(Units):
        faults.append(Fault("--units", "must be customary or si", units))
    made_on = _date(day, faults)
    try:
        understood = read_home(case, changes)
    except InputError as error:
        raise InputError([*faults, *error.faults]) from None
    names = [one.name for one in understood.options]
    if option is not None and option not in names:
        known = f"one of: {'; '.join(names)}" if names else "a case with options"
        faults.append(Fault("--option", "no option has this name", option, known))
    if faults:
        raise InputError(faults)
    return understood, cast("Units", units), made_on


def _date(day: str | None, faults: list[Fault]) -> date | None:
    """The day that is asked for; today where none is, None where no date is wanted."""
    if day is None:
        return date.today()  # noqa: DTZ011 the day on the wall of whoever prints it
    if day == NO_DATE:
        return None
    try:
        return date.fromisoformat(day)
    except ValueError:
        faults.append(Fault("--date", "must be a date as year-month-day", day, "2027-01-15"))
        return None
