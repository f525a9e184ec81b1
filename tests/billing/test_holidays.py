"""Holidays against days that can be looked up in a calendar."""

from __future__ import annotations

from datetime import date

import pytest

from costcompare.billing.holidays import LAST, RULES, easter, holidays, weekday_of_month
from costcompare.case.tariff_facts import HOLIDAY_NAMES, HOLIDAY_SETS

SIX = HOLIDAY_SETS["usual six"]


@pytest.mark.parametrize(
    ("year", "month", "day"),
    [
        (1954, 4, 18),
        (1981, 4, 19),
        (2008, 3, 23),
        (2024, 3, 31),
        (2025, 4, 20),
        (2026, 4, 5),
        (2027, 3, 28),
        (2038, 4, 25),
        (2049, 4, 18),
    ],
)
def test_easter(year: int, month: int, day: int) -> None:
    """Early, late and excepted years of the calendar (from memory)."""
    assert easter(year) == date(year, month, day)


def test_every_name_has_a_rule_and_every_set_known_names() -> None:
    assert tuple(RULES) == HOLIDAY_NAMES
    assert all(set(names) <= set(RULES) for names in HOLIDAY_SETS.values())


def test_the_usual_six_of_2027() -> None:
    """The fourth of July is a Sunday, Christmas a Saturday."""
    common = {date(2027, 1, 1), date(2027, 5, 31), date(2027, 9, 6), date(2027, 11, 25)}
    fourth, christmas = date(2027, 7, 4), date(2027, 12, 25)
    assert holidays(SIX, 2027, "as dated") == common | {fourth, christmas}
    assert holidays(SIX, 2027, "monday after sunday") == common | {date(2027, 7, 5), christmas}
    # New Year's Day of 2028 is a Saturday too, and is kept on the last day of 2027.
    friday = {date(2027, 7, 5), date(2027, 12, 24), date(2027, 12, 31)}
    assert holidays(SIX, 2027, "nearest weekday") == common | friday


@pytest.mark.parametrize(
    ("number", "day"), [(1, date(2027, 2, 1)), (4, date(2027, 2, 22)), (LAST, date(2027, 2, 22))]
)
def test_mondays_of_a_february(number: int, day: date) -> None:
    assert weekday_of_month(2027, 2, 0, number) == day


def test_the_last_monday_of_december() -> None:
    assert weekday_of_month(2026, 12, 0, LAST) == date(2026, 12, 28)
