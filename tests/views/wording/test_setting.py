"""If you move the thermostat, in words."""

from __future__ import annotations

from dataclasses import replace

import pytest

from costcompare.comparison import AS_WANTED, Comparison
from costcompare.thermostat import SettingYear, Sweep, SweepChoice
from costcompare.views import numbers
from costcompare.views.wording.setting import (
    degree_text,
    night_answer,
    setting_answer,
    thermostat_words,
    wanted_answer,
)
from costcompare.views.wording.setting import swept as choice_of


def year(setting: float, *, held: bool, usd: float) -> SettingYear:
    return SettingYear(setting, held, usd, usd / 6.0, 1, 10 * usd, 500, 1000)


@pytest.fixture
def small() -> Sweep:
    """Three settings of which everything can be counted."""

    def choice(name: str, bills: dict[float, float], night: float) -> SweepChoice:
        held = [year(setting, held=True, usd=usd) for setting, usd in bills.items()]
        low = [year(setting, held=False, usd=usd + night) for setting, usd in bills.items()]
        return SweepChoice(name, name == "Today", (*held, *low))

    return Sweep(
        settings_degf=(66.0, 67.0, 68.0),
        setback_degf=6.0,
        night_hours="22-6",
        wanted_degf=68.0,
        choices=(
            choice("Today", {66.0: 3000.0, 67.0: 3200.0, 68.0: 3400.0}, -300.0),
            choice("Two heads", {66.0: 1800.0, 67.0: 1850.0, 68.0: 1900.0}, 60.0),
        ),
    )


def test_the_sentence_says_both_bills_at_the_setting(small: Sweep) -> None:
    assert setting_answer(small, "Two heads", 67.0, held=True) == (
        "Set to 67 °F day and night, today’s system costs about $3,200 a year and “Two heads” "
        "about $1,850."
    )
    assert setting_answer(small, "Two heads", 67.0, held=False) == (
        "Set to 67 °F and 61 °F at night, today’s system costs about $2,900 a year and "
        "“Two heads” about $1,910."
    )


def test_one_degree_has_its_price_and_the_ends_have_none(small: Sweep) -> None:
    today, heads = small.choices
    assert degree_text(today, 67.0) == "$200"
    assert degree_text(heads, 67.0) == "$50"
    assert degree_text(today, 66.0) == numbers.MISSING


def test_turning_down_may_save_or_cost(small: Sweep) -> None:
    assert night_answer(small, "Two heads", 68.0).startswith(
        "Turning down by 6 °F at night (22-6) takes about $300 a year off with today’s system "
        "and adds about $60 a year with “Two heads”."
    )
    same = replace(
        small.choices[1], years=tuple(replace(y, bill_usd=1900.0) for y in small.choices[1].years)
    )
    unmoved = replace(small, choices=(small.choices[0], same))
    assert "changes the bill by next to nothing" in night_answer(unmoved, "Two heads", 68.0)


def test_a_choice_that_was_not_swept_is_a_key_error(small: Sweep) -> None:
    with pytest.raises(KeyError):
        choice_of(small, "Five heads")


def test_the_real_sweep_is_told_with_its_own_numbers(swept: Sweep, option: str) -> None:
    for held in (True, False):
        sentence = setting_answer(swept, option, 66.0, held=held).replace(option, "")
        for choice in swept.choices:
            assert numbers.dollars_a_year(choice.at(66.0, held=held).bill_usd) in sentence
    assert thermostat_words(swept, 66.0, held=True) == "set to 66 °F day and night"


def test_as_wanted_is_told_with_the_compared_bills(comparison: Comparison, option: str) -> None:
    sentence = wanted_answer(comparison, option)
    for name in (comparison.today.name, option):
        bill = comparison.choice(name, AS_WANTED).annual.bill_usd
        assert numbers.dollars_a_year(bill) in sentence
