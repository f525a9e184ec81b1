"""What one system is built from, whether today's or an option's."""

from __future__ import annotations

from dataclasses import dataclass

from costcompare.case.defaults import house_default
from costcompare.case.document import Document, SystemTable
from costcompare.case.facts import Home, System, SystemKind
from costcompare.case.ledger import Ledger


@dataclass(frozen=True)
class Setup:
    """All that one system is built from."""

    document: Document
    home: Home
    ledger: Ledger
    path: str
    """``today`` or ``options.<name>``"""
    kind: SystemKind
    table: SystemTable
    today: System | None
    """Today's system where this one is an option, after the option's ``set``"""

    def default(self, fact: str) -> float:
        return house_default(fact, self.home.house.built).number

    def fill(self, stated: float | None, key: str, default: str) -> float:
        return self.ledger.measure(stated, f"{self.path}.{key}", default)
