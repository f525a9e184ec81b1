"""Reading a case: TOML text, a document, a :class:`~costcompare.case.facts.Case`.

Every fault of a file is found before anything is said: faults of single values, of
values that do not agree with each other, and of what an option's ``set`` would make.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from costcompare.case.build import Changed, build_case
from costcompare.case.checks import all_faults
from costcompare.case.document import Document
from costcompare.case.facts import Case
from costcompare.case.faults import faults_of
from costcompare.case.overriding import SETTABLE, override, with_changes
from costcompare.case.partial import readable
from costcompare.case.paths import described, join, row_name, split
from costcompare.case.spreads import Spreads, unwrapped
from costcompare.case.stated import spread_faults, stated_facts
from costcompare.case.values import nearest
from costcompare.errors import CaseError, Fault

_LARGEST = 2_000_000
"""[bytes] no case file is larger"""
_AT_LINE = re.compile(r"\s*\(at (.*)\)$")


def read_case(path: str | Path, overrides: Sequence[str] = ()) -> Case:
    """The case in a file, with overrides such as ``rooms.hall.floor_area=400 ft2`` on top.

    Raises :class:`~costcompare.errors.CaseError` with every fault of the file.
    """
    document = read_document(path)
    faults: list[Fault] = []
    for assignment in overrides:
        try:
            document = override(document, assignment)
        except CaseError as error:
            faults.extend(error.faults)
    if faults:
        raise CaseError(faults)
    return case_from_document(document, directory=Path(path).resolve().parent)


def read_document(path: str | Path) -> dict[str, Any]:
    """The tables of a TOML file; CaseError names the line where the text is not TOML."""
    file = Path(path)
    try:
        if file.stat().st_size > _LARGEST:
            raise CaseError([Fault(file.name, "is too large for a case file")])
        text = file.read_bytes().decode("utf-8-sig")
    except FileNotFoundError:
        rule, instead = "no such file", "the path of a case file"
        raise CaseError([Fault(str(path), rule, "", instead)]) from None
    except OSError as error:
        rule = f"cannot be read: {error.strerror}"
        raise CaseError([Fault(str(path), rule)]) from None
    except UnicodeDecodeError:
        raise CaseError([Fault(file.name, "must be text in UTF-8")]) from None
    return document_from_text(text, file.name)


def document_from_text(text: str, name: str) -> dict[str, Any]:
    """The tables of a case's text; ``name`` is what a CaseError calls it."""
    try:
        return tomllib.loads(text)
    except RecursionError:
        raise CaseError([Fault(name, "is nested too deeply to be a case")]) from None
    except ValueError as error:
        raise CaseError([_syntax_fault(name, str(error))]) from None


def _syntax_fault(name: str, message: str) -> Fault:
    where = _AT_LINE.search(message)
    what = _AT_LINE.sub("", message)
    path = f"{name}, {where[1]}" if where else name
    return Fault(path, f"is not TOML: {what[:1].lower()}{what[1:200]}")


def case_from_document(document: Mapping[str, Any], *, directory: Path | None = None) -> Case:
    """The case that a document describes; raises CaseError with every fault.

    ``directory`` is the folder in which relative paths of the case start.
    """
    if not isinstance(document, Mapping):
        raise CaseError([Fault("the case", "must be a table of keys and values")])
    plain, spreads, table_faults = unwrapped(document)
    faults = [
        Fault(described(at, plain), fault.rule, fault.given, fault.instead)
        for at, fault in table_faults
    ]
    checked, more = _checked(plain)
    faults += more + [fault for _, fault in spread_faults(plain, spreads)]
    changed, more = _changed(document, faults)
    faults += more
    if faults or checked is None:
        raise CaseError(dict.fromkeys(faults))
    return build_case(checked, changed, _stated(checked, plain, spreads), directory=directory)


def _stated(checked: Document, plain: Mapping[str, Any], spreads: Spreads) -> list[Any]:
    return list(stated_facts(checked, plain, spreads))


def _checked(plain: dict[str, Any]) -> tuple[Document | None, list[Fault]]:
    """The validated document, and the faults of single values and of their agreement."""
    faults: list[Fault] = []
    checked = None
    try:
        checked = Document.model_validate(plain)
    except ValidationError as error:
        faults += [fault for _, fault in faults_of(error, plain)]
    return checked, all_faults(readable(plain) if checked is None else checked, faults)


def _changed(
    document: Mapping[str, Any], known: list[Fault]
) -> tuple[dict[str, Changed], list[Fault]]:
    """For each option with a ``set``, what it makes of the case, and what is wrong with it."""
    changed: dict[str, Changed] = {}
    faults: list[Fault] = []
    options = document.get("options")
    for row in options if isinstance(options, list) else []:
        name = row_name(row)
        changes = row.get("set") if isinstance(row, Mapping) else None
        if not name or not isinstance(changes, Mapping) or not changes:
            continue
        path = join(["options", name, "set"])
        wrong = {str(key): fault for key in changes if (fault := _not_settable(path, str(key)))}
        allowed = {str(key): value for key, value in changes.items() if str(key) not in wrong}
        after, more = with_changes(document, allowed)
        faults += [*wrong.values(), *_under(path, more)]
        alone = {key: value for key, value in row.items() if key != "set"}
        plain, spreads, _ = unwrapped({**after, "options": [alone], "money": {}})
        checked, found = _checked(plain)
        found += [fault for _, fault in spread_faults(plain, spreads)]
        faults += _under(path, [fault for fault in found if fault not in known])
        if checked is not None and not found:
            stated = stated_facts(checked, plain, spreads)
            changed[name] = Changed(checked, tuple(f for f in stated if f.path in allowed))
    return changed, faults


def _under(path: str, faults: Sequence[Fault]) -> list[Fault]:
    """Faults with a path in front of theirs."""
    return [Fault(f"{path}.{f.path}", f.rule, f.given, f.instead) for f in faults]


def _not_settable(path: str, key: str) -> Fault | None:
    try:
        section = split(key)[0]
    except ValueError as error:
        return Fault(f"{path}.{key}", str(error))
    if section in SETTABLE:
        return None
    rule = f"an option can change: {', '.join(SETTABLE)}"
    return Fault(f"{path}.{key}", rule, section[:80], nearest(section, list(SETTABLE)))
