"""Draws of the uncertain facts: the same random numbers for every choice and option."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TypeVar

import numpy as np
from numpy.typing import NDArray
from scipy.stats import norm, qmc

from costcompare.case.facts import Case, Home, Option, System
from costcompare.simulation import (
    Setpoints,
    setpoints_as_lived,
    setpoints_as_wanted,
    wanted_by_hour,
)
from costcompare.uncertainty.dials import Dial
from costcompare.uncertainty.distributions import Distribution
from costcompare.uncertainty.home_dials import HOME_DIALS
from costcompare.uncertainty.spreads import fact_spreads
from costcompare.uncertainty.system_dials import SYSTEM_DIALS
from costcompare.uncertainty.uncertain_facts import (
    PRICE_GROWTH,
    WINTER,
    UncertainFact,
    uncertain_facts,
)

Floats = NDArray[np.float64]

FARTHEST = 3.0
"""Standard deviations beyond which nothing is drawn (judgement: the spreads are judgements)"""

_Whole = TypeVar("_Whole", Home, System)


@dataclass(frozen=True)
class Draws:
    """Members of an ensemble as standard normal numbers, one column a fact."""

    facts: tuple[UncertainFact, ...]
    z: Floats
    """Shape (members, facts); a likely home has zeros"""

    @property
    def names(self) -> tuple[str, ...]:
        """The facts in the order of the columns."""
        return tuple(fact.name for fact in self.facts)

    def member(self, case: Case, row: int) -> Case:
        """The case with the facts of one member, its options with them."""
        return drawn_case(case, self.facts, self.z[row])

    def winter(self, row: int) -> float:
        """How much warmer the member's winter is than the typical one [K]."""
        return winter_of(self.facts, self.z[row])


def prior_draws(case: Case, members: int, *, seed: int = 0) -> Draws:
    """Draws from the spreads of a case's facts: a scrambled Sobol sequence.

    Every fact of the table of spreads has its own column of the sequence, whether the case
    is sure of it or not: a fact that becomes known leaves the draws of all others as they
    were. ``members`` that are a power of two fill the space most evenly.
    """
    if members < 1:
        raise ValueError(f"there must be at least one member, not {members}")
    facts, names = uncertain_facts(case), list(fact_spreads())
    sequence = qmc.Sobol(len(names), scramble=True, rng=np.random.default_rng(seed))
    points = sequence.random_base2(max(math.ceil(math.log2(members)), 0))[:members]
    z = np.clip(norm.ppf(points), -FARTHEST, FARTHEST)
    return Draws(facts, np.ascontiguousarray(z[:, [names.index(f.name) for f in facts]]))


def log_prior(z: Floats) -> Floats:
    """Logarithm of the prior density of members, but for a constant; shape (members,)."""
    result: Floats = -0.5 * np.square(np.atleast_2d(z)).sum(axis=1)
    return result


def drawn_case(case: Case, facts: Sequence[UncertainFact], z: Floats) -> Case:
    """The case with every fact at its standard normal number, shape (facts,)."""
    at = {fact.name: (fact, float(number)) for fact, number in zip(facts, z, strict=True)}
    home = _turned(HOME_DIALS, case.home, at, None)
    money = case.money
    if PRICE_GROWTH in at:
        fact, number = at[PRICE_GROWTH]
        assert fact.today is not None
        money = replace(money, price_growth=fact.today.at(number))
    return replace(
        case,
        home=home,
        today=_turned(SYSTEM_DIALS, case.today, at, None),
        options=tuple(_option(case, option, home, at) for option in case.options),
        money=money,
    )


def winter_of(facts: Sequence[UncertainFact], z: Floats) -> float:
    """How much warmer than typical the winter is [K]; 0 where it is no uncertain fact."""
    for fact, number in zip(facts, z, strict=True):
        if fact.name == WINTER and fact.today is not None:
            return fact.today.at(float(number))
    return 0.0


def kept_setpoints(stated: Home, drawn: Home, *, wanted: bool) -> Setpoints:
    """What the thermostats of a drawn home are really kept at.

    Heads and heaters with settings of their own move as far as the house does from what was
    ``stated``.
    """
    kept = setpoints_as_wanted(drawn) if wanted else setpoints_as_lived(drawn)
    return replace(kept, wanted=wanted_by_hour(stated))


def _option(
    case: Case, option: Option, home: Home, at: Mapping[str, tuple[UncertainFact, float]]
) -> Option:
    kept = option.home is case.home
    return replace(
        option,
        home=home if kept else _turned(HOME_DIALS, option.home, at, option.name),
        system=_turned(SYSTEM_DIALS, option.system, at, option.name),
    )


def _turned(
    dials: Sequence[Dial[_Whole]],
    whole: _Whole,
    at: Mapping[str, tuple[UncertainFact, float]],
    option: str | None,
) -> _Whole:
    """The home or system with every dial turned that it has."""
    for dial in dials:
        if dial.fact not in at or dial.read(whole) is None:
            continue
        fact, number = at[dial.fact]
        spread: Distribution | None = fact.today if option is None else fact.in_option(option)
        if spread is not None and not spread.exact:
            whole = dial.turn(whole, spread.at(number))
    return whole
