"""Cautions about people."""

from __future__ import annotations

import re

from .homes import HEATERS, cautions_of, heat_pump


def test_a_calm_house_calls_for_nothing_but_a_word_on_power_cuts() -> None:
    assert set(cautions_of(ducted=False)) == {"Power cuts"}


def test_cold_rooms() -> None:
    cold = cautions_of(ducted=False, thermostat={"day": "60 F", "night": "55 F", "wanted": "68 F"})
    caution = cold["Cold rooms and health"]
    assert "names 64 °F (18 °C) as the least" in caution.because
    assert "60 °F by day and at 55 °F at night" in caution.because
    mild = cautions_of(ducted=False, thermostat={"day": "65 F"})
    assert "Cold rooms and health" not in mild


def test_rooms_that_an_option_leaves_cold() -> None:
    one_head = cautions_of(heat_pump(), thermostat={"day": "65 F"})
    because = one_head["Cold rooms and health"].because
    assert "the thermostat" not in because
    assert re.search(r"\d\d °F (and \d+ more rooms )?with “Pump”", because)
    assert "Cold rooms and health" not in cautions_of(HEATERS, thermostat={"day": "65 F"})


def test_a_setting_that_harms_the_house() -> None:
    low = cautions_of(ducted=False, thermostat={"day": "60 F", "night": "50 F"})
    assert low["Very low settings"].because == "the thermostat goes down to 50 °F, below 55 °F"
    same = cautions_of(ducted=False, thermostat={"day": "60 F", "night": "55 F"})
    assert "Very low settings" not in same


def test_a_fire_is_what_is_left_in_a_power_cut() -> None:
    fire = cautions_of(ducted=False, fireplace={"hours": "18-22"})
    assert fire["Power cuts"].because == "all the heat but the fire in the living room is electric"
    cold = cautions_of(ducted=False, fireplace={"used": False})
    assert cold["Power cuts"].because == "all the heat in this comparison is electric"
