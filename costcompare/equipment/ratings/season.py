"""What the American ratings share: lines through test points, bins, the result.

The rule is written in Btu/h, W and degF, and its results are in Btu per Wh; here alone the
program counts in these units.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from costcompare.equipment.ratings.points import RatingPoint

BTU_PER_WH = 3.412
"""[Btu/Wh] as appendix M1 writes it; a rating body's calculator takes 3.413"""
BTU_H_PER_W = 3600.0 / 1055.05585262
"""[Btu/h per W] exact, International Table; turns test points in W into those of a sheet"""
LABEL_STEP = 0.05
"""Published ratings are rounded to this step (10 CFR 429.16)"""


class Output(NamedTuple):
    """What a machine does at one speed and temperature."""

    capacity: float
    """[Btu/h]"""
    power: float
    """[W]"""


@dataclass(frozen=True)
class RatingBin:
    """One temperature bin of a season."""

    outdoor_degf: float
    share: float
    """of the hours of the season"""
    load_btu_h: float
    capacity_low_btu_h: float
    capacity_full_btu_h: float
    running: str
    """How it meets the load: ``cycling``, ``in between``, ``full``, ``off``"""
    delivered_btu_h: float
    power_w: float
    """of the machine, mean over the hours of the bin"""
    resistance_w: float
    """of resistance heat, mean over the hours of the bin"""


@dataclass(frozen=True)
class SeasonalRating:
    """HSPF2 or SEER2 with what it was made of."""

    name: str
    value: float
    """[Btu/Wh]"""
    label: float
    """[Btu/Wh] rounded as a published rating is"""
    season: str
    """The region or season it stands for"""
    heat_sum_btu_h: float
    """[Btu/h] sum over the bins of share times load (HSPF2) or of what was delivered (SEER2)"""
    power_sum_w: float
    """[W] the same of the machine's power"""
    resistance_sum_w: float
    """[W] the same of resistance heat"""
    defrost_credit: float
    bins: tuple[RatingBin, ...]
    notes: tuple[str, ...]
    """What is not confirmed about the constants"""

    def __float__(self) -> float:
        return self.value


def output(point: RatingPoint) -> Output:
    """A test point in the units of the rule."""
    return Output(point.capacity * BTU_H_PER_W, point.power)


def line(at: float, cold: tuple[float, Output], warm: tuple[float, Output]) -> Output:
    """Capacity and power, each on the straight line through two temperatures [degF]."""
    (low, first), (high, second) = cold, warm
    share = (at - low) / (high - low)
    return Output(
        first.capacity + share * (second.capacity - first.capacity),
        first.power + share * (second.power - first.power),
    )


def efficiency_between(load: float, lower: Output, upper: Output) -> float:
    """[Btu/Wh] linear in the load between two outputs; that of the lower where they meet.

    Raises ValueError where the lines through the test points leave no machine there.
    """
    if min(lower.power, upper.power) <= 0.0:
        raise ValueError("the lines through the test points lead to no power at all")
    low, high = lower.capacity / lower.power, upper.capacity / upper.power
    width = upper.capacity - lower.capacity
    if width <= 0.0:
        return low
    found = low + (high - low) * (load - lower.capacity) / width
    if found <= 0.0:
        raise ValueError("the lines through the test points lead to no heat at all")
    return found


def place_between(tested: float, low: float, full: float) -> float:
    """Where the intermediate test lies from low (0) to full (1); ValueError where they meet."""
    if full == low:
        raise ValueError("low and full speed are the same where the intermediate test is")
    return (tested - low) / (full - low)


def rounded(value: float) -> float:
    """Rounded to the step of published ratings."""
    return round(round(value / LABEL_STEP) * LABEL_STEP, 2)
