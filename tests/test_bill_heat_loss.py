"""The heat loss by the bills: of bills that the survey's own house would make, and of others."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import numpy as np
import pytest

from costcompare.bill_heat_loss import BillHeatLoss, heat_loss_from_bills
from costcompare.case.bill_facts import StatedBill, StatedBills
from costcompare.case.facts import Case
from costcompare.sizing import Sizing, size
from costcompare.sizing.results import DesignConditions
from costcompare.views.wording.bill_heat_loss import both_losses_answer, meaning_answer
from tests.fitting.conftest import Home, fitted_home

__all__ = ["fitted_home"]


@pytest.fixture(scope="module")
def sizing(fitted_home: Home) -> Sizing:
    return size(fitted_home.case, weather=fitted_home.weather)


def with_bills(home: Home, months: list[int], factor: float = 1.0) -> Case:
    rows = tuple(
        StatedBill(bill.begins, bill.ends, bill.kwh, None, "actual")
        for bill in home.bills(months, factor).bills
    )
    return replace(home.case, bills=StatedBills(rows=rows))


def loss_of(home: Home, sizing: Sizing, case: Case) -> BillHeatLoss:
    found = heat_loss_from_bills(case, sizing, weather=home.weather)
    assert found is not None
    return found


def test_bills_of_the_house_as_it_is_said_agree_with_the_survey(
    fitted_home: Home, sizing: Sizing
) -> None:
    loss = loss_of(fitted_home, sizing, with_bills(fitted_home, [1, 5, 10]))
    assert loss.bills == 3
    assert loss.verdict == "the same"
    assert loss.fitted_btu_h.likely == pytest.approx(loss.survey_btu_h, rel=0.05)
    assert abs(loss.disagreement) < 0.05
    design = sizing.design
    apart = design.indoor_degf - design.outdoor_degf
    assert loss.survey_btu_h_per_degf == pytest.approx(loss.survey_btu_h / apart)
    assert "agree as far as the bills can tell" in both_losses_answer(loss, design)
    assert meaning_answer(loss) == ""


def test_higher_and_lower_bills_move_it_their_way(fitted_home: Home, sizing: Sizing) -> None:
    months = [1, 2, 5, 10, 12]
    low, even, high = (
        loss_of(fitted_home, sizing, with_bills(fitted_home, months, factor))
        for factor in (0.65, 1.0, 1.5)
    )
    likely = [one.fitted_btu_h.likely or np.nan for one in (low, even, high)]
    assert likely == sorted(likely)
    assert high.verdict == "more by the bills"
    assert "too small for the coldest hours" in meaning_answer(high)
    assert low.verdict == "less by the bills"
    assert "larger than the house needs" in meaning_answer(low)
    said = both_losses_answer(high, sizing.design)
    assert f"{round(100 * high.disagreement)} % more by the bills" in said


def test_without_bills_or_without_a_cold_hour_there_is_nothing_to_tell(
    fitted_home: Home, sizing: Sizing
) -> None:
    assert heat_loss_from_bills(fitted_home.case, sizing, weather=fitted_home.weather) is None
    warm: DesignConditions = replace(sizing.design, outdoor_degc=25.0)
    case = replace(
        fitted_home.case,
        bills=StatedBills(rows=(StatedBill(date(2025, 1, 1), date(2025, 2, 1), 3000.0),)),
    )
    warm_sizing = replace(sizing, design=warm)
    assert heat_loss_from_bills(case, warm_sizing, weather=fitted_home.weather) is None
