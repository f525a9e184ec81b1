"""What else the page says of the money."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from costcompare.comparison import (
    AS_LIVED,
    AS_WANTED,
    Comparison,
    EmissionLine,
    GridEmissions,
    MoneyYears,
    OldSystemYears,
)
from costcompare.views.wording.emissions import emissions_answer
from costcompare.views.wording.four_bills import degree_answer, four_bills, rows_for, warmth_answer
from costcompare.views.wording.money_more import money_answers
from costcompare.views.wording.outdoors import hour_answer
from costcompare.views.wording.years_ahead import (
    life_cycle_lines,
    moving_answer,
    old_system_answer,
    outlook_lines,
    replaced_answer,
    waiting_answer,
)

DAY = date(2027, 3, 1)


@pytest.fixture
def money(comparison: Comparison, option: str) -> MoneyYears:
    found = comparison.choice(option, AS_WANTED).money
    assert found is not None
    return found


def with_years(money: MoneyYears, **changes: object) -> MoneyYears:
    years = money.over_the_years
    assert years is not None
    return replace(money, over_the_years=replace(years, **changes))  # type: ignore[arg-type]


def test_the_four_bills_and_a_degree_in_words(comparison: Comparison, option: str) -> None:
    rows = rows_for(comparison, option)
    assert rows is not None
    rows = replace(
        rows,
        today_as_lived_usd=2949.0,
        today_one_degree_usd=242.0,
        new_one_degree_usd=48.0,
        degrees_warmer_degf=8.0,
        warmth_worth_usd=1937.0,
        added_warmth_new_usd=385.0,
    )
    assert four_bills(rows)[0].figure == "$2,950"
    assert degree_answer(rows) == (
        "Of the 8 °F between the settings you have and the warmth you want, each 1 °F costs about "
        f"$240 a year with today’s system and about $50 with “{option}”."
    )
    assert "would cost about $1,940 a year more with today’s system" in warmth_answer(rows)
    assert "no payback here counts it" in warmth_answer(rows)
    cool = replace(rows, degrees_warmer_degf=0.0, today_one_degree_usd=None)
    assert degree_answer(cool) == warmth_answer(cool) == ""


def test_a_replacement_that_takes_the_money_out_again(money: MoneyYears) -> None:
    assert replaced_answer(with_years(money, unpaid_again_years=None), DAY) == ""
    again = with_years(money, unpaid_again_years=8.0, back_for_good_years=12.0)
    assert replaced_answer(again, DAY) == (
        "Around March 2035 it is worn out, and buying it again takes out money that had come back; "
        "it is back again around March 2039."
    )
    never = with_years(money, unpaid_again_years=8.0, back_for_good_years=None)
    assert replaced_answer(never, DAY).endswith("that does not come back within 15 years.")


def test_an_old_system_that_is_counted_is_said(money: MoneyYears) -> None:
    assert old_system_answer(money, DAY) == ""
    old = with_years(money, old_system=OldSystemYears(6.0, 4500.0, 15.0))
    assert old_system_answer(old, DAY) == (
        "Counted in: today’s system would have to be replaced around March 2033 for about $4,500, "
        "and with this choice it would not."
    )


def test_moving_and_waiting(money: MoneyYears) -> None:
    assert moving_answer(money) == ""
    moved = with_years(money, move_in_years=7, position_when_moving_usd=-2647.0)
    assert moving_answer(moved) == (
        "If you move in 7 years and get nothing for what you leave behind, about $2,650 is still "
        "out."
    )
    assert "$970 more in bills" in waiting_answer(replace(money, waiting_a_winter_usd=971.0))
    assert waiting_answer(replace(money, waiting_a_winter_usd=-200.0)) == ""


def test_emissions_are_one_line_with_their_source(comparison: Comparison, option: str) -> None:
    assert emissions_answer(comparison, option) == ""
    line = EmissionLine(option, AS_WANTED, 3500.0, 1748.3)
    stated = replace(comparison, emissions=GridEmissions(0.35, "a table", (line,)))
    assert emissions_answer(stated, option) == (
        "At 0.35 kg of carbon dioxide for each kWh (a table), this choice at the warmth you want "
        "emits about 2 t a year less than you do now."
    )


def test_the_tables_have_a_line_an_option(comparison: Comparison) -> None:
    options = [c for c in comparison.choices if not c.is_today and c.warmth == AS_WANTED]
    for lines in (life_cycle_lines(options), outlook_lines(options)):
        assert [line[0] for line in lines] == [choice.name for choice in options]


def test_an_hour_that_never_comes_is_said(comparison: Comparison) -> None:
    assert hour_answer(comparison.choices, -60.0).startswith("It is hardly ever −60 °F outside")


def test_the_page_says_them_one_after_the_other(comparison: Comparison, option: str) -> None:
    wanted = money_answers(comparison, option, AS_WANTED, DAY)
    lived = money_answers(comparison, option, AS_LIVED, DAY)
    assert wanted[0].startswith("Of the 4 °F between")
    assert lived[0].startswith("At 10 °F outside an hour of heating costs")
    (alone,) = money_answers(comparison, comparison.today.name, AS_LIVED, DAY)
    assert alone == lived[0].split("; with “")[0] + "."
