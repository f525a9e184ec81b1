"""From a checked document to what takes air out of the rooms: fans, a fire and its flue."""

from __future__ import annotations

from costcompare.case.defaults import house_default
from costcompare.case.document import Document
from costcompare.case.facts import ExhaustFan, Fireplace, Room
from costcompare.case.hours import months_of_year
from costcompare.case.ledger import Ledger

HEARTHS = ("living", "great", "family")
"""Words in the name of a room in which a fireplace is looked for (judgement)"""


def fans_of(document: Document) -> tuple[ExhaustFan, ...]:
    """The fans that the case lists; none is taken as there."""
    return tuple(ExhaustFan(fan.room, fan.airflow, fan.hours) for fan in document.house.fans or [])


def flue_of(document: Document, ledger: Ledger) -> bool:
    """As stated, else where there is a fireplace."""
    stated = document.house.flue
    if stated is None and document.fireplace is not None:
        ledger.note("house.flue", True, "the case has a fireplace")
        return True
    return ledger.flag(stated, "house.flue")


def fireplace_of(document: Document, rooms: tuple[Room, ...], ledger: Ledger) -> Fireplace | None:
    """The fireplace of the case, with what is left out filled in."""
    table = document.fireplace
    if table is None:
        return None
    room = table.room
    if room is None:
        likely = [r.name for r in rooms if any(word in r.name.lower() for word in HEARTHS)]
        room = likely[0] if likely else max(rooms, key=lambda r: r.floor_area).name
        ledger.note("fireplace.room", room, "judgement: the living room, else the largest room")
    hours, months = table.hours, table.months
    if hours is None:
        usual = house_default("fireplace.hours", ledger.built)
        hours = usual.hours
        ledger.note("fireplace.hours", usual.text, usual.source)
    if months is None:
        months = months_of_year(ledger.words(None, "fireplace.months"))
    return Fireplace(
        room=room,
        hours=hours,
        months=months,
        draught=ledger.measure(table.draught, "fireplace.draught"),
        heat=ledger.measure(table.heat, "fireplace.heat"),
        used=ledger.flag(table.used, "fireplace.used"),
    )
