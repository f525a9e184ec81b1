"""Part five: what else is to be said of the money of a choice, a sentence each."""

from __future__ import annotations

from datetime import date

from costcompare.comparison import AS_WANTED, Comparison, Warmth
from costcompare.views.wording.emissions import emissions_answer
from costcompare.views.wording.four_bills import degree_answer, rows_for, warmth_answer
from costcompare.views.wording.outdoors import tonight_answer
from costcompare.views.wording.ways_to_pay import way_answer
from costcompare.views.wording.years_ahead import years_answers


def money_answers(
    comparison: Comparison, name: str, warmth: Warmth, installed_on: date
) -> tuple[str, ...]:
    """A degree, a cold night, the years ahead, ways to pay, emissions; what does not apply is out.

    For today's system alone a cold night is what is left to say.
    """
    rows = rows_for(comparison, name)
    said = [tonight_answer(comparison, name)]
    if rows is None:
        return tuple(said)
    money = comparison.choice(name, warmth).money
    if warmth == AS_WANTED:
        said = [degree_answer(rows), warmth_answer(rows), *said]
    if money is not None:
        said += [*years_answers(money, installed_on), *map(way_answer, money.ways_to_pay)]
    said.append(emissions_answer(comparison, name))
    return tuple(text for text in said if text)
