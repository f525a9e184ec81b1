"""The heat loss of a house by its bills, beside the one by its survey.

The loss at the design temperature that a sizing reads off the facts of a case is one answer;
the house that explains its bills gives another. Where they lie far apart, one of them is
wrong, and a machine that is chosen by it is too large or too small.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from costcompare.case.facts import Case, Home, System
from costcompare.comparing import Progress, weather_of
from costcompare.comparison import Band
from costcompare.fitting import FittedHouse, fitted_to_own_bills
from costcompare.simulation import Run, Setpoints, simulate_years
from costcompare.sizing import Sizing
from costcompare.sizing.design_weather import standing_year
from costcompare.sizing.needs import NO_COOLING, design_levels, still_home
from costcompare.sizing.results import BTU_H
from costcompare.weather import Weather

Floats = NDArray[np.float64]

MEMBERS = 32
"""Homes that explain the bills, for low and high"""
HOURS = 24
W_PER_KW = 1000.0
APART = 0.10
"""Share by which the two losses may differ and still be called the same, however narrow the
range from the bills is (judgement: a size step of a machine is wider)"""

Verdict = Literal["the same", "less by the bills", "more by the bills"]


@dataclass(frozen=True)
class BillHeatLoss:
    """The heat loss by the bills, the one by the survey, and how far apart they are."""

    bills: int
    """Real bills that the house was fitted to"""
    survey_btu_h: float
    """At the design temperature, by the facts of the case: the machines are held against it"""
    fitted_btu_h: Band
    """The same of the homes that explain the bills"""
    survey_btu_h_per_degf: float
    """Heat loss of the building for each degree between rooms and outdoors"""
    fitted_btu_h_per_degf: Band
    disagreement: float
    """Share by which the loss by the bills is more than that by the survey; negative: less"""
    verdict: Verdict
    colder_than_said: bool
    """True: the bills fit only if the house is kept clearly colder than was said"""
    unexplained_bills: int
    """Bills far off what the fitted house should use"""


def heat_loss_from_bills(
    case: Case,
    sizing: Sizing,
    *,
    weather: Weather | None = None,
    progress: Progress | None = None,
) -> BillHeatLoss | None:
    """The heat loss by the bills of a case beside that of its sizing; None without bills.

    The homes that explain the bills are held at the wanted warmth as the case states it, in
    the same weather that stands still: what differs is the building alone. None also where
    it is hardly colder than the rooms at the design temperature, and nothing can be told.
    Raises BillsError and CaseError as a fit does.
    """
    design, warmth = sizing.design.outdoor_degc, case.home.thermostat.wanted
    levels = design_levels(design, warmth)
    if case.bills is None or design not in levels:
        return None
    year = weather if weather is not None else weather_of(case)
    fitted = fitted_to_own_bills(case, year, members=MEMBERS, progress=progress)
    assert fitted is not None
    homes = [fitted.draws.member(case, row).home for row in range(MEMBERS)]
    losses = _losses(
        [replace(home, thermostat=case.home.thermostat) for home in homes], year, design
    )
    low, likely, high = (float(one) * BTU_H for one in np.quantile(losses, [0.1, 0.5, 0.9]))
    survey = sizing.loads[0].heat_btu_h
    apart = 1.8 * (warmth - design)
    return BillHeatLoss(
        bills=len(fitted.report.bills),
        survey_btu_h=survey,
        fitted_btu_h=Band(low, likely, high),
        survey_btu_h_per_degf=survey / apart,
        fitted_btu_h_per_degf=Band(low / apart, likely / apart, high / apart),
        disagreement=likely / survey - 1.0,
        verdict=_verdict(survey, low, likely, high),
        colder_than_said=_colder(fitted),
        unexplained_bills=sum(
            finding.topic in ("too little", "too much") for finding in fitted.report.findings
        ),
    )


def _losses(homes: list[Home], weather: Weather, design: float) -> Floats:
    """Heat that each home needs at the design temperature [W], nobody at home, no sun."""
    warmth = homes[0].thermostat.wanted
    levels = design_levels(design, warmth)
    standing = standing_year(weather, levels)
    held = Setpoints(np.full(HOURS, warmth), NO_COOLING, np.full(HOURS, warmth))
    runs = [Run(still_home(home), System("ideal"), held) for home in homes]
    years = simulate_years(runs, standing.weather)
    # The last but one day of the stretch lies in it by every local clock.
    day = int(standing.last_hour[levels.index(design)]) // HOURS - 1
    result: Floats = years.heating[:, day] * W_PER_KW / HOURS
    return result


def _verdict(survey: float, low: float, likely: float, high: float) -> Verdict:
    if low <= survey <= high or abs(likely / survey - 1.0) < APART:
        return "the same"
    return "less by the bills" if likely < survey else "more by the bills"


def _colder(fitted: FittedHouse) -> bool:
    return any(
        finding.topic == "temperature" and finding.deviations < 0.0
        for finding in fitted.report.findings
    )
