"""The chart of the thermostat, in the order of traces that the page relies on."""

from __future__ import annotations

import pytest

from costcompare.comparison import AS_WANTED, Comparison
from costcompare.thermostat import Sweep
from costcompare.views.figures.setting import MARKS, nearest, setting_chart, wanted_chart


@pytest.mark.parametrize("held", [True, False])
def test_each_mark_lies_on_the_line_before_it(swept: Sweep, option: str, held: bool) -> None:
    figure = setting_chart(swept, option, held=held)
    assert len(figure.data) == 8
    for mark in MARKS:
        line, point = figure.data[mark - 1], figure.data[mark]
        assert line.mode == "lines"
        assert point.mode == "markers"
        assert point.y[0] == line.y[list(line.x).index(point.x[0])]


def test_lines_are_the_bills_of_the_sweep(swept: Sweep, option: str) -> None:
    figure = setting_chart(swept, option, held=True)
    for number, choice in ((0, swept.choices[0]), (4, swept.choices[1])):
        bills = [year.bill_usd for year in choice.years if year.held]
        assert list(figure.data[number].y) == bills
        assert list(figure.data[number].x) == list(swept.settings_degf)


def test_as_wanted_the_marks_are_the_compared_bills(
    comparison: Comparison, swept: Sweep, option: str
) -> None:
    figure = wanted_chart(comparison, swept, option)
    for mark, name in ((MARKS[0], comparison.today.name), (MARKS[2], option)):
        bill = comparison.choice(name, AS_WANTED).annual.bill_usd
        assert figure.data[mark].y[0] == bill


def test_the_nearest_setting_is_taken() -> None:
    assert nearest((62.0, 66.0, 70.0), 69.0) == 70.0
