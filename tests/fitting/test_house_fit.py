"""A house fitted to bills that a house of the same model made."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

import costcompare
from costcompare.billing.reading import Bills
from costcompare.comparison import Band
from costcompare.errors import InputError
from costcompare.fitting import fit_house
from costcompare.fitting.results import FittedHouse
from tests.fitting.conftest import Home


def fit(home: Home, bills: Bills, **asked: object) -> FittedHouse:
    given: dict[str, object] = {"weather": home.weather, "weather_is_of_the_bills": True}
    if not asked.get("former_owner"):
        given["slopes"] = home.slopes
    return fit_house(home.case, bills, **(given | asked))  # type: ignore[arg-type]


def width(band: Band) -> float:
    assert band.low is not None
    assert band.high is not None
    return band.high / band.low


def test_bills_of_the_likely_house_move_nothing(fitted_home: Home) -> None:
    found = fit(fitted_home, fitted_home.bills([1, 4, 7])).report
    assert found.settled
    assert max(abs(fact.moved) for fact in found.facts) < 0.05
    assert found.findings == ()
    assert abs(found.mean_bias) < 0.01
    assert width(found.yearly_heating_kwh) < width(found.yearly_heating_said_kwh)


def test_each_further_bill_makes_the_range_narrower(fitted_home: Home) -> None:
    widths = [
        width(fit(fitted_home, fitted_home.bills(months)).report.yearly_heating_kwh)
        for months in ([1], [1, 11], [1, 5, 11], range(1, 13))
    ]
    assert widths == sorted(widths, reverse=True)
    assert np.log(widths[-1]) < 0.6 * np.log(widths[0])


def test_a_leakier_house_is_found_by_its_bills(fitted_home: Home) -> None:
    bills = fitted_home.bills(
        range(1, 13), house__air_leakage_at_50_pa=1.5, ducts__supply_leakage=1.5
    )
    found = fit(fitted_home, bills).report
    assert found.within_limits
    by_name = {fact.name: fact for fact in found.facts}
    assert by_name["house.air_leakage_at_50_pa"].moved > 0.1
    assert by_name["ducts.supply_leakage"].moved > 0.1
    said, now = found.yearly_heating_said_kwh, found.yearly_heating_kwh
    assert now.low is not None
    assert now.high is not None
    assert said.likely is not None
    assert now.low > said.likely
    for bill in found.bills:
        computed = bill.computed_kwh.likely
        assert computed == pytest.approx(bill.measured_kwh, rel=0.06)


def test_a_typical_year_makes_every_bill_count_for_less(fitted_home: Home) -> None:
    bills = fitted_home.bills([1, 2])
    own = fit(fitted_home, bills).report
    typical = fit(fitted_home, bills, weather_is_of_the_bills=False).report
    assert all(
        wide.error_kwh > narrow.error_kwh
        for wide, narrow in zip(typical.bills, own.bills, strict=True)
    )
    assert width(typical.yearly_heating_kwh) > width(own.yearly_heating_kwh)


def test_a_january_that_is_far_too_low_is_told_of(fitted_home: Home) -> None:
    plain = fitted_home.bills(range(1, 13))
    (first, *rest) = plain.bills
    low = Bills((type(first)(first.begins, first.ends, 0.4 * first.kwh, read="actual"), *rest))
    topics = {finding.topic for finding in fit(fitted_home, low).report.findings}
    assert "too little" in topics


def test_a_house_kept_much_colder_than_said_is_told_of(fitted_home: Home) -> None:
    found = fit(fitted_home, fitted_home.bills(range(1, 13), factor=0.45)).report
    assert any(finding.topic in ("temperature", "fact", "too little") for finding in found.findings)


def test_the_next_bill_is_one_that_is_not_there(fitted_home: Home) -> None:
    one = fit(fitted_home, fitted_home.bills([1])).report.next_bill
    assert one is not None
    assert one.month != 1
    assert 0.05 <= one.narrower < 1.0
    assert fit(fitted_home, fitted_home.bills(range(1, 13))).report.next_bill is None


def test_a_former_owner_keeps_nothing_of_what_was_said(fitted_home: Home) -> None:
    colder = fitted_home.bills(range(1, 13), thermostat__day=-4.0, thermostat__night=0.0)
    theirs = fit(fitted_home, colder, former_owner=True)
    day = next(fact for fact in theirs.report.facts if fact.name == "thermostat.day")
    assert width(day.said) > 1.2
    assert day.fitted.likely is not None
    assert day.said.likely is not None
    assert day.fitted.likely < day.said.likely - 2.0
    # The family's own setting in the homes drawn for ranges is the one they stated.
    column = [fact.name for fact in fitted_home.model.facts].index("thermostat.day")
    assert abs(theirs.draws.z[:, column].mean()) < 0.1


def test_the_homes_drawn_explain_the_bills(fitted_home: Home) -> None:
    bills = fitted_home.bills(range(1, 13), house__wall_insulation=-1.0)
    found = fit(fitted_home, bills, members=32)
    days = fitted_home.model.predicted(found.draws.z)
    heating = days.heating.sum(axis=1)
    low, middle, high = np.quantile(heating, [0.1, 0.5, 0.9])
    stated = found.report.yearly_heating_kwh
    assert middle == pytest.approx(stated.likely, rel=0.03)
    assert low == pytest.approx(stated.low, rel=0.04)
    assert high == pytest.approx(stated.high, rel=0.04)


def test_the_same_bills_give_the_same_digits(fitted_home: Home) -> None:
    bills = fitted_home.bills([2])
    one, other = (fit(fitted_home, bills) for _ in range(2))
    assert one.report == other.report
    assert (one.draws.z == other.draws.z).all()


def test_the_public_function_reads_a_file_of_bills(fitted_home: Home, tmp_path: Path) -> None:
    bills = fitted_home.bills([1, 7])
    rows = [f"{bill.begins},{bill.ends},{bill.kwh:.1f},actual" for bill in bills.bills]
    path = tmp_path / "bills.csv"
    path.write_text("\n".join(["from,to,kwh,read", *rows, ""]), encoding="utf-8")
    found = costcompare.fit(fitted_home.case, path).report
    assert [bill.measured_kwh for bill in found.bills] == [
        round(bill.kwh, 1) for bill in bills.bills
    ]
    assert not found.weather_is_of_the_bills
    assert max(abs(fact.moved) for fact in found.facts) < 0.05


def test_no_bill_is_refused(fitted_home: Home) -> None:
    with pytest.raises(InputError, match="holds no bill"):
        fit(fitted_home, Bills(()))
