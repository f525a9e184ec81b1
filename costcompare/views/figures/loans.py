"""A loan's payment beside the saving, month by month of the first year."""

from __future__ import annotations

from costcompare.comparison import Comparison, Warmth
from costcompare.money.financing import WayToPay
from costcompare.views import numbers
from costcompare.views.figures.rows import BarRow

MONTHS = 12
TICKS = tuple(numbers.month_name(month + 1)[0] for month in range(MONTHS))


def loans_of(comparison: Comparison, name: str, warmth: Warmth) -> tuple[WayToPay, ...]:
    """The ways to pay for a choice that are paid by the month all through the first year."""
    money = comparison.choice(name, warmth).money
    ways = money.ways_to_pay if money is not None else ()
    return tuple(way for way in ways if way.months >= MONTHS)


def loan_rows(comparison: Comparison, name: str, warmth: Warmth) -> tuple[BarRow, ...]:
    """The saving of each month, then what of it is left after each way's payment.

    Nothing where nothing is paid by the month.
    """
    ways = loans_of(comparison, name, warmth)
    if not ways:
        return ()
    # The saving is the same whichever way is taken: what is left of it and the payment.
    saving = tuple(left + ways[0].payment_usd for left in ways[0].monthly_balance_usd)
    rows = [_row("What is saved on the bill", "before any payment", saving, of_choice=True)]
    for way in ways:
        payment = numbers.dollars_and_cents(way.payment_usd)
        figure = f"left after its payment of {payment} a month"
        rows.append(_row(way.name, figure, way.monthly_balance_usd, of_choice=False))
    return tuple(rows)


def _row(title: str, figure: str, values: tuple[float, ...], *, of_choice: bool) -> BarRow:
    lowest = min(values)
    return BarRow(
        title=title,
        figure=figure,
        tone="chosen" if of_choice else "other",
        values=values,
        texts=tuple(numbers.dollars_a_month(value) for value in values),
        ticks=TICKS,
        called_out=values.index(max(values) if of_choice else lowest),
    )
