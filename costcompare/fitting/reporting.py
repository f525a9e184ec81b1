"""What a fit says, from what it found: bills, facts, ranges of the year."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import cast

import numpy as np
from numpy.typing import NDArray

from costcompare.billing.goodness import cv_rmse, nmbe
from costcompare.billing.reading import Bills
from costcompare.comparison import Band
from costcompare.fitting import judging
from costcompare.fitting.gauss_newton import MostLikely
from costcompare.fitting.house_model import HouseModel, Slopes, on_bills
from costcompare.fitting.results import FittedBill, FittedFact, HouseFit
from costcompare.uncertainty import UncertainFact
from costcompare.uncertainty.distributions import Z90
from costcompare.uncertainty.spreads import PLAIN, fact_spreads
from costcompare.units import KindName, customary

Floats = NDArray[np.float64]


@dataclass(frozen=True)
class Fitting:
    """Everything that one fit goes by, and what it found."""

    model: HouseModel
    bills: Bills
    counts: Floats
    """Days of each bill, shape (bills, 365)"""
    slopes: Slopes
    """The likely house and its slopes"""
    by_degree: Floats | None
    """[kWh/K] by day; None where the bills met their own weather"""
    found: MostLikely
    fitted: Slopes
    """The fitted house, and the slopes a small step before it"""
    former_owner: bool


def report_of(fitting: Fitting) -> HouseFit:
    """The whole report of a fit."""
    fitted, known, model = fitting.fitted, fitting.slopes, fitting.model
    bands = _bands(fitting)
    bias, misses = _agreement(fitting)
    learning = judging.Learning(
        fitted.house.electricity[0],
        fitted.house.heating[0],
        fitted.electricity,
        _yearly_slopes(fitted.heating, fitted.house.heating[0]),
    )
    return HouseFit(
        format=1,
        title=model.case.title,
        weather=model.weather.station,
        weather_is_of_the_bills=fitting.by_degree is None,
        bills=bands,
        facts=_facts(fitting),
        yearly_heating_said_kwh=_yearly(known.house.heating, known.heating, None),
        yearly_heating_kwh=_yearly(fitted.house.heating, fitted.heating, fitting),
        yearly_electricity_kwh=_yearly(fitted.house.electricity, fitted.electricity, fitting),
        mean_bias=bias,
        scatter=misses,
        within_limits=judging.within_limits(bands, bias, misses),
        findings=judging.findings(model.facts, fitting.found, bands),
        next_bill=judging.next_bill(
            learning, fitting.counts, fitting.found, by_degree=fitting.by_degree
        ),
        former_owner=fitting.former_owner,
        settled=fitting.found.settled,
        notes=tuple(note.sentence() for note in fitting.bills.notes),
    )


def _bands(fitting: Fitting) -> tuple[FittedBill, ...]:
    """Every bill as said and as fitted, with eight of ten round each."""
    counts, found, bills = fitting.counts, fitting.found, fitting.bills.bills
    said = on_bills(fitting.slopes.house.electricity[0], counts)
    before = on_bills(fitting.slopes.electricity, counts).T
    computed = on_bills(fitting.fitted.house.electricity[0], counts)
    heating = on_bills(fitting.fitted.house.heating[0], counts)
    wide = np.sqrt(np.square(before).sum(axis=1))
    narrow = np.sqrt(np.einsum("bi,ij,bj->b", found.slopes, found.covariance, found.slopes))
    return tuple(
        FittedBill(
            begins=bill.begins.isoformat(),
            ends=bill.ends.isoformat(),
            days=bill.days,
            read=bill.read,
            measured_kwh=bill.kwh,
            said_kwh=band_round(float(said[n]), float(wide[n])),
            computed_kwh=band_round(float(computed[n]), float(narrow[n])),
            heating_kwh=float(heating[n]),
            error_kwh=float(fitting.found.errors[n]),
        )
        for n, bill in enumerate(bills)
    )


def _agreement(fitting: Fitting) -> tuple[float, float]:
    """NMBE and CV(RMSE) with one parameter counted, as for a calibrated simulation.

    A single bill leaves nothing over to count it against: no parameter then.
    """
    measured = np.array([bill.kwh for bill in fitting.bills.bills])
    computed = on_bills(fitting.fitted.house.electricity[0], fitting.counts)
    parameters = min(1, len(measured) - 1)
    return nmbe(measured, computed, parameters), cv_rmse(measured, computed, parameters)


def band_round(middle: float, deviation: float) -> Band:
    """Eight of ten round a middle, equally far in the logarithm.

    Where the standard deviation is more than the middle a logarithm says nothing: equally far
    on either side then, and not below 0.
    """
    if deviation > middle:
        far = Z90 * deviation
        return Band(max(middle - far, 0.0), max(middle, 0.0), max(middle, 0.0) + far)
    if middle <= 0.0:
        return Band(0.0, 0.0, 0.0)
    factor = math.exp(Z90 * deviation / middle)
    return Band(middle / factor, middle, middle * factor)


def _yearly_slopes(slopes: Floats, days: Floats) -> Floats:
    """Of the logarithm of the year's sum, shape (facts,)."""
    result: Floats = slopes.sum(axis=1) / max(float(days.sum()), 1e-9)
    return result


def _yearly(days: Floats, slopes: Floats, fitting: Fitting | None) -> Band:
    """The year's sum with its range: from the spreads alone, or with what the bills say."""
    of_log = _yearly_slopes(slopes, days[0])
    spread = np.eye(of_log.shape[0]) if fitting is None else fitting.found.covariance
    middle = float(days[0].sum())
    return band_round(middle, middle * math.sqrt(max(float(of_log @ spread @ of_log), 0.0)))


def _facts(fitting: Fitting) -> tuple[FittedFact, ...]:
    """The facts that today's bills hang on, the most moved first."""
    found, moves = fitting.found, np.abs(fitting.found.slopes).max(axis=0) > 0.0
    rows = [
        _fact(fact, float(z), float(spread))
        for fact, z, spread, moved in zip(
            fitting.model.facts, found.z, found.spread, moves, strict=True
        )
        if moved
    ]
    return tuple(sorted(rows, key=lambda row: -abs(row.moved)))


def _fact(fact: UncertainFact, z: float, spread: float) -> FittedFact:
    assert fact.today is not None
    said = tuple(fact.today.at(number) for number in (-Z90, 0.0, Z90))
    fitted = tuple(fact.today.at(z + number * spread) for number in (-Z90, 0.0, Z90))
    shown, unit = _in_units(fact, (*said, *fitted))
    return FittedFact(
        name=fact.name,
        path=fact.path,
        words=fact.words,
        known=fact.known,
        unit=unit,
        said=Band(*shown[:3]),
        fitted=Band(*shown[3:]),
        moved=z,
        learned=1.0 - spread,
    )


def _in_units(fact: UncertainFact, values: Sequence[float]) -> tuple[list[float], str]:
    """The values in the unit people here use; the plain values of a count or factor."""
    measure = fact_spreads()[fact.name].measure
    if measure in PLAIN:
        return list(values), ""
    pairs = [customary(value, cast(KindName, measure)) for value in values]
    return [number for number, _ in pairs], pairs[0][1]
