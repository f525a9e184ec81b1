"""The facts that an adviser can change at the table."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True)
class OfferedFact:
    """One fact of the drawer; the first of its paths that the case uses is meant."""

    key: str
    label: str
    hint: str
    paths: tuple[str, ...]


OFFERED = (
    OfferedFact("day", "Thermostat now, by day", "such as 66 F", ("thermostat.day",)),
    OfferedFact("night", "Thermostat now, at night", "such as 62 F", ("thermostat.night",)),
    OfferedFact("wanted", "The warmth they would like", "such as 70 F", ("thermostat.wanted",)),
    OfferedFact(
        "price",
        "Price of electricity, first block",
        "such as 0.13 $/kWh",
        ("tariff.tiers.1.price", "tariff.price"),
    ),
    OfferedFact(
        "ducts",
        "Condition of the ducts",
        "fallen or open branch; old, never sealed; average; sealed and tested",
        ("today.ducts.condition",),
    ),
    OfferedFact(
        "attic", "Insulation above the ceiling", "such as R-30", ("house.attic_insulation",)
    ),
    OfferedFact(
        "leakage",
        "Air leakage of the house",
        "blower-door flow such as 1900 cfm, or air changes such as 0.4 1/h",
        ("house.air_leakage_at_50_pa", "house.air_changes"),
    ),
)

OFFERED_PATHS = frozenset(path for fact in OFFERED for path in fact.paths)


def path_in(document: Mapping[str, Any], fact: OfferedFact) -> str:
    """The path by which a case states a fact; its first path where it states none."""
    for path in fact.paths:
        if stated(document, path) is not None:
            return path
    return fact.paths[0]


def stated(document: Mapping[str, Any], path: str) -> str | None:
    """What a case says at a path, as text; None where it says nothing.

    A value given with its range shows its likely value. Rows count from 1.
    """
    place: Any = document
    for step in path.split("."):
        if isinstance(place, Mapping):
            place = place.get(step)
        elif isinstance(place, list) and step.isdigit() and 1 <= int(step) <= len(place):
            place = place[int(step) - 1]
        else:
            return None
    if isinstance(place, Mapping):
        place = place.get("likely")
    return None if place is None else str(place)
