"""Real bills in the visit form: typed a line each, pasted or from a file, and corrected."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any, get_args

from costcompare.billing.reading import Bill, Bills, ReadKind, read_bills
from costcompare.case.facts import Case
from costcompare.case.paths import Location, copied
from costcompare.errors import BillsError, CaseError, Fault
from costcompare.views import numbers
from costcompare.views.dashboard.pieces import Tree, node
from costcompare.views.dashboard.visit.answers import Doc
from costcompare.views.dashboard.visit.fields import Asked, button, field, place_id
from costcompare.views.dashboard.visit.intake import MOST
from costcompare.views.dashboard.visit.questions import Question
from costcompare.views.wording.naming import plural

READS = tuple((kind, kind) for kind in get_args(ReadKind))
LONGEST_BILLS = 1_500_000
"""Letters of pasted bills or of a file: above a year of quarter hours (judgement)"""
TAKE, CHOOSE = "take bills", "choose bills"
"""What the browser asks for with the text of bills, and what it does by itself to get one"""
PASTE = "ask-paste-bills"
HEAD = "from,to,kwh,dollars,read"
TYPED = re.compile(r"^\s*\d[^<]*$")
"""A line that somebody typed: it begins with the day of a read"""
ABOUT = "With real bills the house is fitted to them, and every figure stands on that house."


def with_bills_taken(document: Mapping[str, Any], _case: Case, text: str) -> Doc:
    """The document with the bills of a text beside those that it lists.

    A bill between the same two reads takes the place of the old one. Raises InputError where
    nothing in the text can be read as bills, or where there would be too many.
    """
    found = read(text)
    changed: Doc = copied(document)
    listed = {_reads(row): row for row in bills_listed(changed)}
    listed.update({_reads(row): row for row in map(_row, found.bills)})
    if not found.bills:
        raise CaseError([Fault("the bills", " ".join(notes_of(found)) or "hold none to use")])
    if len(listed) > MOST["bills"]:
        rule = f"this page takes {MOST['bills']} bills at most"
        raise CaseError([Fault("the bills", rule, str(len(listed)))])
    changed["bills"] = [listed[reads] for reads in sorted(listed)]
    return changed


def read(text: str) -> Bills:
    """The bills of a text that came from a browser; it is never taken for the name of a file."""
    if not text.strip():
        raise BillsError([Fault("the bills", "are empty", instead=EXAMPLE)])
    if len(text) > LONGEST_BILLS:
        rule = f"are too long for this page: the limit is {LONGEST_BILLS:,} letters"
        raise BillsError([Fault("the bills", rule, f"{len(text):,}")])
    return read_bills(_with_head(text).encode("utf-8", "replace"), name="the text of the bills")


EXAMPLE = "a line such as 2026-01-14, 2026-02-13, 2310, 318.40"


def _with_head(text: str) -> str:
    """The text with a row of headers where somebody typed lines without any."""
    lines = [line for line in text.splitlines() if line.strip()]
    if not all(TYPED.match(line) for line in lines):
        return text
    cells = (re.split(r"\s+to\s+|\s*[;,\t]\s*|\s{2,}", line.strip()) for line in lines)
    return "\n".join([HEAD, *(",".join(row) for row in cells), ""])


def notes_of(found: Bills) -> list[str]:
    """What the rules of reading found in the bills, a sentence each."""
    return list(dict.fromkeys(note.sentence() for note in found.notes))


def taken_answer(text: str) -> str:
    """What was taken from a text, in a sentence or some."""
    found = read(text)
    number = len(found.bills)
    bills = f"{numbers.count(number)} {plural(number, 'bill', 'bills')}"
    return " ".join([f"Took {bills}.", *notes_of(found)])


def bills_listed(document: Mapping[str, Any]) -> list[Mapping[str, Any]]:
    """The bills that a document lists."""
    return [row for row, _ in _listed(document)]


def _listed(document: Mapping[str, Any]) -> list[tuple[Mapping[str, Any], Location]]:
    """Bills with their places: a list, or the rows of a table."""
    bills: Any = document.get("bills")
    at: Location = ("bills",)
    if isinstance(bills, Mapping):
        bills, at = bills.get("rows"), ("bills", "rows")
    rows = bills if isinstance(bills, list) else []
    return [(row, (*at, n)) for n, row in enumerate(rows) if isinstance(row, Mapping)]


def _reads(row: Mapping[str, Any]) -> tuple[str, str]:
    return str(row.get("from", "")), str(row.get("to", ""))


def _row(bill: Bill) -> dict[str, Any]:
    row: dict[str, Any] = {
        "from": bill.begins.isoformat(),
        "to": bill.ends.isoformat(),
        "kwh": round(bill.kwh, 3),
    }
    if bill.dollars is not None:
        row["dollars"] = round(bill.dollars, 2)
    if bill.read != "unknown":
        row["read"] = bill.read
    return row


def bill_rows(asked: Asked) -> list[Tree]:
    """Every bill to correct, and how more come in."""
    bills = asked.document.get("bills")
    named = bills.get("file") if isinstance(bills, Mapping) else None
    trees = [_bill(asked, row, at) for row, at in _listed(asked.document)]
    if named is not None:
        trees.append(node("p", f"The case reads its bills from {named}.", class_="aside"))
    if bills:
        leave = button("Leave all bills out", "forget", ("bills",))
        trees.append(node("div", [leave], class_="small-buttons"))
    return trees if named is not None else [*trees, *_coming_in()]


def _bill(asked: Asked, row: Mapping[str, Any], at: Location) -> Tree:
    cells = [
        field(asked, Question((*at, key), label, plain=True), choices)
        for key, label, choices in (
            ("from", "From the read on", None),
            ("to", "To the read on", None),
            ("kwh", "Electricity, kWh", None),
            ("dollars", "Its charges, $", None),
            ("read", "How the meter was read", READS),
        )
    ]
    dates = " to ".join(_reads(row))
    remove = button("Remove this bill", "remove row", at, about=dates)
    inside = [node("div", cells, class_="compass"), node("div", [remove], class_="small-buttons")]
    summary = [node("span", dates), node("span", f"{row.get('kwh')} kWh", class_="stop-guesses")]
    return node(
        "details", [node("summary", summary), *inside], class_="row-card", id=f"row-{place_id(at)}"
    )


def _coming_in() -> list[Tree]:
    words = (
        "One bill a line: from, to, kWh and, where you have it, the charges. "
        "A table copied from the supplier’s page will do as well."
    )
    box = node(
        "textarea",
        id=PASTE,
        rows="4",
        spellcheck="false",
        placeholder="2026-01-14, 2026-02-13, 2310, 318.40",
        aria_describedby=f"{PASTE}-hint {PASTE}-wrong",
    )
    return [
        node(
            "div",
            [
                node("label", "Type or paste bills", for_=PASTE),
                node("p", words, id=f"{PASTE}-hint", class_="hint"),
                box,
                node("p", id=f"{PASTE}-wrong", class_="wrong", aria_live="polite"),
            ],
            class_="ask",
            data_field=PASTE,
        ),
        node(
            "div",
            [
                button("Take these bills", TAKE),
                button("Bills from a file …", CHOOSE),
            ],
            class_="small-buttons",
        ),
    ]
