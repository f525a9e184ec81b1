"""Percentiles that can be counted."""

from __future__ import annotations

import math

import numpy as np

from costcompare.comparison import Band
from costcompare.ranges.bands import band


def test_percentiles_of_eleven_figures() -> None:
    assert band(np.arange(11.0)[::-1]) == Band(1.0, 5.0, 9.0)


def test_never_counts_as_longer_than_any_number() -> None:
    one = band(np.array([3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, math.inf, math.inf]))
    assert one == Band(3.0, 7.0, None)
    assert band(np.full(5, math.inf)) == Band(None, None, None)
