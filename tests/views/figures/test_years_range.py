"""The years with their range."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from costcompare.comparison import AS_WANTED, Band, Comparison
from costcompare.views.figures.years_range import year_ranges, years_range_answer

DAY = date(2027, 3, 1)


@pytest.fixture
def with_years(ranged: Comparison) -> Comparison:
    bands = (Band(-5000.0, -5000.0, -5000.0), Band(-4900.0, -4000.0, -2900.0))
    choices = tuple(
        replace(choice, range=replace(choice.range, yearly_position_usd=bands))
        if choice.range is not None
        else choice
        for choice in ranged.choices
    )
    return replace(ranged, choices=choices)


def test_each_year_has_its_three_ends(with_years: Comparison, option: str) -> None:
    years = year_ranges(with_years, option, DAY)
    assert [(one.year, one.low, one.likely, one.high) for one in years] == [
        (2027, -5000.0, -5000.0, -5000.0),
        (2028, -4900.0, -4000.0, -2900.0),
    ]
    assert years[1].text == "2028: −$4,900 to −$2,900, the middle −$4,000"


def test_the_last_year_is_told(with_years: Comparison, option: str) -> None:
    said = years_range_answer(with_years, option, year_ranges(with_years, option, DAY))
    assert f"“{option}”" in said
    assert "between −$4,900 and −$2,900 at the end of 2028" in said


def test_without_ranges_or_an_option_there_is_nothing(
    comparison: Comparison, with_years: Comparison, option: str
) -> None:
    assert year_ranges(comparison, option, DAY) == ()
    assert year_ranges(with_years, with_years.today.name, DAY) == ()
    assert years_range_answer(comparison, option, ()) == ""
    assert comparison.choice(option, AS_WANTED).range is None
