"""The facts that the drawer offers."""

from __future__ import annotations

import pytest

from costcompare.case import case_from_document, example_path, override, read_document
from costcompare.views.dashboard.facts_offered import OFFERED, path_in, stated


def test_what_the_case_says_is_shown_as_it_was_written() -> None:
    document = {
        "thermostat": {"day": "64 F"},
        "tariff": {"tiers": [{"price": "0.112 $/kWh"}]},
        "house": {"attic_insulation": {"likely": "R-19", "low": "R-11", "high": "R-22"}},
    }
    assert stated(document, "thermostat.day") == "64 F"
    assert stated(document, "thermostat.night") is None
    assert stated(document, "tariff.tiers.1.price") == "0.112 $/kWh"
    assert stated(document, "tariff.tiers.2.price") is None
    assert stated(document, "house.attic_insulation") == "R-19"
    assert stated(document, "thermostat.day.deeper") is None


def test_the_path_that_the_case_uses_is_the_one_changed() -> None:
    price = next(fact for fact in OFFERED if fact.key == "price")
    assert path_in({"tariff": {"price": "0.12 $/kWh"}}, price) == "tariff.price"
    assert path_in({"tariff": {"tiers": [{"price": "0.1 $/kWh"}]}}, price) == price.paths[0]
    assert path_in({}, price) == price.paths[0]


@pytest.mark.parametrize("fact", OFFERED, ids=lambda fact: fact.key)
def test_every_offered_fact_is_one_of_the_example_and_can_be_written_back(fact: object) -> None:
    document = read_document(example_path("demo"))
    path = path_in(document, fact)  # type: ignore[arg-type]
    text = stated(document, path)
    assert text is not None, path
    case_from_document(override(document, f"{path}={text}"))
