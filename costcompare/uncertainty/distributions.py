"""How an uncertain value is spread round its likely one.

Every distribution is a rising function of a standard normal number: 0 gives the likely
value (the middle for one that leans to a side), the tenth and the ninetieth percentile lie
at -1.2816 and +1.2816. Draws, and fits that move facts, live in those plain numbers.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal

Kind = Literal["normal", "log-normal", "bounded", "triangular"]
KINDS: tuple[Kind, ...] = ("normal", "log-normal", "bounded", "triangular")

Z90 = 1.2815515655446004
"""The ninetieth percentile of the standard normal distribution"""
TENTH = 0.1
EDGE = 0.01
"""Share of the allowed span next to a limit in which a bounded value is drawn plainly and
cut off there, because a logarithm of the distance to the limit says nothing (judgement)"""


@dataclass(frozen=True)
class Distribution:
    """A value with its tenth and ninetieth percentile, between two limits.

    ========================  ============================================================
    ``normal``                two half bells, one a side
    ``log-normal``            the same in the logarithm of the value
    ``bounded``               the same in the logarithm of the odds between the limits
    ``triangular``            ``likely`` is the peak; nothing lies beyond its ends
    ========================  ============================================================
    """

    kind: Kind
    likely: float
    low: float
    high: float
    least: float = -math.inf
    most: float = math.inf

    def __post_init__(self) -> None:
        if not self.low <= self.likely <= self.high:
            raise ValueError(f"{self.low}, {self.likely}, {self.high} must rise")

    @property
    def exact(self) -> bool:
        """True where nothing is uncertain."""
        return self.low == self.high

    def at(self, z: float) -> float:
        """The value at a standard normal number."""
        if self.exact:
            return self.likely
        if self.kind == "triangular":
            value = self._triangular(z)
        elif self.kind == "log-normal" and self.low > 0.0:
            value = math.exp(_halves(z, *map(math.log, (self.low, self.likely, self.high))))
        elif self.kind == "bounded" and self._inside():
            odds = _halves(z, *map(self._log_odds, (self.low, self.likely, self.high)))
            value = self.least + (self.most - self.least) / (1.0 + math.exp(-odds))
        else:
            value = _halves(z, self.low, self.likely, self.high)
        return min(max(value, self.least), self.most)

    def _inside(self) -> bool:
        """Whether all three lie well within the limits."""
        margin = EDGE * (self.most - self.least)
        return self.least + margin <= self.low and self.high <= self.most - margin

    def _log_odds(self, value: float) -> float:
        return math.log((value - self.least) / (self.most - value))

    def _triangular(self, z: float) -> float:
        left, right = _sides(self.likely - self.low, self.high - self.likely)
        whole = left + right
        below = 0.5 * math.erfc(-z / math.sqrt(2.0))
        if below * whole <= left:
            return self.likely - left + math.sqrt(below * whole * left)
        return self.likely + right - math.sqrt((1.0 - below) * whole * right)


def _halves(z: float, low: float, likely: float, high: float) -> float:
    step = high - likely if z > 0.0 else likely - low
    return likely + z * step / Z90


@lru_cache(maxsize=256)
def _sides(below: float, above: float) -> tuple[float, float]:
    """How far the ends of a triangle lie from its peak, from its two percentiles.

    With x and y the two sides, the tenth percentile lies where (x - below)^2 =
    0.1 (x + y) x, and the ninetieth likewise; both are solved by repeated insertion.
    """
    left = right = 2.0 * (below + above)
    for _ in range(200):
        whole = left + right
        left, right = (
            below + math.sqrt(TENTH * whole * left),
            above + math.sqrt(TENTH * whole * right),
        )
    return left, right
