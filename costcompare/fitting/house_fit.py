"""The fit itself: facts moved until the house explains its bills."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from costcompare.billing.reading import Bills
from costcompare.case.facts import Case
from costcompare.errors import CaseError, Fault
from costcompare.fitting.bill_days import day_counts, errors
from costcompare.fitting.gauss_newton import FARTHEST, most_likely
from costcompare.fitting.house_model import HouseModel, Predicted, Progress, Slopes, on_bills
from costcompare.fitting.reporting import Fitting, report_of
from costcompare.fitting.results import FittedHouse
from costcompare.uncertainty import (
    Distribution,
    Draws,
    UncertainFact,
    drawn_case,
    prior_draws,
    uncertain_facts,
)
from costcompare.weather import Weather

Floats = NDArray[np.float64]

MEMBERS = 64
BEGIN = 0.5
"""Share of the work that the likely house and its slopes take (judgement, for the bar)"""
FORMER_OWNER = Distribution("normal", 18.9, 14.4, 23.3)
"""[degC] what a house may have been kept at by people whom nobody can ask: 66 F, eight of ten
between 58 F and 74 F (judgement)"""
MENDED = 2
"""Times that drawn homes are moved towards the bills that they should have"""
SETTINGS = ("thermostat.day", "thermostat.night", "thermostat.wanted", "thermostat.cooling")


def fit_house(
    case: Case,
    bills: Bills,
    *,
    weather: Weather,
    weather_is_of_the_bills: bool = False,
    former_owner: bool = False,
    members: int = MEMBERS,
    slopes: Slopes | None = None,
    progress: Progress | None = None,
) -> FittedHouse:
    """Move the uncertain facts of today's house until it explains its bills.

    Parameters
    ----------
    case
        The home, as they live now in the days of the bills.
    bills
        One bill or more; they need not fill a year.
    weather
        A year in whose days the bills lie; a typical year where their own is not at hand,
        which makes every bill's error wider.
    weather_is_of_the_bills
        True where ``weather`` was measured in the days of the bills.
    former_owner
        True where somebody else lived there: nothing is taken as said of the thermostat, and
        what it was kept at is inferred.
    members
        Homes drawn for ranges.
    slopes
        Of the likely house, where they are at hand from another fit of the same case.

    Raises
    ------
    CaseError
        No bill can be used.
    """
    if not bills.bills:
        rule, instead = "holds no bill that can be used", "at least one bill with its dates and kWh"
        raise CaseError([Fault("bills", rule, "", instead)])
    tell = progress or (lambda _share: None)
    facts = uncertain_facts(case)
    model = HouseModel(case, _of_somebody_else(facts) if former_owner else facts, weather)
    known = slopes or model.slopes(progress=lambda share: tell(BEGIN * share))
    fitting = _fitted(
        model,
        bills,
        known,
        of_the_bills=weather_is_of_the_bills,
        former_owner=former_owner,
    )
    tell(1.0)
    keep = SETTINGS if former_owner else ()
    z = np.where([fact.name in keep for fact in facts], 0.0, fitting.found.z)
    draws = _draws(fitting, facts, members)
    return FittedHouse(report_of(fitting), drawn_case(case, facts, z), draws)


def _of_somebody_else(facts: Sequence[UncertainFact]) -> tuple[UncertainFact, ...]:
    return tuple(
        replace(fact, today=FORMER_OWNER, known="guessed")
        if fact.name == "thermostat.day"
        else fact
        for fact in facts
    )


def _fitted(
    model: HouseModel, bills: Bills, slopes: Slopes, *, of_the_bills: bool, former_owner: bool
) -> Fitting:
    counts = day_counts(bills.bills)
    measured = np.array([bill.kwh for bill in bills.bills])
    taken: list[Slopes] = []

    def slopes_at(z: Floats) -> Floats:
        taken.append(model.slopes(z))
        return on_bills(taken[-1].electricity, counts).T

    def errors_at(z: Floats) -> Floats:
        return _errors(model, bills, counts, taken[-1].house, None if of_the_bills else z)

    nothing_moved = None if of_the_bills else np.zeros(len(model.facts))
    found = most_likely(
        lambda z: on_bills(model.predicted(z[None, :]).electricity[0], counts),
        measured,
        _errors(model, bills, counts, slopes.house, nothing_moved),
        slopes=on_bills(slopes.electricity, counts).T,
        start=on_bills(slopes.house.electricity[0], counts),
        slopes_at=slopes_at,
        errors_at=errors_at,
    )
    fitted = replace(taken[-1], house=model.predicted(found.z[None, :]))
    by_degree = None if of_the_bills else model.by_degree(fitted.house, found.z)
    return Fitting(model, bills, counts, slopes, by_degree, found, fitted, former_owner)


def _errors(
    model: HouseModel, bills: Bills, counts: Floats, house: Predicted, z: Floats | None
) -> Floats:
    """Of every bill against a house; ``z`` are its numbers where the weather is not its own."""
    by_degree = None if z is None else on_bills(model.by_degree(house, z), counts)
    return errors(
        bills.bills,
        on_bills(house.electricity[0], counts),
        on_bills(house.heating[0], counts),
        by_degree=by_degree,
    )


def _draws(fitting: Fitting, facts: tuple[UncertainFact, ...], members: int) -> Draws:
    """Homes that explain the bills as well as the slopes say that they should.

    Drawn from the spreads at the most likely house, then moved until the model itself makes
    of them what the slopes make (randomised maximum likelihood: Oliver, He and Reynolds,
    1996, from memory): facts that lean to one side would else draw homes with other bills.
    """
    found, model = fitting.found, fitting.model
    prior = prior_draws(model.case, members)
    z = found.z + prior.z @ np.linalg.cholesky(found.covariance).T
    expected = found.explained + (z - found.z) @ found.slopes.T
    gain = found.covariance @ (found.slopes / found.errors[:, None] ** 2).T
    for _ in range(MENDED):
        made = on_bills(model.predicted(z).electricity, fitting.counts)
        z = np.clip(z - (made - expected) @ gain.T, -FARTHEST, FARTHEST)
    if fitting.former_owner:
        for column, fact in enumerate(facts):
            if fact.name in SETTINGS:
                z[:, column] = prior.z[:, column]
    return Draws(facts, np.ascontiguousarray(z))
