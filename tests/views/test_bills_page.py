"""What ``bills`` prints: sentences that are true of the result they stand beside."""

from __future__ import annotations

from dataclasses import replace

import pytest

from costcompare.billing.bill_report import reported
from costcompare.billing.reading.bills import Bill, Bills, Note
from costcompare.views.bills_page import bills_page
from costcompare.views.terminal import plain_lines
from costcompare.views.wording.rules import broken_rules
from tests.billing.synthetic_year import TEMPERATURES, bills, noisy, uses


def page(made: Bills) -> str:
    return "\n".join(plain_lines(bills_page(reported(made, TEMPERATURES))))


def priced(amounts: list[float]) -> Bills:
    return Bills(tuple(replace(bill, dollars=0.12 * bill.kwh) for bill in bills(amounts)))


def test_the_line_is_told_in_numbers() -> None:
    written = page(Bills(tuple(bills(uses()))))
    assert "12 bills of 365 days: 14,396 kWh." in written
    assert "Base load 24 kWh a day, and 1.85 kWh for each degree a day below 57 °F." in written
    assert "explains nearly all" in written
    assert "In a year of this weather (a made-up year): about 14,400 kWh" in written


def test_balance_points_that_explain_as_well_are_told() -> None:
    written = page(priced(noisy()))
    assert "Balance points from 55 °F to 58 °F explain the bills as well." in written
    assert "In money +" in written
    assert "mean prices hold fixed charges" in written


def test_notes_stand_once() -> None:
    note = Note("gap", "9 days between bills belong to none.", "Nothing is put in their place.")
    written = page(replace(priced(uses()), notes=(note, note)))
    assert written.count("9 days between bills") == 1


@pytest.mark.parametrize("count", [2, 9, 12])
def test_nothing_is_promised_and_nothing_is_missing(count: int) -> None:
    made = priced(noisy())
    written = page(replace(made, bills=made.bills[:count]))
    assert "nan" not in written
    assert "None" not in written
    assert broken_rules(written) == ()


def test_a_bill_alone_has_no_change() -> None:
    flat = [Bill(b.begins, b.ends, 30.0 * b.days) for b in bills(uses())]
    written = page(Bills(tuple(flat)))
    assert "Not weather-driven" in written
    assert "by weather and use together" in written
