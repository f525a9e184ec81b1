"""The sentences of a fit, from results made by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from costcompare.comparison import Band
from costcompare.fitting.results import Finding, FittedBill, FittedFact, HouseFit, NextBill
from costcompare.views.fit_page import fit_page
from costcompare.views.terminal import plain_lines
from costcompare.views.wording import fitting

BILL = FittedBill(
    begins="2026-01-01",
    ends="2026-02-01",
    days=31,
    read="actual",
    measured_kwh=3650.0,
    said_kwh=Band(2500.0, 3140.0, 3940.0),
    computed_kwh=Band(3400.0, 3630.0, 3870.0),
    heating_kwh=2900.0,
    error_kwh=213.0,
)
DAY = FittedFact(
    name="thermostat.day",
    path="thermostat.day",
    words="how warm the house is really kept",
    known="seen",
    unit="degF",
    said=Band(64.1, 66.0, 67.9),
    fitted=Band(60.2, 62.0, 63.8),
    moved=-2.6,
    learned=0.05,
)
FIT = HouseFit(
    format=1,
    title="A small home (invented)",
    weather="A station",
    weather_is_of_the_bills=False,
    bills=(BILL,),
    facts=(DAY,),
    yearly_heating_said_kwh=Band(9000.0, 12000.0, 16000.0),
    yearly_heating_kwh=Band(12100.0, 13500.0, 15060.0),
    yearly_electricity_kwh=Band(20000.0, 22000.0, 24000.0),
    mean_bias=0.0012,
    scatter=0.0462,
    within_limits=None,
    findings=(Finding("temperature", DAY.words, -2.6),),
    next_bill=NextBill(5, 0.28),
    former_owner=False,
    settled=True,
    notes=(),
)


def test_the_heating_is_told_with_and_without_bills() -> None:
    assert fitting.heating_answer(FIT) == (
        "By what is said of the house, heating takes about 12,000 kWh a year, in 8 of 10 such "
        "homes between 9,000 kWh and 16,000 kWh. With 1 bill it takes about 13,500 kWh, between "
        "12,100 kWh and 15,060 kWh."
    )


@pytest.mark.parametrize(
    ("within", "words"),
    [(None, "no limit"), (True, "within the limits"), (False, "outside the limits")],
)
def test_the_agreement_is_held_against_the_limits(within: bool | None, words: str) -> None:
    said = fitting.agreement_answer(replace(FIT, within_limits=within))
    assert words in said
    assert "by 0.1 % and single ones by 4.6 %" in said


def test_what_stays_open_is_named() -> None:
    assert DAY.words in fitting.open_answer(FIT)
    learned = replace(FIT, facts=(replace(DAY, learned=0.5),))
    assert fitting.open_answer(learned) == ""


def test_the_next_bill_is_named_with_what_it_would_tell() -> None:
    assert "one of May" in fitting.next_answer(FIT)
    assert "28 % narrower" in fitting.next_answer(FIT)
    assert "No bill" in fitting.next_answer(replace(FIT, next_bill=None))


def test_a_former_owner_has_a_setting() -> None:
    assert fitting.owner_answer(FIT) == ""
    said = fitting.owner_answer(replace(FIT, former_owner=True))
    assert "about 62 °F by day, between 60 °F and 64 °F" in said


@pytest.mark.parametrize(
    ("topic", "deviations", "words"),
    [
        ("temperature", -2.6, "clearly colder than was said"),
        ("temperature", 2.6, "clearly warmer than was said"),
        ("too little", -3.0, "wood or another heat"),
        ("too much", 3.0, "plug-in heaters"),
        ("fact", 2.1, "far from what was said"),
    ],
)
def test_a_contradiction_comes_with_what_lies_behind_it(
    topic: str, deviations: float, words: str
) -> None:
    assert words in fitting.finding_sentence(Finding(topic, "January", deviations))


def test_the_page_shows_every_bill_and_fact() -> None:
    text = "\n".join(plain_lines(fit_page(FIT)))
    for part in ("2026-01-01", "3,650 kWh", "3,630 kWh (3,400 to 3,870)", DAY.words, "62 (60"):
        assert part in text, part


def test_bills_are_held_against_the_house_as_said_and_as_fitted() -> None:
    assert fitting.explained_answer(FIT) == (
        "Your bill shows 3,650 kWh. By what is said of the house it should show about 3,140 kWh, "
        "14 % less. The house fitted to it comes to about 3,630 kWh, 1 % less, which is near "
        "enough for a single bill."
    )
    far = replace(BILL, measured_kwh=5000.0)
    both = fitting.explained_answer(replace(FIT, bills=(BILL, far)))
    assert both.startswith("Your 2 bills show 8,650 kWh together.")
    assert "1 of 2 bills" in both
    nothing = replace(FIT, bills=(replace(BILL, measured_kwh=0.0),))
    assert "farther off" in fitting.explained_answer(nothing)


def test_days_of_a_bill_are_told_short() -> None:
    assert fitting.bill_label(BILL) == "Jan 1 to Feb 1, 2026"
    over = replace(BILL, begins="2025-12-18", ends="2026-01-18")
    assert fitting.bill_label(over) == "Dec 18, 2025 to Jan 18, 2026"


def test_what_moved_is_told_apart_from_what_hardly_did() -> None:
    still = replace(DAY, name="x", words="something else", moved=0.1, learned=0.02)
    said = fitting.moved_answer(replace(FIT, facts=(DAY, still)))
    assert said == (
        "To explain the bills, the house changed most in how warm the house is really kept. "
        "1 other fact is hardly moved."
    )
    assert "agree" in fitting.moved_answer(replace(FIT, facts=(still,)))
    assert fitting.fact_triples(still)[-1] == "hardly moved"
    assert fitting.fact_triples(DAY) == (
        *("how warm the house is really kept, °F", "66", "64.1", "67.9"),
        *("62", "60.2", "63.8", "5 %", "moved"),
    )
