"""What goes into the plan of the rooms in part three: now beside afterwards."""

from __future__ import annotations

from costcompare.case.facts import Case
from costcompare.case.system_facts import System
from costcompare.comparison import AS_WANTED, Choice
from costcompare.views.dashboard import pieces
from costcompare.views.dashboard.pieces import Tree, node
from costcompare.views.dashboard.workbench import Worked
from costcompare.views.figures.floor_plan import DoorMark, StoreyPlan, floor_plans, undrawn
from costcompare.views.figures.maps import COLDER, COLDEST, COOL, WARM
from costcompare.views.wording import rooms_plan
from costcompare.views.wording.naming import as_a_label
from costcompare.views.wording.rooms_plan import RoomLabel

COLOURS = (WARM, COOL, COLDER, COLDEST, "#f1f0ec")
"""A colour a step of :data:`rooms_plan.STEP_WORDS`: darker is colder; grey is not used"""
DARK_STEP = 3
"""The step whose colour takes white letters"""


def plan_part(worked: Worked, name: str) -> dict[str, Tree | str]:
    """The plan of every storey, today as lived in beside the choice at the wanted warmth."""
    comparison, home = worked.comparison, worked.case.home
    plans = floor_plans(home.rooms, home.doorways)
    trees, said = [], []
    for choice in (comparison.today, comparison.choice(name, AS_WANTED)):
        system = _system(worked.case, choice)
        labels = {room.name: rooms_plan.room_label(room, system) for room in choice.rooms}
        title = f"{as_a_label(choice)}, {choice.warmth}"
        trees.append(_plan(title, plans, labels))
        said.append(rooms_plan.plan_answer(tuple(labels.values()), title))
    missing = rooms_plan.undrawn_answer(undrawn(plans, home.doorways))
    return {
        "plan_figure": " ".join(said),
        "plan": node("div", trees, class_="plans"),
        "plan_key": _key(),
        "plan_note": f"{rooms_plan.SCHEMATIC} {missing}".strip(),
    }


def _system(case: Case, choice: Choice) -> System:
    """What heats the home in a choice."""
    found = (option.system for option in case.options if option.name == choice.name)
    return case.today if choice.is_today else next(found)


def _plan(title: str, plans: tuple[StoreyPlan, ...], labels: dict[str, RoomLabel]) -> Tree:
    inside: list[Tree] = [node("div", title, class_="plan-title")]
    for plan in plans:
        if len(plans) > 1:
            inside.append(node("div", f"Storey {plan.storey}", class_="plan-storey"))
        rooms = [
            _room(
                labels[room.name],
                f"left:{100 * room.left:.2f}%;top:{100 * room.top:.2f}%;"
                f"width:{100 * room.width:.2f}%;height:{100 * room.height:.2f}%;",
            )
            for room in plan.rooms
        ]
        doors = [_door(door) for door in plan.doors]
        style = f"height:{plan.height_px:.0f}px"
        inside.append(node("div", [*rooms, *doors], class_="plan-floor", style=style))
    return node("div", inside, class_="plan")


def _room(label: RoomLabel, place: str) -> Tree:
    lines = [
        node("span", label.name, class_="plan-name"),
        node("strong", label.coldest),
        node("span", label.cold),
        *(node("span", words, class_="plan-thing") for words in label.inside),
    ]
    dark = " plan-dark" if label.step == DARK_STEP else ""
    style = f"{place}background-color:{COLOURS[label.step]}"
    return node("div", lines, class_=f"plan-room{dark}", style=style)


def _door(door: DoorMark) -> Tree:
    way = "upright" if door.upright else "level"
    style = f"left:{100 * door.across:.2f}%;top:{100 * door.down:.2f}%"
    return node("span", class_=f"plan-door door-{way} door-{door.state}", style=style)


def _key() -> Tree:
    """The colours in words, then the two kinds of doorway."""
    colours: list[list[Tree | str]] = [
        [node("span", class_="swatch", style=f"background-color:{colour}"), words]
        for colour, words in zip(COLOURS, rooms_plan.STEP_WORDS, strict=True)
    ]
    doors: list[list[Tree | str]] = [
        [node("span", class_=f"door-sign door-{state}"), words]
        for state, words in rooms_plan.DOOR_WORDS
    ]
    return pieces.bullet_list([*colours, *doors], class_="key")
