"""What ``size`` prints: every room and machine with its numbers, in sentences that are true."""

from __future__ import annotations

from dataclasses import replace

import pytest

from costcompare.settings import NightSetting, SettingsCard, StripSetting
from costcompare.views import numbers
from costcompare.views.sizing_page import sizing_page
from costcompare.views.terminal import Heading, plain_lines
from costcompare.views.wording.room_needs import clock
from costcompare.views.wording.settings_card import card_answers
from tests.sizing.homes import Both, example, loft

FORBIDDEN = ("guaranteed", "pays for itself", "eliminate", "will save", " free ")


@pytest.fixture(scope="module")
def both() -> Both:
    return loft()


@pytest.fixture(scope="module")
def page(both: Both) -> str:
    return "\n".join(plain_lines(sizing_page(*both)))


def line(page: str, start: str) -> str:
    return next(one for one in page.splitlines() if one.startswith(start))


def test_every_room_is_a_sentence_with_its_numbers(page: str, both: Both) -> None:
    for room in both[0].loads[0].rooms:
        written = line(page, f"- {room.name.capitalize()} (")
        assert numbers.btu_h(room.heat_btu_h) in written
        assert numbers.btu_h(room.heat_at_47f_btu_h) in written
        assert numbers.degrees(room.without_own_heat_degf) in written
        too_big = "The smallest head is too big for this room." in written
        assert too_big == room.smallest_head_is_too_big


def test_the_loft_wants_cooling(page: str) -> None:
    loft = line(page, "- Loft (")
    assert "needs little or no heat of its own: warm air rises from the open room" in loft
    assert "it wants cooling, not heat" in loft


def test_a_high_head_and_its_sensor_are_told(page: str) -> None:
    heads = [one for one in page.splitlines() if one.startswith("- Open room, 12 kBtu/h head:")]
    assert len(heads) == 2
    assert "Its bottom is above 9 ft (10 ft)" in heads[0]
    assert "above 9 ft" not in heads[1]


def test_headings_stand_in_their_order(both: Both) -> None:
    headings = [block.text for block in sizing_page(*both) if isinstance(block, Heading)]
    expected = [
        "A made-up home with a loft",
        "What the house needs, room by room",
        "Which rooms would gain most from a head",
        "Today’s system against the house",
        "“One head high up” against the house",
        "“Head and furnace” against the house",
        "“Ducted with strips” against the house",
        "Electricity with “One head high up”, for a licensed electrician",
        "Electricity with “Head and furnace”, for a licensed electrician",
        "Electricity with “Ducted with strips”, for a licensed electrician",
        "What to set with “One head high up”",
        "What to set with “Head and furnace”",
        "What to set with “Ducted with strips”",
        "Ask on site",
        "Look out for",
    ]
    assert headings == expected


def test_limits_say_how_they_are_known(page: str) -> None:
    limits = line(page, "The usual limits:")
    assert "(common practice, no source)" in limits
    assert "(from memory)" in limits
    assert "Outside the usual limits: " in page


def test_circuits_are_told(page: str) -> None:
    assert "Electric furnace, 15 kW goes: 63 A at 240 V, 78 A with the 125 %" in page
    assert "reckon with 9 A and a breaker of 15 A (read in listings" in page
    assert "No circuits go, circuits for 9 A come" in page
    assert "means over an hour" in page


def test_trades_and_rules_are_named(page: str) -> None:
    for words in ("licensed electrician", "certificate", "check the manual", "local code"):
        assert words in page


@pytest.mark.parametrize("name", ["demo", "cold_climate", "summer_peak", "wrong_settings"])
def test_nothing_is_promised_and_nothing_is_missing(name: str) -> None:
    written = "\n".join(plain_lines(sizing_page(*example(name))))
    assert "nan" not in written.replace("finance", "")
    assert "None" not in written
    for word in FORBIDDEN:
        assert word not in written.lower()


@pytest.mark.parametrize(("hour", "said"), [(0, "12 am"), (9, "9 am"), (12, "12 pm"), (16, "4 pm")])
def test_hours(hour: int, said: str) -> None:
    assert clock(hour) == said


def test_a_house_that_needs_no_heat_has_nothing_to_compare(both: Both) -> None:
    sizing, cards = both
    none = replace(sizing.loads[0], heat_btu_h=0.0, choices=("Insulate",))
    written = "\n".join(plain_lines(sizing_page(replace(sizing, loads=(none, none)), cards)))
    assert "With “Insulate” it loses 0 Btu/h at 14 °F, and takes" in written


def test_a_home_without_a_machine_has_none_to_size(both: Both) -> None:
    sizing, cards = both
    bare = replace(sizing.choices[0], machines=())
    written = "\n".join(plain_lines(sizing_page(replace(sizing, choices=(bare,)), cards)))
    assert "There is no machine to size." in written


def card(both: Both, **night: object) -> SettingsCard:
    last = both[1][-1]
    return replace(last, night=replace(last.night, **night))  # type: ignore[arg-type]


def test_the_night_in_its_three_ways(both: Both) -> None:
    def said(**night: object) -> str:
        return card_answers(card(both, **night))[-1]

    assert said(advice="hold").startswith("Night: hold the same warmth.")
    assert said(advice="set back").startswith("Night: set it back if you like it cooler then.")
    assert "it makes no difference" in said(advice="makes no difference")
    two = said(night_hours="22-6,13-15")
    assert "(10 pm to 6 am and 1 pm to 3 pm)" in two


def test_what_a_lockout_does_to_the_bill(both: Both) -> None:
    last = both[1][-1]
    assert isinstance(last.night, NightSetting)
    assert isinstance(last.strips, StripSetting)

    def said(saved: float) -> str:
        strips = replace(last.strips, bill_usd=1000.0, stated_usd=1000.0 + saved)
        return "\n".join(card_answers(replace(last, strips=strips)))

    assert "takes about $120 a year off" in said(120.0)
    assert "adds about $50 a year" in said(-50.0)
    assert "makes no difference to the bill" in said(3.0)
