"""The addresses under which the visit form asks: a document comes in, a document goes out.

Nothing of a visitor is kept: every request brings its whole document along. An answer is JSON,
faults are sentences, and a request that makes no sense is answered by a sentence too.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

from flask import Blueprint, Flask, Response, jsonify, request

from costcompare.case import case_from_document, case_text, document_from_text
from costcompare.case.facts import Case
from costcompare.case.paths import described
from costcompare.comparison import Comparison
from costcompare.errors import CaseError, CostCompareError, Fault, InputError
from costcompare.views import numbers
from costcompare.views.dashboard.pieces import Tree
from costcompare.views.dashboard.visit.answers import UNKNOWN, Doc, guessed_instead
from costcompare.views.dashboard.visit.bill_rows import TAKE, taken_answer
from costcompare.views.dashboard.visit.deeds import Edit, done, read_edit
from costcompare.views.dashboard.visit.form import visit_form
from costcompare.views.dashboard.visit.intake import LARGEST_FILE, taken_in
from costcompare.views.dashboard.visit.questions import MONEY, STOPS
from costcompare.views.dashboard.visit.worth import Weights, weights_of
from costcompare.views.wording.asking import narrowing_answer

Answer = dict[str, Any]
LONGEST_NAME = 60
"""Letters of a file's name without its ending"""


class Desk:
    """Answers what the form asks about a document; holds the opened case and nothing else."""

    def __init__(
        self,
        opened: Mapping[str, Any],
        directory: Path | None,
        ranged: Callable[[Any], Comparison | None] = lambda _document: None,
    ) -> None:
        """``ranged`` gives a document's comparison with ranges, where it is worked out already."""
        self._opened = opened
        self._directory = directory
        self._ranged = ranged

    def form(self, asked: Mapping[str, Any]) -> Answer:
        """The form of a document, and what its ranges are against those of an earlier one."""
        document = taken_in(asked.get("document"), self._opened)
        return {"form": self._form(document, asked), "narrowed": self._narrowed(document, asked)}

    def change(self, asked: Mapping[str, Any]) -> Answer:
        """The document after an edit with its form, or why it cannot be; ``trial`` only looks."""
        document = taken_in(asked.get("document"), self._opened)
        edit = read_edit(asked.get("edit"))
        try:
            changed, case = self._changed(document, edit)
        except InputError as error:
            return {"faults": sentences(error, edit, document)}
        if asked.get("trial"):
            return {"faults": []}
        told = taken_answer(edit.text) if edit.do == TAKE else ""
        form = self._form(changed, asked, case)
        return {"document": changed, "form": form, "faults": [], "told": told}

    def open(self, asked: Mapping[str, Any]) -> Answer:
        """The document in the text of a case file, with its form."""
        text, name = asked.get("text"), asked.get("name")
        if not isinstance(text, str) or not isinstance(name, str):
            raise CaseError([Fault("the file", "must be text in UTF-8")])
        if len(text.encode("utf-8", "replace")) > LARGEST_FILE:
            rule = f"is too large for a case: the limit is {LARGEST_FILE:,} bytes"
            raise CaseError([Fault(shown_name(name), rule)])
        read = document_from_text(text.removeprefix("\ufeff"), shown_name(name))
        document = taken_in(read, self._opened)
        return {"document": document, "form": self._form(document, asked)}

    def save(self, asked: Mapping[str, Any]) -> Answer:
        """The text of a document as a case file, and a name for the file."""
        document = taken_in(asked.get("document"), self._opened)
        self._case(document)
        return {"text": case_text(document), "name": f"{file_name(document)}.toml"}

    def _changed(self, document: Doc, edit: Edit) -> tuple[Doc, Case]:
        case = self._case(document)
        changed = taken_in(done(document, case, edit), self._opened)
        try:
            return changed, self._case(changed)
        except CaseError as error:
            forgotten = edit.do == "say" and (edit.known == UNKNOWN or not edit.text.strip())
            path = described(edit.at, document)
            needed = any(fault.path == path and fault.rule == "is needed" for fault in error.faults)
            if not forgotten or not needed:
                raise
            guess = guessed_instead(document, edit.at)
            return guess, self._case(guess)

    def _form(
        self, document: Mapping[str, Any], asked: Mapping[str, Any], case: Case | None = None
    ) -> Tree:
        """The form, with what its answers are worth as far as that is worked out."""
        made = case or self._case(document)
        with numbers.written(currency=made.tariff.currency):
            return visit_form(document, made, self._weights(document, asked))

    def _weights(self, document: Mapping[str, Any], asked: Mapping[str, Any]) -> Weights | None:
        name = option_of(asked)
        now = self._ranged(document)
        if now is not None:
            return weights_of(now, document, name)
        before = self._ranged(asked.get("earlier"))
        return None if before is None else weights_of(before, document, name, earlier=True)

    def _narrowed(self, document: Mapping[str, Any], asked: Mapping[str, Any]) -> str:
        """What the last answers did to the range; empty where one of the two is not known."""
        before, now = self._ranged(asked.get("earlier")), self._ranged(document)
        if before is None or now is None or before is now:
            return ""
        with numbers.written(currency=now.currency):
            return narrowing_answer(before, now, option_of(asked))

    def _case(self, document: Mapping[str, Any]) -> Case:
        return case_from_document(document, directory=self._directory)


