"""The contractor's sheet: every machine, circuit and life-cycle figure of its option."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from costcompare.case import Case
from costcompare.comparison import AS_WANTED, Comparison
from costcompare.settings import SettingsCard
from costcompare.sizing import Sizing, size
from costcompare.views import numbers
from costcompare.views.report import contractor_html, contractor_pdf
from costcompare.views.report.catalogue import ENGLISH
from costcompare.views.report.contractor_machines import machine_name
from tests.views.report.conftest import DAY, read, text_of
from tests.views.report.test_card_sheet import CARD


@pytest.fixture(scope="module")
def sizing(demo: Case, option: str) -> Sizing:
    chosen = tuple(one for one in demo.options if one.name == option)
    return size(replace(demo, options=chosen))


@pytest.fixture(scope="module")
def card(option: str) -> SettingsCard:
    return replace(CARD, option=option)


@pytest.fixture(scope="module")
def sheet(comparison: Comparison, demo: Case, sizing: Sizing, card: SettingsCard) -> bytes:
    return contractor_pdf(comparison, demo, sizing, card, made_on=DAY)


def test_it_has_two_pages(sheet: bytes) -> None:
    assert len(read(sheet).pages) == 2


def test_it_holds_what_was_sized(
    sheet: bytes, sizing: Sizing, comparison: Comparison, option: str
) -> None:
    text = text_of(sheet)
    fit = sizing.choice(option)
    for machine in fit.machines:
        assert machine_name(machine, ENGLISH) in text
        assert numbers.heat(machine.maximum_at_design_btu_h) in text
        if machine.below_minimum_hours is not None:
            assert numbers.count(machine.below_minimum_hours) in text
    for room in sizing.loads[0].rooms:
        assert f"{room.name} {numbers.square_feet(room.floor_area_ft2)}" in text
    assert fit.electricity is not None
    for circuit in (*fit.electricity.freed, *fit.electricity.added):
        assert numbers.amperes(circuit.circuit_amps) in text
    assert f"{numbers.kwh(fit.backup_kwh)}" in text
    assert all(question in text for question in sizing.questions)
    money = comparison.choice(option, AS_WANTED).money
    assert money is not None
    assert numbers.years(money.simple_payback_years) in text
    assert f"{ENGLISH.ratio} " in text
    assert f" {numbers.ratio(money.savings_to_investment_ratio)} " in text
    assert money.over_the_years is not None
    assert numbers.dollars_a_year(money.over_the_years.life_cycle_cost_usd) in text
    assert numbers.dollars_a_year(money.over_the_years.energy_savings_usd) in text


def test_in_si_units_nothing_of_the_others_is_left(
    comparison: Comparison, demo: Case, sizing: Sizing, card: SettingsCard
) -> None:
    page = contractor_html(comparison, demo, sizing, card, units="si")
    body = page.split("<body>", 1)[1]
    assert " kW" in body
    assert not re.search(r"°F|Btu|ft²|\bft\b|cfm|mph", body)


def test_an_option_that_was_not_sized_is_refused(
    comparison: Comparison, demo: Case, sizing: Sizing
) -> None:
    with pytest.raises(KeyError):
        contractor_pdf(comparison, demo, sizing, replace(CARD, option="none such"))
