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


def test_a_summer_afternoon_costs_more_than_a_winter_night() -> None:
    """The dear months are those of the peak, and sealing attic ducts takes most off there."""
    comparison = example("summer_peak")
    before = {month.month: month for month in comparison.today.monthly}
    summer, rest = (6, 7, 8, 9), (1, 2, 3, 4, 5, 10, 11, 12)
    dearest = max(before[m].next_kwh_usd or 0.0 for m in rest)
    assert all((before[m].next_kwh_usd or 0.0) > 1.3 * dearest for m in summer)
    sealed = comparison.choice("First things first: seal the ducts, shade the west", AS_LIVED)
    saved = {m.month: before[m.month].bill_usd - m.bill_usd for m in sealed.monthly}
    assert sum(saved[m] for m in summer) > sum(saved[m] for m in rest)


def test_the_other_tariff_changes_what_a_saving_is_worth() -> None:
    """The same kilowatt hours saved, priced by bill before less bill after under each tariff."""
    comparison = example("summer_peak")
    sealed = comparison.choice("First things first: seal the ducts, shade the west", AS_LIVED)
    today = comparison.today
    here = [
        was.bill_usd - now.bill_usd for was, now in zip(today.monthly, sealed.monthly, strict=True)
    ]
    bills = (today.other_tariffs[0].monthly_bill_usd, sealed.other_tariffs[0].monthly_bill_usd)
    there = [was - now for was, now in zip(*bills, strict=True)]
    summer, mild = (5, 6, 7, 8), (2, 3, 4, 9, 10)
    assert sum(here[m] for m in summer) > 1.1 * sum(there[m] for m in summer)
    assert sum(here[m] for m in mild) < 0.8 * sum(there[m] for m in mild)
