"""Hours of the day and months of the year, counted by hand."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from costcompare.case.hours import hours_of_day, months_of_year, written


@pytest.mark.parametrize(
    ("text", "hours"),
    [
        ("6-23", set(range(6, 23))),
        ("22-6", {22, 23, 0, 1, 2, 3, 4, 5}),
        ("6-9,17-23", {6, 7, 8, *range(17, 23)}),
        ("0-24", set(range(24))),
        ("all", set(range(24))),
        ("23-24", {23}),
    ],
)
def test_hours(text: str, hours: set[int]) -> None:
    assert {h for h, flag in enumerate(hours_of_day(text)) if flag} == hours


@pytest.mark.parametrize(
    ("text", "months"),
    [
        ("10-3", {10, 11, 12, 1, 2, 3}),
        ("6-9", {6, 7, 8, 9}),
        ("12", {12}),
        ("1,2,12", {1, 2, 12}),
    ],
)
def test_months(text: str, months: set[int]) -> None:
    assert {m for m, flag in enumerate(months_of_year(text), 1) if flag} == months


@pytest.mark.parametrize("text", ["", "6", "6-6", "25-3", "24-3", "6-25", "six-nine", "6-9;17-23"])
def test_what_is_no_range_of_hours_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match="must be"):
        hours_of_day(text)


@pytest.mark.parametrize("text", ["", "0", "13", "0-3", "jan"])
def test_what_is_no_range_of_months_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match="must be"):
        months_of_year(text)


@given(flags=st.lists(st.booleans(), min_size=24, max_size=24).filter(any))
def test_written_hours_read_back(flags: list[bool]) -> None:
    assert hours_of_day(written(tuple(flags))) == tuple(flags)
