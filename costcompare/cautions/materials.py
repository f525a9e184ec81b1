"""Cautions about what old houses are made of; years are EPA and CPSC advice (from memory)."""

from __future__ import annotations

from collections.abc import Sequence

from costcompare.case.facts import Case
from costcompare.cautions.seen import Seen, all_named
from costcompare.comparison import Caution

ASBESTOS_UNTIL = 1985
VERMICULITE_UNTIL = 1990
LEAD_PAINT_UNTIL = 1977
"""Last year built that calls for a look"""


def old_materials(case: Case, today: Seen, options: Sequence[Seen]) -> list[Caution]:
    """Asbestos on ducts, vermiculite in attics, lead in paint, where work would touch them."""
    built = case.home.house.built
    return [
        *(_asbestos(built, today, options) if built <= ASBESTOS_UNTIL else ()),
        *(_vermiculite(built, today, options) if built <= VERMICULITE_UNTIL else ()),
        *(_lead(built, today, options) if built <= LEAD_PAINT_UNTIL else ()),
    ]


def _asbestos(built: int, today: Seen, options: Sequence[Seen]) -> list[Caution]:
    old = today.system.ducts
    touched = [o for o in options if old is not None and o.system.ducts != old]
    if not touched:
        return []
    return [
        Caution(
            "Asbestos",
            "White tape, paper or cement on old ducts may hold asbestos. Do not cut, peel or "
            "cover it: have it tested by an accredited laboratory, and removed, if need be, by a "
            "licensed contractor.",
            f"the house was built in {built} and its ducts would be worked on with "
            f"{all_named(touched)}",
        )
    ]


def _vermiculite(built: int, today: Seen, options: Sequence[Seen]) -> list[Caution]:
    before = today.home.house.constructions
    touched = [
        o
        for o in options
        if (o.home.house.constructions.ceiling, o.home.house.constructions.wall)
        != (before.ceiling, before.wall)
    ]
    if not touched:
        return []
    return [
        Caution(
            "Vermiculite",
            "Loose, pebble-like, grey-brown insulation may be vermiculite with asbestos in it. "
            "Leave it alone and keep out of the attic until a laboratory has tested it.",
            f"the house was built in {built} and the insulation of attic or walls would be "
            f"worked on with {all_named(touched)}",
        )
    ]


def _lead(built: int, today: Seen, options: Sequence[Seen]) -> list[Caution]:
    before = today.home.house
    touched = [
        o
        for o in options
        if o.home.house.windows != before.windows
        or o.home.house.constructions.wall != before.constructions.wall
        or (o.system.heads and not today.system.heads)
    ]
    if not touched:
        return []
    return [
        Caution(
            "Lead paint",
            "Paint from before 1978 may hold lead. Cutting, drilling or taking out windows is "
            "work for a firm certified for it; keep children away from the dust.",
            f"the house was built in {built} and painted walls or windows would be opened with "
            f"{all_named(touched)}",
        )
    ]
