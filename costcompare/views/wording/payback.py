"""Part five: when the money comes back."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from costcompare.comparison import Choice, Comparison, MoneyYears, Warmth
from costcompare.money.incentives import IncentiveLine
from costcompare.views import numbers
from costcompare.views.wording.naming import capital, in_a_sentence


def payback_answer(comparison: Comparison, name: str, warmth: Warmth, installed_on: date) -> str:
    """What the choice costs to install and when that comes back, in a sentence."""
    choice = comparison.choice(name, warmth)
    money = choice.money
    if money is None or choice.is_today:
        return "Nothing is installed, so there is no money to come back."
    return (
        f"{capital(in_a_sentence(choice))} costs about "
        f"{numbers.dollars_a_year(money.installed_cost_usd - money.incentives_usd)} to install; "
        f"{warmth}, {_comes_back(money, installed_on)}."
    )


def payback_words(money: MoneyYears, installed_on: date) -> str:
    """``around March 2036`` or ``not within 15 years``, in today's value of money."""
    years = money.discounted_payback_years
    if years is None:
        return f"not within {studied(money)} years"
    return f"around {numbers.month_reached(installed_on, years)}"


@dataclass(frozen=True)
class Differences:
    """The savings of a choice as the bills that are written beside them differ [$]."""

    first_year: float
    """Against the bill now"""
    same_warmth: float | None
    """Against today's system at the same warmth"""
    warmth: float | None
    """What the extra warmth alone would cost with today's system"""


def differences(choice: Choice) -> Differences | None:
    """The savings of a choice to be written; None where it has no money."""
    money, bill = choice.money, choice.annual.bill_usd
    if money is None:
        return None
    now, same, worth = (
        bill + money.first_year_saving_usd,
        money.same_warmth_saving_usd,
        money.warmth_worth_usd,
    )
    return Differences(
        numbers.between_bills(now, bill),
        None if same is None else numbers.between_bills(bill + same, bill),
        None if worth is None else numbers.between_bills(now + worth, now),
    )


@dataclass(frozen=True)
class Saving:
    """One of the savings that must not be mixed up."""

    figure: str
    words: str


def savings(choice: Choice, now: Warmth) -> tuple[Saving, ...]:
    """The savings told apart: against the bill now, at the same warmth, the warmth itself."""
    written = differences(choice)
    if written is None or choice.is_today:
        return ()
    told = [Saving(_less_or_more(written.first_year), "than what you pay now")]
    if choice.warmth == now:
        return tuple(told)
    if written.same_warmth is not None:
        figure = _less_or_more(written.same_warmth)
        told.append(Saving(figure, "than today’s system at the same warmth"))
    if written.warmth is not None:
        figure = f"{numbers.dollars_a_year(written.warmth)} a year"
        words = (
            "is what the extra warmth alone would cost with today’s system: comfort, not cash, "
            "and not counted as money coming back"
        )
        told.append(Saving(figure, words))
    return tuple(told)


def incentives_answer(lines: Sequence[IncentiveLine]) -> str:
    """Which incentives are in the figures and which are not, and why, in a sentence each."""
    return " ".join(
        f"The {line.name} of {numbers.dollars(line.amount_usd)} "
        f"{'is in these figures' if line.counted else 'is in none of these figures'}: "
        f"{line.reason.removesuffix(': not in the price')}."
        for line in lines
    )


def incentives_of(comparison: Comparison, name: str) -> tuple[IncentiveLine, ...]:
    """The incentives that may apply to a choice; none for today."""
    found = (c.money for c in comparison.choices if c.name == name and not c.is_today)
    return next((money.incentives for money in found if money is not None), ())


def _comes_back(money: MoneyYears, installed_on: date) -> str:
    years = money.discounted_payback_years
    if years is None:
        return f"the money does not come back within {studied(money)} years"
    rounded = max(round(years), 1)
    unit = "year" if rounded == 1 else "years"
    return (
        f"the money comes back around {numbers.month_reached(installed_on, years)}, "
        f"about {rounded} {unit} after the work"
    )


def studied(money: MoneyYears) -> int:
    """Over how many years the money is counted."""
    return len(money.yearly_position_usd) - 1


def _less_or_more(saving_usd: float) -> str:
    amount = numbers.dollars_a_year(abs(saving_usd))
    return f"{amount} a year {'less' if saving_usd >= 0 else 'more'}"


def money_lines(options: Sequence[Choice], installed_on: date) -> tuple[tuple[str, ...], ...]:
    """The money of options side by side: each line a name, then one text an option."""
    monies = [choice.money for choice in options if choice.money is not None]
    written = [one for one in map(differences, options) if one is not None]
    return (
        ("To install", *(numbers.dollars(money.installed_cost_usd) for money in monies)),
        ("Confirmed incentives", *(numbers.dollars(money.incentives_usd) for money in monies)),
        (
            "First year, against your bill now",
            *(numbers.dollars_a_year(one.first_year) for one in written),
        ),
        (
            "First year, against today’s system at the same warmth",
            *(_amount(one.same_warmth) for one in written),
        ),
        ("Worth of the extra warmth", *(_amount(one.warmth) for one in written)),
        (
            "Money back, in today’s value",
            *(payback_words(money, installed_on) for money in monies),
        ),
        (
            "Years to pay back, prices as they are",
            *(numbers.years(money.simple_payback_years) for money in monies),
        ),
        (
            "Left over at the end",
            *(numbers.dollars_a_year(money.net_savings_usd) for money in monies),
        ),
    )


def _amount(usd: float | None) -> str:
    return numbers.MISSING if usd is None else numbers.dollars_a_year(usd)
