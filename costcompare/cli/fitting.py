"""The command about a house and its bills: fit."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

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
    show,
)
from costcompare.errors import Fault, InputError

if TYPE_CHECKING:
    from costcompare.billing.reading import Bills
    from costcompare.case.facts import Case
    from costcompare.comparing import Progress
    from costcompare.comparison import Comparison
    from costcompare.weather import Weather

commands = typer.Typer()

BillsOption = Annotated[
    Path | None,
    typer.Option("--bills", metavar="FILE", help="Bills to fit to, instead of those of the case."),
]


@command(commands, "fit", "costcompare fit demo --bills bills.csv")
def fit(
    case: CaseArgument,
    bills: BillsOption = None,
    changes: SetOption = None,
    weather: WeatherOption = None,
    former_owner: Annotated[
        bool,
        typer.Option("--former-owner", help="Somebody else paid: infer what they kept it at."),
    ] = False,
    json_target: JsonOption = None,
    force: ForceOption = False,
) -> None:
    """Fit the house to its real bills.

    One bill or three years of them: measured against computed for each, which facts moved and
    how far, what does not fit, and which bill to ask for next. --weather takes the hourly
    weather of the bills' own days.
    """
    from costcompare.views.terminal import Waiting

    check_target(json_target, force)
    with Waiting() as progress:
        understood = read_home(case, changes)
        read = _bills(bills, understood)
        measured = read_year(weather, understood)
        from costcompare.comparing import weather_of
        from costcompare.fitting import fit_house
        from costcompare.simulation import doing_many
        from costcompare.views.fit_page import fit_page

        words = "Fitting the house to its bills"
        progress(doing_many(words), 0.0)
        found = fit_house(
            understood,
            read,
            weather=measured if measured is not None else weather_of(understood),
            weather_is_of_the_bills=(
                measured is not None or understood.weather.source == "measured"
            ),
            former_owner=former_owner,
            members=1,  # what is told needs none drawn
            progress=lambda share: progress(words, share),
        )
    show(fit_page(found.report), found.report, json_target)


def _bills(file: Path | None, case: Case) -> Bills:
    """The bills of that file, else those of the case."""
    from costcompare.billing.reading import bills_of, read_bills

    if file is not None:
        return read_bills(file)
    if case.bills is not None:
        return bills_of(case.bills, case.directory)
    rule = "is needed: the case holds no bills"
    raise InputError([Fault("--bills", rule, instead="--bills FILE, or [bills] in the case")])


def compared(
    case: Case, weather: Weather, members: int, progress: Progress
) -> tuple[Comparison, Case]:
    """The comparison of a home, and the home it is of: fitted to its bills where it has any.

    ``members`` homes make the ranges; none are made for 0.
    """
    from costcompare.comparing import compare
    from costcompare.fitting import compare_fitted, fitted_to_own_bills
    from costcompare.views.wording.fitting import with_fit_told

    fitted = fitted_to_own_bills(case, weather, members=max(members, 1), progress=progress)
    if fitted is None:
        comparison, house = compare(case, weather=weather, progress=progress), case
    else:
        told = compare_fitted(fitted, weather=weather, progress=progress)
        comparison, house = with_fit_told(told, fitted.report), fitted.likely
    if members:
        from costcompare.ranges import with_ranges

        draws = None if fitted is None else fitted.draws
        comparison = with_ranges(
            comparison, case, weather=weather, members=members, draws=draws, progress=progress
        )
    return comparison, house
