"""Values written as a table of likely, low and high: taken apart and put together.

A document is validated with its likely values; low and high are read by the same rules
afterwards, so that a range is refused in the same words as a single value.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Literal, cast

from costcompare.case.facts import Known
from costcompare.case.paths import DEEPEST, Location
from costcompare.case.values import nearest, shown
from costcompare.errors import Fault

Bound = Literal["low", "high"]
_KEYS = ("likely", "low", "high", "known")
_KNOWN = ("measured", "seen", "guessed")


@dataclass(frozen=True)
class Spread:
    """What a table said beside its likely value, as written."""

    known: Known
    bounds: Mapping[Bound, Any]


Spreads = dict[Location, Spread]


def unwrapped(
    document: Mapping[str, Any],
) -> tuple[dict[str, Any], Spreads, list[tuple[Location, Fault]]]:
    """The document with likely values only, what the tables said, and what was wrong in them."""
    spreads: Spreads = {}
    faults: list[tuple[Location, Fault]] = []
    plain = _walk(document, (), spreads, faults=faults)
    return cast(dict[str, Any], plain), spreads, faults


def _walk(
    value: Any, at: Location, spreads: Spreads, *, faults: list[tuple[Location, Fault]]
) -> Any:
    if len(at) > DEEPEST:
        return value
    if isinstance(value, Mapping) and "likely" in value and at:
        spreads[at] = _spread(value, at, faults)
        return value["likely"]
    if isinstance(value, Mapping):
        # Nothing at a key is as if the key were not there: TOML has no such value, forms do.
        return {
            key: _walk(item, (*at, key), spreads, faults=faults)
            for key, item in value.items()
            if item is not None
        }
    if isinstance(value, list | tuple):
        return [_walk(item, (*at, i), spreads, faults=faults) for i, item in enumerate(value)]
    return value


def _spread(table: Mapping[str, Any], at: Location, faults: list[tuple[Location, Fault]]) -> Spread:
    for key in table:
        if key not in _KEYS:
            rule = "a value's table may hold likely, low, high and known"
            faults.append((at, Fault("", rule, str(key)[:80], nearest(key, list(_KEYS)))))
    known = table.get("known", "seen")
    if known not in _KNOWN:
        rule = f"known must be one of: {'; '.join(_KNOWN)}"
        faults.append((at, Fault("", rule, shown(known), nearest(known, list(_KNOWN)))))
        known = "seen"
    bounds: dict[Bound, Any] = {}
    if "low" in table:
        bounds["low"] = table["low"]
    if "high" in table:
        bounds["high"] = table["high"]
    return Spread(cast(Known, known), bounds)
