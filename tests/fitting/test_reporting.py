"""The range round a figure, worked out by hand."""

from __future__ import annotations

import pytest

from costcompare.comparison import Band
from costcompare.fitting.reporting import band_round


def test_a_range_is_equally_far_in_the_logarithm() -> None:
    band = band_round(1000.0, 100.0)
    # exp(0.12816) is 1.13673.
    assert (band.low, band.high) == pytest.approx((1000.0 / 1.13673, 1136.73), rel=1e-5)


def test_a_range_wider_than_its_middle_is_equally_far_on_either_side() -> None:
    band = band_round(1.0, 10.0)
    assert (band.low, band.likely) == (0.0, 1.0)
    assert band.high == pytest.approx(13.81552, rel=1e-5)
    assert band_round(0.0, 0.0) == Band(0.0, 0.0, 0.0)
