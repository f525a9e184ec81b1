"""Bills that a browser types, pastes or uploads: taken, corrected, refused in sentences."""

from __future__ import annotations

import tomllib
from itertools import pairwise
from typing import Any

import numpy as np
import pytest

from costcompare.case import case_from_document
from costcompare.case.new import new_case
from costcompare.errors import InputError
from costcompare.views.dashboard.visit.bill_rows import LONGEST_BILLS, TAKE, bills_listed
from costcompare.views.dashboard.visit.doors import Desk
from costcompare.views.dashboard.visit.intake import MOST

TYPED = "2026-01-14, 2026-02-13, 2310, 318.40\n2026-02-13 to 2026-03-14, 1900\n"
PAGE = "Read from\tRead to\tkWh used\tAmount\n1/14/2026\t2/13/2026\t2,310\t$318.40\n"
METER = "Date,Start Time,Usage (kWh)\n" + "".join(
    f"{month}/{day}/2026,{hour}:00,1.5\n"
    for month, days in ((1, 31), (2, 28))
    for day in range(1, days + 1)
    for hour in range(24)
)


@pytest.fixture
def plain() -> dict[str, Any]:
    return tomllib.loads(new_case())


@pytest.fixture
def desk(plain: dict[str, Any]) -> Desk:
    return Desk(plain, None)


def change(desk: Desk, document: dict[str, Any], do: str, *at: object, text: str = "") -> Any:
    return desk.change({"document": document, "edit": {"do": do, "at": list(at), "text": text}})


def refused(desk: Desk, document: dict[str, Any], text: str) -> list[str]:
    """What is said of a text, as the address says it."""
    try:
        answer: dict[str, Any] = change(desk, document, TAKE, text=text)
    except InputError as error:
        return [fault.sentence() for fault in error.faults]
    assert "document" not in answer
    return list(answer["faults"])


def test_typed_lines_need_no_headers(desk: Desk, plain: dict[str, Any]) -> None:
    answer = change(desk, plain, TAKE, text=TYPED)
    assert answer["faults"] == []
    assert answer["told"].startswith("Took 2 bills.")
    assert answer["document"]["bills"] == [
        {"from": "2026-01-14", "to": "2026-02-13", "kwh": 2310.0, "dollars": 318.4},
        {"from": "2026-02-13", "to": "2026-03-14", "kwh": 1900.0},
    ]
    assert len(case_from_document(answer["document"]).bills.rows) == 2


def test_a_table_from_a_page_and_a_single_line_do_as_well(
    desk: Desk, plain: dict[str, Any]
) -> None:
    first = change(desk, plain, TAKE, text=TYPED.splitlines()[0])["document"]["bills"]
    assert change(desk, plain, TAKE, text=PAGE)["document"]["bills"] == first


def test_hours_of_a_meter_become_bills(desk: Desk, plain: dict[str, Any]) -> None:
    bills = change(desk, plain, TAKE, text=METER)["document"]["bills"]
    assert [row["kwh"] for row in bills] == [1.5 * 24 * 31, 1.5 * 24 * 28]


def test_the_same_bill_comes_in_once_and_others_stay(desk: Desk, plain: dict[str, Any]) -> None:
    once = change(desk, plain, TAKE, text=TYPED)["document"]
    again = change(desk, once, TAKE, text=TYPED.replace("2310", "2300"))["document"]
    assert [row["kwh"] for row in bills_listed(again)] == [2300.0, 1900.0]
    later = change(desk, again, TAKE, text="2026-03-14, 2026-04-13, 1100")["document"]
    assert [row["kwh"] for row in bills_listed(later)] == [2300.0, 1900.0, 1100.0]
    with_rows = {**plain, "bills": {"rows": bills_listed(once)}}
    assert len(change(desk, with_rows, TAKE, text=PAGE)["document"]["bills"]) == 2


def test_a_bill_can_be_corrected_and_taken_out(desk: Desk, plain: dict[str, Any]) -> None:
    document = change(desk, plain, TAKE, text=TYPED)["document"]
    document = change(desk, document, "say", "bills", 0, "kwh", text="2400")["document"]
    document = change(desk, document, "say", "bills", 1, "dollars", text="240.5")["document"]
    assert bills_listed(document)[0]["kwh"] == 2400
    assert bills_listed(document)[1]["dollars"] == 240.5
    wrong = change(desk, document, "say", "bills", 0, "kwh", text="many")
    assert "number" in wrong["faults"][0]
    fewer = change(desk, document, "remove row", "bills", 0)["document"]
    assert [row["kwh"] for row in bills_listed(fewer)] == [1900.0]
    assert "bills" not in change(desk, fewer, "forget", "bills")["document"]


@pytest.mark.parametrize(
    "text",
    [
        "",
        "   \n",
        "hello\nworld",
        "/etc/hostname",
        "../secret.csv",
        "<feed>",
        "<!DOCTYPE x [<!ENTITY a SYSTEM 'file:///etc/hostname'>]><x>&a;</x>",
        "1,2,3",
        "2026-13-45, 2026-02-13, 5",
        "2026-02-13, 2026-01-14, 500",
        "2026-01-14, 2026-02-13, -5",
        "2026-01-14, 2026-02-13, " + "9" * 400,
        "\x00\x01\x02",
        "\ud800",
        "from,to,kwh\n" * 500,
    ],
)
def test_what_is_no_bill_gets_a_sentence_and_loses_nothing(
    desk: Desk, plain: dict[str, Any], text: str
) -> None:
    kept = change(desk, plain, TAKE, text=TYPED)["document"]
    faults = refused(desk, kept, text)
    assert faults
    assert all(fault[:1].strip() and fault.endswith(".") for fault in faults)


def test_a_thousand_scrambled_texts_get_a_sentence_each(desk: Desk, plain: dict[str, Any]) -> None:
    random = np.random.default_rng(20261125)
    letters = list("0123456789-/.,;\t\n $kWh<>\"'to{}[]%é\x00")
    for _ in range(1000):
        text = TYPED if random.random() < 0.5 else PAGE
        for place in random.integers(0, len(text), size=random.integers(1, 12)):
            text = f"{text[:place]}{random.choice(letters)}{text[place + 1 :]}"
        answer = change(desk, plain, TAKE, text=text)
        assert answer["faults"] or case_from_document(answer["document"]).bills.rows


def test_too_many_and_too_long(desk: Desk, plain: dict[str, Any]) -> None:
    days = np.arange(np.datetime64("2000-01-01"), np.datetime64("2012-01-01"), 30)
    text = "".join(f"{a}, {b}, 900\n" for a, b in pairwise(days))
    assert len(days) > MOST["bills"]
    assert f"{MOST['bills']} bills" in change(desk, plain, TAKE, text=text)["faults"][0]
    with pytest.raises(Exception, match="letters at most"):
        change(desk, plain, TAKE, text=TYPED + " " * LONGEST_BILLS)
