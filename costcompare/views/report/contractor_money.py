"""The life-cycle figures of one option at both warmths."""

from __future__ import annotations

from datetime import date

from costcompare.comparison import AS_LIVED, AS_WANTED, Comparison
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
    head = (words.figure, capital(AS_LIVED), capital(AS_WANTED))
    return Table(
        "life",
        words.life_table,
        tuple(Cell(text) for text in head),
        tuple(tuple(Cell(text) for text in line) for line in lines),
    )


def _rate(share: float | None) -> str:
    return numbers.MISSING if share is None else f"{numbers.percent(share)}"
