"""Life-cycle figures that can be worked out by hand, and what must always hold."""

from __future__ import annotations

import math
from typing import Any

import numpy_financial as npf
import pytest
from hypothesis import given
from hypothesis import strategies as st

from costcompare.money.life_cycle import (
    LifeCycle,
    OldSystem,
    Purchase,
    assess,
    evaluate,
    life_cycle_cost,
)
from costcompare.money.outlook import Outlook


def plain(**changes: Any) -> LifeCycle:
    facts: dict[str, Any] = {
        "installed_cost": 10_000.0,
        "incentives": 0.0,
        "yearly_saving": 1200.0,
        "maintenance": 0.0,
        "life": 15.0,
        "study_years": 15,
        "discount_rate": 0.03,
        "price_growth": 0.0,
    }
    return evaluate(**(facts | changes))


def test_without_interest_money_is_counted_on_the_fingers() -> None:
    result = plain(installed_cost=3000.0, yearly_saving=1000.0, study_years=4, discount_rate=0.0)
    assert result.yearly_position_usd == (-3000.0, -2000.0, -1000.0, 0.0, 1000.0)
    assert result.simple_payback_years == result.discounted_payback_years == 3.0
    # Eleven of fifteen years of life are left after four.
    assert result.residual_usd == pytest.approx(2200.0)
    assert result.net_savings_usd == pytest.approx(1000.0 + 2200.0)


def test_an_incentive_lowers_the_cost_and_maintenance_the_saving() -> None:
    result = plain(incentives=1000.0, maintenance=300.0)
    assert result.net_cost_usd == 9000.0
    assert result.simple_payback_years == pytest.approx(10.0)
    assert result.yearly_position_usd[0] == -9000.0
    assert result.yearly_position_usd[1] == pytest.approx(-9000.0 + 900.0 / 1.03)


def test_what_wears_out_is_bought_again_at_full_price() -> None:
    result = plain(life=10.0, incentives=2000.0, discount_rate=0.0)
    assert result.replacements_usd == 10_000.0
    assert result.yearly_position_usd[9] == pytest.approx(-8000.0 + 9 * 1200.0)
    assert result.yearly_position_usd[10] == pytest.approx(-18_000.0 + 10 * 1200.0)
    # The second unit is half worn at the end of year 15.
    assert result.residual_usd == pytest.approx(5000.0)
    assert result.net_savings_usd == pytest.approx(15 * 1200.0 - 8000.0 - 10_000.0 + 5000.0)


@pytest.mark.parametrize(("life", "bought"), [(15.0, 0), (7.5, 1), (5.0, 2), (4.0, 3), (14.9, 1)])
def test_nothing_is_bought_at_the_very_end(life: float, bought: int) -> None:
    assert plain(life=life, discount_rate=0.0).replacements_usd == bought * 10_000.0


def test_the_residual_of_a_longer_life_is_a_straight_line() -> None:
    """15,000 dollars, fifteen years of life, ten years looked at: a third is left."""
    result = plain(installed_cost=15_000.0, study_years=10, discount_rate=0.0)
    assert result.residual_usd == pytest.approx(5000.0)


@pytest.mark.parametrize("saving", [0.0, -200.0])
def test_no_saving_never_pays_back(saving: float) -> None:
    result = plain(yearly_saving=saving)
    assert result.simple_payback_years is None
    assert result.discounted_payback_years is None
    assert result.adjusted_internal_rate_of_return is None
    assert result.net_savings_usd < 0.0


def test_maintenance_above_the_saving_never_pays_back() -> None:
    assert plain(maintenance=1200.0).simple_payback_years is None


def test_a_payback_after_the_life_or_the_study_period_does_not_come() -> None:
    slow = plain(yearly_saving=700.0)
    assert slow.simple_payback_years == pytest.approx(10_000 / 700)
    assert slow.discounted_payback_years is None
    assert plain(life=9.0).discounted_payback_years is None
    assert plain(study_years=9).discounted_payback_years is None
    assert plain(study_years=10).discounted_payback_years == pytest.approx(9.7325, abs=1e-4)


def test_nothing_invested_has_no_ratio() -> None:
    result = plain(installed_cost=0.0)
    assert result.savings_to_investment_ratio is None
    assert result.adjusted_internal_rate_of_return is None
    assert result.simple_payback_years == result.discounted_payback_years == 0.0


@pytest.mark.parametrize(
    "changes", [{"life": 0.0}, {"study_years": 0}, {"discount_rate": -1.0}, {"price_growth": -2.0}]
)
def test_impossible_years_and_rates_are_refused(changes: dict[str, float]) -> None:
    with pytest.raises(ValueError, match=r"must be (above|at least)"):
        plain(**changes)


rates = st.floats(-0.02, 0.12)
options = st.fixed_dictionaries(
    {
        "installed_cost": st.floats(500.0, 40_000.0),
        "incentives": st.floats(0.0, 400.0),
        "yearly_saving": st.floats(-500.0, 6000.0),
        "maintenance": st.floats(0.0, 400.0),
        "life": st.floats(3.0, 40.0),
        "study_years": st.integers(1, 30),
        "discount_rate": rates,
        "price_growth": rates,
    }
)


@given(options)
def test_net_savings_ratio_and_rate_agree(facts: dict[str, Any]) -> None:
    """Accepting an option by net savings, by the ratio or by the rate is one decision."""
    result = evaluate(**facts)
    ratio, rate = (
        result.savings_to_investment_ratio,
        result.adjusted_internal_rate_of_return,
    )
    if ratio is not None and abs(ratio - 1.0) > 1e-6:
        assert (ratio > 1.0) == (result.net_savings_usd > 0.0)
    if rate is not None and ratio is not None and abs(ratio - 1.0) > 1e-6:
        assert (rate > facts["discount_rate"]) == (ratio > 1.0)


