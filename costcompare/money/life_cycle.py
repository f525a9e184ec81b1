"""What an option earns over the years, in dollars of today.

Everything is real (without inflation) and counted at the end of each year, as in the
life-cycle cost method of NIST Handbook 135 and ASTM E917 (formulas from memory; the
factors are checked against those quoted from the handbook, see tests/published).

Factors, with d the discount rate, e the growth of the price of energy above inflation,
and n the years:

    SPV(d, n)     = (1 + d)^-n                                       one amount
    UPV(d, n)     = (1 - (1 + d)^-n) / d                             an equal amount a year
    UPV*(d, e, n) = (1 + e) / (d - e) (1 - ((1 + e) / (1 + d))^n)    an amount that grows
"""

from __future__ import annotations

import math
from dataclasses import dataclass

HALVINGS = 60
"""Bisection steps within one year: 2^-60 of a year, below the resolution of a float."""


@dataclass(frozen=True)
class LifeCycle:
    """The money of one option against going on as today; None where a figure has no meaning."""

    net_cost_usd: float
    """Installed cost less incentives, paid in year 0"""
    simple_payback_years: float | None
    """Net cost over the first year's saving less maintenance; None when that is not above 0.
    It is not cut off at the life or at the study period."""
    discounted_payback_years: float | None
    """When the savings in today's value reach the net cost, read within the year by the
    factors' own formulas; None when that is not within both the study period and the
    option's own life (an option that wears out first has not paid back)"""
    net_savings_usd: float
    """Present value of everything saved less everything spent over the study period"""
    savings_to_investment_ratio: float | None
    """Present value of savings less maintenance over net cost, replacements and residual
    value; None when nothing is invested"""
    adjusted_internal_rate_of_return: float | None
    """A year, savings put back at the discount rate; None without a ratio above 0"""
    yearly_position_usd: tuple[float, ...]
    """Present value so far at the end of year 0, 1, … study period; the residual value, which
    nobody is paid in cash, is not in it"""
    energy_savings_usd: float
    maintenance_usd: float
    replacements_usd: float
    residual_usd: float
    """The four present values that net savings are made of, each with its natural sign"""


def present_value(discount_rate: float, years: float) -> float:
    """SPV: the value today of one dollar after ``years``."""
    return math.exp(-years * math.log1p(discount_rate))


def present_value_yearly(discount_rate: float, years: float) -> float:
    """UPV: the value today of one dollar a year; ``years`` itself at a rate of 0."""
    return present_value_growing(discount_rate, 0.0, years)


def present_value_growing(discount_rate: float, growth: float, years: float) -> float:
    """UPV*: the value today of a dollar a year that grows, ``1 + growth`` at the end of year 1."""
    step = math.log1p(growth) - math.log1p(discount_rate)
    if step == 0.0:
        return years
    # The closed form with its differences taken by expm1: exact where growth and discount
    # rate nearly cancel.
    return math.exp(step) * math.expm1(step * years) / math.expm1(step)


