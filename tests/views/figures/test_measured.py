"""The chart of bills: what it draws is what the fit says."""

from __future__ import annotations

from dataclasses import replace

from costcompare.comparison import Band
from costcompare.fitting.results import FittedBill
from costcompare.views.figures.measured import MOST_BILLS, bills_chart
from tests.views.wording.test_fitting import FIT


def bill(number: int) -> FittedBill:
    begins, ends = f"20{10 + number // 12}-{number % 12 + 1:02d}-03", "2030-01-03"
    said, computed = Band(900.0, 1000.0, 1100.0), Band(1150.0, 1200.0, 1300.0)
    measured = 1100.0 + number
    return FittedBill(begins, ends, 30, "actual", measured, said, computed, 700.0, 90.0)


def test_every_bill_has_its_bar_its_ring_and_its_diamond_with_its_range() -> None:
    bars, rings, diamonds = bills_chart(replace(FIT, bills=tuple(map(bill, range(3))))).data
    assert list(bars.y) == [1100.0, 1101.0, 1102.0]
    assert list(rings.y) == [1000.0] * 3
    assert list(diamonds.y) == [1200.0] * 3
    assert (list(diamonds.error_y.array), list(diamonds.error_y.arrayminus)) == (
        [100.0] * 3,
        [50.0] * 3,
    )
    shapes = {bars.type, rings.marker.symbol, diamonds.marker.symbol}
    assert len(shapes) == 3  # not told apart by colour alone


def test_of_many_bills_the_latest_are_drawn() -> None:
    bills = tuple(map(bill, range(MOST_BILLS + 5)))
    drawn = bills_chart(replace(FIT, bills=bills)).data[0]
    assert list(drawn.y) == [one.measured_kwh for one in bills[5:]]
