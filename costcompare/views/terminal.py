"""Pages for a terminal: headings, sentences, lists and tables, with rich or as plain text.

A page is a sequence of blocks made without knowing where it will be shown. On a terminal
it is drawn with rich; in a pipe, in a file or with ``NO_COLOR`` set it is plain text with
aligned columns that are never cut or wrapped.
"""

from __future__ import annotations

import os
import sys
import threading
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from types import TracebackType
from typing import Literal, TextIO

from rich import box
from rich.console import Console
from rich.padding import Padding
from rich.progress import BarColumn, Progress, TaskID, TextColumn, TimeElapsedColumn
from rich.table import Table as RichTable
from rich.text import Text

from costcompare.views import numbers


@dataclass(frozen=True)
class Heading:
    """A line above what belongs together."""

    text: str


@dataclass(frozen=True)
class Sentences:
    """Running text."""

    text: str


@dataclass(frozen=True)
class Points:
    """A list of sentences."""

    items: tuple[str, ...]


@dataclass(frozen=True)
class Table:
    """Rows of finished text; every row has a cell for every column."""

    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    left: frozenset[int] = frozenset({0})
    """Numbers of the columns that hold words; all others stand to the right"""


Block = Heading | Sentences | Points | Table
Page = Sequence[Block]

COLUMN_GAP = "  "
NARROW = 20
"""[characters] that a column of words keeps in a drawn table while there is room"""
RICH_GAP = 2
"""[characters] between the columns of a drawn table"""

PLAIN_MARKS: Mapping[int, str] = str.maketrans(
    {
        numbers.MINUS: "-",
        "\N{EN DASH}": "-",
        "\N{DEGREE SIGN}": "",
        "\N{LEFT DOUBLE QUOTATION MARK}": '"',
        "\N{RIGHT DOUBLE QUOTATION MARK}": '"',
        "\N{RIGHT SINGLE QUOTATION MARK}": "'",
        "\N{RIGHTWARDS ARROW}": "->",
    }
)
"""What stands for a mark where the output cannot write it."""


def show(page: Page, stream: TextIO | None = None) -> None:
    """Write a page to a stream, standard output unless given."""
    stream = stream or sys.stdout
    if is_terminal(stream):
        _show_rich(page, stream)
    else:
        say("\n".join(plain_lines(page)), stream)


def say(text: str, stream: TextIO) -> None:
    """Write a line of text, with plain marks where the stream cannot write all of them."""
    encoding = stream.encoding or "utf-8"
    try:
        text.encode(encoding)
    except UnicodeEncodeError:
        text = text.translate(PLAIN_MARKS).encode(encoding, "replace").decode(encoding)
    stream.write(f"{text}\n")


def is_terminal(stream: TextIO) -> bool:
    """Whether colours and boxes may be used: a terminal, and ``NO_COLOR`` is not set."""
    if os.environ.get("NO_COLOR") or os.environ.get("TERM") == "dumb":
        return False
    return stream.isatty()


def printable(text: str) -> str:
    """The text without control characters, which would steer the terminal that shows it."""
    return "".join(mark if mark.isprintable() else " " for mark in text)


def plain_lines(page: Page) -> Iterator[str]:
    """The page as lines of plain text, an empty line between blocks."""
    for number, block in enumerate(page):
        if number and not isinstance(page[number - 1], Heading):
            yield ""
        if isinstance(block, Heading | Sentences):
            yield printable(block.text)
        elif isinstance(block, Points):
            yield from (f"- {printable(item)}" for item in block.items)
        else:
            yield from _table_lines(block)


def _table_lines(table: Table) -> Iterator[str]:
    rows = [tuple(printable(cell) for cell in row) for row in (table.columns, *table.rows)]
    widths = [max(len(cell) for cell in column) for column in zip(*rows, strict=True)]
    rows.insert(1, tuple("-" * width for width in widths))
    for row in rows:
        cells = (
            cell.ljust(width) if number in table.left else cell.rjust(width)
            for number, (cell, width) in enumerate(zip(row, widths, strict=True))
        )
        yield COLUMN_GAP.join(cells).rstrip()


