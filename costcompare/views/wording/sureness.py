"""Part six: how sure we are."""

from __future__ import annotations

from collections import Counter

from costcompare.comparison import Band, Choice, Comparison, FactLine, Warmth
from costcompare.views import numbers
from costcompare.views.wording.naming import in_a_sentence, listed, plural

KNOWN = ("measured", "seen", "guessed")
"""How a fact is known, the surest first."""

MOST_NAMED = 3
"""How many facts a sentence names as driving a range (judgement)"""

NO_FACTS = frozenset({"format", "title"})
"""Lines of a case that say nothing about the home"""


def known_counts(comparison: Comparison) -> dict[str, int]:
    """How many facts are measured, seen and guessed."""
    counts = Counter(fact.known for fact in comparison.facts if fact.path not in NO_FACTS)
    return {known: counts.get(known, 0) for known in KNOWN}


def sureness_answer(comparison: Comparison) -> str:
    """How the facts are known, in a sentence."""
    counts = known_counts(comparison)
    total = sum(counts.values())
    parts = [
        f"{numbers.count(count)} {plural(count, 'was', 'were')} {known}"
        for known, count in counts.items()
        if count
    ]
    return f"Of the {numbers.count(total)} facts behind these figures, {listed(parts)}."


def range_answer(comparison: Comparison) -> str:
    """Whether the figures carry a range, and that of today's bill, in a sentence."""
    now = comparison.today.range
    if now is None:
        return (
            "Every figure here is the likely value alone, without a range: take each as a good "
            "estimate, not as a promise. What narrows it most is to replace guesses by "
            "measurements."
        )
    return (
        f"In 8 of 10 homes that fit these facts, today’s bill as you live now lies between "
        f"{between(now.bill_usd)} a year; the middle is about "
        f"{numbers.dollars_a_year(now.bill_usd.likely or 0.0)}.{_driven(comparison.today)}"
    )


def saving_range_answer(comparison: Comparison, name: str, warmth: Warmth) -> str:
    """How sure the saving of a choice and its payback are, in sentences; empty without ranges."""
    choice = comparison.choice(name, warmth)
    if choice.range is None or choice.is_today or choice.range.first_year_saving_usd is None:
        return ""
    saving = choice.range.first_year_saving_usd
    return (
        f"With {in_a_sentence(choice)}, {warmth}, the first year’s saving against your bill now "
        f"lies between {between(saving)} in 8 of 10 such homes. The money is back within its "
        f"life, in today’s value, in {chance_words(choice.range.chance_of_payback_within_life)}."
        f"{_driven(choice)}"
    )


def drivers_say(comparison: Comparison, name: str, warmth: Warmth) -> str:
    """Which figure the bars of the drivers move, and how far a bar reaches."""
    choice = comparison.choice(name, warmth)
    saving = f"the first year’s saving with {in_a_sentence(choice)}"
    figure = "today’s bill" if choice.is_today else saving
    return (
        f"How far each fact alone moves {figure}, from one end of its range to the other; guessed "
        "facts in bold."
    )


def what_ranges_hold(comparison: Comparison) -> str:
    """How many homes the ranges come from, and what is in them and what is not."""
    quality = comparison.data_quality
    if quality is None:
        return ""
    parts = [
        f"{numbers.count(number)} {known}"
        for known, number in zip(
            KNOWN, (quality.measured, quality.seen, quality.guessed), strict=True
        )
        if number
    ]
    said = (
        f"{numbers.count(quality.members)} homes were worked out; of the facts that can move a "
        f"figure, {listed(parts)}."
    )
    if quality.guessed_share is not None:
        said += f" Guesses make {numbers.percent(quality.guessed_share)} of the range of today’s "
        said += "bill."
    return f"{said} {comparison.range_note}"


def between(band: Band) -> str:
    """``$2,900 and $4,400``: the two ends of a range of money."""
    return f"{numbers.dollars_in_a_range(band.low)} and {numbers.dollars_in_a_range(band.high)}"


def chance_words(share: float | None) -> str:
    """``about 7 of 10 such homes``; never none or all, which an ensemble cannot know."""
    if share is None:
        return numbers.MISSING
    tenths = round(10.0 * share)
    if tenths == 0:
        return "fewer than 1 of 10 such homes"
    if tenths == 10:
        return "more than 9 of 10 such homes"
    return f"about {tenths} of 10 such homes"


def _driven(choice: Choice) -> str:
    """What drives a choice's range most, as a sentence with a space before it."""
    if choice.range is None or not choice.range.drivers:
        return ""
    named = listed([driver.words for driver in choice.range.drivers[:MOST_NAMED]])
    return f" What drives that range most: {named}."


def weather_answer(comparison: Comparison) -> str:
    """Which weather the year was worked out with, in a sentence."""
    weather = comparison.weather
    design = numbers.degrees(weather.design_temperature_degf)
    estimated = weather.design_temperature_is_estimated
    how = "estimated from this year" if estimated else "as the case states"
    return (
        f"The year of weather at {weather.station} has "
        f"{numbers.degree_days(weather.heating_degree_days_65f)} and a "
        f"design temperature of {design}, {how}."
    )


def fact_name(fact: FactLine) -> str:
    """A fact's dotted path as words: ``today.ducts.condition`` is ``today, ducts, condition``."""
    return ", ".join(step.replace("_", " ") for step in fact.path.split("."))


def fact_value(fact: FactLine) -> str:
    """A fact's value with its unit."""
    value = fact.value
    if value is None:
        return "not stated"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, str):
        return value
    return f"{numbers.quantity(value)} {numbers.in_money(fact.unit)}".strip()
