"""A report of the example home, a home stretched to its limits, and how to read what was made."""

from __future__ import annotations

import io
from dataclasses import replace
from datetime import date

import pytest
from pypdf import PdfReader

from costcompare.case import Case, example_path, read_case
from costcompare.comparison import Choice, Comparison, RoomYear
from costcompare.thermostat import Sweep
from costcompare.views.report import report_html, report_pdf

DAY = date(2027, 1, 15)
LONG = "A name that is as long as any case may hold, with a semicolon; and (brackets) x."[:80]


def read(made: bytes) -> PdfReader:
    return PdfReader(io.BytesIO(made))


def text_of(made: bytes) -> str:
    """All text of a PDF, every run of white space as one space."""
    return " ".join(" ".join(page.extract_text() for page in read(made).pages).split())


@pytest.fixture(scope="session")
def report(comparison: Comparison, demo: Case, option: str, swept: Sweep) -> bytes:
    return report_pdf(comparison, demo, option=option, sweep=swept, made_on=DAY)


@pytest.fixture(scope="session")
def page(comparison: Comparison, demo: Case, option: str, swept: Sweep) -> str:
    return report_html(comparison, demo, option=option, sweep=swept, made_on=DAY)


def renamed(choice: Choice, name: str, *, rooms: int, called: str) -> Choice:
    """The choice under another name, with so many rooms."""
    own = choice.rooms

    def room(number: int) -> RoomYear:
        return replace(own[number % len(own)], name=f"{number} {called}"[:80])

    day = choice.coldest_day
    hours = tuple(day.rooms_degf.values())
    all_rooms = tuple(room(number) for number in range(rooms))
    named = {one.name: hours[number % len(hours)] for number, one in enumerate(all_rooms)}
    return replace(choice, name=name, rooms=all_rooms, coldest_day=replace(day, rooms_degf=named))


def stretched_to(comparison: Comparison, option: str, room: str) -> Comparison:
    """Six options and twelve rooms of these names."""
    today, wanted, *options = comparison.choices
    choices = [renamed(one, today.name, rooms=12, called=room) for one in (today, wanted)]
    for number in range(6):
        pair = options[2 * (number % (len(options) // 2)) :][:2]
        name = f"{number} {option}"[:80]
        choices += [renamed(one, name, rooms=12, called=room) for one in pair]
    return replace(comparison, choices=tuple(choices))


@pytest.fixture(scope="session")
def large(comparison: Comparison) -> Comparison:
    """Six options and twelve rooms with names of a usual length."""
    return stretched_to(comparison, "Two heads, ducts sealed", "back bedroom")


@pytest.fixture(scope="session")
def stretched(comparison: Comparison) -> Comparison:
    """Six options and twelve rooms, all with the longest names."""
    return replace(stretched_to(comparison, LONG, LONG), title=LONG)


@pytest.fixture(params=["cold_climate", "summer_peak", "wrong_settings"])
def example(request: pytest.FixtureRequest) -> Case:
    return read_case(example_path(request.param))