def _show_rich(page: Page, stream: TextIO) -> None:
    console = Console(file=stream, highlight=False)
    for number, block in enumerate(page):
        if number and not isinstance(page[number - 1], Heading):
            console.print()
        if isinstance(block, Heading):
            console.print(Text(printable(block.text), style="bold"))
        elif isinstance(block, Sentences):
            console.print(Text(printable(block.text)))
        elif isinstance(block, Points):
            for item in block.items:
                hanging = Text("\N{BULLET} ") + Text(printable(item))
                console.print(Padding(hanging, (0, 0, 0, 1)))
        else:
            _print_rich_table(block, console)


def _print_rich_table(table: Table, console: Console) -> None:
    room = console.width - RICH_GAP * (len(table.columns) - 1)
    widths = _widths(table, room)
    if sum(widths) > room:
        # Too narrow for the numbers alone: lines that the terminal wraps lose nothing.
        for line in _table_lines(table):
            console.print(Text(line), soft_wrap=True)
        return
    drawn = RichTable(
        box=box.SIMPLE_HEAD,
        padding=(0, 0, 0, 1),
        pad_edge=False,
        show_edge=False,
        header_style="bold",
    )
    for number, (name, width) in enumerate(zip(table.columns, widths, strict=True)):
        justify: Literal["left", "right"] = "left" if number in table.left else "right"
        drawn.add_column(Text(name), justify=justify, overflow="fold", width=width)
    for row in table.rows:
        drawn.add_row(*(Text(printable(cell)) for cell in row))
    console.print(drawn)


def _widths(table: Table, room: int) -> list[int]:
    """Widths of the columns in a line of ``room`` characters; the widest give way first.

    No number is ever broken; words keep :data:`NARROW` characters while that is possible.
    """
    columns = list(zip(table.columns, *table.rows, strict=True))
    widths = [max(len(cell) for cell in cells) for cells in columns]
    words = [max(len(word) for cell in cells for word in cell.split() or [""]) for cells in columns]
    for least_words in (NARROW, 1):
        least = [
            max(word, min(width, least_words)) if number in table.left else word
            for number, (word, width) in enumerate(zip(words, widths, strict=True))
        ]
        while sum(widths) > room:
            spare = [width - low for width, low in zip(widths, least, strict=True)]
            if max(spare) <= 0:
                break
            widths[spare.index(max(spare))] -= 1
    return widths


class Waiting:
    """A bar on standard error for work that takes longer than a second.

    It is the ``progress`` that a long call takes: called with what is being done and the
    share of the whole that is done. Nothing is shown where standard error is no terminal.
    """

    AFTER = 1.0
    """[s] of work before anything is shown"""

    def __init__(self, stream: TextIO | None = None) -> None:
        self._stream = stream or sys.stderr
        self._lock = threading.Lock()
        self._bar: Progress | None = None
        self._task: TaskID | None = None
        self._state = ("Working out 8,760 hours", 0.0)
        self._over = False
        self._timer = threading.Timer(self.AFTER, self._begin)
        self._timer.daemon = True

    def __enter__(self) -> Waiting:
        if is_terminal(self._stream):
            self._timer.start()
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self._timer.cancel()
        with self._lock:
            self._over = True
            if self._bar is not None:
                self._bar.stop()

    def __call__(self, text: str, share: float) -> None:
        """Say what is being done and which share of the whole is done."""
        with self._lock:
            self._state = (text, share)
            if self._bar is not None and self._task is not None:
                self._bar.update(self._task, description=printable(text), completed=share)

    def _begin(self) -> None:
        with self._lock:
            if self._over:
                return
            text, share = self._state
            self._bar = Progress(
                TextColumn("{task.description}", markup=False),
                BarColumn(),
                TimeElapsedColumn(),
                console=Console(file=self._stream, highlight=False),
                transient=True,
            )
            self._task = self._bar.add_task(printable(text), total=1.0)
            self._bar.update(self._task, completed=share)
            self._bar.start()
