"""XML as a tree of plain elements, read safely.

Documents with a document type or entities are refused before anything of them is expanded, and
so are those that are larger or deeper than a meter's file can be.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from xml.parsers import expat

from costcompare.errors import BillsError, Fault

DEEPEST = 40
"""Elements inside each other; the standard needs ten"""
MOST_ELEMENTS = 5_000_000
"""Ten years of quarter hours have under 3 million"""


@dataclass
class Element:
    """One element with its local name; namespaces are kept apart."""

    name: str
    space: str
    attributes: dict[str, str]
    text: str = ""
    inside: list[Element] = field(default_factory=list)

    def first(self, *path: str) -> Element | None:
        """The first element down a path of names."""
        here: Element | None = self
        for name in path:
            here = next((e for e in here.inside if e.name == name), None) if here else None
        return here

    def all(self, name: str) -> list[Element]:
        """Every element of that name directly inside."""
        return [element for element in self.inside if element.name == name]

    def walk(self) -> Iterator[Element]:
        """This element and all inside it."""
        waiting = [self]
        while waiting:
            element = waiting.pop()
            yield element
            waiting.extend(reversed(element.inside))

    def value(self, *path: str) -> str:
        """The text down a path; empty where there is none."""
        found = self.first(*path)
        return found.text.strip() if found else ""

    def integer(self, *path: str) -> int | None:
        """The whole number down a path; None where there is none."""
        text = self.value(*path)
        try:
            return int(text) if len(text) < 20 else None
        except ValueError:
            return None


class _RefusedError(Exception):
    """Something that no meter's file needs."""


class _Growing:
    def __init__(self) -> None:
        self.root: Element | None = None
        self.open: list[Element] = []
        self.count = 0

    def start(self, name: str, attributes: dict[str, str]) -> None:
        self.count += 1
        if self.count > MOST_ELEMENTS or len(self.open) > DEEPEST:
            raise _RefusedError("has more elements, or deeper ones, than a meter's file can have")
        space, _, local = name.rpartition(" ")
        element = Element(local, space, attributes)
        if self.open:
            self.open[-1].inside.append(element)
        else:
            self.root = element
        self.open.append(element)

    def end(self, _: str) -> None:
        self.open.pop()

    def characters(self, text: str) -> None:
        if self.open:
            self.open[-1].text += text


def _refuse(*_: object) -> int:
    raise _RefusedError("declares a document type or entities, which no meter's file needs")


def tree_of(text: str, name: str) -> Element:
    """The root of a document, or :class:`BillsError` in plain words."""
    growing = _Growing()
    # Expat itself loads nothing from outside; declarations are refused all the same.
    parser = expat.ParserCreate(encoding="utf-8", namespace_separator=" ")
    parser.buffer_text = True
    parser.StartElementHandler = growing.start
    parser.EndElementHandler = growing.end
    parser.CharacterDataHandler = growing.characters
    parser.StartDoctypeDeclHandler = _refuse
    parser.EntityDeclHandler = _refuse
    parser.ExternalEntityRefHandler = _refuse
    try:
        parser.Parse(text.encode("utf-8", errors="replace"), True)
    except _RefusedError as reason:
        raise BillsError([Fault(name, str(reason))]) from None
    except expat.ExpatError as reason:
        rule = "is no complete XML"
        instead = "the file as the utility gave it"
        raise BillsError([Fault(name, rule, given=str(reason), instead=instead)]) from None
    assert growing.root is not None  # expat refuses a document without an element
    return growing.root
