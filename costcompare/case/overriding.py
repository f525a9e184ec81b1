"""Changing one value of a document by its dotted path, without touching the original."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Mapping
from typing import Any

from costcompare.case.paths import copied, find_row, join, row_name, split
from costcompare.case.values import nearest
from costcompare.errors import CaseError, Fault

_WHOLE = frozenset({"registers", "outside_walls", "windows"})
"""Tables that are replaced, never merged: what is left over of the old one makes no sense"""

SETTABLE = (
    "house",
    "constructions",
    "other_use",
    "rooms",
    "doorways",
    "crawlspace",
    "fireplace",
    "thermostat",
    "comfort",
    "today",
)
"""Sections that an option may change: those of the home and of today's system"""

NAMED_ROWS = frozenset({"rooms", "doorways", "options"})
"""Lists at the top of a case"""

REPLACES: Mapping[str, tuple[str, ...]] = {
    "today.ducts.condition": (
        "today.ducts.supply_leakage",
        "today.ducts.return_leakage",
        "today.ducts.supply_leakage_at_25_pa",
        "today.ducts.return_leakage_at_25_pa",
        "today.ducts.return_path",
        "today.ducts.branches",
    ),
    "today.ducts.supply_leakage": ("today.ducts.supply_leakage_at_25_pa",),
    "today.ducts.supply_leakage_at_25_pa": ("today.ducts.supply_leakage",),
    "today.ducts.return_leakage": (
        "today.ducts.return_leakage_at_25_pa",
        "today.ducts.return_path",
    ),
    "today.ducts.return_leakage_at_25_pa": (
        "today.ducts.return_leakage",
        "today.ducts.return_path",
    ),
    "house.air_changes": ("house.air_leakage_at_50_pa",),
    "house.air_leakage_at_50_pa": ("house.air_changes",),
    "house.window_panes": ("house.window_u_factor", "house.window_solar_gain"),
    "house.wall_insulation": ("constructions.wall.layers",),
    "house.attic_insulation": (
        "constructions.ceiling.layers",
        "constructions.sloped_ceiling.layers",
    ),
    "house.floor_insulation": ("house.floor_insulation_condition", "constructions.floor.layers"),
    "tariff.price": ("tariff.tiers",),
    "tariff.tiers": ("tariff.price",),
}
"""What a change takes away with it: values that would otherwise outlive what they describe"""


def override(document: Mapping[str, Any], assignment: str) -> dict[str, Any]:
    """The document with ``path=value`` carried out; raises :class:`CaseError`.

    The value is read as TOML where it is TOML (numbers, true, a table in braces), and as
    plain text otherwise, so ``rooms.hall.floor_area=400 ft2`` needs no inner quotes.
    """
    path, text = _parted(assignment)
    if text is None or not path.strip():
        raise CaseError(
            [Fault(assignment, "must be path=value", "", "rooms.hall.floor_area=400 ft2")]
        )
    changed, faults = with_changes(document, {path.strip(): _value(text.strip())})
    if faults:
        raise CaseError(faults)
    return changed


def _parted(assignment: str) -> tuple[str, str | None]:
    """Path and value around the first equals sign that stands outside double quotes."""
    quoted = False
    for place, letter in enumerate(assignment):
        quoted = quoted != (letter == '"')
        if letter == "=" and not quoted:
            return assignment[:place], assignment[place + 1 :]
    return assignment, None


def _value(text: str) -> Any:
    if "\n" in text or "\r" in text:
        return text
    try:
        read = tomllib.loads(f"value = {text}")
    except (ValueError, RecursionError):
        return text
    return read["value"] if set(read) == {"value"} else text


def with_value(document: Mapping[str, Any], path: str, value: Any) -> dict[str, Any]:
    """A copy of the document in which the value at the path is replaced."""
    try:
        parts = split(path)
    except ValueError as error:
        raise CaseError(
            [Fault(path, str(error), path, "for example rooms.hall.floor_area")]
        ) from None
    changed: dict[str, Any] = copied(document)
    place: Any = changed
    for depth, part in enumerate(parts[:-1]):
        place = _step(place, part, parts[: depth + 1])
    last = parts[-1]
    if isinstance(place, list):
        place[_index(place, last, parts)] = value
    elif isinstance(place, dict):
        place[last] = value
    else:
        raise CaseError([Fault(join(parts), f"{join(parts[:-1])} is a single value, not a table")])
    return changed


def with_changes(
    document: Mapping[str, Any], changes: Mapping[str, Any]
) -> tuple[dict[str, Any], list[Fault]]:
    """A copy of the document with all changes, and what was wrong with them.

    Values that a change outdates (:data:`REPLACES`) are taken away, unless they are among
    the changes themselves.
    """
    faults: list[Fault] = []
    changed: dict[str, Any] = copied(document)
    leaves = dict(_leaves(changes, 0))
    for path in leaves:
        for outdated in REPLACES.get(path, ()):
            _take_away(changed, outdated)
    for path, value in leaves.items():
        try:
            changed = with_value(changed, path, value)
        except CaseError as error:
            faults.extend(error.faults)
    return changed, faults


def _take_away(document: dict[str, Any], path: str) -> None:
    *parts, last = path.split(".")
    place: Any = document
    for part in parts:
        place = place.get(part) if isinstance(place, dict) else None
    if isinstance(place, dict):
        place.pop(last, None)


def _leaves(changes: Mapping[str, Any], depth: int) -> Iterator[tuple[str, Any]]:
    """Paths and values; tables are walked into unless they are one value or a whole map."""
    for key, value in changes.items():
        path = str(key)
        is_value = not isinstance(value, Mapping) or depth > 6
        is_value = is_value or "likely" in value or set(value) <= {"low", "high"}
        if is_value or path.rpartition(".")[2] in _WHOLE or not value:
            yield path, value
        else:
            for inner, leaf in _leaves(value, depth + 1):
                yield f"{path}.{inner}", leaf


def _step(place: Any, part: str, so_far: list[str]) -> Any:
    if isinstance(place, list):
        return place[_index(place, part, so_far)]
    if not isinstance(place, dict):
        raise CaseError(
            [Fault(join(so_far), f"{join(so_far[:-1])} is a single value, not a table")]
        )
    if len(so_far) == 1 and part in NAMED_ROWS and part not in place:
        rule = f"the case lists no {part} of its own"
        raise CaseError([Fault(part, rule, "", f"the {part} into the case first")])
    return place.setdefault(part, {})


def _index(rows: list[Any], part: str, so_far: list[str]) -> int:
    index = find_row(rows, part)
    if index is not None:
        return index
    names = [name for row in rows if (name := row_name(row))]
    known = "; ".join(names) if names else f"numbers 1 to {len(rows)}"
    raise CaseError([Fault(join(so_far), f"must name one of: {known}", part, nearest(part, names))])
