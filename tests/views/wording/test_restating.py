"""Finished sentences in other units."""

from __future__ import annotations

import re

import pytest

from costcompare.comparison import Comparison
from costcompare.views import numbers
from costcompare.views.wording.restating import restated


@pytest.mark.parametrize(
    ("sentence", "in_si"),
    [
        ("below 20 °F, for 31 hours", "below −7 °C, for 31 hours"),
        ("−9 °F outdoors", "−23 °C outdoors"),
        ("the night is set 9 °F lower", "the night is set 5.0 °C lower"),
        ("below the 64 °F (18 °C) that is named", "below the 18 °C that is named"),
        ("bedroom 106 cfm, hall 21 cfm", "bedroom 50 L/s, hall 10 L/s"),
        ("Outdoor unit, 12 kBtu/h", "Outdoor unit, 3.5 kW"),
        ("12,000 kWh of heat", "12,000 kWh of heat"),
    ],
)
def test_figures_are_turned(sentence: str, in_si: str) -> None:
    assert restated(sentence) == sentence
    with numbers.written("si"):
        assert restated(sentence) == in_si


def test_no_caution_keeps_a_figure_of_the_other_system(comparison: Comparison) -> None:
    said = " ".join(f"{one.text} {one.because}" for one in comparison.cautions)
    assert "°F" in said
    with numbers.written("si"):
        assert not re.search(r"°F|cfm|Btu|ft2|ft²", restated(said))
