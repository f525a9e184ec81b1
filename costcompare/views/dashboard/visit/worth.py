"""How much of a range each question of the form is worth, from the drivers of the ranges."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from costcompare.case.paths import Location
from costcompare.comparison import Comparison, Driver
from costcompare.views.dashboard.visit.answers import value_at
from costcompare.views.wording.asking import (
    order_words,
    ranged_choice,
    short_figure,
    worth_words,
)

ANSWERED_BY: Mapping[str, Location] = {
    "today.ducts.supply_leakage": ("today", "ducts", "condition"),
    "today.ducts.return_leakage": ("today", "ducts", "condition"),
}
"""Facts that another question answers as long as nobody states them"""


@dataclass(frozen=True)
class Worth:
    """What one answer could do to a figure."""

    swing_usd: float
    """How far the figure moves as the fact goes from its tenth to its ninetieth percentile"""
    share: float
    """Of the variance that all facts explain together"""


@dataclass(frozen=True)
class Weights:
    """The worth of every question that drives the range of one figure."""

    figure: str
    """Which figure, in words"""
    by_place: Mapping[Location, Worth]
    order: str
    """By what the questions are ordered, in words"""

    def words(self, at: Location) -> str:
        """What the answer at a place is worth; empty where that is next to nothing."""
        worth = self.by_place.get(at)
        return "" if worth is None else worth_words(self.figure, worth.swing_usd, worth.share)

    def share(self, at: Location) -> float:
        """The share of the range that hangs on a place."""
        worth = self.by_place.get(at)
        return 0.0 if worth is None else worth.share


def weights_of(
    ranged: Comparison, document: Mapping[str, Any], name: str | None, *, earlier: bool = False
) -> Weights | None:
    """What the answers are worth for the saving of a choice; None without ranges."""
    choice = ranged_choice(ranged, name)
    if choice.range is None:
        return None
    found: dict[Location, list[Driver]] = {}
    for driver in choice.range.drivers:
        found.setdefault(_place(driver.path, document), []).append(driver)
    return Weights(
        figure=short_figure(choice),
        by_place={at: _together(drivers) for at, drivers in found.items()},
        order=order_words(choice, earlier=earlier),
    )


def _place(path: str, document: Mapping[str, Any]) -> Location:
    own = tuple(path.split("."))
    return own if value_at(document, own) is not None else ANSWERED_BY.get(path, own)


def _together(drivers: list[Driver]) -> Worth:
    """Facts with one answer: their swings are independent of each other, so squares add up."""
    swing = math.sqrt(sum(driver.swing_usd**2 for driver in drivers))
    return Worth(swing, sum(driver.share for driver in drivers))
