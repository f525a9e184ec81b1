"""First things first: the cures in the order in which their money comes back."""

from __future__ import annotations

from costcompare.comparison import AS_LIVED, Choice, Comparison, MoneyYears
from costcompare.views import numbers
from costcompare.views.wording.payback import differences, studied
from costcompare.views.wording.running import choices_at


def first_things(comparison: Comparison) -> tuple[tuple[Choice, str], ...]:
    """Every option with what it costs and takes off the bill as you live now, the quickest first.

    The money is back when it is in today's value, as everywhere a date is named. An option
    whose first year brings nothing comes last, and says so. The order is that of
    each option alone; together they save less than the sum.
    """
    options = [
        (choice, choice.money)
        for choice in choices_at(comparison, AS_LIVED)
        if choice.money is not None and not choice.is_today
    ]
    ordered = sorted(options, key=lambda pair: _quickness(pair[1]))
    return tuple((choice, _sentence(choice, money)) for choice, money in ordered)


def _quickness(money: MoneyYears) -> tuple[bool, float, float]:
    years = money.discounted_payback_years
    return years is None, years if years is not None else 0.0, money.installed_cost_usd


def _sentence(choice: Choice, money: MoneyYears) -> str:
    price = numbers.dollars_a_year(money.installed_cost_usd - money.incentives_usd)
    written = differences(choice)
    saving = written.first_year if written is not None else 0.0
    if numbers.rounds_to_nothing(saving):
        return f"{price} to install, and next to no change of the bill."
    amount = numbers.dollars_a_year(abs(saving))
    if saving < 0.0:
        return f"{price} to install, and the bill is about {amount} a year higher."
    if money.simple_payback_years is None:
        return (
            f"{price} to install, about {amount} a year less, which upkeep takes back: the money "
            "does not come back."
        )
    if money.discounted_payback_years is None:
        return (
            f"{price} to install, about {amount} a year less; that does not bring the money back "
            f"within {studied(money)} years, or before it wears out."
        )
    years = numbers.years(money.discounted_payback_years)
    return f"{price} to install, about {amount} a year less, back in about {years}."
