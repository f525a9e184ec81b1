"""Rows of the visit form that come and go: rooms, doorways, options, prices, money."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from costcompare.case.facts import ORIENTATIONS
from costcompare.case.paths import Location, row_name
from costcompare.case.rooms import PLACES_ABOVE, PLACES_BELOW
from costcompare.views.dashboard.pieces import Tree, node
from costcompare.views.dashboard.visit.answers import text_at, value_at
from costcompare.views.dashboard.visit.fields import (
    Asked,
    Choices,
    button,
    field,
    name_field,
    place_id,
)
from costcompare.views.dashboard.visit.form_options import option_fields
from costcompare.views.dashboard.visit.listed import rows_of
from costcompare.views.dashboard.visit.money_rows import ROW_KINDS, RowKind
from costcompare.views.dashboard.visit.proposals import MOST_OPTIONS, kinds_for
from costcompare.views.dashboard.visit.questions import Question
from costcompare.views.wording.naming import capital, listed


def row_card(at: Location, name: str, inside: Sequence[Tree], *, note: str = "") -> Tree:
    """One row behind a line that opens."""
    summary = node("summary", [node("span", name), node("span", note, class_="stop-guesses")])
    return node("details", [summary, *inside], class_="row-card", id=f"row-{place_id(at)}")


def small_buttons(*buttons: Tree) -> Tree:
    """Buttons beside each other."""
    return node("div", buttons, class_="small-buttons")


# ---------------------------------------------------------------- rooms


def room_rows(asked: Asked) -> list[Tree]:
    """Every listed room, or how the house was laid out instead."""
    rows = rows_of(asked.document, "rooms")
    if not rows:
        words = f"No room is written down: the house is laid out as {listed(asked.rooms)}."
        return [
            node("p", words),
            small_buttons(
                button("Write these rooms down", "list rooms"), button("Add a room", "add room")
            ),
        ]
    cards = [_room(asked, number, row) for number, row in enumerate(rows)]
    return [*cards, small_buttons(button("Add a room", "add room"))]


def _room(asked: Asked, number: int, row: Mapping[str, Any]) -> Tree:
    at: Location = ("rooms", number)
    name = row_name(row)
    others = [room for room in asked.rooms if room != name]
    inside = [
        name_field(at, "name of this room", name, "rename room"),
        field(asked, Question((*at, "floor_area"), f"Floor area of {name}, ft2")),
        _ceiling(asked, at, name),
        _compass(asked, (*at, "outside_walls"), f"Outside walls of {name}, ft", forget=False),
        _compass(asked, (*at, "windows"), f"Windows of {name}, ft2 with frame", forget=True),
        field(
            asked, Question((*at, "wanted_hours"), "Hours in use", "such as 6-9,17-22", plain=True)
        ),
        _register(asked, name),
        field(
            asked,
            Question((*at, "below"), f"Below {name}", plain=True),
            _places(PLACES_BELOW, others),
        ),
        field(
            asked,
            Question((*at, "above"), f"Above {name}", plain=True),
            _places(PLACES_ABOVE, others),
        ),
        field(asked, Question((*at, "storey"), "Storey", plain=True)),
        small_buttons(button("Remove this room", "remove room", at, about=name)),
    ]
    area = text_at(asked.document, (*at, "floor_area"))
    return row_card(at, capital(name), [tree for tree in inside if tree], note=area)


def _places(places: Sequence[str], rooms: Sequence[str]) -> Choices:
    return [(place, place) for place in (*places, *rooms)]


def _ceiling(asked: Asked, at: Location, name: str) -> Tree:
    """One height, or the two sides of a sloping ceiling."""
    place = (*at, "ceiling_height")
    value = value_at(asked.document, place)
    if isinstance(value, Mapping) and "likely" not in value:
        cells = [
            field(asked, Question((*place, side), f"{capital(side)} side", plain=True))
            for side in ("low", "high")
        ]
        legend = node("legend", f"Sloping ceiling of {name}, ft")
        return node("fieldset", [legend, node("div", cells, class_="compass")])
    return field(asked, Question(place, f"Ceiling height of {name}, ft"))


def _compass(asked: Asked, at: Location, label: str, *, forget: bool) -> Tree:
    """Four small fields, one a side of the house; empty is none there."""
    cells = [field(asked, Question((*at, way), capital(way), plain=True)) for way in ORIENTATIONS]
    inside = [node("legend", label), node("div", cells, class_="compass")]
    if forget and value_at(asked.document, at) is not None:
        inside.append(small_buttons(button("Don’t know", "forget", at, about=label)))
    elif forget:
        inside.append(node("p", "Not known: taken from the floor area.", class_="taken"))
    return node("fieldset", inside)


def _register(asked: Asked, name: str) -> Tree | None:
    """The share of the supply air, where the case lists them."""
    at: Location = ("today", "ducts", "registers")
    if not isinstance(value_at(asked.document, at), Mapping):
        return None
    return field(
        asked, Question((*at, name), "Share of the supply air", "all add up to 1", plain=True)
    )


# ---------------------------------------------------------------- doorways


def doorway_rows(asked: Asked) -> list[Tree]:
    """Every listed doorway, or what was taken instead."""
    rows = rows_of(asked.document, "doorways")
    if not rows:
        fact = asked.facts.get("doorways")
        words = f"No doorway is written down. Taken: {fact.value}." if fact else "There is none."
        return [node("p", words), small_buttons(button("Write them down", "add doorway"))]
    cards = [_doorway(asked, number) for number in range(len(rows))]
    return [*cards, small_buttons(button("Add a doorway", "add doorway"))]


def _doorway(asked: Asked, number: int) -> Tree:
    at: Location = ("doorways", number)
    rooms = [(room, room) for room in asked.rooms]
    one, other = (text_at(asked.document, (*at, "between", side)) for side in (0, 1))
    cells = [
        field(asked, Question((*at, "between", 0), "From", plain=True), rooms),
        field(asked, Question((*at, "between", 1), "To", plain=True), rooms),
        field(asked, Question((*at, "state"), "Door", plain=True)),
    ]
    remove = button("Remove this doorway", "remove row", at, about=f"{one} to {other}")
    legend = node("legend", f"{capital(one)} to {other}")
    return node("fieldset", [legend, node("div", cells, class_="compass"), small_buttons(remove)])


# ---------------------------------------------------------------- options and money


def option_rows(asked: Asked) -> list[Tree]:
    """Every option, and the kinds that can be added."""
    rows = rows_of(asked.document, "options")
    cards = [_option(asked, number, row) for number, row in enumerate(rows)]
    if len(rows) >= MOST_OPTIONS:
        words = (
            f"{MOST_OPTIONS} options are as many as one can talk about; remove one to add another."
        )
        return [*cards, node("p", words, class_="aside")]
    adding = [
        button(kind.name, "add option", text=kind.key, about="add this option")
        for kind in kinds_for(asked.case)
    ]
    return [*cards, node("h4", "Add an option"), small_buttons(*adding)]


def _option(asked: Asked, number: int, row: Mapping[str, Any]) -> Tree:
    at: Location = ("options", number)
    name = row_name(row)
    inside = [
        name_field(at, "name of this option", name, "rename option"),
        *option_fields(asked, at, row),
        small_buttons(
            button("Duplicate to change it", "duplicate option", at, about=name),
            button("Remove this option", "remove option", at, about=name),
        ),
    ]
    return row_card(at, name, inside, note=text_at(asked.document, (*at, "installed_cost")))


def money_rows(asked: Asked, name: str) -> Iterator[Tree]:
    """Every row of one kind of money or price, and the button for one more."""
    kind = ROW_KINDS[name]
    held = value_at(asked.document, kind.at)
    rows = held if isinstance(held, list) else []
    if not kind.is_list and isinstance(held, Mapping):
        fields = _money_fields(asked, kind, kind.at)
        away = button(f"Without the {kind.one}", "forget", kind.at)
        yield row_card(kind.at, capital(kind.one), [*fields, small_buttons(away)])
        return
    for number, row in enumerate(rows):
        at: Location = (*kind.at, number)
        words = row_name(row) or f"{kind.one} {number + 1}"
        away = button(f"Remove this {kind.one}", "remove row", at, about=words)
        inside = [*_money_fields(asked, kind, at), small_buttons(away)]
        yield row_card(at, words, inside, note=_money_note(asked, at))
    article = "an" if kind.one[0] in "aeiou" else "a"
    yield small_buttons(button(f"Add {article} {kind.one}", "add row", text=name))


def _money_fields(asked: Asked, kind: RowKind, at: Location) -> list[Tree]:
    guessed = {key for key, value in kind.fresh.items() if isinstance(value, Mapping)}
    return [
        field(asked, Question((*at, key), label, hint, plain=key not in guessed))
        for key, label, hint in kind.asks
    ]


def _money_note(asked: Asked, at: Location) -> str:
    """The figure of a row beside its name."""
    told = (text_at(asked.document, (*at, key)) for key in ("amount", "price", "rate", "per_kwh"))
    return next((text for text in told if text), "")
