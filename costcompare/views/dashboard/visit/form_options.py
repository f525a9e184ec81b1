"""The fields of one option: what is installed, what it changes, its price."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from costcompare.case.facts import EQUIPMENT_CLASSES
from costcompare.case.paths import Location
from costcompare.views.dashboard.pieces import Tree, node
from costcompare.views.dashboard.visit.answers import text_at, value_at
from costcompare.views.dashboard.visit.fields import Asked, button, field, place_json
from costcompare.views.dashboard.visit.questions import Question

CHANGES = (
    ("today.ducts.condition", "Condition of the ducts afterwards"),
    ("today.ducts.insulation", "Insulation of the ducts afterwards, R"),
    ("house.floor_insulation", "Insulation under the floor afterwards, R"),
    ("house.floor_insulation_condition", "How it hangs afterwards"),
    ("house.attic_insulation", "Insulation above the ceiling afterwards, R"),
    ("house.wall_insulation", "Insulation in the walls afterwards, R"),
    ("house.air_leakage_at_50_pa", "Air leakage at 50 Pa afterwards, cfm"),
    ("house.window_panes", "Panes of the windows afterwards"),
    ("house.window_u_factor", "U-factor of the windows afterwards, Btu/h/ft2/F"),
    ("house.window_solar_gain", "Sun that the panes let in afterwards, %"),
    ("crawlspace.vents", "Crawlspace vents afterwards"),
)
"""Facts of the home that an option may change in the form; a case file may change more"""


def option_fields(asked: Asked, at: Location, row: Mapping[str, Any]) -> Iterator[Tree]:
    """Everything of an option but its name."""
    yield field(asked, Question((*at, "installed_cost"), "Installed, before incentives, $"))
    units = row.get("units")
    for number, unit in enumerate(units if isinstance(units, list) else []):
        if isinstance(unit, Mapping):
            yield _unit(asked, at, number, unit)
    if row.get("kind") == "ductless heat pump":
        name = text_at(asked.document, (*at, "name"))
        yield node(
            "div", [button("Add a head", "add head", at, about=name)], class_="small-buttons"
        )
    if row.get("kind") in ("ductless heat pump", "ducted heat pump"):
        yield from _backup(asked, at, row)
    yield _changes(asked, at, row)
    yield field(asked, Question((*at, "life"), "Years it lasts, year", plain=True))
    yield field(asked, Question((*at, "maintenance"), "Upkeep above today’s, $/year", plain=True))


def _unit(asked: Asked, at: Location, number: int, unit: Mapping[str, Any]) -> Tree:
    place = (*at, "units", number)
    rooms = [(room, room) for room in asked.rooms]
    ducted = value_at(asked.document, (*at, "kind")) == "ducted heat pump"
    classes = [(c, c) for c in EQUIPMENT_CLASSES if c.startswith("ducted") == ducted]
    classes = [(c, words) for c, words in classes if ("heads" in unit) == c.startswith("multi")]
    cells = [
        field(asked, Question((*place, "class"), "Class", plain=True), classes),
        field(asked, Question((*place, "size"), "Nominal cooling, kBtu/h", plain=True)),
    ]
    if "heads" in unit:
        cells += _heads(asked, place, unit)
    elif not ducted:
        cells += [
            field(asked, Question((*place, "room"), "Room of the head", plain=True), rooms),
            field(asked, Question((*place, "setpoint"), "Its setting, F", plain=True)),
        ]
    else:
        cells.append(field(asked, Question((*place, "setpoint"), "Its setting, F", plain=True)))
    buttons = []
    if not ducted and number > 0:
        about = text_at(asked.document, (*place, "room")) or f"unit {number + 1}"
        buttons = [
            node(
                "div",
                [button("Remove this head", "remove row", place, about=about)],
                class_="small-buttons",
            )
        ]
    points = [
        node("p", "Its points of the submittal sheet stand in the case file.", class_="taken")
    ]
    return node(
        "fieldset",
        [
            node("legend", "The heat pump" if ducted else f"Outdoor unit {number + 1}"),
            node("div", cells, class_="compass"),
            *(points if "points" in unit else []),
            *buttons,
        ],
    )


def _heads(asked: Asked, place: Location, unit: Mapping[str, Any]) -> Iterator[Tree]:
    rooms = [(room, room) for room in asked.rooms]
    heads = unit["heads"] if isinstance(unit["heads"], list) else []
    for number in range(len(heads)):
        head = (*place, "heads", number)
        which = f"head {number + 1}"
        yield field(asked, Question((*head, "room"), f"Room of {which}", plain=True), rooms)
        yield field(asked, Question((*head, "size"), f"Size of {which}, kBtu/h", plain=True))


def _backup(asked: Asked, at: Location, row: Mapping[str, Any]) -> Iterator[Tree]:
    """What helps the heat pump: its kind first, then what goes with the kind."""
    place = (*at, "backup")
    ducted = row.get("kind") == "ducted heat pump"
    kinds = ("none", "strips") if ducted else ("none", "room heaters", "keep furnace")
    backup = row.get("backup")
    kind = backup.get("kind") if isinstance(backup, Mapping) else None
    question = Question((*place, "kind"), "What helps in the cold", plain=True)
    yield field(asked, question, [(word, word) for word in kinds])
    if kind == "room heaters":
        yield _room_ticks(asked, (*place, "rooms"), "Rooms with a small heater")
    if kind in ("room heaters", "strips"):
        label = "Size of the strips, kW" if kind == "strips" else "Size of each heater, kW"
        yield field(asked, Question((*place, "size"), label, plain=True))
    if kind == "strips":
        label = "Strips stay off above, F outdoors"
        yield field(asked, Question((*place, "lockout"), label, plain=True))
    if kind in ("room heaters", "keep furnace"):
        yield field(asked, Question((*place, "setpoint"), "Its setting, F", plain=True))


def _room_ticks(asked: Asked, at: Location, label: str) -> Tree:
    """Rooms to put on a list, or to take off it."""
    chosen = value_at(asked.document, at)
    names = chosen if isinstance(chosen, list) else []
    ticks = []
    for room in asked.rooms:
        checked = {"checked": ""} if room in names else {}
        box = node(
            "input",
            type="checkbox",
            data_do="choose room",
            data_at=place_json(at),
            data_text=room,
            **checked,
        )
        ticks.append(node("label", [box, node("span", room)], class_="tick"))
    return node("fieldset", [node("legend", label), node("div", ticks, class_="ticks")])


def _changes(asked: Asked, at: Location, row: Mapping[str, Any]) -> Tree:
    """What the option changes of the home; those that it does not change stand empty."""
    stated = row.get("set")
    changed = stated if isinstance(stated, Mapping) else {}
    known = dict(CHANGES)
    others = [path for path in changed if path not in known]
    rows = [
        field(asked, Question((*at, "set", path), label, plain=True))
        for path, label in CHANGES
        if path in changed or _fits(asked, path)
    ]
    rows += [field(asked, Question((*at, "set", path), path, plain=True)) for path in others]
    name = f"What it changes of the home ({len(changed)})"
    return node("details", [node("summary", name), *rows], class_="finer", id=f"set-{at[1]}")


def _fits(asked: Asked, path: str) -> bool:
    """Whether the home has what would be changed."""
    if path.startswith("today.ducts."):
        return asked.case.today.ducts is not None
    return not path.startswith("crawlspace.") or asked.case.home.crawlspace is not None
