"""Bills and warm hours of an ensemble, against those of the comparison itself."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from costcompare.case import example_path, read_case
from costcompare.case.facts import Case, Period
from costcompare.comparing import compare, weather_of
from costcompare.comparison import Comparison
from costcompare.ranges.outcomes import WINTERS, outcomes, winters
from costcompare.uncertainty import Draws, prior_draws, uncertain_facts
from costcompare.weather import Weather


@cache
def case() -> Case:
    """The demo with the option that replaces most of its facts."""
    whole = read_case(example_path("demo"))
    return replace(whole, options=whole.options[:1])


@cache
def weather() -> Weather:
    return weather_of(case())


@cache
def comparison() -> Comparison:
    return compare(case(), weather=weather())


def likely(case_: Case, members: int = 1) -> Draws:
    facts = uncertain_facts(case_)
    return Draws(facts, np.zeros((members, len(facts))))


def test_a_likely_member_has_the_bills_of_the_comparison() -> None:
    found = outcomes(case(), comparison().choices, likely(case()), weather())
    bills = [choice.annual.bill_usd for choice in comparison().choices]
    assert found.bill_usd[0] == pytest.approx(bills, rel=1e-6)
    for n, choice in enumerate(comparison().choices):
        warm = sum(room.comfort_hours for room in choice.rooms)
        wanted = sum(room.wanted_hours for room in choice.rooms)
        assert found.warm_share[0, n] == pytest.approx(warm / wanted, abs=1e-3)


def test_a_tariff_by_the_hour_is_priced_by_the_hour() -> None:
    evening = Period(
        "evening",
        months=(True,) * 12,
        days="all",
        hours=tuple(17 <= hour < 21 for hour in range(24)),
        price=0.4,
    )
    by_hour = replace(case(), tariff=replace(case().tariff, periods=(evening,)))
    wanted = compare(by_hour, weather=weather())
    found = outcomes(by_hour, wanted.choices[:1], likely(by_hour), weather())
    assert found.bill_usd[0, 0] == pytest.approx(wanted.choices[0].annual.bill_usd, rel=1e-6)


def test_winters_are_gathered_into_fifths_and_few_are_taken_as_they_are() -> None:
    draws = prior_draws(case(), 50)
    kinds = winters(draws)
    assert len(kinds) == WINTERS
    assert sorted(row for rows, _ in kinds for row in rows) == list(range(50))
    assert {len(rows) for rows, _ in kinds} <= {9, 10, 11}
    # Means of the fifths of a standard normal number, times 1.4 K over 1.2816.
    shifts = [1.3998, 0.5319, 0.0, -0.5319, -1.3998]
    expected = sorted(1.4 / 1.2815516 * shift for shift in shifts)
    assert [shift for _, shift in kinds] == pytest.approx(expected, abs=1e-3)
    few = likely(case(), 3)
    few.z[:, few.names.index("weather.winter")] = (1.2815516, 0.0, -1.2815516)
    assert [shift for _, shift in winters(few)] == pytest.approx([-1.4, 0.0, 1.4])


def test_progress_rises_to_all_of_it() -> None:
    told: list[float] = []
    draws = prior_draws(case(), 6)
    outcomes(case(), comparison().choices[:1], draws, weather(), progress=told.append)
    assert told == sorted(told)
    assert told[-1] == pytest.approx(1.0)


def test_a_colder_winter_costs_more() -> None:
    draws = likely(case(), 2)
    column = draws.names.index("weather.winter")
    draws.z[:, column] = (-2.0, 2.0)
    found = outcomes(case(), comparison().choices[:1], draws, weather())
    assert found.bill_usd[0, 0] > found.bill_usd[1, 0]
