"""What a question is worth: how much of a range hangs on its answer, and what an answer did."""

from __future__ import annotations

from costcompare.comparison import AS_WANTED, Band, Choice, Comparison
from costcompare.views import numbers
from costcompare.views.wording.naming import in_a_sentence

LEAST_CHANGE = 0.05
"""A range that changes by less of its width is called as wide as before: from draw to draw its
ends move by as much (docs/uncertainty.md)"""


def ranged_choice(comparison: Comparison, name: str | None) -> Choice:
    """The choice whose range the questions are weighed by; today where there is none."""
    for choice in comparison.choices:
        if choice.name == name and choice.warmth == AS_WANTED and not choice.is_today:
            return choice
    return comparison.today


def weighed_figure(choice: Choice) -> str:
    """What hangs on the answers: today’s bill, or the saving of a choice."""
    return short_figure(choice) + ("" if choice.is_today else f" with {in_a_sentence(choice)}")


def short_figure(choice: Choice) -> str:
    """The same where the choice has been named before."""
    return "today’s bill" if choice.is_today else "the saving"


def worth_words(figure: str, swing_usd: float, share: float) -> str:
    """How far a fact alone moves a figure, and its share of the whole range."""
    return (
        f"alone it moves {figure} by about {numbers.dollars_in_a_range(abs(swing_usd))} a year, "
        f"{numbers.percent(share)} of what is uncertain in it"
    )


UNWEIGHED = (
    "In the usual order. What each is worth at this home is worked out while you talk, after the "
    "settings of the thermostat."
)


def order_words(choice: Choice, *, earlier: bool) -> str:
    """By what the questions are ordered, what weighs most, and whether it is worked out again."""
    figure = weighed_figure(choice)
    if earlier:
        said = f"By how much they moved {figure} before the last answer; worked out again now."
    else:
        said = f"By how much they move {figure}, after what everything hangs on."
    drivers = choice.range.drivers if choice.range is not None else ()
    if drivers:
        most = drivers[0]
        said += (
            f" The largest part of its range comes from {most.words} ({most.known}, "
            f"{numbers.percent(most.share)})."
        )
    return said


def narrowing_answer(before: Comparison, after: Comparison, name: str | None) -> str:
    """The range before and after an answer in a sentence; empty where there is none to compare."""
    old, new = (ranged_choice(one, name) for one in (before, after))
    if old.name != new.name or old.is_today != new.is_today:
        return ""
    then, now = _band(old), _band(new)
    if then is None or now is None:
        return ""
    return (
        f"The range of {short_figure(new)}: {_ends(then)} before, {_ends(now)} now, "
        f"{_width_words(_width(then), _width(now))}."
    )


def _band(choice: Choice) -> Band | None:
    if choice.range is None:
        return None
    return choice.range.bill_usd if choice.is_today else choice.range.first_year_saving_usd


def _ends(band: Band) -> str:
    low, high = (numbers.dollars_in_a_range(end) for end in (band.low, band.high))
    return f"{low} to {high}"


def _width(band: Band) -> float:
    return (band.high or 0.0) - (band.low or 0.0)


def _width_words(then: float, now: float) -> str:
    if then <= 0.0 or abs(now / then - 1.0) < LEAST_CHANGE:
        return "about as wide as before"
    change = numbers.percent(abs(now / then - 1.0))
    return f"{change} narrower" if now < then else f"{change} wider"
