"""Mild, typical and cold winters."""

from __future__ import annotations

from dataclasses import replace

import pytest

from costcompare.case import example_path, read_case
from costcompare.case.facts import WeatherChoice
from costcompare.comparing import compare
from costcompare.errors import CaseError
from costcompare.winters import with_winters


def test_a_colder_winter_costs_more_and_the_typical_one_is_the_comparison() -> None:
    case = read_case(example_path("demo"))
    case = replace(case, options=case.options[1:2])
    comparison = compare(case)
    assert comparison.winters is None
    winters = with_winters(comparison, case).winters
    assert winters is not None
    assert [one.winter for one in winters] == ["mild", "typical", "cold"]
    for number, choice in enumerate(comparison.choices):
        mild, typical, cold = (one.choices[number] for one in winters)
        assert mild.bill_usd < typical.bill_usd < cold.bill_usd
        assert typical.bill_usd == choice.annual.bill_usd
        assert (typical.name, typical.warmth) == (choice.name, choice.warmth)
    colder = [one.heating_degree_days_65f for one in winters]
    assert colder == sorted(colder)


def test_a_year_from_a_file_has_no_other_winters() -> None:
    case = read_case(example_path("demo"))
    asked = replace(case, weather=WeatherChoice(source="measured"))
    with pytest.raises(CaseError, match="made from monthly normals"):
        with_winters(compare(case), asked)
