"""Cautions about flues, vents and fires."""

from __future__ import annotations

import re

import pytest

from costcompare.case import case_from_document
from costcompare.cautions.burning import depressurisation

from .homes import CALM, HEATERS, ON_DUCTS, cautions_of, improve

SEAL = improve(today__ducts__condition="sealed and tested")
BURNING, VENTS, FIRE = "Burning appliances", "Closed vents and burning appliances", "The open fire"
KITCHEN = [{"airflow": "300 cfm", "hours": "17-18", "room": "kitchen"}]


def test_a_flue_calls_for_a_test_with_the_pressures_of_the_case() -> None:
    caution = cautions_of(SEAL, house={"flue": True, "foundation": "vented crawlspace"})[BURNING]
    assert "certified technician" in caution.text
    today, sealed = re.findall(r"([\d.]+) Pa with", caution.because)
    assert float(today) > float(sealed)


def test_a_kitchen_fan_makes_it_worse() -> None:
    house = {"flue": True, "foundation": "vented crawlspace", "fans": KITCHEN}
    caution = cautions_of(SEAL, house=house)[BURNING]
    today, sealed = (float(p) for p in re.findall(r"([\d.]+) Pa with", caution.because))
    without = cautions_of(SEAL, house={"flue": True, "foundation": "vented crawlspace"})[BURNING]
    assert today > float(re.findall(r"([\d.]+) Pa with", without.because)[0])
    assert today > sealed > 2.0


def test_where_the_case_does_not_say_the_family_is_asked() -> None:
    assert cautions_of(SEAL)[BURNING].text.startswith("Ask whether anything burns")
    assert BURNING not in cautions_of()
    said = {"flue": False, "foundation": "vented crawlspace"}
    assert BURNING not in cautions_of(SEAL, house=said)


def test_no_test_is_asked_for_where_pressures_stay() -> None:
    assert BURNING not in cautions_of(improve(house__window_u_factor="0.30 Btu/h/ft2/F"))


def test_depressurisation_by_hand() -> None:
    """300 cfm through the leaks of 1,300 cfm at 50 Pa: 50 (300/1300)^(1/0.65) Pa."""
    house = {**CALM["house"], "fans": KITCHEN}
    case = case_from_document({**CALM, "house": house})
    assert depressurisation(case.home, case.today) == pytest.approx(
        50.0 * (300.0 / 1300.0) ** (1.0 / 0.65), rel=1e-6
    )
    sealed = {**ON_DUCTS["today"], "ducts": {"supply_leakage": "3 %", "return_leakage": "9 %"}}
    house = {**CALM["house"], "foundation": "vented crawlspace"}
    pushed = case_from_document({**CALM, "house": house, "today": sealed})
    assert depressurisation(pushed.home, pushed.today) == 0.0
    house = {k: v for k, v in CALM["house"].items() if k != "air_leakage_at_50_pa"}
    stated = case_from_document({**CALM, "house": {**house, "air_changes": "0.4 1/h"}})
    assert depressurisation(stated.home, stated.today) is None


def test_closed_vents_with_a_flue() -> None:
    flue = {"flue": True, "foundation": "vented crawlspace"}
    close = improve(crawlspace__vents="closed")
    assert cautions_of(close, house=flue)[VENTS].because.endswith("with “Better”")
    now = cautions_of(house=flue, crawlspace={"vents": "closed"})
    assert now[VENTS].because.endswith("its vents are closed")
    assert VENTS not in cautions_of(close)
    assert VENTS not in cautions_of(HEATERS, house=flue)


def test_an_open_fire_that_takes_more_than_it_gives() -> None:
    taking = cautions_of(ducted=False, fireplace={"draught": "400 cfm"})[FIRE]
    assert "takes more heat out of the house than it gives" in taking.text
    figures = re.findall(r"about ([\d,]+) kWh", taking.because)
    drawn, given = (float(figure.replace(",", "")) for figure in figures)
    assert 0.5 * drawn > given
    giving = cautions_of(ducted=False, fireplace={"draught": "100 cfm", "heat": "20 kBtu/h"})[FIRE]
    assert "a good part" in giving.text


def test_a_stove_or_a_cold_hearth_is_no_open_fire() -> None:
    stove = {"draught": "20 cfm", "heat": "20 kBtu/h"}
    assert FIRE not in cautions_of(ducted=False, fireplace=stove)
    assert FIRE not in cautions_of(ducted=False, fireplace={"used": False})
    assert FIRE not in cautions_of(ducted=False)
