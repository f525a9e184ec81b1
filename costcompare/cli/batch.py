"""The command about many homes: batch."""

from __future__ import annotations

from enum import StrEnum
from importlib.util import find_spec
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from costcompare.cli.frame import (
    ForceOption,
    JsonOption,
    case_path,
    check_target,
    command,
    show,
    tell,
)
from costcompare.errors import Fault, InputError

if TYPE_CHECKING:
    from costcompare.batch import HomeDone, Ledger, Ranking

commands = typer.Typer()


class RankedBy(StrEnum):
    """What the best home has the most of."""

    SAVING = "saving"
    PAYBACK = "payback"
    WARMTH = "warmth"


@command(commands, "batch", "costcompare batch homes.csv --like demo -o ranked.csv")
def batch(
    source: Annotated[
        Path,
        typer.Argument(metavar="FOLDER|FILE.csv", help="A folder of cases, or a home a row."),
    ],
    target: Annotated[
        Path, typer.Option("-o", "--output", metavar="FILE", help="A name in .csv or .parquet.")
    ],
    like: Annotated[
        str | None,
        typer.Option(metavar="CASE", help="Says what a list leaves open, and the options."),
    ] = None,
    rank: Annotated[RankedBy, typer.Option(help="What comes first.")] = RankedBy.SAVING,
    every_option: Annotated[
        bool, typer.Option("--every-option", help="A row for each option, not for the best alone.")
    ] = False,
    processes: Annotated[
        int | None, typer.Option(min=1, max=1024, help="How many at a time; all cores if left out.")
    ] = None,
    json_target: JsonOption = None,
    force: ForceOption = False,
) -> None:
    """Compare many homes and rank them.

    A home that cannot be read is told of and left out. Stopped half way, the same command
    goes on where it stopped: finished homes stand in a file beside the output.
    """
    _check_kind(target)
    check_target(target, force)
    check_target(json_target, force)
    from costcompare.batch import Ledger, listing, ranked

    homes = listing(source, None if like is None else case_path(like))
    ledger = Ledger.beside(target)
    before = len(ledger.keys())
    if before:
        tell(f"Going on: {before} homes stand in {ledger.path.name}.")
    from costcompare import __version__
    from costcompare.batch import run_homes
    from costcompare.views.terminal import Waiting

    with Waiting() as progress, ledger:

        def told(home: HomeDone, number: int) -> None:
            progress(f"{number:,} of {homes.count:,} homes, {home.home}", number / homes.count)

        try:
            run_homes(homes, ledger, version=__version__, processes=processes, told=told)
        except KeyboardInterrupt:
            tell(f"Stopped. Finished homes are kept in {ledger.path.name}; run it again to go on.")
            raise typer.Exit(1) from None
    keys = {home.key(__version__) for home in homes}
    ranking = ranked(
        (home for home in ledger.homes() if home.key in keys), rank.value, every=every_option
    )
    _write(ranking, target, ledger)
    from costcompare.views.batch_page import batch_page

    show(batch_page(ranking, by=rank.value), _document(ranking, rank), json_target)


def _document(ranking: Ranking, rank: RankedBy) -> dict[str, Any]:
    """What ``--json`` writes."""
    table = ranking.table
    return {
        "format": 1,
        "ranked_by": rank.value,
        "homes": table.astype(object).where(table.notna(), None).to_dict("records"),
        "left_out": [{"home": home.home, "faults": list(home.faults)} for home in ranking.left_out],
    }


def _check_kind(target: Path) -> None:
    if target.suffix.lower() == ".csv":
        return
    if target.suffix.lower() != ".parquet":
        raise InputError([Fault(str(target), "must end in .csv or .parquet", instead="ranked.csv")])
    if find_spec("pyarrow") is None:
        rule = "a .parquet file needs the package pyarrow, which is not installed"
        raise InputError([Fault(str(target), rule, instead="a name in .csv")])


def _write(ranking: Ranking, target: Path, ledger: Ledger) -> None:
    """Write the table under another name, then give it its own: never half a table."""
    from costcompare.views.batch_page import spreadsheet

    beginning = target.with_name(f"{target.name}.writing")
    try:
        if target.suffix.lower() == ".parquet":
            ranking.table.to_parquet(beginning, index=False)
        else:
            text = spreadsheet(ranking.table)
            text.to_csv(beginning, index=False, lineterminator="\r\n", encoding="utf-8-sig")
        beginning.replace(target)
    except OSError as error:
        rule = f"cannot be written: {error.strerror or error}"
        raise InputError([Fault(str(target), rule)]) from None
    ledger.remove()
    tell(f"Wrote {target}")
