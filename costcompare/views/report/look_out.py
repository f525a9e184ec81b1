"""The cautions of a comparison as points of a document."""

from __future__ import annotations

from costcompare.comparison import Comparison
from costcompare.views.report.catalogue import Catalogue
from costcompare.views.report.pieces import Point, Section
from costcompare.views.wording.restating import restated


def caution_section(comparison: Comparison, words: Catalogue) -> Section:
    """Every caution with what raised it, the most urgent first."""
    points = tuple(
        Point(one.topic, restated(one.text), restated(one.because)) for one in comparison.cautions
    )
    return Section("cautions", words.cautions, points=points)
