"""Part five: an hour of heating tonight, and a milder or a colder winter."""

from __future__ import annotations

from collections.abc import Sequence

from costcompare.comparison import AS_WANTED, Choice, Comparison, WinterYear
from costcompare.tonight import at_outdoors
from costcompare.views import numbers
from costcompare.views.wording.naming import as_a_label, in_a_sentence

MILD_AND_COLD = (
    "Mild and cold are about one winter in ten each, October to April 1.4 K (2.5 °F) warmer or "
    "colder (judgement)."
)


def hour_answer(choices: Sequence[Choice], outdoor_degf: float) -> str:
    """What an hour of heating costs at a temperature outdoors with each choice, in a sentence."""
    known = [
        (choice, usd)
        for choice in choices
        if (usd := at_outdoors(choice.hours_by_outdoors, outdoor_degf)) is not None
    ]
    degrees = numbers.degrees(outdoor_degf)
    if not known:
        return f"It is hardly ever {degrees} outside here while the heating runs."
    costs = "; ".join(
        f"with {in_a_sentence(choice)} about {numbers.dollars_an_hour(usd)}"
        for choice, usd in known
    )
    return f"At {degrees} outside an hour of heating costs, on the mean of such hours, {costs}."


def cold_evening(comparison: Comparison) -> float:
    """The temperature outdoors to speak of unasked [F]: the ten next to the design temperature."""
    return 10.0 * round(comparison.weather.design_temperature_degf / 10.0)


def tonight_answer(comparison: Comparison, name: str) -> str:
    """An hour in the cold, today and with an option, both at the warmth you want."""
    names = dict.fromkeys((comparison.today.name, name))
    choices = [comparison.choice(one, AS_WANTED) for one in names]
    return hour_answer(choices, cold_evening(comparison))


def winter_columns(winters: Sequence[WinterYear]) -> tuple[str, ...]:
    """The heads of the table of winters."""
    return ("choice", "warmth", *(f"{one.winter} winter" for one in winters))


def winter_lines(
    comparison: Comparison, winters: Sequence[WinterYear]
) -> tuple[tuple[str, ...], ...]:
    """The year's bill of every choice in every winter."""
    return tuple(
        (
            as_a_label(choice),
            choice.warmth,
            *(numbers.dollars_a_year(one.choices[number].bill_usd) for one in winters),
        )
        for number, choice in enumerate(comparison.choices)
    )
