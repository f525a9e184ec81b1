"""The list of facts that grows while a case is built: what was stated, what was filled."""

from __future__ import annotations

from costcompare.case.defaults import Default, house_default
from costcompare.case.facts import Fact
from costcompare.units import KindName, customary


class Ledger:
    """Writes down every value that is filled in, with its source."""

    def __init__(self, built: int) -> None:
        self.built = built
        """Year in which the house was built; most defaults follow it"""
        self.facts: list[Fact] = []

    def note(self, path: str, value: float | str | bool, source: str, *, unit: str = "") -> None:
        """Write down a filled value that is shown as it is."""
        self.facts.append(Fact(path, value, unit, "guessed", source))

    def filled(self, path: str, value: float, kind: KindName, *, source: str) -> float:
        """Write down a filled SI value and give it back."""
        number, unit = customary(value, kind)
        self.note(path, float(f"{number:.6g}"), source, unit=unit)
        return value

    def measure(self, stated: float | None, path: str, default: str | None = None) -> float:
        """The stated SI value, or the default of the fact (named like its path)."""
        if stated is not None:
            return stated
        row = house_default(default or path, self.built)
        return self.filled(path, row.number, row.measure, source=row.source)

    def count(self, stated: int | None, path: str) -> int:
        """The stated whole number, or the default of the fact."""
        if stated is not None:
            return stated
        row = house_default(path, self.built)
        self.note(path, int(row.number), row.source)
        return int(row.number)

    def words(self, stated: str | None, path: str, default: str | None = None) -> str:
        """The stated words, or the default of the fact."""
        if stated is not None:
            return stated
        row = house_default(default or path, self.built)
        self.note(path, row.text, row.source)
        return row.text

    def flag(self, stated: bool | None, path: str) -> bool:
        """The stated yes or no, or the default of the fact."""
        if stated is not None:
            return stated
        row = house_default(path, self.built)
        self.note(path, row.flag, row.source)
        return row.flag

    def take(self, stated: float | None, path: str, row: Default) -> float:
        """The stated SI value, or a default that was worked out for this case."""
        if stated is not None:
            return stated
        return self.filled(path, row.number, row.measure, source=row.source)
