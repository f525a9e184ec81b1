"""Whether a fit keeps the limits of calibrated models, from bills made by hand."""

from __future__ import annotations

import pytest

from costcompare.comparison import Band
from costcompare.fitting.judging import within_limits
from costcompare.fitting.results import FittedBill

BILL = FittedBill(
    begins="2026-01-01",
    ends="2026-02-01",
    days=31,
    read="actual",
    measured_kwh=1000.0,
    said_kwh=Band(800.0, 900.0, 1000.0),
    computed_kwh=Band(900.0, 950.0, 1000.0),
    heating_kwh=500.0,
    error_kwh=60.0,
)


@pytest.mark.parametrize(
    ("bills", "bias", "misses", "kept"),
    [
        (11, 0.0, 0.0, None),
        (12, 0.049, 0.149, True),
        (12, -0.049, 0.149, True),
        (12, -0.051, 0.149, False),
        (12, 0.0, 0.151, False),
    ],
)
def test_the_limits_need_a_year_of_bills(
    bills: int, bias: float, misses: float, kept: bool | None
) -> None:
    assert within_limits([BILL] * bills, bias, misses) is kept
