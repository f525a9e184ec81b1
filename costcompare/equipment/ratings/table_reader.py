"""Reading a table of a rating file: each value by its rule, every fault kept."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from difflib import get_close_matches
from typing import Any

from costcompare.equipment.ratings.points import RatingPoint
from costcompare.errors import Fault
from costcompare.units import KINDS, KindName, UnitError, parse

LEAST_COP, MOST_COP = 0.5, 20.0
"""Capacity over power of any test lies between (judgement): what does not is a slip of the pen"""


class TableReader:
    """One TOML table and the faults found in it so far."""

    def __init__(self, table: Mapping[str, Any], path: str, faults: list[Fault]) -> None:
        self.table, self.path, self.faults = table, path, faults
        self._known: list[str] = []

    def fault(self, key: str, rule: str, given: object = "", instead: str = "") -> None:
        """Write down what is wrong with a key."""
        where = ".".join(part for part in (self.path, key) if part)
        shown = f'"{given}"' if isinstance(given, str) and given else str(given)
        self.faults.append(Fault(where, rule, " ".join(shown.split())[:80], instead))

    def has(self, key: str) -> bool:
        """Whether a key is there; from now on it is one that may be."""
        self._known.append(key)
        return key in self.table

    def measure(self, key: str, kind: KindName, *, needed: bool = False) -> float | None:
        """An SI value with a unit; None where it is not there or wrong."""
        if not self.has(key):
            if needed:
                self.fault(key, "is needed", "", f'for example {key} = "{KINDS[kind].example}"')
            return None
        try:
            return parse(self.table[key], kind)
        except UnitError as error:
            self.faults.append(
                Fault(
                    ".".join(part for part in (self.path, key) if part),
                    error.rule,
                    error.given,
                    error.instead,
                )
            )
            return None

    def positive(self, key: str, kind: KindName, *, needed: bool = False) -> float | None:
        """An SI value above zero."""
        value = self.measure(key, kind, needed=needed)
        if value is not None and value <= 0.0:
            self.fault(key, "must be more than 0", self.table[key])
            return None
        return value

    def number(self, key: str, low: float, high: float, *, needed: bool = False) -> float | None:
        """A plain number."""
        if not self.has(key):
            if needed:
                self.fault(key, "is needed", "", f"a number from {low:g} to {high:g}")
            return None
        given = self.table[key]
        good = isinstance(given, int | float) and not isinstance(given, bool)
        if not good or not math.isfinite(given) or not low <= given <= high:
            self.fault(key, f"must be a number from {low:g} to {high:g}", given)
            return None
        return float(given)

    def flag(self, key: str, usual: bool) -> bool:
        """True or false."""
        if not self.has(key):
            return usual
        if not isinstance(self.table[key], bool):
            self.fault(key, "must be true or false, without quotes", self.table[key])
            return usual
        return bool(self.table[key])

    def words(self, key: str, choices: Sequence[str], usual: str | None = None) -> str | None:
        """One of a few set phrases; needed where there is no usual one."""
        if not self.has(key):
            if usual is None:
                self.fault(key, "is needed", "", f'for example {key} = "{choices[0]}"')
            return usual
        given = self.table[key]
        if given not in choices:
            self.fault(key, f"must be one of: {'; '.join(choices)}", given, _near(given, choices))
            return None
        return str(given)

    def inner(self, key: str, *, needed: bool = False) -> TableReader | None:
        """A table inside this one."""
        if not self.has(key):
            if needed:
                self.fault(key, "is needed")
            return None
        if not isinstance(self.table[key], Mapping):
            self.fault(key, "must be a table of keys and values", self.table[key])
            return None
        path = ".".join(part for part in (self.path, key) if part)
        return TableReader(self.table[key], path, self.faults)

    def rows(self, key: str) -> list[TableReader]:
        """A needed list of tables; paths count them from 1."""
        if not self.has(key):
            self.fault(key, "is needed: a list of points")
            return []
        given = self.table[key]
        if not isinstance(given, list) or not all(isinstance(row, Mapping) for row in given):
            self.fault(key, "must be a list of tables", given)
            return []
        return [
            TableReader(row, f"{self.path}.{key}.{number}", self.faults)
            for number, row in enumerate(given, 1)
        ]

    def point(self, key: str, *, needed: bool) -> RatingPoint | None:
        """A test point: capacity and power."""
        inner = self.inner(key)
        if inner is None:
            if needed and key not in self.table:
                example = '{ capacity = "12 kBtu/h", power = "900 W" }'
                self.fault(key, "is needed for this kind of machine", "", f"{key} = {example}")
            return None
        capacity = inner.positive("capacity", "capacity", needed=True)
        power = inner.positive("power", "power", needed=True)
        inner.finish()
        if capacity is None or power is None:
            return None
        if not LEAST_COP <= capacity / power <= MOST_COP:
            rule = f"capacity over power must be from {LEAST_COP:g} to {MOST_COP:g}"
            found = float(f"{capacity / power:.3g}")
            self.fault(key, rule, found, "capacity and power of the same test")
            return None
        return RatingPoint(capacity, power)

    def finish(self) -> None:
        """Refuse every key that nobody asked for."""
        for key in self.table:
            if key not in self._known:
                self.fault(key, "is not a key here", "", _near(key, self._known))


def _near(given: object, choices: Sequence[str]) -> str:
    close = get_close_matches(str(given)[:80], list(choices), 1, 0.6)
    return f"{close[0]}, if that is meant" if close else ""
