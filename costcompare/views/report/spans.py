"""Ranges as the report writes them beside a figure; nothing where none was made."""

from __future__ import annotations

from costcompare.comparison import Band, Choice
from costcompare.views import numbers
from costcompare.views.report.catalogue import Catalogue


def bill_span(choice: Choice, words: Catalogue) -> str:
    """The range of a year's bill: ``$2,900 to $4,400``."""
    return "" if choice.range is None else money_span(choice.range.bill_usd, words)


def payback_span(choice: Choice, words: Catalogue) -> str:
    """The range of the payback in today's value: ``7.1 to 12 years``, ``9.3 years or never``.

    Nothing where it never comes: that stands in the figure itself.
    """
    if choice.range is None or choice.range.discounted_payback_years is None:
        return ""
    band = choice.range.discounted_payback_years
    if band.low is None:
        return ""
    if band.high is None:
        return words.or_never.format(numbers.years(band.low))
    low, high = numbers.years(band.low), numbers.years(band.high)
    return low if low == high else words.from_to.format(low.split(" ")[0], high)


def money_span(band: Band, words: Catalogue) -> str:
    """Both ends of a range of money, rounded as ranges are."""
    low, high = (numbers.dollars_in_a_range(end) for end in (band.low, band.high))
    return low if low == high else words.from_to.format(low, high)
