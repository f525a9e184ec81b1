"""Every trap of real bills: what is found, what is done, in words."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from costcompare.billing.reading import RULES, Bills, read_bills
from costcompare.billing.reading.money_traps import deferred_balances

HEAD = "from,to,kwh,dollars,read\n"


def year(uses: list[float], *, days: int = 30, price: float = 0.12) -> list[list[str]]:
    """Lines of bills, one after the other."""
    first = date(2025, 1, 1)
    return [
        [
            f"{first + timedelta(days=days * i)}",
            f"{first + timedelta(days=days * (i + 1))}",
            f"{use}",
            f"{use * price:.2f}",
            "actual",
        ]
        for i, use in enumerate(uses)
    ]


USES = [1900.0, 1850.0, 1500.0, 1000.0, 850.0, 690.0, 720.0, 790.0, 720.0, 950.0, 1500.0, 1730.0]


def read(lines: list[list[str]], head: str = HEAD) -> Bills:
    return read_bills(head + "\n".join(",".join(line) for line in lines) + "\n")


def said(bills: Bills, rule: str) -> str:
    return " ".join(note.sentence() for note in bills.notes if note.rule == rule)


def test_good_bills_raise_nothing() -> None:
    bills = read(year(USES))
    assert bills.notes == ()
    assert bills.left_out == ()
    assert bills.kwh == sum(USES)
    assert bills.days == 360


def test_an_estimated_read_is_put_together_with_the_next_bill() -> None:
    lines = year(USES)
    lines[1][2], lines[1][4], lines[2][2] = "1450", "estimated", "1900"
    bills = read(lines)
    assert len(bills.bills) == 11
    assert (bills.bills[1].kwh, bills.bills[1].days, bills.bills[1].printed) == (3350.0, 60, 2)
    assert "estimated the read of 2025-03-02. Put together" in said(bills, "estimated read")


def test_estimates_of_more_than_70_days_tell_no_season() -> None:
    lines = year(USES)
    for line in lines[1:3]:
        line[4] = "estimated"
    bills = read(lines)
    assert len(bills.bills) == 9
    assert len(bills.left_out) == 3
    assert "Left out: more than 70 days" in said(bills, "estimated read")


def test_an_estimate_at_the_end_waits_for_its_read() -> None:
    lines = year(USES)
    lines[-1][4] = "estimated"
    bills = read(lines)
    assert len(bills.bills) == 11
    assert "no read follows. Left out" in said(bills, "estimated read")
    alone = read(lines[-1:])
    assert len(alone.bills) == 1
    assert "trust it little" in said(alone, "estimated read")


def test_short_and_long_bills() -> None:
    lines = [*year(USES), ["2025-12-27", "2026-01-10", "900", "108", "actual"]]
    bills = read(lines)
    assert len(bills.bills) == 12
    assert "has 14 days, fewer than 25 days. Left out." in said(bills, "short bill")
    few = read(lines[-3:])
    assert len(few.bills) == 3
    assert "Kept, for there are few bills" in said(few, "short bill")
    long = read([*year(USES), ["2025-12-27", "2026-03-27", "5000", "600", "actual"]])
    assert "more than 70 days. Left out." in said(long, "long bill")


def test_level_payments_lose_their_dollars_and_keep_their_kwh() -> None:
    lines = year(USES)
    for line in lines:
        line[3] = "142.00"
    bills = read(lines)
    assert [bill.dollars for bill in bills.bills] == [None] * 12
    assert bills.kwh == sum(USES)
    assert "12 bills ask for a level payment" in said(bills, "budget billing")
    told = read_bills("from,to,kwh,budget amount\n2025-01-01,2025-02-01,900,142\n")
    assert told.bills[0].dollars is None
    assert "level payment" in said(told, "budget billing")


def test_the_balance_of_level_payments() -> None:
    actual = [420.0, 380.0, 290.0, 190.0, 130.0, 110.0, 120.0, 125.0, 115.0, 170.0, 300.0, 400.0]
    expected = [190.83, 341.67, 402.50, 363.33, 264.17, 145.00, 35.83, -68.33, -182.50, -241.67, -170.83, 0.0]  # noqa: E501  # fmt: skip
    assert deferred_balances(actual) == pytest.approx(expected, abs=0.005)


def test_an_amount_due_is_no_price() -> None:
    head = "from,to,kwh,amount due\n"
    bills = read_bills(f"{head}2025-01-01,2025-02-01,900,800.00\n")
    assert bills.bills[0].dollars is None
    assert "arrears, deposits and other services" in said(bills, "amount due")
    both = read_bills("from,to,kwh,current charges,total due\n2025-01-01,2025-02-01,900,108,800\n")
    assert both.bills[0].dollars == 108.0


def test_no_use_is_a_missing_read_and_negative_use_is_net() -> None:
    lines = year(USES)
    lines[5][2], lines[6][2] = "0", "-250"
    bills = read(lines)
    assert len(bills.bills) == 10
    assert "has 0 kWh. Left out as a missing read" in said(bills, "zero use")
    assert "less than nothing was used" in said(bills, "negative use")
    assert "60 days between bills belong to none" in said(bills, "gap")


def test_a_digit_too_many_is_asked_about_and_kept() -> None:
    lines = year(USES)
    lines[6][2], lines[6][3] = "7200", "864"
    bills = read(lines)
    assert len(bills.bills) == 12
    assert "would make it 24.0" in said(bills, "digit slip")
    lines = year([700.0] * 11 + [1900.0])
    assert "far above the others" in said(read(lines), "unlike the others")


def test_readings_that_do_not_fit() -> None:
    head = "from,to,previous reading,current reading,kwh,multiplier\n"
    text = (
        "2025-01-01,2025-01-31,8865,9975,1110,1\n"
        "2025-01-31,2025-03-02,9795,10700,725,1\n"
        "2025-03-02,2025-04-01,10700,11500,800,1\n"
    )
    bills = read_bills(head + text)
    assert "Two digits were swapped" in said(bills, "digit slip")
    assert "the readings differ by 905, printed are 725 kWh" in said(bills, "meter readings")
    stepped = read_bills(f"{head}2025-01-01,2025-01-31,100,120,800,40\n")
    assert "in steps of 40" in said(stepped, "multiplier")
    assert said(stepped, "meter readings") == ""


def test_a_price_out_of_this_world_is_not_used() -> None:
    lines = year(USES)
    lines[0][3] = "228000"
    bills = read(lines)
    assert bills.bills[0].dollars is None
    assert bills.bills[1].dollars is not None
    assert "more than $1.00 a kWh" in said(bills, "price")


def test_doubles_overlaps_and_several_meters() -> None:
    lines = year(USES)
    assert "repeat a bill" in said(read([*lines, lines[3]]), "doubled entry")
    bills = read([*lines, ["2025-01-15", "2025-02-15", "1900", "200", "actual"]])
    assert len(bills.bills) == 12
    assert "overlaps 2025-01-01 to 2025-01-31" in said(bills, "overlap")
    head = "meter,from,to,kwh\n"
    two = read_bills(f"{head}A,2025-01-01,2025-02-01,900\nB,2025-01-01,2025-02-01,600\n")
    assert [bill.kwh for bill in two.bills] == [1500.0]
    assert "There are 2 meters" in said(two, "several meters")


def test_every_note_is_a_rule_with_a_reason() -> None:
    lines = year(USES)
    lines[1][4] = "estimated"
    lines[5][2] = "0"
    for note in read(lines).notes:
        assert note.rule in RULES
        assert note.sentence().endswith(".")
