"""How sure we are, in words."""

from __future__ import annotations

from dataclasses import replace

from costcompare.comparison import AS_WANTED, Comparison, FactLine
from costcompare.views.wording.sureness import (
    chance_words,
    fact_name,
    fact_value,
    known_counts,
    range_answer,
    saving_range_answer,
    sureness_answer,
    weather_answer,
    what_ranges_hold,
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
    assert "without a range" in range_answer(comparison)
    assert saving_range_answer(comparison, comparison.choices[-1].name, AS_WANTED) == ""
    assert what_ranges_hold(comparison) == ""


def test_a_range_is_told_with_what_drives_it(ranged: Comparison) -> None:
    sentence = range_answer(ranged)
    assert "lies between $2,900 and $4,400 a year; the middle is about $3,560" in sentence
    assert "how much air the ducts lose and how warm it is kept" in sentence
    told = saving_range_answer(ranged, ranged.choices[-1].name, AS_WANTED)
    assert "between −$160 and $390 in 8 of 10 such homes" in told
    assert "in about 2 of 10 such homes" in told
    assert saving_range_answer(ranged, ranged.today.name, AS_WANTED) == ""


def test_what_the_ranges_rest_on_is_told(ranged: Comparison) -> None:
    assert what_ranges_hold(ranged) == (
        "64 homes were worked out; of the facts that can move a figure, 1 measured, 18 seen and "
        "11 guessed. Guesses make 60 % of the range of today’s bill. What they hold."
    )


def test_a_chance_is_never_told_as_none_or_all() -> None:
    assert chance_words(0.0) == "fewer than 1 of 10 such homes"
    assert chance_words(0.26) == "about 3 of 10 such homes"
    assert chance_words(1.0) == "more than 9 of 10 such homes"


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
