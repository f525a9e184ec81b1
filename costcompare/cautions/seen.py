"""One choice as the cautions see it, and how they write what they say."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from costcompare.billing.clock import WINTER, standard_hours
from costcompare.case.facts import Home, System
from costcompare.comparison import CrawlspaceYear
from costcompare.simulation import HourlyResult

CFM = 4.719474e-4
"""[m3/s] of a cubic foot a minute (exact to its digits)"""


@dataclass(frozen=True)
class Seen:
    """Today or an option with its year at the warmth the family wants."""

    name: str
    home: Home
    system: System
    year: HourlyResult
    under_floor: CrawlspaceYear | None

    @property
    def electricity_kwh(self) -> float:
        return float(self.year.electricity.sum()) / 1000.0

    @property
    def has_heat_pump(self) -> bool:
        return bool(self.system.heads) or self.system.ducted_unit is not None


def winter_mean(seen: Seen, room: str) -> float:
    """Mean air of a room over December to February [degC]."""
    year = seen.year
    winter = np.isin(standard_hours(year.index).month, WINTER)
    return float(year.room_temperature[winter, year.room_names.index(room)].mean())


def degf(celsius: float) -> str:
    """A temperature [degC] in whole degrees Fahrenheit: ``64 °F``."""
    return f"{celsius * 1.8 + 32.0:.0f} °F"


def named(option: Seen) -> str:
    """The option in the middle of a sentence."""
    return f"“{option.name}”"


def all_named(options: Sequence[Seen]) -> str:
    """``“A”``, ``“A” and “B”``, ``“A” and 2 other choices``: long names, short sentences."""
    names = [named(option) for option in options]
    if len(names) > 2:
        return f"{names[0]} and {len(names) - 1} other choices"
    return " and ".join(names)
