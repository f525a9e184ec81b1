"""A home with bills on the page: everything stands on the fitted house, and goes back with them."""

from __future__ import annotations

import json
import tomllib
from typing import Any

import pytest

from costcompare.case.new import new_case
from costcompare.comparing import compare
from costcompare.errors import CostCompareError
from costcompare.views.dashboard.against_bills import bills_part
from costcompare.views.dashboard.pieces import texts
from costcompare.views.dashboard.showing import AGAINST_BILLS
from costcompare.views.dashboard.workbench import Workbench, Worked

BILLS = {
    "rows": [
        {"from": "2025-12-15", "to": "2026-01-15", "kwh": 3400.0, "dollars": 430.0},
        {"from": "2026-05-15", "to": "2026-06-15", "kwh": 900.0},
    ]
}


@pytest.fixture(scope="module")
def plain() -> dict[str, Any]:
    return tomllib.loads(new_case())


@pytest.fixture(scope="module")
def bench(plain: dict[str, Any]) -> Workbench:
    return Workbench(plain)


@pytest.fixture(scope="module")
def billed(bench: Workbench, plain: dict[str, Any]) -> Worked:
    return bench.worked({**plain, "bills": BILLS})


def test_the_part_has_a_place_for_everything_and_says_something(billed: Worked) -> None:
    filled = bills_part(billed)
    assert set(filled) == set(AGAINST_BILLS)
    json.dumps(filled, allow_nan=False, default=str)
    assert filled["class"] == ""
    assert filled["stands"].endswith("fitted to its 2 real bills.")
    for words in ("answer", "more", "held", "moved"):
        assert "nan" not in filled[words]
        assert len(filled[words]) > 40, words
    told = " ".join(texts(filled["table"]))
    assert "3,400 kWh" in told
    assert "Dec 15, 2025 to Jan 15, 2026" in told
    assert billed.fitted is not None
    rows = texts(filled["facts_table"])
    assert all(any(fact.words in text for text in rows) for fact in billed.fitted.report.facts)


def test_without_bills_there_is_no_such_part(bench: Workbench, plain: dict[str, Any]) -> None:
    worked = bench.worked(plain)
    filled = bills_part(worked)
    assert set(filled) == set(AGAINST_BILLS)
    assert (filled["class"], filled["stands"], filled["answer"]) == ("absent", "", "")
    assert worked.house is worked.case


def test_everything_stands_on_the_fitted_house(
    bench: Workbench, plain: dict[str, Any], billed: Worked
) -> None:
    fitted = billed.fitted
    assert fitted is not None
    same = compare(fitted.likely, weather=billed.weather)
    assert billed.comparison.today.annual == same.today.annual
    assert billed.comparison.fitted_bills == 2
    assert billed.comparison.assumptions[:-1] == same.assumptions
    assert billed.comparison.today.annual != bench.worked(plain).comparison.today.annual
    stated = billed.case.home.thermostat
    assert billed.set_as_stated.home.thermostat == stated
    name = billed.comparison.today.name
    swept = bench._group(billed, name, (66,))
    assert swept.fitted_bills == 2
    assert swept.choices != bench._group(bench.worked(plain), name, (66,)).choices


def test_ranges_are_of_homes_that_explain_the_bills(
    bench: Workbench, plain: dict[str, Any], billed: Worked
) -> None:
    def width(worked: Worked) -> float:
        whole = None
        while whole is None:
            _share, whole = bench.ranges_on(worked)
        band = whole.today.range.bill_usd if whole.today.range else None
        assert band is not None
        return (band.high or 0.0) - (band.low or 0.0)

    assert width(billed) < width(bench.worked(plain))


def test_bills_that_cannot_be_used_are_told_and_not_worked_out(
    bench: Workbench, plain: dict[str, Any]
) -> None:
    none = {"rows": [{"from": "2026-01-15", "to": "2026-02-15", "kwh": -40.0}]}
    with pytest.raises(CostCompareError, match="bill"):
        bench.worked({**plain, "bills": none})
