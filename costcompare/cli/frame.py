"""What every command shares: its options, its errors, its reading and its writing.

Exit codes: 0 done, 2 wrong input (every reason on standard error), 1 failed. Results go to
standard output, messages to standard error.
"""

from __future__ import annotations

import functools
import json
import math
import os
from collections.abc import Callable
from contextvars import copy_context
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any, NoReturn, ParamSpec, TypeVar

import typer

from costcompare.errors import CostCompareError, Fault, InputError, OverwriteError

if TYPE_CHECKING:
    from costcompare.case.facts import Case
    from costcompare.units import KindName
    from costcompare.views.terminal import Page
    from costcompare.weather import Weather

DONE, FAILED, WRONG_INPUT = 0, 1, 2
"""Exit codes"""

TRACE = "COSTCOMPARE_TRACE"
"""Environment variable: set, a fault of the program is shown with where it happened."""

CaseArgument = Annotated[
    str, typer.Argument(metavar="CASE", help="A case file, or the name of a built-in example.")
]
SetOption = Annotated[
    list[str] | None,
    typer.Option(
        "--set",
        metavar="PATH=VALUE",
        help="Change one fact of the case for this run; may be given several times.",
    ),
]
WeatherOption = Annotated[
    Path | None,
    typer.Option("--weather", metavar="FILE", help="Use this weather file (EPW, TMY3, TMY2, CSV)."),
]
JsonOption = Annotated[
    str | None,
    typer.Option("--json", metavar="FILE|-", help="Write the result as JSON; - is stdout alone."),
]
ForceOption = Annotated[bool, typer.Option("--force", help="Overwrite a file that exists.")]

P = ParamSpec("P")
R = TypeVar("R")


def command(
    where: typer.Typer, name: str, example: str
) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """Make a function a command with an example under its help and no traceback ever."""

    def register(function: Callable[P, R]) -> Callable[P, R]:
        @functools.wraps(function)
        def guarded(*args: P.args, **kwargs: P.kwargs) -> R:
            try:
                # In a context of its own: the sign of money is that of the case it reads.
                return copy_context().run(function, *args, **kwargs)
            except InputError as error:
                _refuse(error)
            except CostCompareError as error:
                _fail(str(error))
            except (typer.Exit, typer.Abort, typer.BadParameter, BrokenPipeError):
                raise
            except Exception as error:
                # A user must never see a traceback, whatever went wrong.
                if os.environ.get(TRACE):
                    raise
                _fail(
                    f"{type(error).__name__}: {error}\nThis is a fault of the program, not of "
                    f"what you gave. With {TRACE}=1 it shows where it happened."
                )

        where.command(name, epilog=f"Example: {example}")(guarded)
        return guarded

    return register


def _refuse(error: InputError) -> NoReturn:
    count = len(error.faults)
    tell("One thing is wrong:" if count == 1 else f"{count} things are wrong:")
    for fault in error.faults:
        tell(f"  {fault.sentence()}")
    raise typer.Exit(WRONG_INPUT)


def _fail(text: str) -> NoReturn:
    tell(f"costcompare could not finish. {text}")
    raise typer.Exit(FAILED)


def tell(text: str) -> None:
    """A message to the person, apart from the result, without marks that steer a terminal."""
    typer.echo("".join(c if c.isprintable() or c == "\n" else " " for c in text), err=True)


def read_home(name: str, changes: list[str] | None) -> Case:
    """The case of that file or of that built-in example."""
    from costcompare.case import read_case
    from costcompare.views.numbers import write_money_as

    case = read_case(case_path(name), changes or [])
    write_money_as(case.tariff.currency)
    return case


def case_path(name: str) -> Path:
    """A file of that name, else a built-in example of that name."""
    from costcompare.case import example_names, example_path

    path = Path(name)
    if path.exists():
        return path
    if name in example_names():
        return example_path(name)
    known = " or ".join(example_names())
    instead = f"the path of a case file, or the name of an example: {known}"
    raise InputError([Fault(name, "no such file", instead=instead)])


def read_year(file: Path | None, case: Case) -> Weather | None:
    """The weather of that file in the calendar year of the case; None without a file."""
    if file is None:
        return None
    from costcompare.weather import read_weather

    return read_weather(file, calendar_year=case.weather.calendar_year)


def check_target(target: str | Path | None, force: bool) -> None:
    """Refuse to overwrite before anything is worked out."""
    if target is None or str(target) == "-" or force or not Path(target).exists():
        return
    rule = "exists and is not overwritten"
    raise OverwriteError([Fault(str(target), rule, instead="another name, or add --force")])


def write(target: Path, content: str | bytes) -> None:
    """Write a file and say so."""
    try:
        target.write_bytes(content if isinstance(content, bytes) else content.encode())
    except OSError as error:
        reason = error.strerror or str(error)
        raise InputError([Fault(str(target), f"cannot be written: {reason}")]) from None
    tell(f"Wrote {target}")


def show(page: Page, document: Any, target: str | None) -> None:
    """The page on standard output; the document in a file, or alone on standard output."""
    if target != "-":
        _print(page)
    write_json(document, target)


def write_json(document: Any, target: str | None) -> None:
    """The document in a file or on standard output; nowhere without a target."""
    if target is None:
        return
    from costcompare.comparison import as_document

    plain = as_document(document)
    if target == "-":
        typer.echo(json.dumps(plain, indent=2, allow_nan=False))
        return
    text = json.dumps(plain, indent=2, ensure_ascii=False, allow_nan=False)
    write(Path(target), f"{text}\n")


def _print(page: Page) -> None:
    from costcompare.views.terminal import show as show_page

    show_page(page)


def measured(option: str, text: str, kind: KindName, faults: list[Fault]) -> float:
    """The SI value of an option; its fault is added to the others."""
    from costcompare.units import UnitError, parse

    try:
        return parse(text, kind)
    except UnitError as error:
        faults.append(Fault(option, error.rule, error.given, error.instead))
        return math.nan
