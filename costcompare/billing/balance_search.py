"""The search for balance points: all of a grid are solved, the best that makes sense is kept."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np
from scipy import stats

from costcompare.billing.bill_weather import BillWeather

Form = Literal["heating", "cooling", "heating and cooling"]
FORMS: tuple[Form, ...] = ("heating", "cooling", "heating and cooling")
DEGF_IN_A_K = 1.8


@dataclass(frozen=True)
class Search:
    """What is searched and what is taken as an answer."""

    lowest_degf: float = 30.0
    highest_degf: float = 90.0
    """Ends of the grid of balance points (CalTRACK Methods v2.0: 30 to 90 F)"""
    step_degf: float = 0.5
    """(CalTRACK Methods v2.0: 3 F at most; finer costs nothing)"""
    weighted: bool = True
    """Each bill weighs by its days (CalTRACK Methods v2.0, 3.4.2)"""
    least_degree_days: float = 20.0
    """[F day a year] that a balance point must have (CalTRACK Methods v2.0)"""
    least_r_squared: float = 0.30
    """Adjusted R2 below which use is not called weather-driven (judgement)"""
    largest_chance: float = 0.01
    """Chance by the F test from which use is not called weather-driven (judgement)"""
    chance_of_more: float = 0.05
    """Chance by the F test below which cooling is added to heating (judgement)"""

    @property
    def grid_degf(self) -> np.ndarray:
        """The balance points."""
        count = round((self.highest_degf - self.lowest_degf) / self.step_degf) + 1
        return np.round(self.lowest_degf + self.step_degf * np.arange(count), 9)


@dataclass(frozen=True)
class Candidate:
    """The best balance points of one form."""

    form: Form
    heating_degf: float | None
    cooling_degf: float | None
    sum_of_squares: float
    parameters: int
    """Coefficients without the base, and balance points"""


def degc(degf: np.ndarray | float) -> np.ndarray:
    """[degC] of [degF]."""
    return (np.asarray(degf, dtype=float) - 32.0) / DEGF_IN_A_K


def best_of(form: Form, data: BillWeather, search: Search) -> Candidate | None:
    """The balance points of that form with the least squares; None where none makes sense.

    Base and slopes must be above 0, cooling must not begin below heating, and each balance point
    needs its degree days.
    """
    grid = search.grid_degf
    heating, cooling = data.heating(degc(grid)), data.cooling(degc(grid))
    if form == "heating":
        pairs = np.array([(i, -1) for i in range(len(grid))])
    elif form == "cooling":
        pairs = np.array([(-1, i) for i in range(len(grid))])
    else:
        pairs = np.array([(i, j) for i in range(len(grid)) for j in range(i, len(grid))])
    columns = [
        part[pairs[:, n]] for n, part in enumerate((heating, cooling)) if (pairs[:, n] >= 0).all()
    ]
    squares, fits = _squares(columns, data, search)
    a_year = 365.0 / data.days.sum()
    for part in columns:
        degree_days = DEGF_IN_A_K * (part * data.days).sum(axis=1) * a_year
        fits &= degree_days >= search.least_degree_days
    if not fits.any():
        return None
    at = int(np.argmin(np.where(fits, squares, np.inf)))
    i, j = pairs[at]
    return Candidate(
        form,
        float(grid[i]) if i >= 0 else None,
        float(grid[j]) if j >= 0 else None,
        float(squares[at]),
        2 * len(columns),
    )


def _squares(
    columns: list[np.ndarray], data: BillWeather, search: Search
) -> tuple[np.ndarray, np.ndarray]:
    """Weighted residual squares of every set of balance points, and whether all is above 0."""
    weight = data.days if search.weighted else np.ones(len(data.days))
    share = weight / weight.sum()
    use = data.use
    about_use = use - share @ use
    means = [part @ share for part in columns]
    about = [part - mean[:, None] for part, mean in zip(columns, means, strict=True)]
    products = np.array([[(a * b) @ weight for b in about] for a in about])
    with_use = np.array([(a * about_use) @ weight for a in about])
    total = float(weight @ about_use**2)
    if len(columns) == 1:
        determinant = products[0, 0]
        solved = determinant > 1e-9
        slopes = np.where(solved, with_use / np.where(solved, determinant, 1.0), 0.0)
    else:
        determinant = products[0, 0] * products[1, 1] - products[0, 1] ** 2
        solved = determinant > 1e-9 * products[0, 0] * products[1, 1]
        safe = np.where(solved, determinant, 1.0)
        first = (with_use[0] * products[1, 1] - with_use[1] * products[0, 1]) / safe
        second = (with_use[1] * products[0, 0] - with_use[0] * products[0, 1]) / safe
        slopes = np.where(solved, np.array([first, second]), 0.0)
    base = share @ use - sum(s * m for s, m in zip(slopes, means, strict=True))
    squares = total - (slopes * with_use).sum(axis=0)
    return np.maximum(squares, 0.0), solved & (slopes > 0.0).all(axis=0) & (base > 0.0)


def adjusted(squares: float, total: float, count: int, parameters: int) -> float:
    """R2 adjusted for the parameters (CalTRACK Methods v2.0), balance points counted among them."""
    return 1.0 - (squares / (count - parameters - 1)) / (total / (count - 1))


def chance(squares: float, total: float, count: int, parameters: int) -> float:
    """Chance that use without any weather in it would be explained as well (F test)."""
    left = count - parameters - 1
    if squares <= 1e-12 * total:
        return 0.0
    f = ((total - squares) / parameters) / (squares / left)
    return float(stats.f.sf(f, parameters, left))


def total_squares(data: BillWeather, search: Search) -> float:
    """Weighted squares of use about its mean."""
    weight = data.days if search.weighted else np.ones(len(data.days))
    about = data.use - (weight @ data.use) / weight.sum()
    return float(weight @ about**2)


def chosen(data: BillWeather, search: Search, forms: tuple[Form, ...]) -> Candidate | None:
    """Heating or cooling, whichever leaves less; both only where an F test says that both count."""
    total, count = total_squares(data, search), len(data.bills)
    found = {
        form: one
        for form in forms
        if (one := best_of(form, data, search)) is not None and count - one.parameters - 1 > 0
    }
    single = [one for form, one in found.items() if form != "heating and cooling"]
    best = min(single, key=lambda one: one.sum_of_squares, default=None)
    both = found.get("heating and cooling")
    if both is None or total <= 0.0:
        return best
    if best is None:
        return both
    left = count - both.parameters - 1
    gain = (best.sum_of_squares - both.sum_of_squares) / (both.parameters - best.parameters)
    if gain <= 1e-12 * total:
        return best
    if both.sum_of_squares <= 1e-12 * total:
        return both
    f = gain / (both.sum_of_squares / left)
    by_chance = float(stats.f.sf(f, both.parameters - best.parameters, left))
    return both if by_chance < search.chance_of_more else best


def explained_as_well(
    candidate: Candidate, data: BillWeather, search: Search, share: float = 0.9
) -> tuple[float, float] | None:
    """The range of balance points [degF] that explain the bills as well, by an F test.

    Those whose squares are below the least times 1 + F(share; 1, n - 3)/(n - 3), with the other
    balance point held (linear confidence region for one parameter, Draper and Smith).
    """
    left = len(data.bills) - candidate.parameters - 1
    if left <= 0 or candidate.form == "heating and cooling":
        return None
    grid = search.grid_degf
    part = data.heating(degc(grid)) if candidate.form == "heating" else data.cooling(degc(grid))
    squares, fits = _squares([part], data, search)
    limit = candidate.sum_of_squares * (1.0 + float(stats.f.ppf(share, 1, left)) / left)
    inside = grid[fits & (squares <= limit * (1.0 + 1e-9) + 1e-9)]
    return (float(inside.min()), float(inside.max())) if len(inside) else None
