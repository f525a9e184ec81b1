"""Part two: what each choice costs to run."""

from __future__ import annotations

from costcompare.comparison import Choice, Comparison, Warmth
from costcompare.views import numbers
from costcompare.views.wording.naming import capital, in_a_sentence

SUMMER = (6, 7, 8, 9)
"""June to September: the months named when cooling is new"""


def choices_at(comparison: Comparison, warmth: Warmth) -> tuple[Choice, ...]:
    """Today and every option at one warmth, today first."""
    return tuple(choice for choice in comparison.choices if choice.warmth == warmth)


def running_answer(comparison: Comparison, name: str, warmth: Warmth) -> str:
    """The year's bill of the chosen option, of today, and of the cheapest, in a sentence."""
    choices = choices_at(comparison, warmth)
    today = choices[0]
    chosen = comparison.choice(name, warmth)
    cheapest = min(choices, key=lambda choice: choice.annual.bill_usd)
    if chosen.is_today:
        return f"{capital(warmth)}, {in_a_sentence(today)} costs {_bill(today)} a year to run."
    sentence = (
        f"{capital(warmth)}, {in_a_sentence(today)} costs {_bill(today)} a year to run and "
        f"{in_a_sentence(chosen)} {_bill(chosen)}"
    )
    if cheapest.name == chosen.name:
        return f"{sentence}, the least of all choices." if len(choices) > 2 else f"{sentence}."
    return f"{sentence}; the least is {in_a_sentence(cheapest)} with {_bill(cheapest)}."


def summer_answer(comparison: Comparison, name: str, warmth: Warmth) -> str:
    """What new cooling adds to the summer bills, or nothing where it adds nothing."""
    today = comparison.choice(comparison.today.name, warmth)
    chosen = comparison.choice(name, warmth)
    rise = sum(
        after.bill_usd - before.bill_usd
        for before, after in zip(today.monthly, chosen.monthly, strict=True)
        if before.month in SUMMER
    )
    new_kwh = chosen.annual.cooling_kwh - today.annual.cooling_kwh
    if numbers.rounds_to_nothing(rise) or rise <= 0 or new_kwh <= 0:
        return ""
    first, last = numbers.month_name(SUMMER[0]), numbers.month_name(SUMMER[-1])
    return (
        f"From {first} to {last} the bills with {in_a_sentence(chosen)} are together about "
        f"{numbers.dollars_a_year(rise)} higher than with {in_a_sentence(today)}, because it "
        f"also cools the home with {numbers.kwh(new_kwh)} a year; that is in its total."
    )


def year_words(choice: Choice) -> str:
    """The choice's yearly bill, beside its row of months."""
    return f"{_bill(choice)} a year"


def _bill(choice: Choice) -> str:
    return f"about {numbers.dollars_a_year(choice.annual.bill_usd)}"
