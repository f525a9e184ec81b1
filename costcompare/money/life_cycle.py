"""What an option earns over the years against going on as today.

The life-cycle cost method of NIST Handbook 135 and ASTM E917 (from memory), with its
factors in :mod:`costcompare.money.factors`:

    LCC  = first cost + replacements - what is left + energy + upkeep      all present values
    NS   = LCC of today - LCC of the option
    SIR  = PV(energy saved - upkeep) / PV(first cost + replacements - what is left)
    AIRR = (1 + d) SIR^(1 / N) - 1

Today's own system may have to be replaced within the years looked at; where the case says
when and for how much, an option that takes its place avoids that purchase.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise

from scipy.optimize import brentq

from costcompare.money.outlook import Outlook

CLOSE = 1e-9
"""[years] how closely the time is sought at which the money is back"""


@dataclass(frozen=True)
class OldSystem:
    """Today's system, which would have to be bought anew one day."""

    remaining_life: float
    """[years] until then"""
    replacement_cost: float
    """[$] in today's money"""
    life: float
    """[years] that the new one of the same kind lasts"""


@dataclass(frozen=True)
class Purchase:
    """An option as money sees it."""

    installed_cost: float
    """[$], paid at once; the same again, without incentives, each time its life is over"""
    yearly_saving: float
    """Bill before less bill after [$ a year] at today's prices"""
    life: float
    """[years] until it wears out; what is left at the end is credited in a straight line"""
    incentives: float = 0.0
    """[$] that lower the price at once: those that are certain"""
    later_incentives: float = 0.0
    """[$] fixed in dollars that come back at the end of the first year: tax credits"""
    maintenance: float = 0.0
    """[$ a year] on top of what today's system costs"""
    old_system: OldSystem | None = None
    """Whose replacement it makes needless; None where it does not, or is not counted"""

    def __post_init__(self) -> None:
        lives = [self.life] + ([self.old_system.life] if self.old_system else [])
        if not min(lives) > 0.0:
            raise ValueError(f"life must be above 0 years, not {min(lives)}")


@dataclass(frozen=True)
class LifeCycle:
    """The money of one option against going on as today; None where a figure has no meaning."""

    net_cost_usd: float
    """Installed cost less incentives"""
    simple_payback_years: float | None
    """Net cost over the first year's saving less maintenance; None when that is not above 0.
    It is not cut off at the life or at the study period."""
    discounted_payback_years: float | None
    """When the savings in today's value reach the net cost, read within the year by the
    factors' own formulas; None when that is not within both the study period and the
    option's own life (an option that wears out first has not paid back)"""
    unpaid_again_years: float | None
    """When, after that, a replacement takes the money out again; None when none does"""
    back_for_good_years: float | None
    """From when on it stays paid back to the end of the study period; None when it does not"""
    net_savings_usd: float
    """Present value of everything saved less everything spent over the study period"""
    savings_to_investment_ratio: float | None
    """Present value of savings less maintenance over net cost, replacements and residual
    value; None when nothing is invested"""
    adjusted_internal_rate_of_return: float | None
    """A year, savings put back at the discount rate; None without a ratio above 0"""
    yearly_position_usd: tuple[float, ...]
    """Present value so far at the end of year 0, 1, … study period; the residual value, which
    nobody is paid in cash, is not in it: where you stand if you move and leave it behind"""
    yearly_with_residual_usd: tuple[float, ...]
    """The same with what is left of the option, in a straight line"""
    energy_savings_usd: float
    maintenance_usd: float
    replacements_usd: float
    avoided_replacements_usd: float
    """Of today's system, less what would be left of the last one"""
    residual_usd: float
    """The five present values that net savings are made of, each with its natural sign"""


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
    """The life-cycle figures of an option; :func:`assess` for the whole of them.

    Money in [$], of today; rates real, a year (0.03 for 3 %); life in [years].
    """
    purchase = Purchase(
        installed_cost=installed_cost,
        yearly_saving=yearly_saving,
        life=life,
        incentives=incentives,
        maintenance=maintenance,
    )
    return assess(purchase, Outlook(study_years, discount_rate, price_growth))


