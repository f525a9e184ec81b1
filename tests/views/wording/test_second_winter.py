"""The letter and the sentences of the second-winter check are true of the check."""

from __future__ import annotations

from dataclasses import replace

import pytest

from costcompare.billing.second_winter import Habits
from costcompare.billing.shortfall import Cause
from costcompare.views.second_winter_page import second_winter_page
from costcompare.views.terminal import plain_lines
from costcompare.views.wording.rules import broken_rules
from costcompare.views.wording.second_winter import (
    CAUSES,
    cause_answer,
    habits_answer,
    letter,
    promise_answer,
    saving_answer,
)
from tests.billing.synthetic_year import uses
from tests.billing.test_second_winter import COLDER, check, promise

FORBIDDEN = ("nan", "None")


def test_a_saving_that_is_shown() -> None:
    said = saving_answer(check(uses(COLDER, slope=0.925)))
    assert "Over 365 days after the work the house used" in said
    assert "kWh less, " in said
    assert "That is shown" in said


def test_more_use_is_said_to_be_more() -> None:
    said = saving_answer(check([1.1 * use for use in uses(COLDER)]))
    assert "kWh more, 10 % of the whole use" in said
    assert "That is not shown" in said


def test_habits_are_told_only_where_there_are_any() -> None:
    assert habits_answer(check(uses(COLDER, slope=0.925))) == ""
    said = habits_answer(check(uses(COLDER, slope=0.925), Habits(3.0, 50.0)))
    assert "for warmer rooms" in said
    assert "600 kWh for new use" in said


def test_short_of_it_more_than_it_and_the_same() -> None:
    heating = sum(uses()) - 365 * 24.0
    short = check(uses(COLDER, slope=1.4), promises=(promise(heating / 2, heating / 2),))
    assert "kWh short of it." in promise_answer(short)
    assert "Where it went, as far as the bills tell" in " ".join(letter(short))
    more = check(uses(COLDER, slope=0.5), promises=(promise(heating / 2, heating / 2),))
    assert "more than expected." in promise_answer(more)
    same = replace(short, is_within_uncertainty=True)
    assert "the two are the same" in promise_answer(same)
    assert "Where it went" not in " ".join(letter(same))
    assert promise_answer(check(uses(COLDER))) == ""


def test_an_estimate_of_another_house_is_said() -> None:
    other = replace(promise(3000.0, 2000.0), before_kwh=20000.0)
    said = promise_answer(check(uses(COLDER, slope=0.925), promises=(other,)))
    assert "The estimate began with 20,000 kWh a year before the work; the bills say" in said


@pytest.mark.parametrize("name", CAUSES)
def test_every_cause_is_a_sentence(name: str) -> None:
    for cause in (Cause(name, 412.0, is_known=False), Cause(name, None, is_known=True)):  # type: ignore[arg-type]
        said = cause_answer(cause)
        assert said.endswith(".")
        assert ("410 kWh a year (from the bills alone)" in said) == (cause.kwh is not None)


def test_nothing_is_promised_and_nothing_is_missing() -> None:
    both = (promise(3000.0, 2000.0), promise(1000.0, 4000.0, "at the warmth you want"))
    found = check(uses(COLDER, slope=1.2), Habits(2.0, 40.0), both)
    written = "\n".join(plain_lines(second_winter_page(found)))
    assert "Dear family," in written
    for word in FORBIDDEN:
        assert word not in written.replace("finance", "")
    assert broken_rules(written) == ()
