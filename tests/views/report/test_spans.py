"""Ranges beside the figures of the report."""

from __future__ import annotations

from dataclasses import replace

import pytest

from costcompare.case import Case
from costcompare.comparison import Band, Comparison
from costcompare.views.report import report_html, report_pdf
from costcompare.views.report.catalogue import ENGLISH
from costcompare.views.report.spans import bill_span, money_span, payback_span
from tests.views.report.conftest import DAY, read, text_of


def test_a_bill_carries_its_range(ranged: Comparison, comparison: Comparison) -> None:
    assert bill_span(ranged.today, ENGLISH) == "$2,900 to $4,400"
    assert bill_span(comparison.today, ENGLISH) == ""
    assert money_span(Band(2900.0, 2900.0, 2900.0), ENGLISH) == "$2,900"


@pytest.mark.parametrize(
    ("low", "high", "written"),
    [
        (7.1, 12.2, "7.1 to 12 years"),
        (9.3, None, "9.3 years or never"),
        (None, None, ""),
        (5.0, 5.0, "5.0 years"),
    ],
)
def test_a_payback_carries_its_range(
    ranged: Comparison, low: float | None, high: float | None, written: str
) -> None:
    choice = ranged.choices[2]
    assert choice.range is not None
    band = Band(low, low, high)
    changed = replace(choice, range=replace(choice.range, discounted_payback_years=band))
    assert payback_span(changed, ENGLISH) == written
    assert payback_span(ranged.today, ENGLISH) in ("", "12 years or never", "13 years or never")
    assert payback_span(replace(choice, range=None), ENGLISH) == ""


def test_the_report_shows_ranges_and_says_so_where_there_are_none(
    ranged: Comparison, comparison: Comparison, demo: Case, report: bytes
) -> None:
    made = report_pdf(ranged, demo, made_on=DAY)
    assert len(read(made).pages) == 2
    text = text_of(made)
    assert text.count("$2,900 to $4,400") == 2 * len(demo.options) + 2
    assert text.count("13 years or never") == 2 * len(demo.options)
    assert "In 8 of 10 homes" in text
    assert "without a range" in text_of(report)
    assert "$2,900 to $4,400" not in text_of(report)
    assert "What they hold." in report_html(ranged, demo)
    assert "What they hold." not in report_html(comparison, demo)
