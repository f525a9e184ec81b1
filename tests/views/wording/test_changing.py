"""What a changed fact did, in words."""

from __future__ import annotations

from dataclasses import replace

from costcompare.comparison import Comparison
from costcompare.views.wording.changing import change_answer


def test_the_bill_before_and_after_is_said(comparison: Comparison) -> None:
    def billed(usd: float) -> Comparison:
        today = replace(comparison.today, annual=replace(comparison.today.annual, bill_usd=usd))
        return replace(comparison, choices=(today, *comparison.choices[1:]))

    assert change_answer(billed(2700.0), billed(2950.0)) == (
        "Worked out again: today’s bill is now about $2,950 a year, before it was $2,700."
    )
    assert change_answer(billed(2700.0), billed(2701.0)).endswith("stays at about $2,700 a year.")
