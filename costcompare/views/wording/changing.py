"""What a changed fact did, in a sentence for whoever changed it."""

from __future__ import annotations

from costcompare.comparison import Comparison
from costcompare.views import numbers


def change_answer(before: Comparison, after: Comparison) -> str:
    """How today's bill moved from one set of facts to another."""
    old = numbers.dollars_a_year(before.today.annual.bill_usd)
    new = numbers.dollars_a_year(after.today.annual.bill_usd)
    if old == new:
        return f"Worked out again: today’s bill stays at about {new} a year."
    return f"Worked out again: today’s bill is now about {new} a year, before it was {old}."
