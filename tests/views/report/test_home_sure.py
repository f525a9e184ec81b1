"""How sure it is: to how many real bills the house is fitted, if to any."""

from __future__ import annotations

from dataclasses import replace

from costcompare.comparison import Comparison
from costcompare.views.report.catalogue import ENGLISH
from costcompare.views.report.home_sure import section


def test_a_house_without_bills_is_said_to_be_held_against_none(comparison: Comparison) -> None:
    told = section(replace(comparison, fitted_bills=0), comparison.choices[1].name, ENGLISH).more
    assert any("against no real bill" in text for text in told)


def test_a_fitted_house_says_to_how_many_bills(comparison: Comparison) -> None:
    for count, words in ((1, "1 real bill of"), (6, "6 real bills of")):
        fitted = replace(comparison, fitted_bills=count)
        told = section(fitted, comparison.choices[1].name, ENGLISH).more
        assert any(words in text for text in told), words
