"""When the money comes back, in words."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from costcompare.case.facts import Incentive
from costcompare.comparison import AS_LIVED, AS_WANTED, Comparison, MoneyYears
from costcompare.money.incentives import counted
from costcompare.views import numbers
from costcompare.views.wording.payback import (
    differences,
    incentives_answer,
    incentives_of,
    money_lines,
    payback_answer,
    payback_words,
    savings,
)

DAY = date(2027, 3, 1)


@pytest.fixture
def money() -> MoneyYears:
    """10,000 dollars that bring 1,250 a year: eight years."""
    return MoneyYears(
        installed_cost_usd=10_000.0,
        incentives_usd=0.0,
        first_year_saving_usd=1250.0,
        same_warmth_saving_usd=2000.0,
        warmth_worth_usd=750.0,
        simple_payback_years=8.0,
        discounted_payback_years=9.5,
        net_savings_usd=2400.0,
        savings_to_investment_ratio=1.2,
        adjusted_internal_rate_of_return=0.04,
        yearly_position_usd=tuple(-10_000.0 + 1000.0 * year for year in range(16)),
    )


def with_money(comparison: Comparison, option: str, money: MoneyYears) -> Comparison:
    return replace(
        comparison,
        choices=tuple(
            replace(choice, money=money) if choice.name == option else choice
            for choice in comparison.choices
        ),
    )


def test_the_month_in_which_money_is_back_is_named(money: MoneyYears) -> None:
    assert payback_words(money, DAY) == "around September 2036"
    never = replace(money, discounted_payback_years=None)
    assert payback_words(never, DAY) == "not within 15 years"


def test_the_sentence_says_price_and_payback(
    comparison: Comparison, option: str, money: MoneyYears
) -> None:
    changed = with_money(comparison, option, money)
    assert payback_answer(changed, option, AS_WANTED, DAY) == (
        f"“{option}” costs about $10,000 to install; at the warmth you want, the money comes back "
        "around September 2036, about 10 years after the work."
    )
    never = with_money(comparison, option, replace(money, discounted_payback_years=None))
    assert payback_answer(never, option, AS_LIVED, DAY).endswith(
        "as you live now, the money does not come back within 15 years."
    )


def test_the_three_savings_are_told_apart(
    comparison: Comparison, option: str, money: MoneyYears
) -> None:
    changed = with_money(comparison, option, money)
    wanted = savings(changed.choice(option, AS_WANTED), AS_LIVED)
    assert [saving.figure for saving in wanted] == [
        "$1,250 a year less",
        "$2,000 a year less",
        "$750 a year",
    ]
    assert "not cash" in wanted[2].words
    lived = savings(changed.choice(option, AS_LIVED), AS_LIVED)
    assert [saving.words for saving in lived] == ["than what you pay now"]
    dearer = replace(money, first_year_saving_usd=-300.0)
    choice = with_money(comparison, option, dearer).choice(option, AS_WANTED)
    assert savings(choice, AS_LIVED)[0].figure == "$300 a year more"
    assert savings(comparison.today, AS_LIVED) == ()


def test_savings_are_what_the_written_bills_differ_by(comparison: Comparison) -> None:
    """Bill before minus bill after, to whoever does the sum on paper, at every rounding."""

    def written(usd: float) -> int:
        return int(numbers.dollars_a_year(usd).replace("$", "").replace(",", ""))

    today = comparison.today
    wanted = comparison.choice(today.name, AS_WANTED)
    for choice in comparison.choices[2:]:
        told = differences(choice)
        assert told is not None
        bill = written(choice.annual.bill_usd)
        assert told.first_year == written(today.annual.bill_usd) - bill
        if choice.warmth == AS_WANTED:
            assert told.same_warmth == written(wanted.annual.bill_usd) - bill
            both = written(wanted.annual.bill_usd) - written(today.annual.bill_usd)
            assert told.warmth == both
    assert numbers.between_bills(3404.9, 3295.1) == 100.0  # alone it would be 110
    assert numbers.between_bills(3295.1, 3404.9) == -100.0


def test_every_incentive_says_whether_it_is_counted_and_why() -> None:
    rebate = Incentive("utility rebate", 1500.0, "applied for", options=("Two heads",))
    ended = Incentive("tax credit", 2000.0, "confirmed", expires=date(2025, 12, 31))
    gift = Incentive("co-op gift", 100.0, "confirmed")
    lines = counted([rebate, ended, gift], "Two heads", DAY, price=9000.0).lines
    assert incentives_answer(lines) == (
        "The utility rebate of $1,500 is in none of these figures: applied for, not confirmed. "
        "The tax credit of $2,000 is in none of these figures: ended on 2025-12-31, before the "
        "installation on 2027-03-01. "
        "The co-op gift of $100 is in these figures: confirmed, paid after the work."
    )
    assert incentives_answer(()) == ""


def test_incentives_of_today_are_none(comparison: Comparison, option: str) -> None:
    assert incentives_of(comparison, comparison.today.name) == ()
    assert [line.counted for line in incentives_of(comparison, option)] == [False]


def test_the_table_has_one_column_an_option(comparison: Comparison) -> None:
    options = [c for c in comparison.choices if not c.is_today and c.warmth == AS_WANTED]
    for line in money_lines(options, DAY):
        assert len(line) == 1 + len(options)
    costs = money_lines(options, DAY)[0][1:]
    assert list(costs) == [
        numbers.dollars(option.money.installed_cost_usd) for option in options if option.money
    ]
