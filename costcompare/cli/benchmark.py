"""The command about speed: benchmark."""

from __future__ import annotations

from typing import Annotated

import typer

from costcompare.cli.frame import (
    CaseArgument,
    ForceOption,
    JsonOption,
    case_path,
    check_target,
    command,
    show,
)
from costcompare.errors import Fault, InputError

commands = typer.Typer()


@command(commands, "benchmark", "costcompare benchmark demo --members 1,20")
def benchmark(
    case: CaseArgument = "demo",
    members: Annotated[
        str,
        typer.Option("--members", metavar="N,…", help="How many homes at once, one run each."),
    ] = "1,100,1000",
    days: Annotated[
        int,
        typer.Option("--days", metavar="N", help="Days that the integrator runs, from 2."),
    ] = 5,
    json_target: JsonOption = None,
    force: ForceOption = False,
) -> None:
    """How fast this machine works it out.

    Measured side by side in one run: today's system of the case against scipy's solve_ivp and
    against a plain loop in Python and NumPy, and many homes at once. Takes some minutes.
    """
    from costcompare.views.terminal import Waiting

    counts = _counts(members, days)
    path = case_path(case)
    check_target(json_target, force)
    with Waiting() as progress:
        from costcompare.benchmark import benchmark as measure
        from costcompare.views.benchmark_page import benchmark_page

        found = measure(path, members=counts, integrated_days=days, progress=progress)
    show(benchmark_page(found), found, json_target)


MOST = 100_000
"""Homes at once: more would not fit into memory"""


def _counts(members: str, days: int) -> list[int]:
    """The numbers of homes, with every fault of the options at once."""
    faults = []
    parts = [part.strip() for part in members.split(",")]
    if not all(part.isdecimal() and 1 <= int(part) <= MOST for part in parts):
        rule = f"must be whole numbers from 1 to {MOST}, with commas between"
        faults.append(Fault("--members", rule, members, "such as 1,100,1000"))
    if not 2 <= days <= 365:
        faults.append(Fault("--days", "must be from 2 to 365", str(days), "such as 5"))
    if faults:
        raise InputError(faults)
    return [int(part) for part in parts]
