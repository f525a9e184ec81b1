"""Part six of the report: how sure it all is, and which cure comes first."""

from __future__ import annotations

from costcompare.comparison import AS_LIVED, Comparison
from costcompare.views import numbers
from costcompare.views.report.catalogue import Catalogue
from costcompare.views.report.choices import Marks
from costcompare.views.report.pieces import Cell, Point, Section, Table, Tone
from costcompare.views.wording.first_things import first_things
from costcompare.views.wording.naming import as_a_label
from costcompare.views.wording.notice import house_answer
from costcompare.views.wording.sureness import (
    known_counts,
    range_answer,
    saving_range_answer,
    sureness_answer,
    weather_answer,
    what_ranges_hold,
)

KNOWN_TONES: dict[str, Tone] = {"measured": "whole", "seen": "chosen", "guessed": "other"}


def section(comparison: Comparison, name: str, words: Catalogue) -> Section:
    """How the facts are known, the ranges, the weather."""
    house = house_answer(comparison.fitted_bills)
    fitted = comparison.fitted_bills > 0
    # Paper has no room for what stands behind the answers: there a fitted house says so first.
    answers = (
        house if fitted else "",
        sureness_answer(comparison),
        range_answer(comparison),
        saving_range_answer(comparison, name, AS_LIVED),
    )
    more = (
        "" if fitted else house,
        what_ranges_hold(comparison),
        weather_answer(comparison),
    )
    counts = known_counts(comparison)
    total = max(sum(counts.values()), 1)
    names = {"measured": words.measured, "seen": words.seen, "guessed": words.guessed}
    rows, reached = [], 0.0
    for known, count in counts.items():
        share = count / total
        rows.append(
            (
                Cell(names[known]),
                Cell(bar=(reached, reached + share), tone=KNOWN_TONES[known]),
                Cell(numbers.count(count)),
            )
        )
        reached += share
    head = (Cell(words.known), Cell(), Cell(words.facts))
    table = Table("known", words.known_table, head, tuple(rows))
    return Section(
        "sure",
        words.sure,
        tuple(answer for answer in answers if answer),
        (table,),
        more=tuple(text for text in more if text),
    )


def first_section(comparison: Comparison, name: str, words: Catalogue) -> Section:
    """The cures in the order in which their money comes back."""
    marks = Marks(comparison, name, words)
    points = tuple(
        Point(as_a_label(choice), sentence, mark=marks.of(choice))
        for choice, sentence in first_things(comparison)
    )
    answer = words.first_things_key if points else words.no_options
    return Section("first", words.first_things, (answer,), points=points)
