"""The bills and the warm hours of every choice for every member of an ensemble."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
import pandas as pd
from numpy.typing import NDArray
from scipy.stats import norm

from costcompare.billing.tariff import needs_hours, year_bills
from costcompare.case.facts import Case, Home
from costcompare.comfort import comfort_limits
from costcompare.comparison import AS_WANTED, Choice
from costcompare.ranges.steps import Steps, finished
from costcompare.simulation import LANES, Limits, Run, Years, simulate_years
from costcompare.uncertainty import Draws, kept_setpoints
from costcompare.uncertainty.uncertain_facts import WINTER
from costcompare.weather import Weather, with_winter

Floats = NDArray[np.float64]

WINTERS = 5
"""Kinds of winter, a fifth of the members in each (judgement): weather and its sun are worked
out once for each kind; the variance of five is 0.90 of that of all"""

BATCH = LANES
"""Members worked out at a time: as many as are stepped side by side"""


@dataclass(frozen=True)
class Outcomes:
    """What came out of an ensemble; the first axis is the member, the second the choice."""

    bill_usd: Floats
    warm_share: Floats
    price_growth: Floats
    """Shape (members,)"""


def outcomes(
    case: Case,
    choices: Sequence[Choice],
    draws: Draws,
    weather: Weather,
    *,
    progress: Callable[[float], None] | None = None,
) -> Outcomes:
    """Run every choice for every member, with the same draws for all choices."""
    tell = progress or (lambda _share: None)
    return finished(outcome_steps(case, choices, draws, weather), tell)


def outcome_steps(
    case: Case, choices: Sequence[Choice], draws: Draws, weather: Weather
) -> Steps[Outcomes]:
    """The same a few members at a time: the share that is done after each, at last the whole."""
    members = len(draws.z)
    bills = np.zeros((members, len(choices)))
    warm = np.zeros((members, len(choices)))
    growth = np.zeros(members)
    places = [_place(case, choice) for choice in choices]
    kinds = winters(draws)
    year_of = {shift: with_winter(weather, shift) for _, shift in kinds}
    done = 0
    for rows, shift in _batches(kinds):
        drawn = [draws.member(case, row) for row in rows]
        runs = [_run(member, place) for member in drawn for place in places]
        years = simulate_years(runs, year_of[shift], hours=needs_hours(case.tariff))
        shape = (len(rows), len(choices))
        bills[rows] = _bills(case, years, weather).reshape(shape)
        warm[rows] = _warm_share(years).reshape(shape)
        growth[rows] = [member.money.price_growth for member in drawn]
        done += len(rows)
        yield done / members
    return Outcomes(bills, warm, growth)


def _batches(kinds: list[tuple[list[int], float]]) -> list[tuple[list[int], float]]:
    """A few members at a time, all with the same winter."""
    return [
        (rows[start : start + BATCH], shift)
        for rows, shift in kinds
        for start in range(0, len(rows), BATCH)
    ]


@dataclass(frozen=True)
class _Place:
    """A choice with what of it does not change from member to member."""

    option: int | None
    wanted: bool
    home: Home
    """As stated"""
    limits: Limits


def _place(case: Case, choice: Choice) -> _Place:
    names = [option.name for option in case.options]
    option = None if choice.is_today else names.index(choice.name)
    home = case.home if option is None else case.options[option].home
    return _Place(option, choice.warmth == AS_WANTED, home, comfort_limits(home))


def _run(member: Case, place: _Place) -> Run:
    home, system = member.home, member.today
    if place.option is not None:
        home, system = member.options[place.option].home, member.options[place.option].system
    return Run(home, system, kept_setpoints(place.home, home, wanted=place.wanted), place.limits)


def winters(draws: Draws) -> list[tuple[list[int], float]]:
    """Members by their kind of winter: rows, and how much warmer it is than typical [K].

    A few kinds are taken as drawn; many are gathered into fifths of the distribution, each
    at its mean.
    """
    if WINTER not in draws.names:
        return [(list(range(len(draws.z))), 0.0)]
    column = draws.names.index(WINTER)
    spread = draws.facts[column].today
    assert spread is not None
    numbers = draws.z[:, column]
    if len(np.unique(numbers)) > WINTERS:
        fifth = np.minimum((norm.cdf(numbers) * WINTERS).astype(int), WINTERS - 1)
        # The mean of a standard normal number over each fifth of its probability.
        edges = norm.pdf(norm.ppf(np.linspace(0.0, 1.0, WINTERS + 1)))
        numbers = (-WINTERS * np.diff(edges)).round(6)[fifth]
    return [
        (np.flatnonzero(numbers == kind).tolist(), spread.at(float(kind)))
        for kind in np.unique(numbers)
    ]


def _bills(case: Case, years: Years, weather: Weather) -> Floats:
    """The year's bill of each run [$]."""
    index, zone = weather.table.index, case.home.site.time_zone
    assert isinstance(index, pd.DatetimeIndex)
    used = years.by_month(years.electricity) if years.hourly is None else years.hourly
    return year_bills(case.tariff, used, index, zone).total_usd


def _warm_share(years: Years) -> Floats:
    """Warm hours over wanted hours of all rooms; 1 where none is wanted."""
    wanted = years.wanted_hours.sum(axis=1)
    share = np.ones(len(wanted))
    np.divide(years.warm_hours.sum(axis=1), wanted, out=share, where=wanted > 0)
    return share
