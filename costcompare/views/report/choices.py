"""Choices as the report marks them: today by a word, each option by a letter."""

from __future__ import annotations

from string import ascii_uppercase

from costcompare.comparison import AS_WANTED, Choice, Comparison, Warmth
from costcompare.views.report.catalogue import Catalogue
from costcompare.views.report.pieces import Cell, Mark, Tone
from costcompare.views.wording.naming import as_a_label
from costcompare.views.wording.running import choices_at


class Marks:
    """The badge of every choice of a comparison, seen from the option set against today."""

    def __init__(self, comparison: Comparison, chosen: str, words: Catalogue) -> None:
        self._chosen, self._today = chosen, words.now_badge
        names = [c.name for c in choices_at(comparison, AS_WANTED) if not c.is_today]
        self._letters = {name: _letter(number) for number, name in enumerate(names)}

    def of(self, choice: Choice) -> Mark:
        """The badge of a choice."""
        if choice.is_today:
            return Mark(self._today, "now")
        tone: Tone = "chosen" if choice.name == self._chosen else "other"
        return Mark(self._letters[choice.name], tone)

    def cell(self, choice: Choice) -> Cell:
        """The choice as the head of a row."""
        return Cell(as_a_label(choice), mark=self.of(choice), strong=choice.name == self._chosen)


def _letter(number: int) -> str:
    """A to Z, then AA, AB, …"""
    before, last = divmod(number, len(ascii_uppercase))
    return (ascii_uppercase[before - 1] if before else "") + ascii_uppercase[last]


def beside(comparison: Comparison, choice: Choice, warmth: Warmth) -> Choice:
    """The same choice at the other warmth."""
    return comparison.choice(choice.name, warmth)
