"""Ranges of a comparison: in order, repeatable, never wider for knowing more."""

from __future__ import annotations

import math
from dataclasses import fields, replace
from functools import cache

import numpy as np
import pytest

from costcompare.case import case_from_document, example_path, read_document
from costcompare.case.facts import Case
from costcompare.comparing import compare, weather_of
from costcompare.comparison import Band, Comparison, as_document
from costcompare.ranges import with_ranges
from costcompare.ranges.outcomes import outcomes
from costcompare.uncertainty import Draws, prior_draws, uncertain_facts

MEMBERS = 16


GUESSED = {"likely": "R-7", "low": "R-0", "high": "R-11", "known": "guessed"}
MEASURED = {"likely": "R-7", "known": "measured"}
LOOKED_AT = {"likely": "R-7", "known": "seen"}
WALLS = {"guessed": GUESSED, "seen": LOOKED_AT, "measured": MEASURED}


@cache
def case_of(walls: str) -> Case:
    """The demo with one option, and its walls known more or less well."""
    text = read_document(example_path("demo"))
    text["options"] = text["options"][:1]
    text["money"]["incentives"] = []
    text["house"]["wall_insulation"] = WALLS[walls]
    return case_from_document(text)


@cache
def ranged() -> tuple[Case, Comparison]:
    case = case_of("guessed")
    year = weather_of(case)
    return case, with_ranges(compare(case, weather=year), case, weather=year, members=MEMBERS)


def bands(comparison: Comparison) -> dict[str, Band]:
    found = {}
    for choice in comparison.choices:
        assert choice.range is not None
        for field in fields(choice.range):
            value = getattr(choice.range, field.name)
            if isinstance(value, Band):
                found[f"{choice.name} {choice.warmth} {field.name}"] = value
    return found


def number(value: float | None) -> float:
    return math.inf if value is None else value


def test_low_likely_and_high_stand_in_order() -> None:
    found = bands(ranged()[1])
    assert len(found) > 12
    for name, one in found.items():
        assert number(one.low) <= number(one.likely) <= number(one.high), name
    bill = found["Today as you live now bill_usd"]
    assert number(bill.low) < number(bill.high)


def test_the_figure_itself_lies_in_its_range() -> None:
    for choice in ranged()[1].choices:
        assert choice.range is not None
        bill = choice.range.bill_usd
        assert number(bill.low) < choice.annual.bill_usd < number(bill.high)


def test_the_same_seed_gives_the_same_digits() -> None:
    case, comparison = ranged()
    plain = replace(comparison, choices=tuple(replace(c, range=None) for c in comparison.choices))
    again = with_ranges(plain, case, weather=weather_of(case), members=MEMBERS)
    assert as_document(again) == as_document(comparison)


def widths(bills: np.ndarray, rows: np.ndarray) -> np.ndarray:
    """From the tenth to the ninetieth percentile of resampled members, one a row of ``rows``."""
    low, high = np.quantile(bills[rows], (0.1, 0.9), axis=1)
    return np.asarray(high - low)


@pytest.mark.parametrize(
    ("before", "after", "narrower"),
    [("guessed", "measured", True), ("seen", "measured", False)],
)
def test_confirming_a_fact_at_its_likely_value_widens_nothing(
    before: str, after: str, narrower: bool
) -> None:
    """Beyond the sampling error, which resampling the same members in both tells."""
    year = weather_of(case_of(before))
    choices = compare(case_of(before), weather=year).choices[:1]
    bills = [
        outcomes(case, choices, prior_draws(case, 3 * MEMBERS), year).bill_usd[:, 0]
        for case in (case_of(before), case_of(after))
    ]
    rows = np.random.default_rng(0).integers(0, 3 * MEMBERS, (400, 3 * MEMBERS))
    wider = widths(bills[1], rows) - widths(bills[0], rows)
    assert wider.mean() <= 2.0 * wider.std()
    if narrower:
        assert wider.mean() < 0.0


def test_a_saving_is_surer_than_the_two_bills_apart() -> None:
    """The same homes on both sides: what is alike in both falls out."""
    _, comparison = ranged()
    now, after = (c.range for c in (comparison.choices[0], comparison.choices[2]))
    assert now is not None
    assert after is not None
    assert after.first_year_saving_usd is not None
    spans = [
        number(one.high) - number(one.low)
        for one in (now.bill_usd, after.bill_usd, after.first_year_saving_usd)
    ]
    assert spans[2] < math.hypot(spans[0], spans[1])


def test_homes_all_alike_have_no_range() -> None:
    case, comparison = ranged()
    facts = uncertain_facts(case)
    alike = Draws(facts, np.zeros((3, len(facts))))
    one = with_ranges(comparison, case, weather=weather_of(case), draws=alike)
    for choice in one.choices:
        assert choice.range is not None
        bill = choice.range.bill_usd
        assert bill.low == bill.likely == bill.high == pytest.approx(choice.annual.bill_usd)
        assert choice.range.drivers == ()
    first = one.choices[2]
    assert first.money is not None
    assert first.range is not None
    assert first.range.simple_payback_years is not None
    payback = first.range.simple_payback_years.likely
    assert payback == pytest.approx(first.money.simple_payback_years)
    assert first.range.chance_of_payback_within_life == 1.0
    years = first.range.yearly_position_usd
    assert [band.likely for band in years] == pytest.approx(first.money.yearly_position_usd)
    assert all(band.low == band.high for band in years)
    assert one.choices[0].range is not None
    assert one.choices[0].range.yearly_position_usd == ()
    assert one.data_quality is not None
    assert one.data_quality.members == 3


def test_today_has_no_payback_and_the_warmth_wanted_a_saving_below_nothing() -> None:
    lived, wanted = ranged()[1].choices[:2]
    assert lived.range is not None
    assert wanted.range is not None
    assert lived.range.first_year_saving_usd is None
    assert lived.range.simple_payback_years is None
    assert wanted.range.first_year_saving_usd is not None
    assert number(wanted.range.first_year_saving_usd.high) < 0.0


def test_what_the_ranges_rest_on_is_told() -> None:
    case, comparison = ranged()
    quality = comparison.data_quality
    assert quality is not None
    assert quality.measured + quality.seen + quality.guessed == len(uncertain_facts(case))
    assert quality.members == MEMBERS
    assert comparison.range_note
