"""What a house with its facts moved would have on its bills."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from costcompare.case.facts import Case
from costcompare.simulation import Run, Years, simulate_years
from costcompare.uncertainty import UncertainFact, drawn_case, kept_setpoints
from costcompare.weather import Weather, with_winter

Floats = NDArray[np.float64]
Progress = Callable[[float], None]

APART = 0.6
"""Standard deviations to either side between which a slope is taken (judgement: wide enough
for facts that lean to one side)"""
COLDER = 1.0
"""[K] by which the winter is made colder to see what the weather does to a bill"""


@dataclass(frozen=True)
class Predicted:
    """By member: electricity and heating by day [kWh], each of shape (members, 365)."""

    electricity: Floats
    heating: Floats


@dataclass(frozen=True)
class Slopes:
    """A house, and how it changes with each fact."""

    house: Predicted
    """One member"""
    electricity: Floats
    """[kWh] a day and standard deviation, shape (facts, 365)"""
    heating: Floats


@dataclass(frozen=True)
class HouseModel:
    """A case, which of its facts may move, and the weather of its bills."""

    case: Case
    facts: tuple[UncertainFact, ...]
    weather: Weather

    def predicted(
        self, z: Floats, *, progress: Progress | None = None, weather: Weather | None = None
    ) -> Predicted:
        """Today's house as they live now with its facts at ``z``, shape (members, facts)."""
        members = [drawn_case(self.case, self.facts, row) for row in z]
        runs = [
            Run(
                member.home, member.today, kept_setpoints(self.case.home, member.home, wanted=False)
            )
            for member in members
        ]
        years = simulate_years(runs, weather or self.weather, progress=progress)
        return Predicted(years.electricity, _heating(years))

    @cached_property
    def _colder(self) -> Weather:
        """Made once, because the sun of a year is worked out once a year of weather."""
        return with_winter(self.weather, -COLDER)

    def by_degree(self, house: Predicted, z: Floats) -> Floats:
        """What ``house``, with its facts at ``z``, uses more on each day for each kelvin of a
        colder winter [kWh/K], shape (365,)."""
        colder = self.predicted(z[None, :], weather=self._colder)
        result: Floats = (colder.electricity[0] - house.electricity[0]) / COLDER
        return result

    def slopes(self, at: Floats | None = None, *, progress: Progress | None = None) -> Slopes:
        """The house at some numbers, else the likely one, and how it changes with each fact.

        Facts that say nothing of today's bill have no slope.
        """
        count = len(self.facts)
        place = np.zeros(count) if at is None else at
        moving = [n for n, fact in enumerate(self.facts) if _moves_bill(fact)]
        z = np.tile(place, (1 + 2 * len(moving), 1))
        for pair, n in enumerate(moving):
            z[1 + 2 * pair, n] += APART
            z[2 + 2 * pair, n] -= APART
        found = self.predicted(z, progress=progress)
        electricity, heating = np.zeros((count, 365)), np.zeros((count, 365))
        for pair, n in enumerate(moving):
            up, down = 1 + 2 * pair, 2 + 2 * pair
            for slopes, days in ((electricity, found.electricity), (heating, found.heating)):
                slopes[n] = (days[up] - days[down]) / (2.0 * APART)
        here = Predicted(found.electricity[:1], found.heating[:1])
        return Slopes(here, electricity, heating)


def on_bills(days: Floats, counts: Floats) -> Floats:
    """Sums over the days of each bill; (…, 365) and (bills, 365) to (…, bills)."""
    result: Floats = days @ counts.T
    return result


def _heating(years: Years) -> Floats:
    """Heating with its fans in the share of heating and cooling."""
    both = years.heating + years.cooling
    share = np.divide(years.heating, both, out=np.zeros_like(both), where=both > 0.0)
    result: Floats = years.heating + years.fan * share
    return result


def _moves_bill(fact: UncertainFact) -> bool:
    """Whether the fact is one of today's house, and no wish or price."""
    wish = fact.name == "thermostat.wanted"
    return fact.scope in ("home", "system") and fact.today is not None and not wish
