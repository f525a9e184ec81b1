"""Figures on the page in the money of the case that they belong to."""

from __future__ import annotations

from contextlib import AbstractContextManager

from costcompare.comparison import Comparison
from costcompare.views import numbers


def in_its_money(comparison: Comparison) -> AbstractContextManager[numbers.Writing]:
    """Within it every amount is written with the sign of money of this comparison."""
    return numbers.written(currency=comparison.currency)
