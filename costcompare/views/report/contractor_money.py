"""The life-cycle figures of one option at both warmths."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from costcompare.comparison import AS_LIVED, AS_WANTED, Comparison, MoneyYears
from costcompare.views import numbers
from costcompare.views.report.catalogue import Catalogue
from costcompare.views.report.pieces import Cell, Table
from costcompare.views.wording.naming import capital
from costcompare.views.wording.payback import money_lines


def money_table(comparison: Comparison, name: str, installed_on: date, words: Catalogue) -> Table:
    """Each figure in a row, as you live now and at the warmth you want."""
    both = (comparison.choice(name, AS_LIVED), comparison.choice(name, AS_WANTED))
    lines = list(money_lines(both, installed_on))
    monies = [choice.money for choice in both if choice.money is not None]
    lines.append(
        (
            words.discounted,
            *(numbers.years(money.discounted_payback_years) for money in monies),
        )
    )
    lines.append(
        (words.ratio, *(numbers.ratio(money.savings_to_investment_ratio) for money in monies))
    )
    lines.append((words.rate, *(_rate(money.adjusted_internal_rate_of_return) for money in monies)))
    lines += [
        (what, *(numbers.dollars_a_year(usd) for usd in each))
        for what, each in _present_values(monies, words)
    ]
    head = (words.figure, capital(AS_LIVED), capital(AS_WANTED))
    return Table(
        "life",
        words.life_table,
        tuple(Cell(text) for text in head),
        tuple(tuple(Cell(text) for text in line) for line in lines),
    )


def _present_values(
    monies: Sequence[MoneyYears], words: Catalogue
) -> Iterator[tuple[str, tuple[float, ...]]]:
    """What net savings are made of, at both warmths."""
    years = [money.over_the_years for money in monies if money.over_the_years is not None]
    if len(years) != len(monies):
        return
    yield words.over_the_years, tuple(y.life_cycle_cost_usd for y in years)
    yield words.as_today, tuple(y.today_life_cycle_cost_usd for y in years)
    yield words.energy_saved, tuple(y.energy_savings_usd for y in years)
    yield words.upkeep, tuple(y.maintenance_usd for y in years)
    yield words.bought_again, tuple(y.replacements_usd for y in years)
    if any(y.old_system is not None for y in years):
        what = words.not_bought_again
        yield what, tuple(y.avoided_replacements_usd for y in years)
    yield words.left_at_end, tuple(y.residual_usd for y in years)


def _rate(share: float | None) -> str:
    return numbers.MISSING if share is None else f"{numbers.percent(share)}"
