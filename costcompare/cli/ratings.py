"""The command about one machine: rate."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from costcompare.cli.frame import ForceOption, JsonOption, check_target, command, show

commands = typer.Typer()

EXAMPLE = "demo"
"""Name of the invented machine that comes with the program"""


@command(commands, "rate", "costcompare rate demo")
def rate(
    file: Annotated[
        str,
        typer.Argument(metavar="FILE", help="A file of test points, or demo for an invented one."),
    ],
    json_target: JsonOption = None,
    force: ForceOption = False,
) -> None:
    """Standard ratings from test points.

    HSPF2 and SEER2 by the American rule, SCOP by EN 14825. A rating compares machines on
    paper; no bill is ever worked out from one.
    """
    from costcompare.equipment.ratings import rate_file
    from costcompare.views.rating_page import rating_page

    check_target(json_target, force)
    ratings = rate_file(_path(file))
    show(rating_page(ratings), ratings, json_target)


def _path(name: str) -> Path:
    """A file of that name, else the invented machine."""
    path = Path(name)
    if name != EXAMPLE or path.exists():
        return path
    from importlib.resources import files

    return Path(str(files("costcompare"))) / "data" / "rating_example.toml"
