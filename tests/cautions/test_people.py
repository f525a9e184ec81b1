"""Cautions about people."""

from __future__ import annotations

from .homes import cautions_of


def test_a_calm_house_calls_for_nothing_but_a_word_on_power_cuts() -> None:
    assert set(cautions_of(ducted=False)) == {"Power cuts"}


def test_cold_rooms() -> None:
    cold = cautions_of(ducted=False, thermostat={"day": "60 F", "night": "55 F", "wanted": "68 F"})
    caution = cold["Cold rooms and health"]
    assert "60 °F by day and at 55 °F at night, below the 64 °F" in caution.because
    mild = cautions_of(ducted=False, thermostat={"day": "65 F"})
    assert "Cold rooms and health" not in mild


def test_a_fire_is_what_is_left_in_a_power_cut() -> None:
    fire = cautions_of(ducted=False, fireplace={"hours": "18-22"})
    assert fire["Power cuts"].because == "all the heat but the fire in the living room is electric"
    cold = cautions_of(ducted=False, fireplace={"used": False})
    assert cold["Power cuts"].because == "all the heat in this comparison is electric"
