"""Options of a case document: adding one from a few kinds, duplicating, renaming, changing.

What a new option holds is a first guess to be corrected: sizes and prices are marked as guesses.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from costcompare.case.facts import Case
from costcompare.case.paths import Location, copied, row_name
from costcompare.errors import CaseError, Fault
from costcompare.views.dashboard.visit.answers import Doc, guess, value_at
from costcompare.views.dashboard.visit.listed import fresh_name, names_of, rows_of

MOST_OPTIONS = 6
"""Options that a visit may compare: more cannot be talked about at a table (judgement)"""
MAIN_HEAD, OTHER_HEAD = "15 kBtu/h", "9 kBtu/h"
"""Nominal sizes of a first guess (judgement); the contractor's page holds them to the rooms"""
DUCTED_SIZE = "36 kBtu/h"
"""Nominal size of a first guess (judgement)"""


@dataclass(frozen=True)
class KindOfOption:
    """One kind that can be added, with what it starts from."""

    key: str
    name: str
    fits: Callable[[Case], bool]
    made: Callable[[Case], Doc]
    cost: str
    """Installed, before incentives: a stand-in (judgement), to be replaced by a bid"""


def _always(_case: Case) -> bool:
    return True


def _has_ducts(case: Case) -> bool:
    return case.today.ducts is not None


def _on_crawlspace(case: Case) -> bool:
    return "crawlspace" in case.home.house.foundation


def _improve(**changes: Any) -> Callable[[Case], Doc]:
    paths = {key.replace("__", "."): value for key, value in changes.items()}
    return lambda _case: {"kind": "improve", "set": dict(paths)}


def _one_head(case: Case) -> Doc:
    room = _main_room(case)
    unit = {"class": "single-zone cold-climate", "size": MAIN_HEAD, "room": room}
    return {"kind": "ductless heat pump", "units": [unit], "backup": _backup(case, [room])}


def _some_heads(case: Case) -> Doc:
    """A head in the main room and in the two largest of the others."""
    main = _main_room(case)
    others = sorted(case.home.rooms, key=lambda room: -room.floor_area)
    rooms = [main, *[room.name for room in others if room.name != main][:2]]
    units = [
        {
            "class": "single-zone cold-climate",
            "size": MAIN_HEAD if room == main else OTHER_HEAD,
            "room": room,
        }
        for room in rooms
    ]
    cold = [room.name for room in case.home.rooms if room.name not in rooms]
    backup: Doc = {"kind": "room heaters", "rooms": cold} if cold else {"kind": "none"}
    return {"kind": "ductless heat pump", "units": units, "backup": backup}


def _backup(case: Case, with_heads: list[str]) -> Doc:
    if case.today.kind == "electric furnace":
        return {"kind": "keep furnace"}
    cold = [room.name for room in case.home.rooms if room.name not in with_heads]
    return {"kind": "room heaters", "rooms": cold} if cold else {"kind": "none"}


def _ducted(case: Case) -> Doc:
    del case
    return {
        "kind": "ducted heat pump",
        "units": [{"class": "ducted variable", "size": DUCTED_SIZE}],
        "backup": {"kind": "strips", "lockout": "35 F"},
    }


def _ducted_on_sealed(case: Case) -> Doc:
    return {**_ducted(case), "set": {"today.ducts.condition": "sealed and tested"}}


def _main_room(case: Case) -> str:
    rooms = case.home.rooms
    living = (room.name for room in rooms if room.name.startswith("living"))
    return next(living, max(rooms, key=lambda room: room.floor_area).name)


def _furnace(case: Case) -> Doc:
    has_output = case.today.kind == "electric furnace"
    return {"kind": "electric furnace", **({} if has_output else {"output": "20 kW"})}


KINDS = (
    KindOfOption(
        "ducts",
        "Seal and wrap the ducts",
        _has_ducts,
        _improve(today__ducts__condition="sealed and tested", today__ducts__insulation="R-6"),
        "2500 $",
    ),
    KindOfOption(
        "floor",
        "Insulate the floor",
        _on_crawlspace,
        _improve(house__floor_insulation="R-25", house__floor_insulation_condition="tight"),
        "3000 $",
    ),
    KindOfOption(
        "attic", "Insulate the attic", _always, _improve(house__attic_insulation="R-49"), "2200 $"
    ),
    KindOfOption("one head", "One head in the main room", _always, _one_head, "6000 $"),
    KindOfOption("heads", "Heads in three rooms", _always, _some_heads, "13000 $"),
    KindOfOption("ducted", "Ducted heat pump", _has_ducts, _ducted, "13000 $"),
    KindOfOption(
        "ducted sealed",
        "Ducted heat pump on sealed ducts",
        _has_ducts,
        _ducted_on_sealed,
        "15000 $",
    ),
    KindOfOption("furnace", "A new electric furnace", _has_ducts, _furnace, "4000 $"),
)
"""What can be added with one touch"""


