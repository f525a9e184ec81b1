"""What a document is made of: finished texts and shapes, the same for PDF and HTML."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Tone = Literal["now", "chosen", "other", "cold", "taken", "whole"]
"""What a colour stands for; never without a letter, a word or a place that says the same"""


@dataclass(frozen=True)
class Mark:
    """The badge of a choice: ``now`` for today, a letter for an option."""

    letter: str
    tone: Tone


@dataclass(frozen=True)
class Cell:
    """One cell of a table: a text, and what may be drawn beside it."""

    text: str = ""
    mark: Mark | None = None
    bar: tuple[float, float] | None = None
    """Where a bar begins and ends, as shares of the width"""
    spark: tuple[float, ...] = ()
    """Heights of small upright bars, as shares of the height"""
    tone: Tone = "other"
    strong: bool = False
    detail: str = ""
    """A second line, smaller: the range of the figure above it"""


@dataclass(frozen=True)
class Table:
    """A table with what it shows in its caption."""

    key: str
    caption: str
    head: tuple[Cell, ...]
    rows: tuple[tuple[Cell, ...], ...]
    note: str = ""


@dataclass(frozen=True)
class Picture:
    """A drawing and what it says, for those who do not see it."""

    svg: str
    alt: str


@dataclass(frozen=True)
class Point:
    """One point of a list: a few words that name it, what it says, what raised it."""

    head: str
    text: str
    because: str = ""
    mark: Mark | None = None


@dataclass(frozen=True)
class Figure:
    """One of the large figures on top."""

    label: str
    value: str
    note: str
    tone: Tone


@dataclass(frozen=True)
class Section:
    """A part of a document under its heading."""

    key: str
    heading: str
    answers: tuple[str, ...] = ()
    tables: tuple[Table, ...] = ()
    pictures: tuple[Picture, ...] = ()
    points: tuple[Point, ...] = ()
    more: tuple[str, ...] = ()
    """Sentences for where there is room: the HTML file, not the two pages"""


@dataclass(frozen=True)
class Document:
    """A whole document, ready to be set."""

    language: str
    paper: Literal["us-letter", "a4"]
    overline: str
    title: str
    subtitle: str
    lead: str
    figures: tuple[Figure, ...]
    sections: tuple[Section, ...]
    notice: str
    footer: str
    page_of: str
    size: float = 1.0
    """Size of the type against that of the report"""
    new_page: str = ""
    """Key of the part that begins the second page"""
