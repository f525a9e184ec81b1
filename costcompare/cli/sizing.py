"""The command about machines and rooms: size."""

from __future__ import annotations

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

commands = typer.Typer()


@command(commands, "size", "costcompare size demo")
def size(
    case: CaseArgument,
    changes: SetOption = None,
    weather: WeatherOption = None,
    json_target: JsonOption = None,
    force: ForceOption = False,
) -> None:
    """Heat loss by room, machines, circuits, settings.

    What each room needs at the design temperature, the machines of every option against it,
    their circuits, and what to set on them, each with its reason. Where the case holds bills,
    the heat loss by the bills stands beside the one by the survey.
    """
    from costcompare.views.terminal import Waiting

    check_target(json_target, force)
    with Waiting() as progress:
        understood = read_home(case, changes)
        year = read_year(weather, understood)
        from costcompare.settings import sized_with_settings

        sizing, cards = sized_with_settings(understood, weather=year, progress=progress)
        from costcompare.bill_heat_loss import heat_loss_from_bills
        from costcompare.comparison import as_document
        from costcompare.views.sizing_page import sizing_page

        by_bills = heat_loss_from_bills(understood, sizing, weather=year, progress=progress)
    document = {**as_document(sizing), "settings": cards, "heat_loss_by_bills": by_bills}
    show(sizing_page(sizing, cards, by_bills), document, json_target)
