"""Stories that the built-in examples tell, as the trade knows them (common practice, no source)."""

from __future__ import annotations

from functools import cache

import pytest

from costcompare import compare
from costcompare.case import example_names, example_path, read_case
from costcompare.comparison import AS_LIVED, AS_WANTED, Comparison


@cache
def example(name: str) -> Comparison:
    return compare(read_case(example_path(name)))


def test_putting_the_controls_right_pays_back_long_before_a_new_machine() -> None:
    """A compressor locked out in any frost and strips on a hair trigger: a service visit."""
    comparison = example("wrong_settings")
    right = comparison.choice("Put the controls right", AS_LIVED)
    new = comparison.choice("A variable heat pump, ducts sealed", AS_LIVED)
    assert right.money is not None
    assert new.money is not None
    assert right.annual.backup_kwh < 0.2 * comparison.today.annual.backup_kwh
    assert right.money.simple_payback_years is not None
    assert right.money.simple_payback_years < 2.0
    assert new.money.simple_payback_years is not None
    assert new.money.simple_payback_years > 10.0


def test_saving_as_you_live_is_less_than_saving_at_the_same_warmth() -> None:
    """A family that keeps a cool house saves less cash than one that paid for warmth."""
    comparison = example("demo")
    for choice in comparison.choices[2:]:
        if choice.warmth == AS_WANTED and choice.money is not None:
            assert choice.money.same_warmth_saving_usd is not None
            assert choice.money.first_year_saving_usd < choice.money.same_warmth_saving_usd


def test_a_home_that_burns_wood_pays_more_for_electricity_without_the_stove() -> None:
    """The bill rises, at either warmth, and no money comes back."""
    comparison = example("wood_heat")
    for warmth in (AS_LIVED, AS_WANTED):
        rests = comparison.choice("Two heads, the stove rests", warmth)
        evenings = comparison.choice("Two heads, the stove in the evenings", warmth)
        assert rests.money is not None
        assert rests.money.first_year_saving_usd < 0.0
        assert rests.money.discounted_payback_years is None
        assert evenings.annual.bill_usd < rests.annual.bill_usd


def test_new_movers_have_loans_with_a_true_rate_and_a_credit_that_ended() -> None:
    comparison = example("new_mover")
    name = "A ducted heat pump in place of the furnace, ducts sealed"
    money = comparison.choice(name, AS_WANTED).money
    assert money is not None
    bank, plan = money.ways_to_pay
    assert bank.true_rate is not None
    assert bank.stated_rate == pytest.approx(bank.true_rate, abs=1e-9)
    assert plan.true_rate == pytest.approx(0.059943, abs=5e-7)
    rebate, credit = money.incentives
    assert rebate.counted
    assert not credit.counted
    assert credit.reason.startswith("ended on 2025-12-31")
    assert money.incentives_usd == 900.0
    assert money.over_the_years is not None
    assert money.over_the_years.old_system is not None
    assert money.over_the_years.move_in_years == 8


@pytest.mark.parametrize("name", example_names())
def test_the_four_bills_add_up_in_every_example(name: str) -> None:
    comparison = example(name)
    assert len(comparison.four_rows) == len(comparison.choices) // 2 - 1
    for rows in comparison.four_rows:
        lived = comparison.choice(rows.name, AS_LIVED)
        wanted = comparison.choice(rows.name, AS_WANTED)
        assert lived.money is not None
        assert wanted.money is not None
        assert rows.saving_as_lived_usd == lived.money.first_year_saving_usd
        assert rows.saving_as_wanted_usd == wanted.money.first_year_saving_usd
        assert rows.warmth_worth_usd == wanted.money.warmth_worth_usd
        assert rows.same_warmth_saving_usd == wanted.money.same_warmth_saving_usd
        assert rows.saving_as_wanted_usd == pytest.approx(
            rows.saving_as_lived_usd - rows.added_warmth_new_usd
        )
