"""Why the bill is what it is, in words."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from costcompare.comparison import Comparison, DuctYear, MonthParts, Part
from costcompare.explaining import PARTS
from costcompare.views import numbers
from costcompare.views.wording.bill import (
    DUCT_PARTS,
    PLAIN_PARTS,
    adding_up,
    bill_answer,
    bill_lines,
    ducts_answer,
    plain_part,
)


def test_every_part_has_plain_words() -> None:
    assert set(PLAIN_PARTS) == set(PARTS)
    assert set(PARTS) >= DUCT_PARTS
    assert plain_part("a new part") == "A new part"


def test_the_shown_parts_add_up_to_the_shown_bill(comparison: Comparison) -> None:
    lines = bill_lines(comparison)
    bill = comparison.today.annual.bill_usd
    assert numbers.dollars(sum(line.usd for line in lines)) == numbers.dollars_a_year(bill)
    for line in lines:
        exact = next(p.usd for p in comparison.explanation if p.part == line.part)
        assert abs(line.usd - exact) < numbers.YEAR_STEP


def test_ducts_stand_first_and_what_is_taken_off_last(comparison: Comparison) -> None:
    lines = bill_lines(comparison)
    kinds = [0 if line.is_duct else 2 if line.usd < 0 else 1 for line in lines]
    assert kinds == sorted(kinds)
    assert kinds[0] == 0
    assert kinds[-1] == 2


def of_parts(comparison: Comparison, **usd: float) -> Comparison:
    """The comparison with a bill of these parts."""
    parts = tuple(Part(name.replace("_", " "), 10.0, amount) for name, amount in usd.items())
    months = tuple(MonthParts(month, parts) for month in range(1, 13))
    return replace(comparison, explanation=parts, explanation_by_month=months)


def test_the_sentence_says_what_the_ducts_cost(comparison: Comparison) -> None:
    bill = of_parts(comparison, supply_leak=304.0, return_leak=52.0, hot_water=645.0)
    assert bill_answer(bill) == (
        "Of the $1,000 a year, about $350 pays for heat that the ducts lose before it reaches a "
        "room."
    )


def test_without_ducts_the_sentence_says_the_largest_part(comparison: Comparison) -> None:
    bill = of_parts(comparison, walls_and_glass=204.0, hot_water=645.0)
    assert bill_answer(bill) == "The largest part of the $850 a year is hot water: about $650."


def test_what_becomes_of_the_heat_in_the_ducts() -> None:
    ducts = DuctYear(700.0, 150.0, 100.0, 50.0, 30.0, 80.0, 0.70, 0.75)
    assert ducts_answer(ducts) == (
        "Of every 100 kWh of heat put into the ducts, 70 reach the rooms, and another 8 come "
        "back, because the ducts warm the space they run in."
    )
    nothing_back = replace(ducts, regained_kwh=0.0)
    assert ducts_answer(nothing_back).endswith("70 reach the rooms.")


def test_the_share_that_arrives_is_that_of_the_result(comparison: Comparison) -> None:
    ducts = comparison.today.ducts
    assert ducts is not None
    assert f", {round(100 * ducts.delivery_effectiveness)} reach the rooms" in ducts_answer(ducts)


@given(
    values=st.lists(st.floats(-5000.0, 5000.0), min_size=1, max_size=20),
    step=st.sampled_from([1.0, 5.0, 10.0]),
)
def test_rounded_parts_add_up_whatever_they_are(values: list[float], step: float) -> None:
    rounded = adding_up(values, step)
    assert sum(rounded) == pytest.approx(step * round(sum(value / step for value in values)))
    for exact, shown in zip(values, rounded, strict=True):
        assert abs(exact - shown) <= step
