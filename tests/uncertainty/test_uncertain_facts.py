"""Which facts are uncertain and how much, by what a case says of them."""

from __future__ import annotations

from typing import Any

import pytest

from costcompare.case import case_from_document, example_path, read_document
from costcompare.uncertainty import UncertainFact, uncertain_facts
from costcompare.units import parse

FIRST = "First things first: seal and wrap the ducts, insulate the floor"


def facts(**changes: Any) -> dict[str, UncertainFact]:
    """Those of the demo with values changed, keys as dotted paths with two underscores."""
    document = read_document(example_path("demo"))
    for key, value in changes.items():
        place = document
        *steps, last = key.split("__")
        for step in steps:
            place = place.setdefault(step, {})
        place[last] = value
    return {fact.name: fact for fact in uncertain_facts(case_from_document(document))}


def percentiles(fact: UncertainFact) -> tuple[float, float, float]:
    assert fact.today is not None
    return fact.today.low, fact.today.likely, fact.today.high


def test_a_plain_value_is_seen_and_gets_the_spread_of_its_row() -> None:
    use = facts()["other_use.electricity"]
    assert use.known == "seen"
    likely = parse("430 kWh/month", "energy_rate")
    assert percentiles(use) == pytest.approx((0.83 * likely, likely, 1.21 * likely))


def test_what_is_filled_in_is_guessed_and_what_is_measured_is_narrower() -> None:
    area = facts()["ducts.area"]
    assert area.known == "guessed"
    measured = facts(today__ducts__supply_area={"likely": "472.5 ft2", "known": "measured"})[
        "ducts.area"
    ]
    assert measured.known == "measured"
    (low, _, high), (lower, _, higher) = percentiles(measured), percentiles(area)
    assert lower < low < high < higher


def test_a_case_may_state_its_own_percentiles() -> None:
    leak = facts()["house.air_leakage_at_50_pa"]
    flows = [parse(f"{cfm} cfm", "airflow") for cfm in (2300, 3000, 3800)]
    assert percentiles(leak) == pytest.approx(flows)
    one = facts(thermostat__night={"likely": "62 F", "low": "61 F"})["thermostat.night"]
    # 66 F by day: a setback of 4 F, of 5 F where it is 61 F; the high side from the table.
    assert percentiles(one) == pytest.approx((-5.0 / 1.8, -4.0 / 1.8, -2.7 / 1.8))


def test_nominal_insulation_becomes_what_the_wall_is_worth() -> None:
    wall = facts()["house.wall_insulation"]
    low, likely, high = percentiles(wall)
    # between the studs.
    assert low < likely < high
    assert likely == pytest.approx(parse("R-7.44", "resistance"), rel=1e-3)
    assert high < parse("R-11", "resistance")


def test_an_exact_fact_is_not_uncertain() -> None:
    exact = {"likely": "430 kWh/month", "low": "430 kWh/month", "high": "430 kWh/month"}
    assert "other_use.electricity" not in facts(other_use__electricity=exact)


def test_an_option_that_replaces_a_fact_has_its_own_spread() -> None:
    found = facts()
    leak = found["ducts.supply_leakage"]
    assert leak.options[FIRST].likely == pytest.approx(0.04)
    assert leak.options[FIRST].high < percentiles(leak)[0]
    assert leak.in_option(FIRST) is leak.options[FIRST]
    assert FIRST not in found["house.wall_insulation"].options
    assert leak.in_option("New windows all round") is leak.today


def test_a_set_may_state_the_percentiles_of_what_it_makes() -> None:
    document = read_document(example_path("demo"))
    document["options"][0]["set"]["today.ducts.supply_leakage"] = {
        "likely": "5 %",
        "low": "3 %",
        "high": "9 %",
        "known": "measured",
    }
    found = {fact.name: fact for fact in uncertain_facts(case_from_document(document))}
    own = found["ducts.supply_leakage"].options[FIRST]
    assert (own.low, own.likely, own.high) == pytest.approx((0.03, 0.05, 0.09))


def test_only_options_with_a_heat_pump_have_its_facts() -> None:
    factor = facts()["equipment.field_factor"]
    assert factor.today is None
    assert FIRST not in factor.options
    assert {round(one.likely, 2) for one in factor.options.values()} == {0.88}


def test_a_winter_that_is_asked_for_is_not_uncertain() -> None:
    assert "weather.winter" in facts()
    assert "weather.winter" not in facts(weather__winter="cold")


def test_price_growth_takes_the_percentiles_of_the_case() -> None:
    growth = facts(money__price_growth={"likely": "1 %", "low": "0 %", "high": "4 %"})
    assert percentiles(growth["money.price_growth"]) == pytest.approx((0.0, 0.01, 0.04))
