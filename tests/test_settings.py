"""The settings card: every setting follows from figures that can be looked at."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from costcompare.case.facts import Case
from costcompare.comparing import compare
from costcompare.comparison import AS_WANTED
from costcompare.settings import NO_DIFFERENCE, SettingsCard, settings, sized_with_settings
from costcompare.sizing import Sizing
from costcompare.thermostat import sweep
from costcompare.weather import Weather
from tests.sizing.homes import document, loft, loft_weather, with_loft


@pytest.fixture(scope="module")
def case() -> Case:
    return with_loft()


@pytest.fixture(scope="module")
def weather() -> Weather:
    return loft_weather()


@pytest.fixture(scope="module")
def sized() -> Sizing:
    return loft()[0]


@pytest.fixture(scope="module")
def cards() -> dict[str, SettingsCard]:
    return {card.option: card for card in loft()[1]}


def test_a_head_is_set_to_what_is_wanted_plus_what_it_reads(cards: dict[str, SettingsCard]) -> None:
    (high,), (low,) = cards["One head high up"].heads, cards["Head and furnace"].heads
    assert high.wanted_degf == low.wanted_degf == 70.0
    for head in (high, low):
        assert head.set_degf == round(head.wanted_degf + head.reads_over_degf)
        assert head.height_is_stated
    assert high.set_degf > low.set_degf


def test_a_head_without_a_height_hangs_at_the_usual_one(weather: Weather) -> None:
    unit = {"class": "single-zone standard", "size": "9 kBtu/h", "room": "open room"}
    option = {**document()["options"][0], "units": [{**unit, "setpoint": "67 F"}]}
    card = settings(with_loft(options=[option]), option["name"], weather=weather)
    (head,) = card.heads
    assert not head.height_is_stated
    assert head.mounting_height_ft == pytest.approx(2.1 / 0.3048)
    assert head.wanted_degf == 67.0


def test_strips_are_locked_out_above_the_balance_point_and_a_margin(
    cards: dict[str, SettingsCard], sized: Sizing
) -> None:
    strips = cards["Ducted with strips"].strips
    balance = sized.choice("Ducted with strips").balance_degf
    assert strips is not None
    assert balance is not None
    assert strips.balance_degf == balance
    assert strips.lockout_degf == math.ceil(balance + 5.0)
    assert strips.stated_degf is None
    assert strips.bill_usd <= strips.stated_usd + 1e-6


def test_a_heat_pump_that_always_covers_leaves_strips_to_the_design_cold(
    weather: Weather,
) -> None:
    large = {
        **document()["options"][2],
        "units": [{"class": "ducted variable", "size": "48 kBtu/h"}],
    }
    card = settings(with_loft(options=[large]), large["name"], weather=weather)
    assert card.strips is not None
    assert card.strips.balance_degf is None
    assert card.strips.lockout_degf == 14.0


def test_the_old_furnace_stands_well_below(cards: dict[str, SettingsCard]) -> None:
    furnace = cards["Head and furnace"].furnace
    assert furnace is not None
    assert furnace.below_wanted_degf >= 6.0 - 0.01
    settings_tried = [one.setting_degf for one in furnace.tried]
    assert settings_tried == sorted(settings_tried, reverse=True)
    assert furnace.stated_degf == pytest.approx(60.0)
    (chosen,) = (one for one in furnace.tried if one.setting_degf == furnace.set_degf)
    colder = [one.bill_usd for one in furnace.tried if one.setting_degf <= furnace.set_degf]
    assert chosen.bill_usd - min(colder) < NO_DIFFERENCE
    warmer = [one for one in furnace.tried if one.setting_degf > furnace.set_degf]
    for one in warmer:
        assert one.bill_usd - min(colder) >= NO_DIFFERENCE
    kwh = [one.backup_kwh for one in furnace.tried]
    assert kwh == sorted(kwh, reverse=True)


def test_no_furnace_no_setting_for_it(cards: dict[str, SettingsCard]) -> None:
    assert cards["One head high up"].furnace is None
    assert cards["One head high up"].strips is None
    assert cards["Ducted with strips"].heads == ()


def test_the_night_is_that_of_the_sweep(
    cards: dict[str, SettingsCard], case: Case, weather: Weather
) -> None:
    swept = sweep(case, [case.home.thermostat.wanted], weather=weather)
    for choice in swept.choices[1:]:
        night = cards[choice.name].night
        held, back = choice.years
        assert night.held_usd == pytest.approx(held.bill_usd)
        assert night.set_back_usd == pytest.approx(back.bill_usd)
        assert night.difference_usd == pytest.approx(back.bill_usd - held.bill_usd)
        if abs(night.difference_usd) < 20.0:
            assert night.advice == "makes no difference"
        else:
            assert night.advice == ("set back" if night.difference_usd < 0.0 else "hold")


def test_room_heaters_are_set_as_the_case_says(weather: Weather) -> None:
    option = {
        **document()["options"][0],
        "backup": {"kind": "room heaters", "rooms": ["closed bedroom"], "setpoint": "62 F"},
    }
    card = settings(with_loft(options=[option]), option["name"], weather=weather)
    ((heater),) = card.heaters
    assert (heater.room, heater.set_degf) == ("closed bedroom", 62.0)


def test_bills_are_those_of_the_comparison(
    cards: dict[str, SettingsCard], case: Case, weather: Weather
) -> None:
    """The stated lockout's bill is the option's bill at the warmth you want."""
    strips = cards["Ducted with strips"].strips
    assert strips is not None
    choice = compare(case, weather=weather).choice("Ducted with strips", AS_WANTED)
    assert strips.stated_usd == pytest.approx(choice.annual.bill_usd, rel=1e-9)


def test_an_unknown_option(case: Case) -> None:
    with pytest.raises(KeyError):
        settings(case, "Nothing of the kind")


def test_a_card_by_itself_is_that_of_the_sizing(
    case: Case, weather: Weather, cards: dict[str, SettingsCard]
) -> None:
    """Without a sizing at hand the option alone is sized."""
    told: list[float] = []
    card = settings(
        case,
        "Ducted with strips",
        weather=weather,
        progress=lambda _text, share: told.append(share),
    )
    assert card == cards["Ducted with strips"]
    assert told == sorted(told)
    assert told[-1] == 1.0


def test_progress_of_sizing_and_cards_together(case: Case, weather: Weather) -> None:
    told: list[float] = []
    alone = replace(case, options=case.options[:1])
    sized_with_settings(alone, weather=weather, progress=lambda _text, share: told.append(share))
    assert told == sorted(told)
    assert 0.0 <= told[0] < told[-1] <= 1.0
