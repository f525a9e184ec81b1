"""Part five: loans and leases, and their payment against each month's saving."""

from __future__ import annotations

from collections.abc import Sequence

from costcompare.money.financing import WayToPay
from costcompare.views import numbers

COLUMNS = (
    "way to pay",
    "first payment",
    "payments",
    "all that is paid",
    "over the price in cash",
    "stated rate",
    "true rate (APR)",
    "first year, saving less payments",
    "October to March",
    "April to September",
)


def way_lines(ways: Sequence[WayToPay]) -> tuple[tuple[str, ...], ...]:
    """The ways to pay for one option side by side, one line each."""
    return tuple(
        (
            way.name,
            numbers.dollars_and_cents(way.payment_usd) if way.months else numbers.MISSING,
            numbers.count(way.months) if way.months else numbers.MISSING,
            numbers.dollars(way.total_paid_usd),
            numbers.dollars(way.cost_of_credit_usd),
            _rate(way.stated_rate),
            _rate(way.true_rate),
            *(
                numbers.dollars_a_year(usd)
                for usd in (
                    way.first_year_balance_usd,
                    way.winter_balance_usd,
                    way.summer_balance_usd,
                )
            ),
        )
        for way in ways
    )


def way_answer(way: WayToPay) -> str:
    """What a way to pay costs in all, and whether the saving carries it, in sentences."""
    if not way.months:
        return f"{way.name}: {numbers.dollars(way.cash_price_usd)} at once, and no interest."
    return " ".join(text for text in (_cost(way), _carried(way), *_strings(way)) if text)


def _cost(way: WayToPay) -> str:
    payment = numbers.dollars_and_cents(way.payment_usd)
    said = (
        f"{way.name}: {payment} a month, {numbers.count(way.months)} times; "
        f"{numbers.dollars(way.total_paid_usd)} in all for work that costs "
        f"{numbers.dollars(way.cash_price_usd)} in cash"
    )
    if way.true_rate is None:
        return f"{said}."
    said += f", a true rate of {_rate(way.true_rate)} a year"
    if way.stated_rate is not None and way.true_rate - way.stated_rate > 0.0005:
        fee = numbers.dollars(way.dealer_fee_usd)
        said += f" where {_rate(way.stated_rate)} is stated, because of a fee of {fee}"
    return f"{said}."


def _carried(way: WayToPay) -> str:
    short = way.months_short
    if short == 0:
        return "In every month of the first year the saving is likely more than the payment."
    balance = numbers.dollars_a_year(abs(way.first_year_balance_usd))
    year = "left over" if way.first_year_balance_usd >= 0.0 else "short"
    return (
        f"In {short} of the first twelve months the payment is likely more than the saving; over "
        f"the year that is about {balance} {year}: {_half(way.winter_balance_usd)} from October "
        f"to March, {_half(way.summer_balance_usd)} from April to September."
    )


def _half(usd: float) -> str:
    amount = numbers.dollars_a_year(abs(usd))
    return f"{amount} {'over' if usd >= 0.0 else 'short'}"


def _strings(way: WayToPay) -> list[str]:
    """What comes with it."""
    said = []
    if not way.yours_at_the_end:
        said.append("At the end of the lease the machine is not yours.")
    if way.stays_with_the_house:
        said.append("The charge stays on the meter for whoever lives there next.")
    limit = way.on_bill_limit_usd
    if limit is not None and way.payment_usd > limit:
        said.append(
            f"Such a charge usually stays below four fifths of the saving, about "
            f"{numbers.dollars_a_month(limit)} a month here; this one is more."
        )
    return said


def _rate(rate: float | None) -> str:
    return numbers.MISSING if rate is None else numbers.rate(rate)
