"""Payments beside the saving as they go onto the page."""

from __future__ import annotations

from costcompare.case import example_path, read_case
from costcompare.comparing import compare
from costcompare.comparison import AS_WANTED, Comparison
from costcompare.views import numbers
from costcompare.views.dashboard.filling_loans import loan_part
from costcompare.views.dashboard.pieces import texts
from costcompare.views.figures.loans import loans_of
from costcompare.views.wording.naming import choosable
from costcompare.views.wording.ways_to_pay import way_answer


def test_every_way_is_told_and_drawn() -> None:
    comparison = compare(read_case(example_path("new_mover")))
    name = choosable(comparison)[0]
    part = loan_part(comparison, name, AS_WANTED)
    ways = loans_of(comparison, name, AS_WANTED)
    assert len(ways) >= 2
    assert part["loan_class"] == ""
    for way in ways:
        assert numbers.dollars_and_cents(way.payment_usd) in part["loan_figure"]
        assert way_answer(way) in texts(part["loan_answer"])
        assert way.name in texts(part["loan_rows"])
    assert "January" in texts(part["loan_table"])


def test_without_a_loan_the_part_is_hidden(comparison: Comparison, option: str) -> None:
    part = loan_part(comparison, option, AS_WANTED)
    assert part["loan_class"] == "absent"
    assert part["loan_rows"] is None