def kinds_for(case: Case) -> tuple[KindOfOption, ...]:
    """The kinds that fit a home."""
    return tuple(kind for kind in KINDS if kind.fits(case))


def with_option_added(document: Mapping[str, Any], case: Case, key: str) -> Doc:
    """The document with one more option of a kind."""
    kind = next((kind for kind in kinds_for(case) if kind.key == key), None)
    if kind is None:
        raise CaseError([Fault("options", "no such kind can be added here", key[:80])])
    changed = _with_place(document)
    row = {
        "name": fresh_name(kind.name, names_of(changed, "options")),
        **kind.made(case),
        "installed_cost": guess(kind.cost),
    }
    changed["options"].append(row)
    return changed


def with_option_duplicated(document: Mapping[str, Any], at: Location) -> Doc:
    """The document with a copy of an option behind it."""
    original = _option(document, at)
    changed = _with_place(document)
    copy = {**copied(original)}
    copy["name"] = fresh_name(f"{row_name(original)}, changed"[:76], names_of(changed, "options"))
    changed["options"].insert(int(at[1]) + 1, copy)
    return changed


def without_option(document: Mapping[str, Any], at: Location) -> Doc:
    """The document without an option; incentives for it alone go as well."""
    name = row_name(_option(document, at))
    changed: Doc = copied(document)
    del changed["options"][int(at[1])]
    return _with_incentives(changed, name, None)


def with_option_renamed(document: Mapping[str, Any], at: Location, name: str) -> Doc:
    """The document with another name for an option, in the incentives as well."""
    old = row_name(_option(document, at))
    changed: Doc = copied(document)
    changed["options"][int(at[1])]["name"] = name.strip()
    return _with_incentives(changed, old, name.strip())


def with_head_added(document: Mapping[str, Any], case: Case, at: Location) -> Doc:
    """The document with one more head of an option, in the largest room without one."""
    option = _option(document, at)
    units = option.get("units")
    heads = [str(unit.get("room")) for unit in units or [] if isinstance(unit, Mapping)]
    free = [room for room in case.home.rooms if room.name not in heads]
    if not isinstance(units, list) or not free:
        raise CaseError([Fault("options", "there is no room without a head")])
    changed: Doc = copied(document)
    room = max(free, key=lambda one: one.floor_area).name
    unit = {"class": "single-zone cold-climate", "size": OTHER_HEAD, "room": room}
    row = changed["options"][int(at[1])]
    row["units"].append(unit)
    backup = row.get("backup")
    if (
        isinstance(backup, dict)
        and isinstance(rooms := backup.get("rooms"), list)
        and room in rooms
    ):
        rooms.remove(room)
        if not rooms:
            row["backup"] = {"kind": "none"}
    return changed


def _with_place(document: Mapping[str, Any]) -> Doc:
    changed: Doc = copied(document)
    if len(rows_of(changed, "options")) >= MOST_OPTIONS:
        rule = f"a visit compares {MOST_OPTIONS} options at most: remove one first"
        raise CaseError([Fault("options", rule)])
    changed["options"] = rows_of(changed, "options")
    return changed


def _option(document: Mapping[str, Any], at: Location) -> Mapping[str, Any]:
    row = value_at(document, at)
    if len(at) != 2 or at[0] != "options" or not isinstance(row, Mapping):
        raise CaseError([Fault("options", "there is no such option")])
    return row


def _with_incentives(document: Doc, old: str, new: str | None) -> Doc:
    """Incentives that name an option, with its new name or without it."""
    incentives = value_at(document, ("money", "incentives"))
    kept = []
    for row in incentives if isinstance(incentives, list) else []:
        names = row.get("options") if isinstance(row, dict) else None
        if isinstance(names, list) and old in names:
            row["options"] = [new if name == old else name for name in names if new or name != old]
            if not row["options"]:
                continue
        kept.append(row)
    if isinstance(incentives, list):
        document["money"]["incentives"] = kept
    return document
