"""The bars of the years with their range."""

from __future__ import annotations

import re
from datetime import date

from costcompare.comparison import Comparison
from costcompare.views.dashboard.filling_years import range_bars, years_part
from costcompare.views.dashboard.pieces import texts
from costcompare.views.figures.years_range import YearRange


def test_a_bar_goes_from_low_to_high_with_the_middle_between() -> None:
    years = (YearRange(2027, -100.0, -100.0, -100.0), YearRange(2028, -50.0, 0.0, 100.0))
    tree = range_bars(years)
    _top, bars, _bottom, ticks = tree["inside"]
    fill, middle = bars["inside"][1]["inside"]
    assert fill["attributes"]["style"] == "bottom:25.00%;height:75.00%"
    assert middle["attributes"]["style"] == "bottom:50.00%"
    zero = bars["inside"][-1]["attributes"]["style"]
    assert re.fullmatch(r"bottom:50\.00%", zero)
    assert texts(ticks) == ["2027", ""]


def test_it_is_hidden_where_there_is_no_range(comparison: Comparison, option: str) -> None:
    assert years_part(comparison, option, date(2027, 3, 1))[0] == "absent"
