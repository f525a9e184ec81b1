"""The commands: each one is read, one call, show.

What takes long to import is imported by the command that needs it, so that ``--help``
answers at once.

frame     options, errors, reading and writing that all commands share
homes     new, check, compare, explain, thermostat, serve
sizing    size
fitting   fit
leaving   report
ratings   rate
benchmark benchmark
batch     batch
bills     bills, verify
weather   weather stations, make, show
"""

from __future__ import annotations

from typing import Annotated

import typer

from costcompare import __version__
from costcompare.cli import (
    batch,
    benchmark,
    bills,
    fitting,
    homes,
    leaving,
    ratings,
    sizing,
    weather,
)

app = typer.Typer(
    name="costcompare",
    help="What a home's heating costs now, what each cure would cost to run, who stays warm.",
    epilog="Example: costcompare compare demo",
    no_args_is_help=True,
    add_completion=False,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
)
app.add_typer(homes.commands)
app.add_typer(sizing.commands)
app.add_typer(leaving.commands)
app.add_typer(fitting.commands)
app.add_typer(ratings.commands)
app.add_typer(batch.commands)
app.add_typer(bills.commands)
app.add_typer(benchmark.commands)
app.add_typer(weather.commands, name="weather")


def _print_version(asked: bool) -> None:
    if asked:
        from importlib.metadata import PackageNotFoundError, version

        print(f"costcompare {__version__}")
        for package in ("numpy", "pandas", "numba", "pvlib", "dash"):
            try:
                print(f"{package} {version(package)}")
            except PackageNotFoundError:
                print(f"{package} is not installed")
        raise typer.Exit


@app.callback()
def main(
    version: Annotated[
        bool,
        typer.Option(
            "--version", callback=_print_version, is_eager=True, help="Show versions and end."
        ),
    ] = False,
) -> None:
    """What a home's heating costs now, what each cure would cost to run, who stays warm."""


def run() -> None:
    """The entry point of the ``costcompare`` command."""
    app()