def option_of(asked: Mapping[str, Any]) -> str | None:
    """The name of the choice that the page sets against today, as a browser sent it."""
    name = asked.get("option")
    return name if isinstance(name, str) else None


LABELS = {question.at: question.label for stop in (*STOPS, MONEY) for question in stop.questions}


def sentences(error: InputError, edit: Edit, document: Mapping[str, Any]) -> list[str]:
    """Every fault in the reader's words, under the label of its field where the form has one."""
    labels = {described(at, document): label for at, label in LABELS.items()}
    own = described(edit.at, document) if edit.at else ""
    told = []
    for fault in error.faults:
        if fault.path == own:
            words = fault.sentence().removeprefix(f"{fault.path}: ")
            told.append(words[:1].upper() + words[1:])
        else:
            told.append(replace(fault, path=labels.get(fault.path, fault.path)).sentence())
    return list(dict.fromkeys(told))


def shown_name(name: str) -> str:
    """A file's name as it may stand in a sentence; it is never opened."""
    plain = "".join(letter for letter in name if letter.isprintable())
    return re.split(r"[\\/]", plain)[-1][:80] or "the file"


def file_name(document: Mapping[str, Any]) -> str:
    """A name for a file from the title of a case: letters, digits, spaces and hyphens alone."""
    plain = re.sub(r"[^A-Za-z0-9 _-]+", "", str(document.get("title") or "home"))
    plain = "-".join(plain.lower().split())[:LONGEST_NAME].strip("-_")
    return plain if plain and not re.fullmatch(r"con|prn|aux|nul|(com|lpt)\d", plain) else "home"


def open_doors(server: Flask, desk: Desk) -> None:
    """Give the form its addresses on a server."""
    doors: dict[str, Callable[[Mapping[str, Any]], Answer]] = {
        "form": desk.form,
        "change": desk.change,
        "open": desk.open,
        "save": desk.save,
    }
    blueprint = Blueprint("visit", __name__, url_prefix="/visit")

    @blueprint.post("/<door>")
    def answer(door: str) -> Response | tuple[Response, int]:
        if door not in doors:
            return told(["There is nothing here."], 404)
        asked = request.get_json(silent=True)
        if not isinstance(asked, dict):
            return told(["This request cannot be understood."], 400)
        try:
            return jsonify(doors[door](asked))
        except InputError as error:
            return told([fault.sentence() for fault in error.faults], 200)
        except CostCompareError as error:
            return told([str(error)], 200)
        except RecursionError:
            return told(["This is nested too deeply to be a case."], 400)

    server.register_blueprint(blueprint)


def told(faults: Sequence[str], status: int) -> tuple[Response, int]:
    """An answer that only says what is wrong."""
    return jsonify({"faults": list(faults)}), status
