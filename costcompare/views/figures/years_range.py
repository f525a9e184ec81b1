"""Money out of pocket over the years, with the range of the homes that fit the facts."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from costcompare.comparison import AS_WANTED, Band, Comparison
from costcompare.views import numbers
from costcompare.views.wording.naming import in_a_sentence


@dataclass(frozen=True)
class YearRange:
    """The money of a choice at the end of a year, in eight of ten homes."""

    year: int
    low: float
    likely: float
    high: float

    @property
    def text(self) -> str:
        """The three amounts in words."""
        low, high = (numbers.dollars_in_a_range(end) for end in (self.low, self.high))
        return f"{self.year}: {low} to {high}, the middle {numbers.dollars_a_year(self.likely)}"


def year_ranges(comparison: Comparison, name: str, installed_on: date) -> tuple[YearRange, ...]:
    """The position of a choice at the warmth you want, year by year; nothing without ranges."""
    choice = comparison.choice(name, AS_WANTED)
    if choice.is_today or choice.range is None:
        return ()
    found = []
    for number, band in enumerate(choice.range.yearly_position_usd):
        low, likely, high = _ends(band)
        found.append(YearRange(installed_on.year + number, low, likely, high))
    return tuple(found)


def _ends(band: Band) -> tuple[float, float, float]:
    """A sum of money always is a number: only paybacks may never come."""
    likely = band.likely if band.likely is not None else 0.0
    low = band.low if band.low is not None else likely
    high = band.high if band.high is not None else likely
    return low, likely, high


def years_range_answer(comparison: Comparison, name: str, years: tuple[YearRange, ...]) -> str:
    """Where the range stands in the last year, in a sentence; empty without one."""
    if not years:
        return ""
    last = years[-1]
    low, high = (numbers.dollars_in_a_range(end) for end in (last.low, last.high))
    choice = comparison.choice(name, AS_WANTED)
    return (
        f"With {in_a_sentence(choice)}, at the warmth you want, in 8 of 10 homes that fit these "
        f"facts the money stands between {low} and {high} at the end of {last.year}, the middle at "
        f"about {numbers.dollars_a_year(last.likely)}; below 0 it is still out of pocket."
    )