def assess(purchase: Purchase, outlook: Outlook) -> LifeCycle:
    """The life-cycle figures of a purchase over the years ahead."""
    plan = _Plan(purchase, outlook)
    years = outlook.study_years
    net_cost = purchase.installed_cost - purchase.incentives - purchase.later_incentives
    horizon = min(purchase.life, float(years))
    back = _first_at_least_nothing(plan.position, plan.marks, horizon)
    if plan.first_year <= 0.0:
        back = None
    again = None if back is None else _first_below_nothing(plan.position, plan.marks, back)
    invested = plan.invested(years)
    ratio = plan.running(years) / invested if invested > 0.0 else None
    return LifeCycle(
        net_cost_usd=net_cost,
        simple_payback_years=(
            max(net_cost, 0.0) / plan.first_year if plan.first_year > 0.0 else None
        ),
        discounted_payback_years=back,
        unpaid_again_years=again,
        back_for_good_years=_last_crossing(plan.position, plan.marks, back),
        net_savings_usd=plan.running(years) - invested,
        savings_to_investment_ratio=ratio,
        adjusted_internal_rate_of_return=_rate_of_return(ratio, outlook.discount_rate, years),
        yearly_position_usd=tuple(plan.position(float(year)) for year in range(years + 1)),
        yearly_with_residual_usd=tuple(
            plan.position(float(year)) + plan.left(year) for year in range(years + 1)
        ),
        energy_savings_usd=outlook.energy(purchase.yearly_saving, years),
        maintenance_usd=outlook.upkeep(purchase.maintenance, years),
        replacements_usd=plan.replacements,
        avoided_replacements_usd=plan.avoided,
        residual_usd=plan.own_left(years),
    )


def life_cycle_cost(
    yearly_bill: float, fixed_charges: float, owning: float, outlook: Outlook
) -> float:
    """LCC: a bill over the years and ``owning``, the present value of all else [$].

    The fixed charges within the bill [$ a year] do not grow with the price of energy.
    """
    years = outlook.study_years
    energy = outlook.energy(yearly_bill - fixed_charges, years)
    return energy + outlook.upkeep(fixed_charges, years) + owning


