"""One field of the visit form as a tree: its label, its box, how it is known, what is taken."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from costcompare.case.facts import Case, Fact
from costcompare.case.paths import Location, described
from costcompare.case.values import Flag, Words
from costcompare.views import numbers
from costcompare.views.dashboard.pieces import Tree, node
from costcompare.views.dashboard.visit.answers import (
    GUESSED,
    KNOWN,
    MEASURED,
    SEEN,
    UNKNOWN,
    known_at,
    rule_for,
    text_at,
    value_at,
)
from costcompare.views.dashboard.visit.questions import Question
from costcompare.views.dashboard.visit.worth import Weights
from costcompare.views.wording.naming import capital

KNOWN_WORDS = {SEEN: "seen", MEASURED: "measured", GUESSED: "a guess", UNKNOWN: "don’t know"}
YES_NO = (("true", "yes"), ("false", "no"))
R_UNIT = "h ft2 F/Btu"
LONGEST_SOURCE = 120

Choices = Sequence[tuple[str, str]]
"""Value and words of each choice of a list"""


@dataclass(frozen=True)
class Asked:
    """What a form is drawn from: a valid document and the case that it makes."""

    document: Mapping[str, Any]
    case: Case
    weights: Weights | None = None
    """What the answers are worth; None until the ranges are worked out"""

    @cached_property
    def facts(self) -> dict[str, Fact]:
        """Every fact of the case by its path."""
        return {fact.path: fact for fact in self.case.facts}

    @cached_property
    def rooms(self) -> list[str]:
        """Names of the rooms, listed or laid out."""
        return [room.name for room in self.case.home.rooms]

    def fact(self, at: Location) -> Fact | None:
        """What was taken for a place of the document."""
        return self.facts.get(described(at, self.document))

    def is_guess(self, at: Location) -> bool:
        """Whether what stands or was filled in at a place is a guess."""
        known = known_at(self.document, at)
        if known != UNKNOWN:
            return known == GUESSED
        fact = self.fact(at)
        return fact is not None and fact.known == GUESSED


def place_id(at: Location) -> str:
    """The id of a field on the page."""
    return "ask-" + "-".join(re.sub(r"[^a-zA-Z0-9]+", "_", str(step)) for step in at)


def field(asked: Asked, question: Question, choices: Choices | None = None) -> Tree:
    """A field with its label above, how it is known beside it, what is taken below."""
    identity = place_id(question.at)
    notes = [f"{identity}-hint"] if question.hint else []
    box = _box(
        asked,
        question,
        choices,
        [*notes, f"{identity}-taken", f"{identity}-worth", f"{identity}-wrong"],
    )
    row = [box] if question.plain else [box, _known_box(asked, question)]
    hint = [node("p", question.hint, id=f"{identity}-hint", class_="hint")] if question.hint else []
    return node(
        "div",
        [
            node("label", numbers.in_money(question.label), for_=identity),
            *hint,
            node("div", row, class_="ask-row"),
            node("p", taken_words(asked, question.at), id=f"{identity}-taken", class_="taken"),
            node("p", worth_told(asked, question), id=f"{identity}-worth", class_="taken worth"),
            node("p", id=f"{identity}-wrong", class_="wrong", aria_live="polite"),
        ],
        class_="ask",
        data_field=identity,
    )


def _box(asked: Asked, question: Question, choices: Choices | None, notes: Sequence[str]) -> Tree:
    rule = rule_for(question.at)
    if choices is None and isinstance(rule, Words):
        choices = [(word, word) for word in rule.choices]
    if choices is None and isinstance(rule, Flag):
        choices = YES_NO
    text = text_at(asked.document, question.at)
    attributes = {
        "id": place_id(question.at),
        "data_at": place_json(question.at),
        "aria_describedby": " ".join(notes),
    }
    if choices is None:
        return node(
            "input", type="text", value=text, autocomplete="off", spellcheck="false", **attributes
        )
    return select(choices, text, empty=_left_out(asked, question.at), **attributes)


def _left_out(asked: Asked, at: Location) -> str:
    fact = asked.fact(at)
    return f"not said: {fact_words(fact)}" if fact is not None else "not said"


def select(choices: Choices, chosen: str, *, empty: str = "", **attributes: str) -> Tree:
    """A list to choose from; ``empty`` names the choice of nothing where that can be."""
    rows = list(choices)
    if chosen and chosen not in {value for value, _ in rows}:
        rows.append((chosen, chosen))
    if not chosen or not any(value == "" for value, _ in rows):
        rows = [("", empty), *rows] if not chosen else rows
    options = [
        node("option", words, value=value, **({"selected": ""} if value == chosen else {}))
        for value, words in rows
    ]
    return node("select", options, data_value=chosen, **attributes)


def place_json(at: Location) -> str:
    """A place as the browser sends it back."""
    steps = ", ".join(str(s) if isinstance(s, int) else _json_text(s) for s in at)
    return f"[{steps}]"


def _json_text(text: str) -> str:
    escaped = text.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'


def _known_box(asked: Asked, question: Question) -> Tree:
    """How the answer is known; the last choice takes it out of the case."""
    return select(
        [(known, KNOWN_WORDS[known]) for known in KNOWN],
        known_at(asked.document, question.at),
        id=f"{place_id(question.at)}-known",
        class_="known-box",
        data_known_of=place_id(question.at),
        aria_label=f"How you know it: {numbers.in_money(question.label)}",
    )


def taken_words(asked: Asked, at: Location) -> str:
    """What was taken for a fact that was not said, or the range of one that was."""
    value = value_at(asked.document, at)
    if isinstance(value, Mapping):
        low, high = value.get("low"), value.get("high")
        return f"Likely between {low} and {high}." if low is not None and high is not None else ""
    fact = asked.fact(at) if value is None else None
    if fact is None:
        return ""
    source = fact.source if len(fact.source) <= LONGEST_SOURCE else f"{fact.source[:117]}…"
    return f"Taken as {fact_words(fact)}, {fact.known}: {source}."


def worth_told(asked: Asked, question: Question) -> str:
    """What an answer would be worth, or a measurement where somebody has looked already."""
    if asked.weights is None or question.plain:
        return ""
    words = asked.weights.words(question.at)
    if not words or known_at(asked.document, question.at) == MEASURED:
        return ""
    if asked.is_guess(question.at):
        return f"Worth asking: {words}."
    return f"Worth measuring: {words}."


def fact_words(fact: Fact) -> str:
    """A filled value as people would write it."""
    value = fact.value
    if isinstance(value, bool):
        return "yes" if value else "no"
    if value is None or isinstance(value, str):
        return value or "nothing"
    if fact.unit == R_UNIT:
        return f"R-{numbers.quantity(value)}"
    if not fact.unit:
        return f"{value:g}"
    return f"{numbers.quantity(value)} {numbers.in_money(fact.unit)}"


def button(words: str, do: str, at: Location = (), *, text: str = "", about: str = "") -> Tree:
    """A button that asks for a deed; ``about`` says to a screen reader what it is for."""
    label = {"aria_label": f"{words}: {about}"} if about else {}
    return node(
        "button",
        words,
        type="button",
        class_="small-button",
        data_do=do,
        data_at=place_json(at),
        data_text=text,
        **label,
    )


def name_field(at: Location, label: str, name: str, do: str) -> Tree:
    """A name that can be changed; the deed renames it everywhere."""
    identity = place_id((*at, "name"))
    box = node(
        "input",
        type="text",
        value=name,
        id=identity,
        autocomplete="off",
        data_do=do,
        data_at=place_json(at),
        aria_describedby=f"{identity}-wrong",
    )
    wrong = node("p", id=f"{identity}-wrong", class_="wrong", aria_live="polite")
    return node(
        "div",
        [node("label", capital(label), for_=identity), box, wrong],
        class_="ask",
        data_field=identity,
    )
