"""Part five: the four bills that must not be mixed up, and what a degree costs."""

from __future__ import annotations

from dataclasses import dataclass

from costcompare.comparison import AS_LIVED, AS_WANTED, Comparison
from costcompare.money.warmth import FourRows
from costcompare.views import numbers
from costcompare.views.wording.naming import TODAY, capital


@dataclass(frozen=True)
class Bill:
    """One of the four bills, in words."""

    system: str
    warmth: str
    figure: str


def rows_for(comparison: Comparison, name: str) -> FourRows | None:
    """The four bills of an option; None for today."""
    return next((rows for rows in comparison.four_rows if rows.name == name), None)


def four_bills(rows: FourRows) -> tuple[Bill, ...]:
    """Today and the option, each as you live now and at the warmth you want."""
    return tuple(
        Bill(capital(system), warmth, numbers.dollars_a_year(usd))
        for system, warmth, usd in (
            (TODAY, AS_LIVED, rows.today_as_lived_usd),
            (rows.name, AS_LIVED, rows.new_as_lived_usd),
            (rows.name, AS_WANTED, rows.new_as_wanted_usd),
            (TODAY, AS_WANTED, rows.today_as_wanted_usd),
        )
    )


def degree() -> str:
    """One degree, as degrees are written here."""
    return numbers.degrees_of_difference(numbers.shown_degree_degf())


def degree_answer(rows: FourRows) -> str:
    """What one degree of the warmth that is wanted costs, with either system; or nothing."""
    now, new = rows.today_one_degree_usd, rows.new_one_degree_usd
    if now is None or new is None:
        return ""
    step = numbers.shown_degree_degf()
    warmer = numbers.degrees_of_difference(rows.degrees_warmer_degf)
    return (
        f"Of the {warmer} between the settings you have and the warmth you want, each {degree()} "
        f"costs about {numbers.dollars_a_year(now * step)} a year with today’s system and about "
        f"{numbers.dollars_a_year(new * step)} with “{rows.name}”."
    )


def warmth_answer(rows: FourRows) -> str:
    """What the added warmth would cost with today's system, kept apart from cash; or nothing."""
    if rows.degrees_warmer_degf <= 0.0:
        return ""
    warmer = numbers.degrees_of_difference(rows.degrees_warmer_degf)
    worth = numbers.dollars_a_year(rows.warmth_worth_usd)
    added = numbers.dollars_a_year(rows.added_warmth_new_usd)
    return (
        f"A home that is {warmer} warmer would cost about {worth} a year more with today’s "
        f"system; with “{rows.name}” that warmth costs about {added}. It is comfort, not cash: "
        "no payback here counts it."
    )