def evaluate(
    *,
    installed_cost: float,
    incentives: float,
    yearly_saving: float,
    maintenance: float,
    life: float,
    study_years: int,
    discount_rate: float,
    price_growth: float,
) -> LifeCycle:
    """The life-cycle figures of an option.

    Parameters
    ----------
    installed_cost
        [$], paid at once; the same again, without incentives, each time the life is over
        within the study period.
    incentives
        [$] taken off the first cost: those that are certain.
    yearly_saving
        Bill before less bill after [$ a year] at today's prices; it grows with
        ``price_growth`` from the end of the first year on.
    maintenance
        [$ a year] on top of what today's system costs; it does not grow.
    life
        [years] until the option wears out. What is left of the last purchase at the end of
        the study period is credited in a straight line.
    study_years
        Whole years that are looked at, at least 1.
    discount_rate, price_growth
        Real, a year (0.03 for 3 %).
    """
    _check(life, study_years, discount_rate, price_growth)
    plan = _Plan(yearly_saving, maintenance, discount_rate, price_growth)
    net_cost = installed_cost - incentives
    times = _replacement_times(life, study_years)
    bought = [(t, installed_cost * present_value(discount_rate, t)) for t in times]
    left = (times[-1] if times else 0.0) + life - study_years
    residual = installed_cost * left / life * present_value(discount_rate, study_years)
    replacements = sum(cost for _, cost in bought)
    invested = net_cost + replacements - residual
    ratio = plan.earned(study_years) / invested if invested > 0.0 else None
    return LifeCycle(
        net_cost_usd=net_cost,
        simple_payback_years=plan.simple_payback(net_cost),
        discounted_payback_years=plan.discounted_payback(net_cost, min(life, study_years)),
        net_savings_usd=plan.earned(study_years) - invested,
        savings_to_investment_ratio=ratio,
        adjusted_internal_rate_of_return=_rate_of_return(ratio, discount_rate, study_years),
        yearly_position_usd=tuple(
            plan.earned(year) - net_cost - sum(cost for t, cost in bought if t <= year)
            for year in range(study_years + 1)
        ),
        energy_savings_usd=plan.saved(study_years),
        maintenance_usd=plan.kept_up(study_years),
        replacements_usd=replacements,
        residual_usd=residual,
    )


@dataclass(frozen=True)
class _Plan:
    """The running money of an option, for any number of years, whole or not."""

    yearly_saving: float
    maintenance: float
    discount_rate: float
    price_growth: float

    def saved(self, years: float) -> float:
        """Present value of the savings [$]."""
        factor = present_value_growing(self.discount_rate, self.price_growth, years)
        return self.yearly_saving * factor

    def kept_up(self, years: float) -> float:
        """Present value of the maintenance [$]."""
        return self.maintenance * present_value_yearly(self.discount_rate, years)

    def earned(self, years: float) -> float:
        """Present value of the savings less the maintenance [$]."""
        return self.saved(years) - self.kept_up(years)

    def simple_payback(self, net_cost: float) -> float | None:
        """[years], or None when the first year saves nothing."""
        first_year = self.yearly_saving - self.maintenance
        return max(net_cost, 0.0) / first_year if first_year > 0.0 else None

    def discounted_payback(self, net_cost: float, horizon: float) -> float | None:
        """[years] until ``net_cost`` is earned, or None when that is not by ``horizon``."""
        if self.simple_payback(net_cost) is None:
            return None
        if net_cost <= 0.0:
            return 0.0
        low = 0.0
        for year in range(1, math.ceil(horizon) + 1):
            high = min(float(year), horizon)
            if self.earned(high) >= net_cost:
                return self._crossing(net_cost, low, high)
            low = high
        return None

    def _crossing(self, net_cost: float, low: float, high: float) -> float:
        """Where ``earned`` passes ``net_cost`` between two times, by bisection."""
        for _ in range(HALVINGS):
            middle = 0.5 * (low + high)
            low, high = (low, middle) if self.earned(middle) >= net_cost else (middle, high)
        return high


def _replacement_times(life: float, study_years: int) -> list[float]:
    """[years] when the option is bought again; none at the very end of the study period."""
    count = math.ceil(study_years / life - 1e-9) - 1
    return [life * number for number in range(1, count + 1)]


def _rate_of_return(ratio: float | None, discount_rate: float, years: int) -> float | None:
    """AIRR = (1 + r) SIR^(1/N) - 1, with savings put back at r, the discount rate."""
    if ratio is None or ratio <= 0.0:
        return None
    return float((1.0 + discount_rate) * ratio ** (1.0 / years) - 1.0)


def _check(life: float, study_years: int, discount_rate: float, price_growth: float) -> None:
    if not life > 0.0:
        raise ValueError(f"life must be above 0 years, not {life}")
    if study_years < 1:
        raise ValueError(f"the study period must be at least 1 year, not {study_years}")
    if not (discount_rate > -1.0 and price_growth > -1.0):
        raise ValueError("a rate a year must be above -100 %")
