"""The house of a case that holds bills, and its thermostats as they are said to stand."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from costcompare.case.bill_facts import StatedBill, StatedBills
from costcompare.comparing import compare
from costcompare.errors import InputError
from costcompare.fitting import (
    compare_fitted,
    fit_house,
    fitted_to_own_bills,
    with_stated_thermostat,
)
from tests.fitting.conftest import Home


def test_a_case_without_bills_is_not_fitted(fitted_home: Home) -> None:
    assert fitted_home.case.bills is None
    assert fitted_to_own_bills(fitted_home.case, fitted_home.weather) is None


def test_the_bills_of_the_case_are_the_bills_of_the_fit(fitted_home: Home) -> None:
    bills = fitted_home.bills([1, 6], factor=1.2)
    rows = tuple(StatedBill(one.begins, one.ends, one.kwh, None, "actual") for one in bills.bills)
    case = replace(fitted_home.case, bills=StatedBills(rows=rows))
    told: list[float] = []
    found = fitted_to_own_bills(
        case, fitted_home.weather, progress=lambda _text, share: told.append(share)
    )
    assert found is not None
    assert "120 days between bills" in found.report.notes[0]
    given = fit_house(case, bills, weather=fitted_home.weather, members=1).report
    assert replace(found.report, notes=()) == given
    assert told[-1] == 1.0
    likely = found.likely
    assert likely.home.thermostat.day != case.home.thermostat.day
    told_of = compare_fitted(found, weather=fitted_home.weather)
    assert told_of.fitted_bills == 2
    assert told_of.today.annual == compare(likely, weather=fitted_home.weather).today.annual
    set_again = with_stated_thermostat(likely, case)
    assert set_again.home.thermostat == case.home.thermostat
    assert set_again.home.house == likely.home.house
    assert set_again.today == likely.today


def test_a_file_that_is_not_there_is_told_of(fitted_home: Home) -> None:
    case = replace(fitted_home.case, bills=StatedBills(file=Path("nowhere.csv")))
    with pytest.raises(InputError, match="nowhere"):
        fitted_to_own_bills(case, fitted_home.weather)
