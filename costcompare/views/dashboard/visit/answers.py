"""One answer, written into a case document or taken out of it; the document is not touched.

An answer is the text that somebody typed. What it must be, and the unit of a bare number,
follow from the rule of its place in the reader of cases; a text that the rule cannot read goes
into the document as it is, so that the reader itself says what is wrong.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from costcompare.case.new import FACTS
from costcompare.case.overriding import with_changes
from costcompare.case.partial import rule_at
from costcompare.case.paths import Location, copied, described, split
from costcompare.case.values import Flag, Measure, Number, Rule, Whole
from costcompare.errors import CaseError, Fault
from costcompare.units import KINDS

SEEN, MEASURED, GUESSED, UNKNOWN = "seen", "measured", "guessed", "unknown"
KNOWN = (SEEN, MEASURED, GUESSED, UNKNOWN)
"""How an answer may be known; unknown takes it out of the case"""

Doc = dict[str, Any]


def guess(text: str) -> Doc:
    """A value that stands in for one that nobody has said yet."""
    return {"likely": text, "known": GUESSED}


def value_at(document: Mapping[str, Any], at: Location) -> Any:
    """What stands at a place, with its range where it has one; None where nothing does."""
    place: Any = document
    for step in at:
        if isinstance(place, Mapping) and isinstance(step, str):
            place = place.get(step)
        elif isinstance(place, list) and isinstance(step, int) and 0 <= step < len(place):
            place = place[step]
        else:
            return None
    return place


def text_at(document: Mapping[str, Any], at: Location) -> str:
    """The likely value at a place as text; empty where nothing stands there."""
    value = value_at(document, at)
    if isinstance(value, Mapping):
        value = value.get("likely")
    if isinstance(value, bool):
        return "true" if value else "false"
    return "" if value is None or isinstance(value, Mapping | list) else str(value)


def known_at(document: Mapping[str, Any], at: Location) -> str:
    """How the value at a place is known."""
    value = value_at(document, at)
    if value is None:
        return UNKNOWN
    known = value.get("known", SEEN) if isinstance(value, Mapping) else SEEN
    return known if known in KNOWN else SEEN


def answered(document: Mapping[str, Any], at: Location, text: str, known: str) -> Doc:
    """The document with an answer; raises CaseError where there is no such place.

    A range that the case gave stays while its likely value stays.
    """
    if known == UNKNOWN or not text.strip():
        return without(document, at)
    before = value_at(document, at)
    value: Any = read_text(text, rule_for(at))
    if text.strip() == text_at(document, at):  # only how it is known has changed
        value = before.get("likely") if isinstance(before, Mapping) else before
    if isinstance(before, Mapping) and before.get("likely") == value:
        value = {**before, "known": known}
    elif known != SEEN:
        value = {"likely": value, "known": known}
    return placed(document, at, value)


def rule_for(at: Location) -> Rule | None:
    """The rule of a place; what an option changes has the rule of the fact that it changes."""
    if len(at) == 4 and at[0] == "options" and at[2] == "set":
        try:
            return rule_at(tuple(split(str(at[3]))))
        except ValueError:
            return None
    if at[:1] == ("bills",) and at[-1] in NUMBERS_OF_BILLS:
        return Number(-MOST_OF_A_BILL, MOST_OF_A_BILL)
    return rule_at(at)


NUMBERS_OF_BILLS = ("kwh", "dollars")
MOST_OF_A_BILL = 1e9
"""[kWh or dollars] what a bill may hold, the reader of bills says more closely"""


def placed(document: Mapping[str, Any], at: Location, value: Any) -> Doc:
    """The document with a value at a place; what it outdates is taken away."""
    changed, faults = with_changes(document, {described(at, document): value})
    if faults:
        raise CaseError(faults)
    return changed


def read_text(text: str, rule: Rule | None) -> Any:
    """A typed text as a case holds it: a number, yes or no, or a text with its unit."""
    plain = text.strip()
    if isinstance(rule, Flag):
        return {"true": True, "false": False}.get(plain.lower(), plain)
    number = _number(plain)
    if isinstance(rule, Number | Whole) and number is not None:
        return int(number) if number.is_integer() and "." not in plain else number
    if isinstance(rule, Measure) and number is not None and not KINDS[rule.kind].bare_number:
        return f"R-{plain}" if rule.kind == "resistance" else f"{plain} {KINDS[rule.kind].label}"
    if isinstance(rule, Measure) and number is not None and rule.kind == "fraction":
        # A share in a form is asked for in percent; a small one was meant as it stands.
        return plain if abs(number) < 1.0 else f"{plain} %"
    return plain


def _number(text: str) -> float | None:
    try:
        number = float(text)
    except ValueError:
        return None
    return number if math.isfinite(number) and abs(number) < 1e12 else None


def without(document: Mapping[str, Any], at: Location) -> Doc:
    """The document without the value at a place; a table left empty by it goes as well."""
    changed: Doc = copied(document)
    if not at:
        return changed
    trail = [changed, *(value_at(changed, at[:depth]) for depth in range(1, len(at)))]
    if not isinstance(trail[-1], dict):
        return changed
    trail[-1].pop(str(at[-1]), None)
    for depth in range(len(at) - 1, 0, -1):
        holder, inner = trail[depth - 1], trail[depth]
        if inner or not isinstance(holder, dict) or at[depth - 1] in KEPT_EMPTY:
            break
        holder.pop(str(at[depth - 1]))
    return changed


KEPT_EMPTY = frozenset(
    {"windows", "outside_walls", "set", "site", "house", "thermostat", "today", "tariff"}
)
"""Tables that say something while they are empty, or must be there"""


def guessed_instead(document: Mapping[str, Any], at: Location) -> Doc:
    """The document with a guess where something is needed: what stands there, or a stand-in."""
    text = text_at(document, at) or stand_in(at)
    if not text:
        raise CaseError([Fault(described(at, document), "is needed: a guess will do")])
    return placed(document, at, {"likely": read_text(text, rule_for(at)), "known": GUESSED})


def stand_in(at: Location) -> str:
    """What a new case takes for a fact that nobody knows; empty where it takes nothing."""
    path = ".".join(map(str, at))
    return next((asked.usual for asked in FACTS.values() if asked.path == path), "")
