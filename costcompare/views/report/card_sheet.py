"""The settings card: one page that stays on the refrigerator door."""

from __future__ import annotations

from datetime import date

from costcompare.settings import NightSetting, SettingsCard
from costcompare.views import numbers
from costcompare.views.report.catalogue import ENGLISH, Catalogue
from costcompare.views.report.dates import subtitle
from costcompare.views.report.pieces import Document, Figure, Point, Section
from costcompare.views.wording.naming import listed
from costcompare.views.wording.settings_card import card_answers

LARGE = 1.32
"""Size of the type against that of the report: a card is read standing up"""
MOST_TILES = 4


def card_document(
    card: SettingsCard, title: str, *, made_on: date | None = None, words: Catalogue = ENGLISH
) -> Document:
    """What to set with one option in place, each setting with its reason."""
    sections = [Section("settings", words.settings, points=_points(card))]
    if card.has_heat_pump:
        sections.append(_list("care", words.care, words.care_points))
    sections.append(_list("amiss", words.amiss, words.amiss_points))
    return Document(
        language=words.language,
        paper="a4" if numbers.in_si() else "us-letter",
        overline=words.card,
        title=title,
        subtitle=subtitle("", made_on, words),
        lead=words.card_lead.format(card.option, numbers.degrees(card.wanted_degf)),
        figures=_tiles(card, words),
        sections=tuple(sections),
        notice=words.card_notice,
        footer=f"{title} · {words.estimate}",
        page_of=words.page_of,
        size=LARGE,
    )


def _points(card: SettingsCard) -> tuple[Point, ...]:
    """Every sentence of the card, what stands before its first colon as its name."""
    points = []
    for answer in card_answers(card):
        head, told, text = answer.partition(": ")
        points.append(Point(head, _capital(text)) if told else Point("", answer))
    return tuple(points)


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _list(key: str, heading: str, texts: tuple[str, ...]) -> Section:
    return Section(key, heading, points=tuple(Point("", text) for text in texts))


def _tiles(card: SettingsCard, words: Catalogue) -> tuple[Figure, ...]:
    """The settings at a glance: heads, the old furnace or the strips, heaters, the night."""
    tiles = [
        Figure(words.tile_heads, value, listed(rooms), "chosen")
        for value, rooms in _alike([(one.room, one.set_degf) for one in card.heads])
    ]
    if card.furnace is not None:
        value = numbers.degrees(card.furnace.set_degf)
        tiles.append(Figure(words.tile_furnace, value, words.tile_furnace_note, "now"))
    if card.strips is not None:
        value = numbers.degrees(card.strips.lockout_degf)
        tiles.append(Figure(words.tile_strips, value, words.tile_strips_note, "now"))
    tiles += [
        Figure(words.tile_heaters, value, listed(rooms), "now")
        for value, rooms in _alike([(one.room, one.set_degf) for one in card.heaters])
    ]
    return (*tiles[: MOST_TILES - 1], _night(card.night, words))


def _night(night: NightSetting, words: Catalogue) -> Figure:
    """Hold or set back, with what setting back does to the bill."""
    told = {
        "hold": (words.night_hold, words.night_notes[0]),
        "set back": (words.night_back, words.night_notes[1]),
        "makes no difference": (words.night_either, words.night_notes[2]),
    }
    value, note = told[night.advice]
    lower = numbers.degrees_of_difference(night.setback_degf)
    amount = numbers.dollars_a_year(abs(night.difference_usd))
    return Figure(words.tile_night, value, note.format(lower, amount), "whole")


def _alike(settings: list[tuple[str, float]]) -> list[tuple[str, list[str]]]:
    """Rooms with one setting together, in the order in which settings come up."""
    found: dict[str, list[str]] = {}
    for room, degf in settings:
        found.setdefault(numbers.degrees(degf), []).append(room)
    return list(found.items())
