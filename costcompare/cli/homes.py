"""Commands about a home: new, check, compare, explain, thermostat, serve."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from costcompare.cli.frame import (
    CaseArgument,
    ForceOption,
    JsonOption,
    SetOption,
    WeatherOption,
    case_path,
    check_target,
    command,
    measured,
    read_home,
    read_year,
    show,
    write,
)
from costcompare.errors import Fault, InputError

if TYPE_CHECKING:
    from costcompare.case.facts import Case
    from costcompare.comparing import Progress
    from costcompare.weather import Weather

commands = typer.Typer()

FactOption = str | None


@command(commands, "new", 'costcompare new home.toml --built 1968 --floor-area "1750 ft2"')
def new(
    file: Annotated[
        Path, typer.Argument(metavar="FILE", help="Where to write the case; - is stdout.")
    ],
    title: Annotated[FactOption, typer.Option(help="What to call the home.")] = None,
    latitude: Annotated[FactOption, typer.Option(help="Degrees, north positive.")] = None,
    longitude: Annotated[FactOption, typer.Option(help="Degrees, west negative.")] = None,
    floor_area: Annotated[FactOption, typer.Option(help='Such as "1850 ft2".')] = None,
    storeys: Annotated[FactOption, typer.Option(help="1 to 3.")] = None,
    bedrooms: Annotated[FactOption, typer.Option(help="How many.")] = None,
    built: Annotated[FactOption, typer.Option(help="The year.")] = None,
    foundation: Annotated[
        FactOption,
        typer.Option(help="vented crawlspace, closed crawlspace, basement or slab."),
    ] = None,
    people: Annotated[FactOption, typer.Option(help="How many live there.")] = None,
    thermostat: Annotated[FactOption, typer.Option(help='Setting by day, such as "66 F".')] = None,
    wanted: Annotated[FactOption, typer.Option(help="The warmth they would like.")] = None,
    furnace: Annotated[FactOption, typer.Option(help='Its output, such as "20 kW".')] = None,
    ducts: Annotated[
        FactOption, typer.Option(help="crawlspace, attic, basement, garage or inside.")
    ] = None,
    price: Annotated[FactOption, typer.Option(help='Such as "0.125 $/kWh".')] = None,
    json_target: JsonOption = None,
    force: ForceOption = False,
) -> None:
    """Write a case from a few facts.

    What is not given stands in and is marked in the file, which says in comments what else a
    case can hold.
    """
    check_target(None if str(file) == "-" else file, force)
    check_target(json_target, force)
    from costcompare.case.new import new_case

    text = new_case(
        title=title,
        latitude=latitude,
        longitude=longitude,
        floor_area=floor_area,
        storeys=storeys,
        bedrooms=bedrooms,
        built=built,
        foundation=foundation,
        people=people,
        thermostat=thermostat,
        wanted=wanted,
        furnace=furnace,
        ducts=ducts,
        price=price,
    )
    if str(file) == "-":
        typer.echo(text, nl=False)
        return
    write(file, text)
    _show_facts(read_home(str(file), None), json_target)


@command(commands, "check", "costcompare check demo")
def check(
    case: CaseArgument,
    changes: SetOption = None,
    json_target: JsonOption = None,
    force: ForceOption = False,
) -> None:
    """Show the facts of a case, or all its errors.

    Every fact as it was understood: its value, how it is known and where it comes from.
    """
    check_target(json_target, force)
    _show_facts(read_home(case, changes), json_target)


def _show_facts(case: Case, json_target: str | None) -> None:
    from costcompare.views.case_page import case_page

    document = {"format": 1, "title": case.title, "facts": case.facts}
    show(case_page(case), document, json_target)


@command(commands, "compare", "costcompare compare demo --json result.json")
def compare(
    case: CaseArgument,
    changes: SetOption = None,
    weather: WeatherOption = None,
    members: Annotated[
        int,
        typer.Option(
            "--members",
            min=0,
            max=4096,
            help="Homes that fit the facts, worked out for ranges; 0 for no ranges.",
        ),
    ] = 64,
    winters: Annotated[
        bool, typer.Option("--winters", help="A mild, a typical and a cold winter as well.")
    ] = False,
    outdoors: Annotated[
        str | None,
        typer.Option("--outdoors", help='What an hour costs when it is so cold, such as "20 F".'),
    ] = None,
    json_target: JsonOption = None,
    force: ForceOption = False,
) -> None:
    """Bills, warm rooms and payback of each choice.

    Today and every option over the same year of weather, as you live now and at the warmth
    you want, each with its range. Where the case holds bills, the house is fitted to them
    first. Every figure is an estimate.
    """
    from costcompare.cli.fitting import compared
    from costcompare.views.terminal import Waiting

    check_target(json_target, force)
    outdoor = _outdoors(outdoors)
    with Waiting() as progress:
        understood = read_home(case, changes)
        year = read_year(weather, understood)
        from costcompare.comparing import weather_of

        year = year if year is not None else weather_of(understood)
        comparison, house = compared(understood, year, members, progress)
        if winters:
            from costcompare.winters import with_winters

            comparison = with_winters(comparison, house, progress=progress)
        from costcompare.views.pages import comparison_page

    page = comparison_page(
        comparison, installed_on=understood.money.installed_on, outdoor_degf=outdoor
    )
    show(page, comparison, json_target)


def _outdoors(text: str | None) -> float | None:
    """The temperature outdoors that was asked for [F]."""
    if text is None:
        return None
    faults: list[Fault] = []
    celsius = measured("--outdoors", text, "temperature", faults)
    if faults:
        raise InputError(faults)
    return celsius * 1.8 + 32.0


@command(commands, "explain", "costcompare explain demo")
def explain(
    case: CaseArgument,
    changes: SetOption = None,
    weather: WeatherOption = None,
    json_target: JsonOption = None,
    force: ForceOption = False,
) -> None:
    """Where this year's money goes.

    Today's bill as you live now in parts that add up to it, for the year and for the worst
    month. Where the case holds bills, the house is fitted to them first.
    """
    from costcompare.views.terminal import Waiting

    check_target(json_target, force)
    with Waiting() as progress:
        understood = read_home(case, changes)
        house, year, bills = _fitted(understood, read_year(weather, understood), progress)
        from costcompare.comparing import explain as work_out

        explanation = replace(work_out(house, weather=year), fitted_bills=bills)
        from costcompare.views.pages import explanation_page

    show(explanation_page(explanation), explanation, json_target)


@command(commands, "thermostat", "costcompare thermostat demo --from 60F --to 72F --step 2F")
def thermostat(
    case: CaseArgument,
    lowest: Annotated[str, typer.Option("--from", help="Lowest setting by day.")] = "58 F",
    highest: Annotated[str, typer.Option("--to", help="Highest setting by day.")] = "74 F",
    step: Annotated[str, typer.Option("--step", help="From one setting to the next.")] = "2 F",
    changes: SetOption = None,
    weather: WeatherOption = None,
    json_target: JsonOption = None,
    force: ForceOption = False,
) -> None:
    """The bill and the warmth at each setting.

    For today and every option, with the thermostat held day and night and with it set back
    at night. Where the case holds bills, the house is fitted to them first.
    """
    from costcompare.views.terminal import Waiting

    check_target(json_target, force)
    settings = _settings(lowest, highest, step)
    with Waiting() as progress:
        understood = read_home(case, changes)
        house, year, bills = _fitted(understood, read_year(weather, understood), progress)
        from costcompare.fitting import with_stated_thermostat
        from costcompare.thermostat import sweep

        swept = sweep(
            with_stated_thermostat(house, understood), settings, weather=year, progress=progress
        )
        swept = replace(swept, fitted_bills=bills)
        from costcompare.views.pages import sweep_page

    show(sweep_page(understood.title, swept), swept, json_target)


def _fitted(case: Case, weather: Weather | None, progress: Progress) -> tuple[Case, Weather, int]:
    """The house fitted to the bills of its case, its year, and how many bills; as it is said
    to be and 0 without bills."""
    from costcompare.comparing import weather_of
    from costcompare.fitting import fitted_to_own_bills

    year = weather if weather is not None else weather_of(case)
    fitted = fitted_to_own_bills(case, year, progress=progress)
    return (case, year, 0) if fitted is None else (fitted.likely, year, len(fitted.report.bills))


MOST_SETTINGS = 41
"""More settings than anybody reads; each is a year for every choice, held and set back."""


def _settings(lowest: str, highest: str, step: str) -> list[float]:
    """The settings [degC] from text; every fault of the three at once."""
    faults: list[Fault] = []
    first = measured("--from", lowest, "temperature", faults)
    last = measured("--to", highest, "temperature", faults)
    apart = measured("--step", step, "temperature_difference", faults)
    if not faults and not first < last:
        faults.append(Fault("--to", f"must be warmer than --from, which is {lowest}", highest))
    if not faults and not apart > 0.0:
        faults.append(Fault("--step", "must be more than 0 F", step, 'for example "2 F"'))
    if not faults and (last - first) / apart > MOST_SETTINGS - 1:
        rule = f"must make at most {MOST_SETTINGS} settings"
        faults.append(Fault("--step", rule, step, "a larger step or a narrower range"))
    if faults:
        raise InputError(faults)
    count = int((last - first) / apart + 1e-6) + 1
    return [first + number * apart for number in range(count)]


@command(commands, "serve", "costcompare serve demo --no-browser")
def serve(
    case: Annotated[
        str, typer.Argument(metavar="[CASE]", help="A case file, or a built-in example.")
    ] = "demo",
    port: Annotated[
        int, typer.Option("--port", min=1, max=65535, help="A free one is taken where it is not.")
    ] = 8050,
    host: Annotated[
        str,
        typer.Option("--host", help="Where to listen; anything but this machine opens it to all."),
    ] = "127.0.0.1",
    browser: Annotated[
        bool, typer.Option("--browser/--no-browser", help="Open the page in a browser.")
    ] = True,
) -> None:
    """Show it all on a page in the browser.

    The page is served by this machine alone, needs no network, and ends with Ctrl+C.
    """
    path = case_path(case)
    from costcompare.views.dashboard import serve as show_page

    show_page(path, host=host, port=port, open_browser=browser)
