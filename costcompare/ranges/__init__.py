"""Ranges of a comparison: likely, low and high of every choice, and what drives them.

::

    spreads of facts -> draws -> outcomes (bills, warm hours) -> bands, drivers -> comparison

Every choice is worked out for the same members of the ensemble, so that what is uncertain
about the home alike in both falls out of a saving.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Callable
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from costcompare.case.facts import Case, Option
from costcompare.comparison import (
    AS_LIVED,
    AS_WANTED,
    Band,
    Choice,
    Comparison,
    DataQuality,
    Driver,
    Range,
)
from costcompare.money.life_cycle import LifeCycle, assess
from costcompare.owning import incentives_for, outlook_of, purchase_of
from costcompare.ranges.bands import band
from costcompare.ranges.drivers import drivers, one_at_a_time
from costcompare.ranges.outcomes import Outcomes, outcome_steps
from costcompare.ranges.steps import Steps, finished, part_of
from costcompare.simulation import doing_many
from costcompare.uncertainty import Draws, prior_draws
from costcompare.weather import Weather

__all__ = ["MEMBERS", "range_steps", "with_ranges"]

Floats = NDArray[np.float64]

MEMBERS = 64
"""Homes in an ensemble unless asked for otherwise: from seed to seed a percentile of a bill
then moves by about 2 %, one of a saving by about 4 % (docs/uncertainty.md)"""

SHARE = 0.7
"""Of the work: the ensemble itself; the rest is what drives it (judgement, for the bar)"""

NOTE = (
    "Ranges hold eight of ten homes like this one, drawn from how well each fact is known: the "
    "building, its ducts, its people, the machines, mild and cold winters, the growth of prices. "
    "Not in them: a change of habits or of the tariff, work done badly, what the model leaves out."
)


def with_ranges(
    comparison: Comparison,
    case: Case,
    *,
    weather: Weather,
    members: int = MEMBERS,
    seed: int = 0,
    draws: Draws | None = None,
    progress: Callable[[str, float], None] | None = None,
) -> Comparison:
    """The comparison with a range in every choice.

    ``comparison`` is that of ``case`` over ``weather``. ``draws`` are the members to work
    with, for example homes that explain real bills; left out, they are drawn from the spreads
    of the facts with ``members`` and ``seed``. The same draws give the same digits.
    """
    tell = progress or (lambda _text, _share: None)
    drawn = draws if draws is not None else prior_draws(case, members, seed=seed)
    words = f"How sure the figures are: {len(drawn.z)} homes like this one"
    tell(doing_many(words), 0.0)
    steps = range_steps(comparison, case, weather=weather, draws=drawn)
    return finished(steps, lambda share: tell(words, share))


def range_steps(
    comparison: Comparison, case: Case, *, weather: Weather, draws: Draws
) -> Steps[Comparison]:
    """The same in steps of about a second: the share that is done after each."""
    found = yield from part_of(outcome_steps(case, comparison.choices, draws, weather), 0.0, SHARE)
    told = yield from part_of(_drivers(case, comparison, draws, weather), SHARE, 1.0)
    ranges = [
        replace(_range(case, comparison, n, found), drivers=told.get(n, ()))
        for n in range(len(comparison.choices))
    ]
    return replace(
        comparison,
        choices=tuple(
            replace(choice, range=one)
            for choice, one in zip(comparison.choices, ranges, strict=True)
        ),
        data_quality=_quality(draws, ranges[0]),
        range_note=NOTE,
    )


def _quality(draws: Draws, today: Range) -> DataQuality:
    count = Counter(fact.known for fact in draws.facts)
    shares = [driver.share for driver in today.drivers if driver.known == "guessed"]
    return DataQuality(
        measured=count["measured"],
        seen=count["seen"],
        guessed=count["guessed"],
        guessed_share=sum(shares) if today.drivers else None,
        members=len(draws.z),
    )


def _drivers(
    case: Case, comparison: Comparison, draws: Draws, weather: Weather
) -> Steps[dict[int, tuple[Driver, ...]]]:
    """By the number of the choice: what drives today's bill, and every option's saving.

    An option is looked at where it stands in the end, at the warmth that is wanted.
    """
    homes = one_at_a_time(draws)
    if not len(homes.z):
        return {}
    numbers = [0] + [
        n
        for n, choice in enumerate(comparison.choices)
        if not choice.is_today and choice.warmth == AS_WANTED
    ]
    looked_at = [comparison.choices[n] for n in numbers]
    bills = (yield from outcome_steps(case, looked_at, homes, weather)).bill_usd
    told = {0: drivers(homes, bills[:, 0])}
    for column, n in enumerate(numbers[1:], 1):
        told[n] = drivers(homes, bills[:, 0] - bills[:, column])
    return told


def _range(case: Case, comparison: Comparison, n: int, found: Outcomes) -> Range:
    """The range of choice number ``n``."""
    choices = comparison.choices
    choice = choices[n]
    bill, lived = found.bill_usd[:, n], found.bill_usd[:, 0]
    option = None if choice.is_today else _option(case, choice)
    saving = None if n == 0 else lived - bill
    plain = Range(
        bill_usd=band(bill),
        first_year_saving_usd=None if saving is None else band(saving),
        same_warmth_saving_usd=None,
        simple_payback_years=None,
        discounted_payback_years=None,
        net_savings_usd=None,
        chance_of_payback_within_life=None,
        warm_share=band(found.warm_share[:, n]),
        drivers=(),
    )
    if option is None or saving is None:
        return plain
    same = lived if choice.warmth == AS_LIVED else found.bill_usd[:, 1]
    return _with_money(
        replace(plain, same_warmth_saving_usd=band(same - bill)),
        case,
        option,
        saving=saving,
        growth=found.price_growth,
    )


def _option(case: Case, choice: Choice) -> Option:
    return next(option for option in case.options if option.name == choice.name)


def _with_money(
    plain: Range, case: Case, option: Option, *, saving: Floats, growth: Floats
) -> Range:
    """The range with paybacks and net savings, each member by the rules of one option."""
    paid = incentives_for(case, option)
    outlook = outlook_of(case.money)
    life = max(math.ceil(option.life), 1)

    def cycle(study_years: int, row: int) -> LifeCycle:
        purchase = purchase_of(case, option, paid, float(saving[row]))
        ahead = replace(outlook, study_years=study_years, price_growth=float(growth[row]))
        return assess(purchase, ahead)

    studied = [cycle(case.money.study_years, row) for row in range(len(saving))]
    lived = [cycle(life, row) for row in range(len(saving))]
    back = [one.discounted_payback_years is not None for one in lived]
    return replace(
        plain,
        simple_payback_years=_years([one.simple_payback_years for one in studied]),
        discounted_payback_years=_years([one.discounted_payback_years for one in studied]),
        net_savings_usd=band(np.array([one.net_savings_usd for one in studied])),
        yearly_position_usd=tuple(
            band(np.array(position))
            for position in zip(*(one.yearly_position_usd for one in studied), strict=True)
        ),
        chance_of_payback_within_life=sum(back) / len(back),
    )


def _years(values: list[float | None]) -> Band:
    """The band of paybacks; one that never comes is infinitely long."""
    return band(np.array([math.inf if value is None else value for value in values]))
