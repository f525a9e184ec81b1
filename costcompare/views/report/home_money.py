"""Part five of the report: when the money comes back."""

from __future__ import annotations

from datetime import date

from costcompare.case.facts import Case
from costcompare.comparison import AS_LIVED, AS_WANTED, Choice, Comparison, MoneyYears
from costcompare.views import numbers
from costcompare.views.report.catalogue import Catalogue
from costcompare.views.report.charts import Line, Panel, line_chart
from costcompare.views.report.choices import Marks, beside
from costcompare.views.report.pieces import Cell, Picture, Section, Table
from costcompare.views.report.spans import payback_span
from costcompare.views.wording.naming import capital
from costcompare.views.wording.payback import (
    differences,
    incentives_answer,
    incentives_of,
    payback_answer,
    savings,
    studied,
)
from costcompare.views.wording.running import choices_at


def section(comparison: Comparison, case: Case, name: str, words: Catalogue) -> Section:
    """What every option costs and brings in, as you live now and at the warmth you want."""
    options = [choice for choice in choices_at(comparison, AS_LIVED) if not choice.is_today]
    if not options:
        return Section("money", words.money, (words.no_options,))
    installed_on = case.money.installed_on
    said = (
        payback_answer(comparison, name, AS_LIVED, installed_on),
        _savings(comparison, name),
        incentives_answer(incentives_of(comparison, name)),
    )
    answers = tuple(answer for answer in said if answer)
    marks = Marks(comparison, name, words)
    picture = Picture(
        _chart(options, marks, installed_on.year, words), words.money_picture.format(answers[0])
    )
    table = _table(comparison, case, marks, words)
    return Section("money", words.money, answers, (table,), (picture,))


def _savings(comparison: Comparison, name: str) -> str:
    """The savings told apart at the wanted warmth, as sentences."""
    choice = comparison.choice(name, AS_WANTED)
    told = savings(choice, AS_LIVED)
    if not told:
        return ""
    less = " and ".join(f"{one.figure} {one.words}" for one in told[:2])
    extra = "".join(f" {one.figure} {one.words}." for one in told[2:])
    return f"{capital(AS_WANTED)} the bill is {less}.{extra}"


def _table(comparison: Comparison, case: Case, marks: Marks, words: Catalogue) -> Table:
    installed_on = case.money.installed_on

    def row(choice: Choice) -> tuple[Cell, ...]:
        other = beside(comparison, choice, AS_WANTED)
        lived, wanted = choice.money, other.money
        assert lived is not None
        assert wanted is not None
        return (
            marks.cell(choice),
            Cell(numbers.dollars_a_year(lived.installed_cost_usd - lived.incentives_usd)),
            Cell(against(choice, words)),
            Cell(against(other, words)),
            Cell(
                _back(lived, installed_on, words),
                strong=True,
                detail=payback_span(choice, words),
            ),
            Cell(_back(wanted, installed_on, words), detail=payback_span(other, words)),
            Cell(numbers.dollars_a_year(lived.net_savings_usd)),
        )

    options = [choice for choice in choices_at(comparison, AS_LIVED) if not choice.is_today]
    years = studied(options[0].money) if options[0].money else case.money.study_years
    head = (
        words.choice,
        words.to_install,
        words.saving_lived,
        words.saving_wanted,
        words.back_lived,
        words.back_wanted,
        words.left_over.format(years),
    )
    return Table(
        "money",
        words.money_table,
        tuple(Cell(text) for text in head),
        tuple(row(choice) for choice in options),
    )


def _back(money: MoneyYears, installed_on: date, words: Catalogue) -> str:
    """The month in which the money is back, in today’s value; for how long it is counted else."""
    years = money.discounted_payback_years
    if years is None:
        return words.not_within.format(studied(money))
    return numbers.month_reached(installed_on, years)


def against(choice: Choice, words: Catalogue) -> str:
    """The first year's saving against the bill now, in words that cannot be turned round."""
    written = differences(choice)
    saving = written.first_year if written is not None else 0.0
    if numbers.rounds_to_nothing(saving):
        return words.no_change
    amount = numbers.dollars_a_year(abs(saving))
    return (words.less if saving > 0.0 else words.more).format(amount)


def _chart(options: list[Choice], marks: Marks, first_year: int, words: Catalogue) -> str:
    lines = []
    for choice in options:
        mark = marks.of(choice)
        position = choice.money.yearly_position_usd if choice.money else ()
        lines.append(Line(mark.letter, mark.tone, position))
    # The strong line is drawn last, over the others.
    lines.sort(key=lambda line: line.tone == "chosen")
    count = len(lines[0].values)
    ticks = tuple(str(first_year + year) if year % 5 == 0 else "" for year in range(count))
    panel = Panel(words.chart_position, tuple(lines), numbers.dollars, 96.0, least=0.0, most=0.0)
    return line_chart((panel,), ticks)
