"""Cautions about machines and their controls."""

from __future__ import annotations

import re

from .homes import HEATERS, cautions_of, heat_pump, improve

SEAL = improve(today__ducts__condition="sealed and tested")
STRIPS = {"kind": "strips", "size": "10 kW"}
HEADS = heat_pump()
KEPT = heat_pump(backup={"kind": "keep furnace", "setpoint": "60 F"})
DUCTED = heat_pump("ducted heat pump", backup=STRIPS)


def test_new_circuits() -> None:
    for option in (HEATERS, HEADS, DUCTED):
        assert option["name"] in cautions_of(option)["Electricity"].because
    assert "Electricity" not in cautions_of(SEAL)
    assert re.search(r"from \d+ kW to \d+ kW", cautions_of(HEATERS)["Electricity"].because)


def test_refrigerant_comes_with_a_heat_pump() -> None:
    assert "Refrigerant" in cautions_of(HEADS)
    assert "Refrigerant" in cautions_of(DUCTED)
    assert "Refrigerant" not in cautions_of(HEATERS)


def test_a_furnace_that_is_kept() -> None:
    because = cautions_of(KEPT)["The old furnace"].because
    assert re.search(r"keeps it at 60 °F and it still takes [\d,]+ kWh", because)
    assert "The old furnace" not in cautions_of(HEADS)


def test_strips_without_a_lockout() -> None:
    assert "Strip heat" in cautions_of(DUCTED)
    for lockout, warned in (("50 F", True), ("30 F", False)):
        option = heat_pump("ducted heat pump", backup={**STRIPS, "lockout": lockout})
        assert ("Strip heat" in cautions_of(option)) == warned
    assert "Strip heat" not in cautions_of(heat_pump("ducted heat pump"))


def test_setback_in_front_of_strips() -> None:
    lower = {"day": "68 F", "night": "60 F"}
    topic = "Night setback with strips"
    assert "8 °F lower" in cautions_of(DUCTED, thermostat=lower)[topic].because
    assert topic not in cautions_of(DUCTED)
    assert topic not in cautions_of(HEADS, thermostat=lower)


def test_cooling_that_was_not_there() -> None:
    because = cautions_of(HEADS)["A new line on the summer bill"].because
    assert re.search(r"takes 0 kWh a year today, [\d,]+ kWh with “Pump”", because)
    assert "A new line on the summer bill" not in cautions_of(HEATERS)
