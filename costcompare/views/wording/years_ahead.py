"""Part five: what else the years bring, and the life-cycle figures for who wants them all."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from costcompare.comparison import Choice, MoneyYears, OutlookLine
from costcompare.views import numbers
from costcompare.views.wording.naming import as_a_label

LIFE_CYCLE_COLUMNS = (
    "choice",
    "net cost",
    "cost over the years",
    "net savings",
    "savings to investment",
    "rate of return",
    "simple payback",
    "discounted payback",
)


def life_cycle_lines(options: Sequence[Choice]) -> tuple[tuple[str, ...], ...]:
    """The life-cycle figures of options, one line each, in the words of the trade."""
    return tuple(
        (
            as_a_label(choice),
            numbers.dollars(years.net_cost_usd),
            numbers.dollars_a_year(years.life_cycle_cost_usd),
            numbers.dollars_a_year(money.net_savings_usd),
            numbers.ratio(money.savings_to_investment_ratio),
            _rate(money.adjusted_internal_rate_of_return),
            numbers.years(money.simple_payback_years),
            numbers.years(money.discounted_payback_years),
        )
        for choice in options
        if (money := choice.money) is not None and (years := money.over_the_years) is not None
    )


def years_answers(money: MoneyYears, installed_on: date) -> tuple[str, ...]:
    """What else is to be said of the years ahead, a sentence each; nothing for today."""
    said = (waiting_answer(money), outlook_answer(money))
    return (*once_answers(money, installed_on), *(text for text in said if text))


def once_answers(money: MoneyYears, installed_on: date) -> tuple[str, ...]:
    """What happens once: an old system not replaced, a new one worn out, a move."""
    said = (
        old_system_answer(money, installed_on),
        replaced_answer(money, installed_on),
        moving_answer(money),
    )
    return tuple(text for text in said if text)


def outlook_columns(options: Sequence[Choice]) -> tuple[str, ...]:
    """The heads of the table of other growths of prices."""
    growths = _by_growth(options[0].money) if options and options[0].money is not None else []
    return (
        "choice",
        "waiting a winter costs",
        *(f"left over, prices {numbers.rate(one.price_growth)} a year" for one in growths),
    )


def outlook_lines(options: Sequence[Choice]) -> tuple[tuple[str, ...], ...]:
    """What waiting costs, and what is left over at other growths of prices, one line each."""
    return tuple(
        (
            as_a_label(choice),
            numbers.MISSING
            if money.waiting_a_winter_usd is None
            else numbers.dollars_a_year(money.waiting_a_winter_usd),
            *(numbers.dollars_a_year(one.net_savings_usd) for one in _by_growth(money)),
        )
        for choice in options
        if (money := choice.money) is not None and money.outlooks
    )


def _by_growth(money: MoneyYears) -> list[OutlookLine]:
    """The outlooks at the discount rate of the case, the slowest growth first."""
    rate = money.outlooks[0].discount_rate if money.outlooks else None
    lines = (line for line in money.outlooks if line.discount_rate == rate)
    return sorted(lines, key=lambda line: line.price_growth)


def old_system_answer(money: MoneyYears, installed_on: date) -> str:
    """That today's system need not be bought anew, where that is counted."""
    years = money.over_the_years
    if years is None or years.old_system is None:
        return ""
    old = years.old_system
    when = numbers.month_reached(installed_on, old.remaining_life_years)
    if old.remaining_life_years >= years.study_years:
        return ""
    return (
        f"Counted in: today’s system would have to be replaced around {when} for about "
        f"{numbers.dollars(old.replacement_cost_usd)}, and with this choice it would not."
    )


def replaced_answer(money: MoneyYears, installed_on: date) -> str:
    """When a replacement takes out again what had come back."""
    years = money.over_the_years
    if years is None or years.unpaid_again_years is None:
        return ""
    when = numbers.month_reached(installed_on, years.unpaid_again_years)
    said = f"Around {when} it is worn out, and buying it again takes out money that had come back"
    if years.back_for_good_years is None:
        return f"{said}; that does not come back within {years.study_years} years."
    back = numbers.month_reached(installed_on, years.back_for_good_years)
    return f"{said}; it is back again around {back}."


def moving_answer(money: MoneyYears) -> str:
    """Where they stand if they move."""
    years = money.over_the_years
    if years is None or years.move_in_years is None or years.position_when_moving_usd is None:
        return ""
    position = years.position_when_moving_usd
    amount = numbers.dollars_a_year(abs(position))
    stand = "more has come back than was spent" if position >= 0.0 else "is still out"
    unit = "year" if years.move_in_years == 1 else "years"
    return (
        f"If you move in {years.move_in_years} {unit} and get nothing for what you leave behind, "
        f"about {amount} {stand}."
    )


def waiting_answer(money: MoneyYears) -> str:
    """What it costs to wait a winter; nothing where waiting costs nothing."""
    saved = money.waiting_a_winter_usd
    if saved is None or saved <= 0.0 or numbers.rounds_to_nothing(saved):
        return ""
    return (
        f"One more winter with today’s system, October to April, costs about "
        f"{numbers.dollars_a_year(saved)} more in bills than with this choice."
    )


def outlook_answer(money: MoneyYears) -> str:
    """What other growths of the price of electricity do to what is left over at the end."""
    years = money.over_the_years
    if years is None or not money.outlooks:
        return ""
    lines = _by_growth(money)
    low, high = lines[0], lines[-1]
    if low.price_growth == high.price_growth:
        return ""
    return (
        f"Left over after {years.study_years} years, with the price of electricity moving by "
        f"{numbers.rate(low.price_growth)} a year against other prices: "
        f"{numbers.dollars_a_year(low.net_savings_usd)}; by {numbers.rate(high.price_growth)} a "
        f"year: {numbers.dollars_a_year(high.net_savings_usd)}."
    )


def _rate(rate: float | None) -> str:
    return numbers.MISSING if rate is None else numbers.rate(rate)
