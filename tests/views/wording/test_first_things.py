"""First things first: the order of the cures and what is said of each."""

from __future__ import annotations

from dataclasses import replace

from costcompare.comparison import AS_LIVED, Choice, Comparison
from costcompare.views.wording.first_things import first_things


def changed(choice: Choice, **money: float | None) -> Choice:
    assert choice.money is not None
    return replace(choice, money=replace(choice.money, **money))


def of_two(comparison: Comparison, first: Choice, second: Choice) -> Comparison:
    return replace(comparison, choices=(comparison.today, first, second))


def test_the_quickest_comes_first(comparison: Comparison) -> None:
    told = first_things(comparison)
    years = [choice.money.discounted_payback_years for choice, _ in told if choice.money]
    assert len(told) == sum(c.warmth == AS_LIVED for c in comparison.choices) - 1
    known = [one for one in years if one is not None]
    assert known == sorted(known)
    assert years[: len(known)] == known


def test_what_is_said_follows_the_money(comparison: Comparison) -> None:
    one, two = [
        choice for choice in comparison.choices if choice.warmth == AS_LIVED and not choice.is_today
    ][:2]
    quick = changed(
        one,
        installed_cost_usd=2000.0,
        incentives_usd=500.0,
        first_year_saving_usd=300.0,
        simple_payback_years=5.0,
        discounted_payback_years=5.4,
    )
    never = changed(
        two,
        installed_cost_usd=9000.0,
        incentives_usd=0.0,
        first_year_saving_usd=-120.0,
        simple_payback_years=None,
        discounted_payback_years=None,
    )
    told = first_things(of_two(comparison, never, quick))
    assert [choice.name for choice, _ in told] == [one.name, two.name]
    assert told[0][1] == "$1,500 to install, about $300 a year less, back in about 5.4 years."
    assert told[1][1] == "$9,000 to install, and the bill is about $120 a year higher."
    slow = changed(never, first_year_saving_usd=100.0, simple_payback_years=90.0)
    assert (
        "does not bring the money back within"
        in first_things(of_two(comparison, slow, quick))[1][1]
    )
    same = changed(never, first_year_saving_usd=3.0)
    assert "next to no change" in first_things(of_two(comparison, same, quick))[1][1]
    upkeep = changed(never, first_year_saving_usd=100.0)
    assert "which upkeep takes back" in first_things(of_two(comparison, upkeep, quick))[1][1]
