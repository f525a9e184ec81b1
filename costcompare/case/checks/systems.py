"""Checks of equipment: what a kind needs, the rooms it names, where its ducts can run."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import cast

from costcompare.case.checks.heat_pumps import unit_faults
from costcompare.case.checks.rooms import known_rooms, no_such_room, repeated
from costcompare.case.document import Document, OptionTable, SystemTable
from costcompare.case.paths import join
from costcompare.errors import Fault

SHARES_TOLERANCE = 0.02
"""How far register shares may add up to another sum than 1"""
_HEAT_PUMPS = ("ducted heat pump", "ductless heat pump")
_CHANGES = (
    "output",
    "thermostat_room",
    "blower",
    "ducts",
    "heaters",
    "units",
    "backup",
)


def system_faults(document: Document) -> list[Fault]:
    """Everything about today's equipment and the options that does not fit together."""
    faults = list(repeated("options", [option.name for option in document.options or []]))
    if document.today is not None:
        faults += _system(document, document.today, document.today.kind, path="today")
        faults += _today_needs(document)
    for number, option in enumerate(document.options or [], 1):
        path = join(["options", option.name or number])
        faults += _system(document, option, option.kind, path=path)
        faults += _option_needs(document, option, path)
    return faults


def _today_needs(document: Document) -> Iterator[Fault]:
    today = document.today
    kept = today.backup is not None and today.backup.kind == "keep furnace"
    needs = today.kind == "electric furnace" or kept
    if needs and today.output is None and "output" not in today.model_fields_set:
        yield Fault("today.output", "is needed for a furnace", "", 'for example output = "20 kW"')


def _option_needs(document: Document, option: OptionTable, path: str) -> Iterator[Fault]:
    if option.kind == "improve":
        for key in _CHANGES:
            if getattr(option, key) is not None:
                rule = "an improve option changes facts with set alone"
                yield Fault(f"{path}.{key}", rule, "", f'set = {{ "today.{key}" = ... }}')
    today = document.today
    furnace = today is not None and (today.output is not None or "output" in today.model_fields_set)
    if option.kind == "electric furnace" and option.output is None and not furnace:
        yield Fault(f"{path}.output", "is needed for a furnace", "", 'for example output = "20 kW"')
    backup = option.backup.kind if option.backup is not None else None
    if backup == "keep furnace" and today is not None and today.kind != "electric furnace":
        rule = "there is no furnace to keep: today's system is of another kind"
        yield Fault(f"{path}.backup.kind", rule, str(today.kind))


def _system(
    document: Document, table: SystemTable, kind: str | None, *, path: str
) -> Iterator[Fault]:
    names = known_rooms(document)
    yield from _rooms_named(table, path, names)
    yield from _registers(table, path, names)
    yield from _duct_leaks(table, path, names)
    yield from _units(table, kind, path)
    yield from _backup(table, kind, path)
    yield from _ducts(document, table, f"{path}.ducts")
    if table.heaters is not None and kind not in ("room heaters", None):
        rule = "heaters belong to the kind room heaters"
        yield Fault(f"{path}.heaters", rule, "", 'backup = { kind = "room heaters" }')
    if kind == "room heaters" and table.heaters is not None and not table.heaters:
        yield Fault(f"{path}.heaters", "must list at least one heater, or be left out")


def _rooms_named(table: SystemTable, path: str, names: Sequence[str] | None) -> Iterator[Fault]:
    yield from no_such_room(f"{path}.thermostat_room", table.thermostat_room, names)
    for number, heater in enumerate(table.heaters or [], 1):
        yield from no_such_room(f"{path}.heaters.{number}.room", heater.room, names)
    for number, unit in enumerate(table.units or [], 1):
        yield from no_such_room(f"{path}.units.{number}.room", unit.room, names)
        for head in unit.heads or []:
            yield from no_such_room(f"{path}.units.{number}.heads", head.room, names)
    if table.backup is not None:
        yield from no_such_room(f"{path}.backup.room", table.backup.room, names)
        for name in table.backup.rooms or []:
            yield from no_such_room(f"{path}.backup.rooms", name, names)


def _duct_leaks(table: SystemTable, path: str, names: Sequence[str] | None) -> Iterator[Fault]:
    """Each side's leak is said once, and damaged branches lead to rooms there are."""
    ducts = table.ducts
    if ducts is None:
        return
    at = f"{path}.ducts"
    for side in ("supply", "return"):
        share, flow = f"{side}_leakage", f"{side}_leakage_at_25_pa"
        if getattr(ducts, share) is not None and getattr(ducts, flow) is not None:
            yield Fault(f"{at}.{flow}", f"a leak is stated once, here or as {share}", "both")
    if ducts.return_path in {"panned joists", "open to the space"} and (
        ducts.return_leakage is not None or ducts.return_leakage_at_25_pa is not None
    ):
        rule = "says how much the return draws in, so a return leakage beside it says it twice"
        yield Fault(f"{at}.return_path", rule, str(ducts.return_path))
    for name in ducts.branches or {}:
        yield from no_such_room(f"{at}.branches", name, names)


