"""Part six: how sure we are."""

from __future__ import annotations

from collections import Counter

from costcompare.comparison import Comparison, FactLine
from costcompare.views import numbers
from costcompare.views.wording.naming import listed, plural

KNOWN = ("measured", "seen", "guessed")
"""How a fact is known, the surest first."""

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
    """Whether the figures carry a range, in a sentence."""
    if all(choice.range is None for choice in comparison.choices):
        return (
            "Every figure here is the likely value alone: the program cannot make ranges yet, so "
            "take each as a good estimate, not as a promise. What narrows it most is to replace "
            "guesses by measurements."
        )
    return ""


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
    return f"{numbers.quantity(value)} {fact.unit}".strip()
