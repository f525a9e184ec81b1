"""The homes of a folder of cases, or of a list with one home a row.

A list is a CSV file. Its column ``home`` names the home; every other column is a fact of a
new case (``built``, ``floor_area``, …: :data:`costcompare.case.new.FACTS`) or the dotted
path of any value of a case (``house.wall_insulation``). An empty cell says nothing. What
the row leaves open, and the options that are tried, come from the case that the list is
given with. Rows are read one at a time, so a long list needs no more memory than a short.
"""

from __future__ import annotations

import csv
import hashlib
import json
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from costcompare.case import read_document
from costcompare.case.new import FACTS
from costcompare.case.overriding import with_changes
from costcompare.case.paths import split
from costcompare.case.values import nearest
from costcompare.errors import CaseError, Fault, InputError

NAME_COLUMN = "home"
LONGEST_CELL = 2000
"""[characters] no value of a case is longer"""


@dataclass(frozen=True)
class HomeOfList:
    """One home: the document of its case, or what is wrong with it."""

    home: str
    where: str
    """File, or file and row"""
    document: Mapping[str, Any] | None
    directory: Path
    """Where relative paths of the case start"""
    faults: tuple[str, ...] = ()

    def key(self, version: str) -> str:
        """A digest of what the answer hangs on: the program, the case, its own files."""
        text = json.dumps([version, self.home, self.document, self.faults], default=str)
        digest = hashlib.sha256(text.encode())
        for section, name in (("weather", "file"), ("bills", "file")):
            table = (self.document or {}).get(section)
            path = table.get(name) if isinstance(table, Mapping) else None
            if isinstance(path, str) and (self.directory / path).is_file():
                digest.update((self.directory / path).read_bytes())
        return digest.hexdigest()[:24]


@dataclass(frozen=True)
class Listing:
    """Homes that can be gone through more than once, in the same order."""

    count: int
    homes: Callable[[], Iterator[HomeOfList]]

    def __iter__(self) -> Iterator[HomeOfList]:
        return self.homes()


def listing(source: Path, like: Path | None) -> Listing:
    """The homes of a folder of ``*.toml``, or of a CSV list beside the case ``like``.

    Raises :class:`InputError` with every fault that concerns the folder or the list as a
    whole; the faults of one home stay with that home.
    """
    if source.is_dir():
        if like is not None:
            rule = "goes with a list, not with a folder: a case says all of its home"
            raise InputError([Fault("--like", rule, str(like), "a CSV file, or leave --like out")])
        return _folder(source)
    if not source.is_file():
        instead = "a folder of case files, or a CSV file with one home a row"
        raise InputError([Fault(str(source), "no such folder or file", "", instead)])
    if like is None:
        rule = "a list needs a case that says what its rows leave open and which options to try"
        raise InputError([Fault("--like", rule, "", "--like CASE")])
    return _list(source, like)


def _folder(folder: Path) -> Listing:
    files = sorted(folder.glob("*.toml"))
    if not files:
        raise InputError([Fault(str(folder), "holds no case file", "", "files that end in .toml")])
    return Listing(len(files), lambda: (_home_of_file(file) for file in files))


def _home_of_file(file: Path) -> HomeOfList:
    try:
        return HomeOfList(file.stem, file.name, read_document(file), file.parent)
    except CaseError as error:
        return HomeOfList(file.stem, file.name, None, file.parent, _sentences(error))


def _list(source: Path, like: Path) -> Listing:
    document = read_document(like)
    faults: list[Fault] = []
    if not document.get("options"):
        rule = "has no options: there would be nothing to rank"
        faults.append(Fault(str(like), rule, "", "at least one [[options]]"))
    names, count = _columns(source, faults)
    if faults:
        raise InputError(faults)
    paths = {name: FACTS[name].path if name in FACTS else name for name in names}
    # Bills are those of one home: they tell nothing of the others in the list.
    document = {key: value for key, value in document.items() if key != "bills"}

    def homes() -> Iterator[HomeOfList]:
        for number, row in enumerate(_rows(source), start=2):
            yield _home_of_row(row, f"{source.name}, row {number}", (document, like.parent), paths)

    return Listing(count, homes)


def _rows(source: Path) -> Iterator[dict[str, Any]]:
    with source.open(encoding="utf-8-sig", newline="") as lines:
        for row in csv.DictReader(lines, skipinitialspace=True):
            yield {_plain(key): value for key, value in row.items() if key is not None} | {
                "": row.get(None)  # cells beyond the last column  # type: ignore[call-overload]
            }


def _plain(name: str) -> str:
    return name.strip()


def _columns(source: Path, faults: list[Fault]) -> tuple[list[str], int]:
    """The columns that hold facts, and the number of rows; faults are added to the others."""
    try:
        with source.open(encoding="utf-8-sig", newline="") as lines:
            reader = csv.reader(lines, skipinitialspace=True)
            header = [_plain(name) for name in next(reader, [])]
            count = sum(1 for row in reader if row)
    except (UnicodeDecodeError, csv.Error) as error:
        faults.append(Fault(source.name, f"cannot be read as a CSV text in UTF-8: {error}"))
        return [], 0
    if NAME_COLUMN not in header:
        known = ", ".join([NAME_COLUMN, *FACTS])
        faults.append(Fault(source.name, f"must have a column {NAME_COLUMN}", "", known))
    names = [name for name in header if name and name != NAME_COLUMN]
    faults.extend(
        Fault(source.name, "has a column twice", name)
        for name in sorted({name for name in names if names.count(name) > 1})
    )
    for name in names:
        if name not in FACTS and not _is_path(name):
            rule = "a column must be a fact or the path of a value in a case"
            near = nearest(name, list(FACTS)) or "for example house.wall_insulation"
            faults.append(Fault(source.name, rule, name, near))
    if not count:
        faults.append(Fault(source.name, "has no row below its columns", "", "one home a row"))
    return names, count


def _is_path(name: str) -> bool:
    try:
        return len(split(name)) > 1
    except ValueError:
        return False


def _home_of_row(
    row: Mapping[str, Any],
    where: str,
    like: tuple[Mapping[str, Any], Path],
    paths: Mapping[str, str],
) -> HomeOfList:
    document, directory = like
    name = str(row.get(NAME_COLUMN) or "").strip() or where
    if row.get(""):
        rule = "has more cells than columns: a cell that holds a comma must stand in quotes"
        return HomeOfList(name, where, None, directory, (Fault(where, rule).sentence(),))
    changes: dict[str, Any] = {"title": name}
    for column, path in paths.items():
        text = str(row.get(column) or "").strip()
        if text:
            changes[path] = _value(column, text)
    changed, faults = with_changes(document, changes)
    if faults:
        said = tuple(Fault(f"{where}, {f.path}", f.rule, f.given, f.instead) for f in faults)
        return HomeOfList(name, where, None, directory, tuple(f.sentence() for f in said))
    return HomeOfList(name, where, changed, directory)


def _value(column: str, text: str) -> Any:
    """What a cell holds: a number where it is one (with the usual unit of a fact), else text."""
    asked = FACTS.get(column)
    number: float | None
    try:
        number = float(text)
    except ValueError:
        number = None
    if number is None or len(text) > LONGEST_CELL:
        return text[:LONGEST_CELL]
    if asked is not None and asked.is_text:
        return f"{text} {asked.unit}" if asked.unit else text
    return int(number) if number.is_integer() and "." not in text else number


def _sentences(error: InputError) -> tuple[str, ...]:
    return tuple(fault.sentence() for fault in error.faults)
