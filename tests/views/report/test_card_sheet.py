"""The settings card: one page, every setting of the card, in any units."""

from __future__ import annotations

from dataclasses import replace

import pytest

from costcompare.case import Case
from costcompare.settings import (
    FurnaceSetting,
    HeadSetting,
    HeaterSetting,
    NightSetting,
    SettingsCard,
    StripSetting,
    Tried,
)
from costcompare.views import numbers
from costcompare.views.report import settings_card_html, settings_card_pdf
from costcompare.views.report.card_sheet import card_document
from costcompare.views.wording.settings_card import card_answers
from tests.views.report.conftest import DAY, LONG, read, text_of

NIGHT = NightSetting("set back", 6.0, "22-6", 2000.0, 1880.0, 0.9, 0.8, -120.0)
CARD = SettingsCard(
    option="Two heads",
    wanted_degf=70.0,
    has_heat_pump=True,
    heads=(
        HeadSetting("living room", 70.0, 7.0, True, 1.4, 71.0),
        HeadSetting("bedroom", 66.0, 7.0, True, 1.4, 67.0),
    ),
    too_warm_hours=12,
    strips=StripSetting(29.0, 24.0, 5.0, None, 2100.0, 2000.0, 150.0),
    furnace=FurnaceSetting(60.0, 10.0, 62.0, (Tried(60.0, 2000.0, 300.0, 0.9),)),
    heaters=(HeaterSetting("bath", 62.0),),
    night=NIGHT,
)


def test_it_is_one_tagged_page_with_every_sentence(demo: Case) -> None:
    made = settings_card_pdf(CARD, demo, made_on=DAY)
    assert len(read(made).pages) == 1
    assert read(made).trailer["/Root"]["/StructTreeRoot"] is not None
    text = text_of(made)
    for answer in card_answers(CARD):
        assert answer.partition(": ")[2][1:].rstrip(".") in text
    assert demo.title in text
    assert settings_card_pdf(CARD, demo, made_on=DAY) == made


def test_the_settings_at_a_glance_are_those_of_the_card(demo: Case) -> None:
    tiles = card_document(CARD, demo.title).figures
    assert [tile.value for tile in tiles] == ["71 °F", "67 °F", "60 °F", "set back"]
    assert tiles[-1].note == "turning down by 6 °F takes about $120 a year off"
    held = replace(CARD, night=replace(NIGHT, advice="hold", difference_usd=90.0))
    assert card_document(held, "").figures[-1].value == "hold"
    assert "adds about $90 a year" in card_document(held, "").figures[-1].note
    same = replace(CARD, night=replace(NIGHT, advice="makes no difference"))
    assert "next to nothing" in card_document(same, "").figures[-1].note


@pytest.mark.parametrize("made_for", ["heat pump", "no heat pump"])
def test_reminders_are_those_of_what_is_there(made_for: str) -> None:
    card = replace(CARD, has_heat_pump=made_for == "heat pump")
    keys = [section.key for section in card_document(card, "").sections]
    assert ("care" in keys) == card.has_heat_pump


def test_in_other_units_no_figure_of_the_first_is_left(demo: Case) -> None:
    euros = replace(demo, tariff=replace(demo.tariff, currency="€"))
    page = settings_card_html(CARD, euros, units="si")
    assert "22 °C" in page
    assert "€" in page
    assert not any(sign in page for sign in ("°F", "$", " ft"))
    assert numbers.currency() == "$"


def test_many_heads_with_long_names_stay_on_one_page(demo: Case) -> None:
    heads = tuple(
        HeadSetting(f"{number} {LONG}"[:80], 66.0 + number, 7.0, False, 1.4, 67.0 + number)
        for number in range(8)
    )
    made = settings_card_pdf(replace(CARD, heads=heads, option=LONG), demo)
    assert len(read(made).pages) <= 2
    usual = tuple(replace(head, room=f"bedroom {n}") for n, head in enumerate(heads[:5]))
    assert len(read(settings_card_pdf(replace(CARD, heads=usual), demo)).pages) == 1