@given(options)
def test_the_last_position_is_the_net_savings_without_the_residual(facts: dict[str, Any]) -> None:
    result = evaluate(**facts)
    end = result.net_savings_usd - result.residual_usd
    assert result.yearly_position_usd[-1] == pytest.approx(end, abs=1e-6)


@given(options)
def test_discounting_never_brings_the_payback_forward(facts: dict[str, Any]) -> None:
    facts = facts | {"discount_rate": abs(facts["discount_rate"]), "price_growth": 0.0}
    result = evaluate(**facts)
    if result.discounted_payback_years is not None:
        assert result.simple_payback_years is not None
        assert result.discounted_payback_years >= result.simple_payback_years - 1e-9


@given(options)
def test_net_savings_are_those_of_an_independent_library(facts: dict[str, Any]) -> None:
    """Whole years of life, so that every flow falls on a year's end."""
    facts = facts | {"life": float(round(facts["life"]))}
    result = evaluate(**facts)
    years, life, cost = facts["study_years"], int(facts["life"]), facts["installed_cost"]
    flows = [facts["incentives"] - cost]
    for year in range(1, years + 1):
        flow = facts["yearly_saving"] * (1 + facts["price_growth"]) ** year - facts["maintenance"]
        if year % life == 0 and year < years:
            flow -= cost
        flows.append(flow)
    units = math.ceil(years / life)
    flows[-1] += cost * (units * life - years) / life
    assert result.net_savings_usd == pytest.approx(
        npf.npv(facts["discount_rate"], flows), rel=1e-9, abs=1e-6
    )


def bought(**changes: Any) -> Purchase:
    facts: dict[str, Any] = {"installed_cost": 6000.0, "yearly_saving": 1000.0, "life": 20.0}
    return Purchase(**(facts | changes))


def test_a_later_replacement_takes_out_again_what_had_come_back() -> None:
    """6,000 dollars back after six years; worn out after eight; again out until year twelve."""
    result = assess(bought(life=8.0), Outlook(15, 0.0, 0.0))
    assert result.discounted_payback_years == pytest.approx(6.0)
    assert result.unpaid_again_years == 8.0
    assert result.back_for_good_years == pytest.approx(12.0)
    short = assess(bought(life=8.0), Outlook(11, 0.0, 0.0))
    assert short.unpaid_again_years == 8.0
    assert short.back_for_good_years is None
    lasting = assess(bought(), Outlook(15, 0.0, 0.0))
    assert lasting.unpaid_again_years is None
    assert lasting.back_for_good_years == pytest.approx(6.0)


def test_the_old_system_that_need_not_be_bought_again_counts_when_it_would_have_been() -> None:
    """A furnace of 4,500 dollars due in three years: back in 3 instead of 6 years."""
    old = OldSystem(remaining_life=3.0, replacement_cost=4500.0, life=15.0)
    result = assess(bought(old_system=old), Outlook(10, 0.0, 0.0))
    assert result.yearly_position_usd[2] == -4000.0
    assert result.yearly_position_usd[3] == 1500.0
    assert result.discounted_payback_years == 3.0
    # Seven of its fifteen years are used at the end: eight fifteenths would be left.
    assert result.avoided_replacements_usd == pytest.approx(4500.0 - 4500.0 * 8.0 / 15.0)
    assert result.simple_payback_years == 6.0
    without = assess(bought(), Outlook(10, 0.0, 0.0))
    assert result.net_savings_usd - without.net_savings_usd == pytest.approx(
        result.avoided_replacements_usd
    )


def test_an_old_system_that_outlasts_the_years_looked_at_changes_nothing() -> None:
    old = OldSystem(remaining_life=15.0, replacement_cost=4500.0, life=15.0)
    assert assess(bought(old_system=old), Outlook(15, 0.03, 0.01)) == assess(
        bought(), Outlook(15, 0.03, 0.01)
    )


def test_a_tax_credit_comes_a_year_later_in_dollars_that_are_worth_less() -> None:
    result = assess(bought(later_incentives=1000.0), Outlook(10, 0.0, 0.0, inflation=0.25))
    assert result.net_cost_usd == 5000.0
    assert result.yearly_position_usd[:2] == pytest.approx((-6000.0, -6000.0 + 1000.0 + 800.0))


def test_moving_with_and_without_what_is_left() -> None:
    """6,000 dollars, twenty years of life: after five years 4,500 are left of it."""
    result = assess(bought(), Outlook(15, 0.0, 0.0))
    assert result.yearly_position_usd[5] == -1000.0
    assert result.yearly_with_residual_usd[5] == pytest.approx(3500.0)


@given(options)
def test_what_is_left_makes_the_last_position_the_net_savings(facts: dict[str, Any]) -> None:
    result = evaluate(**facts)
    assert result.yearly_with_residual_usd[-1] == pytest.approx(result.net_savings_usd, abs=1e-6)


def test_a_life_cycle_cost_keeps_fixed_charges_from_growing() -> None:
    outlook = Outlook(2, 0.0, 0.1)
    # 900 of energy grows to 990 and 1,089; 100 of fixed charges stay.
    assert life_cycle_cost(1000.0, 100.0, 50.0, outlook) == pytest.approx(
        990.0 + 1089.0 + 200.0 + 50.0
    )
