"""The command that writes what is left behind on the table: report."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Literal, cast, get_args

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
    from costcompare.comparison import Comparison
    from costcompare.views.numbers import Units
    from costcompare.weather import Weather

commands = typer.Typer()

Sheet = Literal["report", "settings", "contractor"]
Progress = Callable[[str, float], None]
ENDS = (".pdf", ".html", ".csv")
"""What the file's name may end in"""
NO_DATE = "none"


@dataclass(frozen=True)
class _Asked:
    """What is to be written, checked."""

    case: Case
    out: Path
    sheet: Sheet
    option: str | None
    """None where the case holds no option"""
    units: Units
    made_on: date | None

    @property
    def end(self) -> str:
        return self.out.suffix.lower()


OutOption = Annotated[
    Path,
    typer.Option("-o", "--output", metavar="FILE", help="A name in .pdf, .html or .csv."),
]
SheetOption = Annotated[str, typer.Option("--sheet", help="report, settings or contractor.")]
OptionOption = Annotated[
    str | None,
    typer.Option("--option", metavar="NAME", help="The option it is about; else the first."),
]
UnitsOption = Annotated[str, typer.Option("--units", help="customary or si.")]
DateOption = Annotated[
    str | None,
    typer.Option("--date", metavar="DATE", help="The day to print; none for no date."),
]
MembersOption = Annotated[
    int,
    typer.Option(
        "--members",
        min=0,
        max=4096,
        help="Homes that fit the facts, worked out for ranges; 0 for no ranges.",
    ),
]


@command(commands, "report", "costcompare report demo -o demo.pdf")
def report(
    case: CaseArgument,
    out: OutOption,
    sheet: SheetOption = "report",
    option: OptionOption = None,
    units: UnitsOption = "customary",
    day: DateOption = None,
    members: MembersOption = 64,
    changes: SetOption = None,
    weather: WeatherOption = None,
    json_target: JsonOption = None,
    force: ForceOption = False,
) -> None:
    """What is left on the table: one or two pages.

    The report of the home; with --sheet the settings card of an option, or the contractor's
    sheet; with a name that ends in .csv every month and every room as a table.
    """
    from costcompare.views.terminal import Waiting

    check_target(out, force)
    check_target(json_target, force)
    asked = _asked(case, changes, out, sheet, option, units, day)
    with Waiting() as progress:
        year = read_year(weather, asked.case)
        from costcompare.cli.fitting import compared
        from costcompare.comparing import weather_of

        year = year if year is not None else weather_of(asked.case)
        ranged = members if asked.sheet == "report" and asked.end != ".csv" else 0
        comparison, house = compared(asked.case, year, ranged, progress)
        made = _made(asked, house, comparison, year, progress)
    write(out, made)
    write_json(comparison, json_target)


def _made(
    asked: _Asked, house: Case, comparison: Comparison, year: Weather, progress: Progress
) -> str | bytes:
    """The file that is asked for; ``house`` is what the comparison is of."""
    if asked.end == ".csv":
        from costcompare.views.report import export_csv

        return export_csv(comparison, units=asked.units)
    if asked.sheet == "report":
        return _report(asked, house, comparison, year, progress)
    return _sheet(asked, comparison, year, progress)


def _report(
    asked: _Asked, house: Case, comparison: Comparison, year: Weather, progress: Progress
) -> str | bytes:
    from costcompare.comparing import TODAY
    from costcompare.fitting import with_stated_thermostat
    from costcompare.thermostat import sweep
    from costcompare.views import numbers, report

    name = asked.option or TODAY
    with numbers.written(asked.units):
        settings = report.tried_settings(asked.case.home.thermostat.wanted)
    tried = house if house is asked.case else with_stated_thermostat(house, asked.case)
    swept = sweep(tried, settings, only={TODAY, name}, weather=year, progress=progress)
    make = report.report_pdf if asked.end == ".pdf" else report.report_html
    return make(
        comparison,
        house,
        option=name,
        sweep=swept,
        made_on=asked.made_on,
        units=asked.units,
    )


def _sheet(asked: _Asked, comparison: Comparison, year: Weather, progress: Progress) -> str | bytes:
    from costcompare.settings import settings
    from costcompare.sizing import size
    from costcompare.views import report

    case = asked.case  # as it is stated: machines are held against its survey
    option = next(one for one in case.options if one.name == asked.option)
    sizing = size(replace(case, options=(option,)), weather=year, progress=progress)
    card = settings(case, option.name, weather=year, sizing=sizing, progress=progress)
    if asked.sheet == "settings":
        card_as = report.settings_card_pdf if asked.end == ".pdf" else report.settings_card_html
        return card_as(card, case, made_on=asked.made_on, units=asked.units)
    sheet_as = report.contractor_pdf if asked.end == ".pdf" else report.contractor_html
    return sheet_as(comparison, case, sizing, card, made_on=asked.made_on, units=asked.units)


def _asked(
    case: str,
    changes: list[str] | None,
    out: Path,
    sheet: str,
    option: str | None,
    units: str,
    day: str | None,
) -> _Asked:
    """What is to be written; every fault of all that was given at once."""
    from costcompare.views.numbers import Units

    faults: list[Fault] = []
    if out.suffix.lower() not in ENDS:
        faults.append(Fault("--output", "must end in .pdf, .html or .csv", str(out), "report.pdf"))
    if sheet not in get_args(Sheet):
        faults.append(Fault("--sheet", "must be report, settings or contractor", sheet))
    elif sheet != "report" and out.suffix.lower() == ".csv":
        faults.append(Fault("--sheet", "is a PDF or HTML file", str(out), "a name in .pdf"))
    if units not in get_args(Units):
        faults.append(Fault("--units", "must be customary or si", units))
    made_on = _date(day, faults)
    try:
        understood = read_home(case, changes)
    except InputError as error:
        raise InputError([*faults, *error.faults]) from None
    name = _option(understood, option, sheet, faults)
    if faults:
        raise InputError(faults)
    return _Asked(understood, out, cast("Sheet", sheet), name, cast("Units", units), made_on)


def _option(case: Case, wanted: str | None, sheet: str, faults: list[Fault]) -> str | None:
    """The option that it is about: the one named, or the first."""
    names = [one.name for one in case.options]
    if wanted is None and names:
        return names[0]
    if wanted is None and sheet != "report":
        rule = f"the sheet {sheet} is about an option, and this case holds none"
        faults.append(Fault("--sheet", rule))
    elif wanted is not None and wanted not in names:
        known = f"one of: {'; '.join(names)}" if names else "a case with options"
        faults.append(Fault("--option", "no option has this name", wanted, known))
    return wanted


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