class _Plan:
    """The money of a purchase at any time, whole years or not."""

    def __init__(self, purchase: Purchase, outlook: Outlook) -> None:
        self.purchase, self.outlook = purchase, outlook
        years, old = outlook.study_years, purchase.old_system
        cost = purchase.installed_cost
        self.own = _bought(purchase.life, purchase.life, years)
        self.old = [] if old is None else _bought(old.remaining_life, old.life, years)
        events = [(time, -outlook.purchase(cost, time)) for time in self.own]
        if old is not None:
            events += [(t, outlook.purchase(old.replacement_cost, t)) for t in self.old]
        if purchase.later_incentives:
            events.append((1.0, outlook.fixed(purchase.later_incentives, 1.0)))
        self.events = sorted(events)
        whole = [float(year) for year in range(years + 1)]
        self.marks = sorted({*whole, *(time for time, _ in events if time <= years)})
        """Times between which the position moves without a jump"""

    @property
    def first_year(self) -> float:
        """Saved in the first year at today's prices [$]"""
        return self.purchase.yearly_saving - self.purchase.maintenance

    def running(self, years: float) -> float:
        """Present value of the savings less the maintenance [$]."""
        saved = self.outlook.energy(self.purchase.yearly_saving, years)
        return saved - self.outlook.upkeep(self.purchase.maintenance, years)

    def position(self, years: float, *, before: bool = False) -> float:
        """Present value so far [$]; ``before`` leaves out what happens at that very time."""
        once = sum(usd for t, usd in self.events if t < years or (t == years and not before))
        first = self.purchase.incentives - self.purchase.installed_cost
        return first + once + self.running(years)

    @property
    def replacements(self) -> float:
        """Present value of buying the option again [$]."""
        cost = self.purchase.installed_cost
        return sum(self.outlook.purchase(cost, time) for time in self.own)

    @property
    def avoided(self) -> float:
        """Present value of not buying today's system again, less what would be left [$]."""
        old, years = self.purchase.old_system, self.outlook.study_years
        if old is None:
            return 0.0
        bought = sum(self.outlook.purchase(old.replacement_cost, t) for t in self.old)
        return bought - self.old_left(years)

    def own_left(self, years: int) -> float:
        """Present value of what is left of the option after ``years`` [$]."""
        last = max((t for t in self.own if t < years), default=0.0)
        share = max(last + self.purchase.life - years, 0.0) / self.purchase.life
        return self.outlook.purchase(self.purchase.installed_cost * share, years)

    def old_left(self, years: int) -> float:
        """Present value of what would be left of today's system bought anew [$]."""
        old = self.purchase.old_system
        bought = [t for t in self.old if t < years]
        if old is None or not bought:
            return 0.0
        share = (bought[-1] + old.life - years) / old.life
        return self.outlook.purchase(old.replacement_cost * share, years)

    def left(self, years: int) -> float:
        """What is left of the option over what would be left of today's system [$]."""
        return self.own_left(years) - self.old_left(years)

    def invested(self, years: int) -> float:
        """Present value of all purchases less what is left at the end [$]."""
        purchase = self.purchase
        credited = self.outlook.fixed(purchase.later_incentives, 1.0)
        first = purchase.installed_cost - purchase.incentives - credited
        return first + self.replacements - self.avoided - self.own_left(years)


def _bought(first: float, life: float, study_years: int) -> list[float]:
    """[years] when something is bought again; not at the very end of the study period."""
    count = max(math.ceil((study_years - first) / life - 1e-9), 0)
    return [first + life * number for number in range(count)]


Position = Callable[..., float]


def _first_at_least_nothing(position: Position, marks: list[float], horizon: float) -> float | None:
    """The first time up to ``horizon`` at which the position is not below 0."""
    times = [mark for mark in marks if mark < horizon] + [horizon]
    if position(times[0]) >= 0.0:
        return times[0]
    for start, end in pairwise(times):
        if position(end, before=True) >= 0.0:
            return _crossing(position, start, end)
        if position(end) >= 0.0:
            return end
    return None


def _first_below_nothing(position: Position, marks: list[float], since: float) -> float | None:
    """The first time after ``since`` at which the position is below 0 again."""
    return next((mark for mark in marks if mark > since and position(mark) < -1e-9), None)


def _last_crossing(position: Position, marks: list[float], back: float | None) -> float | None:
    """The time from which on the position stays at 0 or above; None when it does not."""
    if position(marks[-1]) < 0.0:
        return None
    below = [mark for mark in marks if position(mark) < -1e-9]
    if not below:
        return back if back is not None else 0.0
    end = next(mark for mark in marks if mark > below[-1])
    if position(end, before=True) >= 0.0:
        return _crossing(position, below[-1], end)
    return end


def _crossing(position: Position, low: float, high: float) -> float:
    """Where a position that is below 0 at ``low`` passes 0 before what happens at ``high``."""

    def between(time: float) -> float:
        return position(time, before=time > low)

    return float(brentq(between, low, high, xtol=CLOSE)) if between(high) > 0.0 else high


def _rate_of_return(ratio: float | None, discount_rate: float, years: int) -> float | None:
    """AIRR = (1 + r) SIR^(1/N) - 1, with savings put back at r, the discount rate."""
    if ratio is None or ratio <= 0.0:
        return None
    return float((1.0 + discount_rate) * ratio ** (1.0 / years) - 1.0)
