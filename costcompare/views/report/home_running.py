"""Part two of the report: what each choice costs to run."""

from __future__ import annotations

from costcompare.comparison import AS_LIVED, AS_WANTED, Choice, Comparison
from costcompare.views import numbers
from costcompare.views.report.catalogue import Catalogue
from costcompare.views.report.choices import Marks, beside
from costcompare.views.report.pieces import Cell, Section, Table
from costcompare.views.report.spans import bill_span
from costcompare.views.wording.headline import of_100, year_of_choice
from costcompare.views.wording.running import choices_at, running_answer, summer_answer


def section(comparison: Comparison, name: str, words: Catalogue) -> Section:
    """Every choice in a row: its months, its year at both warmths, who stays warm."""
    answers = [
        running_answer(comparison, name, AS_WANTED),
        summer_answer(comparison, name, AS_WANTED),
    ]
    return Section(
        "running",
        words.running,
        tuple(answer for answer in answers if answer),
        (_table(comparison, name, words),),
    )


def _table(comparison: Comparison, name: str, words: Catalogue) -> Table:
    lived = choices_at(comparison, AS_LIVED)
    top = max((month.bill_usd for choice in lived for month in choice.monthly), default=1.0)
    marks = Marks(comparison, name, words)

    def row(choice: Choice) -> tuple[Cell, ...]:
        wanted = beside(comparison, choice, AS_WANTED)
        mark = marks.of(choice)
        spark = tuple(max(month.bill_usd, 0.0) / max(top, 1.0) for month in choice.monthly)
        return (
            marks.cell(choice),
            Cell(spark=spark, tone=mark.tone),
            Cell(numbers.dollars_a_year(choice.annual.bill_usd), detail=bill_span(choice, words)),
            Cell(
                numbers.dollars_a_year(wanted.annual.bill_usd),
                strong=True,
                detail=bill_span(wanted, words),
            ),
            Cell(warm_of_100(choice)),
            Cell(warm_of_100(wanted), strong=True),
        )

    head = (
        words.choice,
        words.each_month,
        words.year_lived,
        words.year_wanted,
        words.warm_lived,
        words.warm_wanted,
    )
    return Table(
        "choices",
        words.running_table,
        tuple(Cell(text) for text in head),
        tuple(row(choice) for choice in lived),
        words.warm_key if comparison.today.range is None else words.warm_and_range_key,
    )


def warm_of_100(choice: Choice) -> str:
    """Warm hours of 100 over all rooms."""
    return of_100(year_of_choice(choice, "").warm_share)
