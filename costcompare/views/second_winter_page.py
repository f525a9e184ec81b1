"""What ``verify`` prints: saving, promise, causes, both lines, and the letter."""

from __future__ import annotations

from costcompare.billing.second_winter import SecondWinter
from costcompare.views.bills_page import bill_table
from costcompare.views.terminal import Block, Heading, Page, Points, Sentences
from costcompare.views.wording.bills_alone import line_answer
from costcompare.views.wording.second_winter import (
    cause_answer,
    habits_answer,
    letter,
    other_promise_answer,
    promise_answer,
    saving_answer,
    year_saving_answer,
)


def second_winter_page(check: SecondWinter) -> Page:
    """The second-winter check."""
    page: list[Block] = [
        Heading("Second-winter check"),
        Sentences(saving_answer(check)),
        Sentences(year_saving_answer(check)),
    ]
    for said in (habits_answer(check), promise_answer(check)):
        page += [Sentences(said)] if said else []
    if check.other_promises:
        page.append(Points(tuple(other_promise_answer(one) for one in check.other_promises)))
    if check.causes:
        page += [
            Heading("Why it may have fallen short, the most first"),
            Points(tuple(cause_answer(cause) for cause in check.causes)),
        ]
    page += [
        Heading("Before the work"),
        Sentences(line_answer(check.before)),
        bill_table(check.before.bills),
        Heading("After the work"),
        Sentences(line_answer(check.after)),
        bill_table(check.after.bills),
    ]
    if check.cautions:
        page += [Heading("Look out for"), Points(check.cautions)]
    page.append(Heading("A letter"))
    page += [Sentences(paragraph) for paragraph in letter(check)]
    return page
