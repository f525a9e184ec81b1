"""Base load, heating and cooling from bills and temperatures alone: variable-base degree days.

    use per day = base + heating slope x heating degree days + cooling slope x cooling degree days

with the degree days of each bill summed day by day over its read days, each bill weighing by its
days, and the balance points searched on a grid (CalTRACK Methods v2.0, 3.3 and 3.4; the
change-point forms of ASHRAE Guideline 14, from memory). Given one mean temperature a bill instead
of one a day the degree days are those of the mean: another form, biased near the balance point.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from costcompare.billing.balance_search import (
    DEGF_IN_A_K,
    FORMS,
    Candidate,
    Form,
    Search,
    adjusted,
    chance,
    chosen,
    degc,
    explained_as_well,
    total_squares,
)
from costcompare.billing.bill_weather import BillWeather, with_weather
from costcompare.billing.daily_temperatures import DailyTemperatures
from costcompare.billing.goodness import cv_rmse, nmbe
from costcompare.billing.least_squares import LeastSquares, solve
from costcompare.billing.reading.bills import Bill, Bills
from costcompare.errors import BillsError, Fault

FEWEST_BILLS = 9
"""Bills from which a line is fitted (judgement: fewer follow the weather of one season)"""
WHOLE_YEAR = 328
"""[days] below which bills miss a season (CalTRACK Methods v2.0: 365 less 37)"""


@dataclass(frozen=True)
class BillFit:
    """One bill beside what the line says of it."""

    begins: str
    ends: str
    days: int
    kwh: float
    computed_kwh: float
    base_kwh: float
    heating_kwh: float
    cooling_kwh: float
    mean_degf: float
    heating_degree_days: float | None
    """[F day] below the balance point"""
    cooling_degree_days: float | None


@dataclass(frozen=True)
class DegreeDayFit:
    """What bills and temperatures say together."""

    is_weather_driven: bool
    reason: str
    """Why not, in words; empty where it is"""
    form: Form | None
    bill_count: int
    days: int
    base_kwh_per_day: float
    base_error: float | None
    """Standard error, the balance point held"""
    heating_kwh_per_degf_day: float | None
    heating_error: float | None
    heating_balance_degf: float | None
    heating_balance_degc: float | None
    cooling_kwh_per_degf_day: float | None
    cooling_error: float | None
    cooling_balance_degf: float | None
    cooling_balance_degc: float | None
    balance_low_degf: float | None
    """Balance points in between explain the bills as well (nine in ten)"""
    balance_high_degf: float | None
    r_squared: float
    """Of the bills in kWh; of the use a day where bills are not weighted"""
    adjusted_r_squared: float
    chance: float
    """That use without any weather in it would be explained as well (F test)"""
    rmse: float
    """[kWh] a bill; [kWh/day] where bills are not weighted"""
    cv_rmse: float
    nmbe: float
    is_daily: bool
    is_weighted: bool
    bills: tuple[BillFit, ...]
    cautions: tuple[str, ...] = ()

    @property
    def parameters(self) -> int:
        """Numbers that were fitted, balance points among them."""
        return {None: 1, "heating": 3, "cooling": 3, "heating and cooling": 5}[self.form]

    def per_day(self, degc_of_days: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
        """Base, heating and cooling [kWh] of each day of these means [degC]."""
        base = np.where(np.isfinite(degc_of_days), self.base_kwh_per_day, np.nan)
        heating, cooling = np.zeros(len(base)), np.zeros(len(base))
        if self.heating_kwh_per_degf_day is not None and self.heating_balance_degc is not None:
            below = np.maximum(self.heating_balance_degc - degc_of_days, 0.0)
            heating = self.heating_kwh_per_degf_day * DEGF_IN_A_K * below
        if self.cooling_kwh_per_degf_day is not None and self.cooling_balance_degc is not None:
            above = np.maximum(degc_of_days - self.cooling_balance_degc, 0.0)
            cooling = self.cooling_kwh_per_degf_day * DEGF_IN_A_K * above
        return base, heating, cooling


def fit(
    bills: Bills | Sequence[Bill],
    temperatures: DailyTemperatures | Sequence[float],
    *,
    forms: tuple[Form, ...] = FORMS,
    search: Search | None = None,
) -> DegreeDayFit:
    """The line through the bills, or why there is none.

    ``temperatures`` are daily means, or one mean a bill [degC]. The answer is "not weather-driven"
    where the adjusted R2 stays under the least, or the F test that counts each searched balance
    point leaves too much to chance. Raises :class:`BillsError` where fewer than two bills have
    temperatures.
    """
    search = search or Search()
    given = bills.bills if isinstance(bills, Bills) else tuple(bills)
    data = with_weather(given, temperatures)
    if len(data.bills) < 2:
        rule = f"hold nine tenths of the days of {len(data.bills)} of {len(given)} bills"
        instead = "a file that holds the days of the bills"
        raise BillsError([Fault("the temperatures", rule, instead=instead)])
    return _fitted(data, search, forms)


def fit_days(data: BillWeather, places: Sequence[int]) -> DegreeDayFit:
    """The line through some of the bills that stand beside their temperatures."""
    some = replace(
        data,
        bills=tuple(data.bills[i] for i in places),
        days=data.days[list(places)],
        kwh=data.kwh[list(places)],
        day_degc=tuple(data.day_degc[i] for i in places),
    )
    return _fitted(some, Search(), FORMS)


def _fitted(data: BillWeather, search: Search, forms: tuple[Form, ...]) -> DegreeDayFit:
    found = chosen(data, search, forms) if len(data.bills) >= FEWEST_BILLS else None
    judged = _judged(found, data, search)
    return _line(None if judged.reason else found, data, search, judged)


@dataclass(frozen=True)
class _Judged:
    """Whether a candidate is taken, and what it was judged by."""

    reason: str
    adjusted_r_squared: float
    chance: float


def _judged(found: Candidate | None, data: BillWeather, search: Search) -> _Judged:
    count, total = len(data.bills), total_squares(data, search)
    if count < FEWEST_BILLS:
        return _Judged(f"{count} bills are too few: a line needs {FEWEST_BILLS}", 0.0, 1.0)
    if found is None or total <= 0.0:
        return _Judged("no balance point explains the use by the weather", 0.0, 1.0)
    r2 = adjusted(found.sum_of_squares, total, count, found.parameters)
    by_chance = chance(found.sum_of_squares, total, count, found.parameters)
    reason = ""
    if r2 < search.least_r_squared:
        reason = f"the weather explains {max(r2, 0.0):.0%} of how the use a day differs"
    elif by_chance >= search.largest_chance:
        reason = f"use without any weather in it would look so in {by_chance:.0%} of cases"
    return _Judged(reason, r2, by_chance)


def _line(
    found: Candidate | None, data: BillWeather, search: Search, judged: _Judged
) -> DegreeDayFit:
    """The line with all that is told of it; the mean alone without a candidate."""
    parts = _parts(found, data)
    weight = data.days if search.weighted else np.ones(len(data.days))
    solved = solve(np.stack(parts.columns, axis=1), data.use, weight)
    spread = explained_as_well(found, data, search) if found else None
    slopes = dict(zip(parts.names, range(1, len(parts.columns)), strict=True))
    told = _told(parts, solved, data, search)
    heating, cooling = (_slope(name, slopes, solved) for name in ("heating", "cooling"))
    return DegreeDayFit(
        is_weather_driven=found is not None,
        reason=judged.reason,
        form=found.form if found else None,
        bill_count=len(data.bills),
        days=int(data.days.sum()),
        base_kwh_per_day=float(solved.coefficients[0]),
        base_error=float(solved.standard_errors[0]),
        heating_kwh_per_degf_day=heating[0],
        heating_error=heating[1],
        heating_balance_degf=found.heating_degf if found else None,
        heating_balance_degc=_in_degc(found.heating_degf if found else None),
        cooling_kwh_per_degf_day=cooling[0],
        cooling_error=cooling[1],
        cooling_balance_degf=found.cooling_degf if found else None,
        cooling_balance_degc=_in_degc(found.cooling_degf if found else None),
        balance_low_degf=spread[0] if spread else None,
        balance_high_degf=spread[1] if spread else None,
        r_squared=told.r_squared,
        adjusted_r_squared=told.adjusted_r_squared if found else judged.adjusted_r_squared,
        chance=judged.chance,
        rmse=told.rmse,
        cv_rmse=told.cv_rmse,
        nmbe=told.nmbe,
        is_daily=data.is_daily,
        is_weighted=search.weighted,
        bills=_bill_fits(parts, solved, data),
        cautions=_cautions(found, data),
    )


@dataclass(frozen=True)
class _Parts:
    """Columns of the line: the base, then the degree days a day [K]."""

    columns: tuple[np.ndarray, ...]
    names: tuple[str, ...]


def _parts(found: Candidate | None, data: BillWeather) -> _Parts:
    columns, names = [np.ones(len(data.bills))], []
    if found is not None and found.heating_degf is not None:
        columns.append(data.heating(np.atleast_1d(degc(found.heating_degf)))[0])
        names.append("heating")
    if found is not None and found.cooling_degf is not None:
        columns.append(data.cooling(np.atleast_1d(degc(found.cooling_degf)))[0])
        names.append("cooling")
    return _Parts(tuple(columns), tuple(names))


def _slope(
    name: str, places: dict[str, int], solved: LeastSquares
) -> tuple[float | None, float | None]:
    """A slope and its standard error [kWh/F/day]."""
    if name not in places:
        return None, None
    at = places[name]
    return (
        float(solved.coefficients[at]) / DEGF_IN_A_K,
        float(solved.standard_errors[at]) / DEGF_IN_A_K,
    )


def _in_degc(degf: float | None) -> float | None:
    return None if degf is None else float(degc(degf))


@dataclass(frozen=True)
class _Told:
    r_squared: float
    adjusted_r_squared: float
    rmse: float
    cv_rmse: float
    nmbe: float


def _told(parts: _Parts, solved: LeastSquares, data: BillWeather, search: Search) -> _Told:
    """Figures on the bills [kWh]; on the use a day, balance point not counted, when unweighted."""
    scale = data.days if search.weighted else np.ones(len(data.days))
    measured = data.use * scale
    computed = (data.use - solved.residuals) * scale
    coefficients = len(parts.columns)
    searched = coefficients - 1
    parameters = coefficients + (searched if search.weighted else 0)
    squares = float(((measured - computed) ** 2).sum())
    total = float(((measured - measured.mean()) ** 2).sum())
    r2 = 1.0 - squares / total if total > 0.0 else 0.0
    count = len(measured)
    counted = coefficients - 1 + searched
    adjusted_r2 = 1.0 - (1.0 - r2) * (count - 1) / (count - counted - 1) if counted else 0.0
    if count <= parameters:
        return _Told(r2, adjusted_r2, 0.0, 0.0, 0.0)
    return _Told(
        r2,
        adjusted_r2,
        float(np.sqrt(squares / (count - parameters))),
        cv_rmse(measured, computed, parameters),
        nmbe(measured, computed, parameters),
    )


def _bill_fits(parts: _Parts, solved: LeastSquares, data: BillWeather) -> tuple[BillFit, ...]:
    amounts = {
        name: solved.coefficients[place] * parts.columns[place] * data.days
        for place, name in enumerate(parts.names, 1)
    }
    degree_days = {
        name: DEGF_IN_A_K * parts.columns[place] * data.days
        for place, name in enumerate(parts.names, 1)
    }
    nothing = np.zeros(len(data.bills))
    computed = (data.use - solved.residuals) * data.days
    means = DEGF_IN_A_K * data.mean_degc + 32.0
    return tuple(
        BillFit(
            begins=bill.begins.isoformat(),
            ends=bill.ends.isoformat(),
            days=bill.days,
            kwh=bill.kwh,
            computed_kwh=float(computed[i]),
            base_kwh=float(solved.coefficients[0] * data.days[i]),
            heating_kwh=float(amounts.get("heating", nothing)[i]),
            cooling_kwh=float(amounts.get("cooling", nothing)[i]),
            mean_degf=float(means[i]),
            heating_degree_days=_at(degree_days.get("heating"), i),
            cooling_degree_days=_at(degree_days.get("cooling"), i),
        )
        for i, bill in enumerate(data.bills)
    )


def _at(values: np.ndarray | None, place: int) -> float | None:
    return None if values is None else float(values[place])


def _cautions(found: Candidate | None, data: BillWeather) -> tuple[str, ...]:
    said = []
    if data.without:
        listed = ", ".join(bill.dates for bill in data.without[:4])
        said.append(
            f"{len(data.without)} bills have no temperatures on nine tenths of their days and are "
            f"not used (first: {listed})."
        )
    if found is not None and data.days.sum() < WHOLE_YEAR:
        said.append(
            f"The bills hold {int(data.days.sum())} days: less than a year, so a season is missing."
        )
    if found is not None and any(bill.export_kwh > 0.0 for bill in data.bills):
        said.append("The house gives electricity to the grid: what it uses is more than it buys.")
    return tuple(said)
