"""Bills that a case lists or names."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from costcompare.billing.reading import bills_of
from costcompare.case import read_case
from costcompare.case.bill_facts import StatedBill, StatedBills
from costcompare.case.new import new_case
from costcompare.errors import BillsError, CaseError

LISTED = """
[[bills]]
from = 2025-12-18
to = 2026-01-18
kwh = 3650
dollars = 492.75
read = "actual"
[[bills]]
from = 2026-01-18
to = 2026-02-17
kwh = 2950
"""


def case_with(tmp_path: Path, text: str) -> Path:
    path = tmp_path / "home.toml"
    path.write_text(new_case() + text, encoding="utf-8")
    return path


def test_bills_of_a_case_are_carried_into_it(tmp_path: Path) -> None:
    case = read_case(case_with(tmp_path, LISTED))
    assert case.bills is not None
    assert case.bills.rows[0] == StatedBill(
        date(2025, 12, 18), date(2026, 1, 18), 3650.0, 492.75, "actual"
    )
    read = bills_of(case.bills, case.directory)
    assert [(bill.days, bill.kwh, bill.dollars) for bill in read.bills] == [
        (31, 3650.0, 492.75),
        (30, 2950.0, None),
    ]


def test_a_file_is_found_beside_the_case(tmp_path: Path) -> None:
    (tmp_path / "mine.csv").write_text("from,to,kwh\n2026-01-01,2026-02-01,900\n", encoding="utf-8")
    case = read_case(case_with(tmp_path, '[bills]\nfile = "mine.csv"\n'))
    assert case.bills == StatedBills(Path("mine.csv"))
    assert bills_of(case.bills, case.directory).kwh == 900.0
    with pytest.raises(BillsError, match="cannot be read"):
        bills_of(StatedBills(Path("none.csv")), case.directory)


def test_a_case_without_bills_has_none(tmp_path: Path) -> None:
    assert read_case(case_with(tmp_path, "")).bills is None


def test_a_file_and_a_list_are_too_much(tmp_path: Path) -> None:
    rows = '[bills]\nfile = "a.csv"\n[[bills.rows]]\nfrom = 2026-01-01\nto = 2026-02-01\nkwh = 1\n'
    with pytest.raises(CaseError, match="give either file or rows"):
        read_case(case_with(tmp_path, rows))
