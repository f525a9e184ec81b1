"""How sure we are, in words."""

from __future__ import annotations

from dataclasses import replace

from costcompare.comparison import Comparison, FactLine
from costcompare.views.wording.sureness import (
    fact_name,
    fact_value,
    known_counts,
    range_answer,
    sureness_answer,
    weather_answer,
)


def fact(path: str, value: float | str | bool | None, unit: str, known: str) -> FactLine:
    return FactLine(path, value, unit, known, "the case")


def test_facts_are_counted_by_how_they_are_known(comparison: Comparison) -> None:
    facts = (
        fact("title", "A home", "", "seen"),
        fact("house.floor_area", 1750.0, "ft2", "measured"),
        fact("house.built", 1968, "", "seen"),
        fact("house.people", 3.0, "", "seen"),
        fact("today.ducts.supply_leakage", 0.12, "", "guessed"),
    )
    home = replace(comparison, facts=facts)
    assert known_counts(home) == {"measured": 1, "seen": 2, "guessed": 1}
    assert sureness_answer(home) == (
        "Of the 4 facts behind these figures, 1 was measured, 2 were seen and 1 was guessed."
    )


def test_the_real_counts_cover_every_fact(comparison: Comparison) -> None:
    counted = sum(known_counts(comparison).values())
    assert counted == sum(f.path not in ("format", "title") for f in comparison.facts)


def test_missing_ranges_are_admitted(comparison: Comparison) -> None:
    assert "cannot make ranges yet" in range_answer(comparison)


def test_facts_read_as_words() -> None:
    leakage = fact("house.air_leakage_at_50_pa", 2300.0, "cfm", "seen")
    assert fact_name(leakage) == "house, air leakage at 50 pa"
    assert fact_value(leakage) == "2,300 cfm"
    assert fact_value(fact("crawlspace.ground_cover", False, "", "seen")) == "no"
    assert fact_value(fact("site.design_temperature", None, "F", "guessed")) == "not stated"


def test_the_weather_is_told_with_its_degree_days(comparison: Comparison) -> None:
    weather = replace(
        comparison.weather, heating_degree_days_65f=4231.9, design_temperature_degf=6.6
    )
    sentence = weather_answer(replace(comparison, weather=weather))
    assert "4,232 heating degree days" in sentence
    assert "design temperature of 7 °F" in sentence