def _registers(table: SystemTable, path: str, names: Sequence[str] | None) -> Iterator[Fault]:
    stated = table.ducts.registers if table.ducts is not None else None
    registers = cast("dict[str, float | None] | None", stated)
    if registers is None:
        return
    at = f"{path}.ducts.registers"
    for name in registers:
        yield from no_such_room(at, name, names)
    shares = list(registers.values())
    if any(share is None for share in shares):
        return
    total = sum(share for share in shares if share is not None)
    if abs(total - 1.0) > SHARES_TOLERANCE:
        rule = "the shares of all registers must add up to 1"
        yield Fault(at, rule, f"they add up to {total:.3g}")


def _units(table: SystemTable, kind: str | None, path: str) -> Iterator[Fault]:
    units = table.units or []
    if kind in _HEAT_PUMPS and not units:
        example = "ducted variable" if kind == "ducted heat pump" else "single-zone cold-climate"
        instead = f'for example units = [{{ class = "{example}", size = "24 kBtu/h" }}]'
        yield Fault(f"{path}.units", "is needed for a heat pump", "", instead)
    if units and kind not in (*_HEAT_PUMPS, None):
        yield Fault(f"{path}.units", "belongs to a heat pump", str(kind))
    if kind == "ducted heat pump" and len(units) > 1:
        yield Fault(f"{path}.units", "a ducted heat pump has one unit", f"{len(units)} units")
    heads: set[str] = set()
    for number, unit in enumerate(units, 1):
        at = f"{path}.units.{number}"
        yield from unit_faults(unit, at)
        name = unit.equipment_class or ""
        if (
            name
            and kind in _HEAT_PUMPS
            and name.startswith("ducted") != (kind == "ducted heat pump")
        ):
            yield Fault(f"{at}.class", f"is not a class of a {kind}", name)
        if kind != "ductless heat pump":
            continue
        rooms: list[str | None] = [head.room for head in unit.heads or []]
        for room in rooms or [unit.room]:
            if not room and "room" not in unit.model_fields_set:
                yield Fault(f"{at}.room", "is needed: the room of the head")
            if room in heads:
                yield Fault(f"{at}.room", "has a head already", str(room))
            heads.add(room or "")


def _backup(table: SystemTable, kind: str | None, path: str) -> Iterator[Fault]:
    backup = table.backup
    if backup is None or backup.kind is None:
        return
    allowed = {
        "electric furnace": ("none", "room heaters"),
        "ducted heat pump": ("none", "strips", "room heaters"),
        "ductless heat pump": ("none", "room heaters", "keep furnace"),
    }
    at = f"{path}.backup"
    if kind is not None and backup.kind not in allowed.get(kind, ("none",)):
        instead = '"strips"' if kind == "ducted heat pump" else ""
        yield Fault(f"{at}.kind", f"does not go with the kind {kind}", backup.kind, instead)
    fitting = {
        "none": (),
        "strips": ("size", "lockout", "gap"),
        "room heaters": ("size", "room", "rooms", "setpoint"),
        "keep furnace": ("setpoint",),
    }
    for key in ("size", "room", "rooms", "lockout", "gap", "setpoint"):
        if getattr(backup, key) is not None and key not in fitting[backup.kind]:
            yield Fault(f"{at}.{key}", f"does not go with the backup {backup.kind}")
    if backup.room is not None and backup.rooms is not None:
        yield Fault(f"{at}.rooms", "give either room or rooms, not both")


def _ducts(document: Document, table: SystemTable, path: str) -> Iterator[Fault]:
    location = table.ducts.location if table.ducts is not None else None
    foundation = document.house.foundation if document.house is not None else None
    rooms = document.rooms or []
    if location is None or foundation is None:
        return
    has_crawlspace = foundation in ("vented crawlspace", "closed crawlspace")
    lacks = {
        "crawlspace": not has_crawlspace,
        "basement": foundation != "basement",
        "belly": foundation != "manufactured home",
        "attic": bool(rooms) and all(room.above not in ("attic", None) for room in rooms),
    }
    if lacks.get(location):
        rule = f"ducts cannot run in the {location}: the house has none"
        yield Fault(f"{path}.location", rule, f"the foundation is a {foundation}")
