"""Everything that a browser may do to a case document, each by its name."""

from __future__ import annotations

import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from costcompare.case import new_case
from costcompare.case.facts import Case
from costcompare.case.new import FACTS
from costcompare.case.paths import Location, copied
from costcompare.errors import CaseError, Fault
from costcompare.views.dashboard.visit import (
    answers,
    bill_rows,
    listed,
    money_rows,
    prices,
    proposals,
)
from costcompare.views.dashboard.visit.answers import Doc

LONGEST_TEXT = 400
"""Letters of one answer (judgement)"""
DEEPEST_PLACE = 8


@dataclass(frozen=True)
class Edit:
    """What a browser asked for, in its right shape."""

    do: str
    at: Location
    text: str
    known: str


def read_edit(given: Any) -> Edit:
    """An edit from what a browser sent; raises CaseError where it cannot be understood."""
    table = given if isinstance(given, Mapping) else {}
    do, at, text, known = (
        table.get("do"),
        table.get("at", []),
        table.get("text", ""),
        table.get("known", answers.SEEN),
    )
    steps = isinstance(at, list) and len(at) <= DEEPEST_PLACE
    steps = steps and all(isinstance(step, str | int) and not isinstance(step, bool) for step in at)
    if do not in DEEDS or not steps or not isinstance(text, str) or known not in answers.KNOWN:
        raise CaseError([Fault("the form", "this change cannot be understood")])
    longest = bill_rows.LONGEST_BILLS if do == bill_rows.TAKE else LONGEST_TEXT
    if len(text) > longest or any(len(str(step)) > LONGEST_TEXT for step in at):
        raise CaseError([Fault("the form", f"takes {longest:,} letters at most")])
    return Edit(str(do), tuple(at), text, str(known))


def done(document: Mapping[str, Any], case: Case, edit: Edit) -> Doc:
    """The document after an edit, not yet checked; raises CaseError where it makes no sense."""
    return DEEDS[edit.do](document, case, edit)


def new_visit() -> Doc:
    """A home of which nothing is known yet: every fact that a case needs is a guess to correct."""
    document: Doc = tomllib.loads(new_case())
    for name, asked in FACTS.items():
        if name != "title":
            *steps, last = asked.path.split(".")
            table = answers.value_at(document, tuple(steps))
            table[last] = {"likely": table[last], "known": answers.GUESSED}
    return document


def _say(document: Mapping[str, Any], _case: Case, edit: Edit) -> Doc:
    if not edit.at:
        raise CaseError([Fault("the form", "this change cannot be understood")])
    if edit.text.strip() and edit.known != answers.UNKNOWN:
        for other in money_rows.outdated_by(document, edit.at):
            document = answers.without(document, other)
    return answers.answered(document, edit.at, edit.text, edit.known)


def _choose_rooms(document: Mapping[str, Any], _case: Case, edit: Edit) -> Doc:
    """Put a room on a list of rooms, or take it off."""
    changed: Doc = copied(document)
    rooms = answers.value_at(changed, edit.at)
    if not isinstance(rooms, list):
        return answers.placed(document, edit.at, [edit.text])
    if edit.text in rooms:
        rooms.remove(edit.text)
    else:
        rooms.append(edit.text)
    return changed


Deed = Callable[[Mapping[str, Any], Case, Edit], Doc]

DEEDS: Mapping[str, Deed] = {
    "say": _say,
    "begin anew": lambda _document, _case, _edit: new_visit(),
    "list rooms": lambda document, case, _edit: listed.with_rooms_listed(document, case),
    "add room": lambda document, case, _edit: listed.with_room_added(document, case),
    "rename room": lambda document, _case, edit: listed.with_room_renamed(
        document, edit.at, edit.text
    ),
    "remove room": lambda document, _case, edit: listed.without_room(document, edit.at),
    "add doorway": lambda document, case, _edit: listed.with_doorway_added(document, case),
    "remove row": lambda document, _case, edit: listed.without_row(document, edit.at),
    "forget": lambda document, _case, edit: answers.without(document, edit.at),
    "choose room": _choose_rooms,
    "add option": lambda document, case, edit: proposals.with_option_added(
        document, case, edit.text
    ),
    "duplicate option": lambda document, _case, edit: proposals.with_option_duplicated(
        document, edit.at
    ),
    "rename option": lambda document, _case, edit: proposals.with_option_renamed(
        document, edit.at, edit.text
    ),
    "remove option": lambda document, _case, edit: proposals.without_option(document, edit.at),
    "add head": lambda document, case, edit: proposals.with_head_added(document, case, edit.at),
    "add block": lambda document, _case, _edit: prices.with_block_added(document),
    "one price": lambda document, _case, _edit: prices.with_one_price(document),
    bill_rows.TAKE: lambda document, case, edit: bill_rows.with_bills_taken(
        document, case, edit.text
    ),
    "add row": lambda document, case, edit: money_rows.with_row_added(document, case, edit.text),
}
"""What can be done; ``document`` and ``case`` are those before it"""
