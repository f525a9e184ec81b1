"""What each choice costs to run, in words."""

from __future__ import annotations

from dataclasses import replace

from costcompare.comparison import AS_LIVED, AS_WANTED, Choice, Comparison
from costcompare.views import numbers
from costcompare.views.wording.running import choices_at, running_answer, summer_answer


def billed(choice: Choice, usd: float) -> Choice:
    return replace(choice, annual=replace(choice.annual, bill_usd=usd))


def two_choices(comparison: Comparison, option: str, now: float, after: float) -> Comparison:
    """Today and the option alone, with these bills at the wanted warmth."""
    today = comparison.choice(comparison.today.name, AS_WANTED)
    chosen = comparison.choice(option, AS_WANTED)
    choices = (comparison.today, billed(today, now), billed(chosen, after))
    return replace(comparison, choices=choices)


def test_both_bills_are_said(comparison: Comparison, option: str) -> None:
    pair = two_choices(comparison, option, 3000.0, 2000.0)
    assert running_answer(pair, option, AS_WANTED) == (
        "At the warmth you want, today’s system costs about $3,000 a year to run and "
        f"“{option}” about $2,000."
    )


def test_the_cheapest_is_named_where_it_is_another(comparison: Comparison, option: str) -> None:
    for warmth in (AS_LIVED, AS_WANTED):
        cheapest = min(choices_at(comparison, warmth), key=lambda c: c.annual.bill_usd)
        sentence = running_answer(comparison, option, warmth)
        if cheapest.name == option:
            assert sentence.endswith("the least of all choices.")
        else:
            bill = numbers.dollars_a_year(cheapest.annual.bill_usd)
            assert sentence.endswith(f"with about {bill}.")


def test_new_cooling_is_said_with_what_it_adds(comparison: Comparison, option: str) -> None:
    today = comparison.choice(comparison.today.name, AS_WANTED)
    chosen = comparison.choice(option, AS_WANTED)
    dearer = tuple(
        replace(month, bill_usd=before.bill_usd + (25.0 if month.month in (6, 7, 8, 9) else -90.0))
        for month, before in zip(chosen.monthly, today.monthly, strict=True)
    )
    hot = replace(
        chosen,
        monthly=dearer,
        annual=replace(chosen.annual, cooling_kwh=today.annual.cooling_kwh + 800.0),
    )
    summer = replace(comparison, choices=(comparison.today, today, hot))
    sentence = summer_answer(summer, option, AS_WANTED)
    assert "From June to September" in sentence
    assert "about $100 higher" in sentence
    assert "800 kWh" in sentence


def test_no_word_of_summer_where_nothing_is_added(comparison: Comparison) -> None:
    assert summer_answer(comparison, comparison.today.name, AS_WANTED) == ""
