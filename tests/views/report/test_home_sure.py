"""How sure it is: to how many real bills the house is fitted, if to any."""

from __future__ import annotations

from dataclasses import replace

from costcompare.case import Case
from costcompare.comparison import Comparison
from costcompare.thermostat import Sweep
from costcompare.views.report import report_pdf
from costcompare.views.report.catalogue import ENGLISH
from costcompare.views.report.home_sure import section
from tests.views.report.conftest import DAY, read, text_of


def test_a_house_without_bills_is_said_to_be_held_against_none(comparison: Comparison) -> None:
    told = section(replace(comparison, fitted_bills=0), comparison.choices[1].name, ENGLISH).more
    assert any("against no real bill" in text for text in told)


def test_a_fitted_house_says_to_how_many_bills_first_of_all(comparison: Comparison) -> None:
    for count, words in ((1, "1 real bill of"), (6, "6 real bills of")):
        fitted = replace(comparison, fitted_bills=count)
        told = section(fitted, comparison.choices[1].name, ENGLISH).answers
        assert words in told[0]


def test_the_paper_of_a_fitted_house_says_so(
    comparison: Comparison, demo: Case, option: str, swept: Sweep
) -> None:
    fitted = replace(comparison, fitted_bills=6)
    made = report_pdf(fitted, demo, option=option, sweep=swept, made_on=DAY)
    assert "The house is fitted to 6 real bills of this home." in text_of(made)
    assert len(read(made).pages) <= 2
