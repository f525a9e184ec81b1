"""What every choice costs under the other tariffs of a case, as blocks for a terminal."""

from __future__ import annotations

from costcompare.comparison import Comparison
from costcompare.views import numbers
from costcompare.views.terminal import Heading, Sentences, Table
from costcompare.views.wording.naming import as_a_label

OTHER_PRICES = (
    "The same use of energy, at the same hours, under each price. Savings and payback above are "
    "those of the prices now."
)


def other_prices(comparison: Comparison) -> list[Heading | Table | Sentences]:
    """A table of bills a year; nothing where the case has one tariff."""
    names = [other.tariff for other in comparison.today.other_tariffs]
    if not names:
        return []
    rows = tuple(
        (
            as_a_label(choice),
            choice.warmth,
            *(
                numbers.dollars_a_year(bill)
                for bill in (
                    choice.annual.bill_usd,
                    *(other.bill_usd for other in choice.other_tariffs),
                )
            ),
        )
        for choice in comparison.choices
    )
    columns = ("choice", "warmth", "the prices now", *names)
    heading = Heading("What each choice costs a year under other prices")
    return [heading, Table(columns, rows, frozenset({0, 1})), Sentences(OTHER_PRICES)]
