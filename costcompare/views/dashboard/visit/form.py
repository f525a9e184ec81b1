"""The whole visit form of a case document, as a tree that assets/visit.js draws."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from costcompare.case.facts import Case
from costcompare.case.paths import Location
from costcompare.views import numbers
from costcompare.views.dashboard.pieces import Tree, node
from costcompare.views.dashboard.visit.answers import text_at
from costcompare.views.dashboard.visit.bill_rows import ABOUT, bill_rows
from costcompare.views.dashboard.visit.fields import (
    Asked,
    button,
    fact_words,
    field,
    place_id,
)
from costcompare.views.dashboard.visit.form_rows import (
    doorway_rows,
    money_rows,
    option_rows,
    room_rows,
)
from costcompare.views.dashboard.visit.prices import has_blocks
from costcompare.views.dashboard.visit.proposals import MOST_OPTIONS
from costcompare.views.dashboard.visit.questions import (
    EVERYTHING,
    FIRST,
    LEAST_SHARE,
    MONEY,
    MOST_FIRST,
    STOPS,
    Question,
)
from costcompare.views.dashboard.visit.worth import Weights
from costcompare.views.wording.asking import UNWEIGHED
from costcompare.views.wording.naming import capital, plural


def visit_form(document: Mapping[str, Any], case: Case, weights: Weights | None = None) -> Tree:
    """The form of a valid document: what to ask first, then stop by stop.

    ``weights`` say what the answers are worth, where the ranges of the home are known.
    """
    asked = Asked(document, case, weights)
    return node("div", [_ask_first(asked), *_stops(asked)], class_="stops")


def _stops(asked: Asked) -> Iterator[Tree]:
    number = 0
    for number, stop in enumerate(STOPS, 1):
        questions = [question for question in stop.questions if fits(asked.case, question.at)]
        extra = price_rows(asked) if stop.key == "price" else []
        yield _stop(asked, number, (stop.key, stop.name, stop.about), questions, extra)
    rows = (
        (("bills", "Their real bills", ABOUT), bill_rows(asked)),
        (
            ("rooms", "Room by room", "Write down the rooms that are cold or matter most."),
            room_rows(asked),
        ),
        (
            ("doorways", "Doorways", "A closed door keeps warm air out of a room without heat."),
            doorway_rows(asked),
        ),
        (
            ("options", "What could be done", f"At most {MOST_OPTIONS} options, beside today."),
            option_rows(asked),
        ),
    )
    for head, trees in rows:
        number += 1
        yield _stop(asked, number, head, (), trees)
    head = (MONEY.key, MONEY.name, MONEY.about)
    yield _stop(asked, number + 1, head, MONEY.questions, _rows_of(asked, MONEY_ROWS))


def _stop(
    asked: Asked,
    number: int,
    head: tuple[str, str, str],
    questions: Iterable[Question],
    rows: Iterable[Tree],
) -> Tree:
    key, name, about = head
    asked_for = list(questions)
    first = [
        field(asked, question, choices_for(asked, question.at))
        for question in asked_for
        if not question.finer
    ]
    finer = [
        field(asked, question, choices_for(asked, question.at))
        for question in asked_for
        if question.finer
    ]
    guesses = sum(asked.is_guess(question.at) for question in asked_for)
    count = f"{guesses} {plural(guesses, 'guess', 'guesses')}" if guesses else ""
    summary = [
        node("span", f"{number}", class_="stop-number"),
        node("span", name, class_="stop-name"),
        node("span", count, class_="stop-guesses"),
    ]
    behind = [
        node(
            "details", [node("summary", "Finer points"), *finer], class_="finer", id=f"finer-{key}"
        )
    ]
    inside = [node("p", about, class_="aside"), *first, *rows, *(behind if finer else [])]
    return node(
        "details",
        [node("summary", summary), node("div", inside, class_="stop-inside")],
        class_="stop",
        id=f"stop-{key}",
    )


def _ask_first(asked: Asked) -> Tree:
    """The guesses that move the answer most, each with its reason and a way to its field."""
    open_points = list(to_ask_first(asked))
    if not open_points:
        words = "Nothing that matters much is a guess any more."
        return node("div", [node("p", words, class_="aside")], class_="ask-first")
    rows = [
        node(
            "li",
            [
                node(
                    "button",
                    numbers.in_money(label),
                    type="button",
                    class_="link-button",
                    data_goto=place_id(at),
                ),
                node("span", f"{_now(asked, at)}; {why}."),
            ],
        )
        for at, label, why in open_points[:MOST_FIRST]
    ]
    left = len(open_points) - len(rows)
    more = [node("p", f"{left} more of this weight are guesses.", class_="aside")] if left else []
    order = asked.weights.order if asked.weights is not None else UNWEIGHED
    inside = [node("h3", "Ask these first"), node("p", order, class_="aside"), node("ol", rows)]
    return node("div", [*inside, *more], class_="ask-first")


def to_ask_first(asked: Asked) -> Iterator[tuple[Location, str, str]]:
    """Guesses by what hangs on them: the place, the label, and the reason.

    First what everything hangs on, then by the share of the range, then as usual.
    """
    labels = {question.at: question.label for stop in STOPS for question in stop.questions}
    usual = {place_of(path): why for path, why in FIRST}
    weights = asked.weights
    found = [at for at in {**usual, **labels} if asked.is_guess(at) and fits(asked.case, at)]
    if weights is None:
        found = [at for at in found if at in usual]
    else:
        found = [at for at in found if at in usual or weights.share(at) >= LEAST_SHARE]
        found.sort(key=lambda at: (at not in EVERYTHING, -weights.share(at)))
    for at in found:
        words = weights.words(at) if weights is not None else ""
        yield at, labels.get(at, "Price of electricity, $/kWh"), words or usual.get(at, "")


def _now(asked: Asked, at: Location) -> str:
    stated = text_at(asked.document, at)
    fact = asked.fact(at)
    value = stated or (fact_words(fact) if fact is not None else "nothing")
    return f"now {value}, a guess"


def place_of(path: str) -> Location:
    """A dotted path as a place: numbers are rows counted from 0."""
    return tuple(int(step) if step.isdecimal() else step for step in path.split("."))


def fits(case: Case, at: Location) -> bool:
    """Whether a question makes sense for a home: no crawlspace, no ducts, no furnace."""
    path = ".".join(map(str, at))
    foundation = case.home.house.foundation
    if path.startswith("crawlspace."):
        return case.home.crawlspace is not None and "crawlspace" in foundation
    if path.startswith("house.floor_insulation"):
        return foundation != "slab"
    if path.startswith(("today.ducts.", "today.blower.")):
        return case.today.ducts is not None
    if path == "today.output":
        return case.today.kind == "electric furnace"
    if path == "tariff.price":
        return not case.tariff.seasons and len(case.tariff.tiers) <= 1
    return True


def choices_for(asked: Asked, at: Location) -> list[tuple[str, str]] | None:
    """A list for a text that must be the name of a room."""
    if at[-1] == "thermostat_room":
        return [(room, room) for room in asked.rooms]
    return None


PRICE_ROWS = ("time of day", "demand", "rider")
MONEY_ROWS = ("incentive", "way to pay", "old system", "emissions")


def price_rows(asked: Asked) -> list[Tree]:
    """Blocks of prices, then times of day, demand charges and amounts on top."""
    return [*price_blocks(asked), *_rows_of(asked, PRICE_ROWS)]


def _rows_of(asked: Asked, names: Iterable[str]) -> list[Tree]:
    return [tree for name in names for tree in money_rows(asked, name)]


def price_blocks(asked: Asked) -> list[Tree]:
    """Blocks of prices, one under the other, and how to get more or one price."""
    tariff = asked.document.get("tariff")
    table = tariff if isinstance(tariff, Mapping) else {}
    if "seasons" in table:
        words = "This tariff has seasons: change their prices in the case file."
        return [node("p", words, class_="aside")]
    if not has_blocks(asked.document):
        return [button("The price changes above some use", "add block")]
    trees = []
    for number in range(len(table["tiers"])):
        at: Location = ("tariff", "tiers", number)
        which = f"block {number + 1}"
        if number < len(table["tiers"]) - 1:
            label = f"{capital(which)} ends at, kWh/month"
            trees.append(field(asked, Question((*at, "up_to"), label, plain=True)))
        trees.append(field(asked, Question((*at, "price"), f"Price in {which}, $/kWh")))
    trees.append(
        node(
            "div",
            [button("Add a block", "add block"), button("One price for all", "one price")],
            class_="small-buttons",
        )
    )
    return trees
