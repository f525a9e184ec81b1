"""From the bills of a year to the money of a choice."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from functools import cache

import pytest

from costcompare.billing.tariff import MonthBill, YearBill
from costcompare.case import Case, example_path, read_case
from costcompare.case.facts import Emissions, Finance, Incentive, OldSystemFacts
from costcompare.comparison import AS_LIVED, AS_WANTED, MoneyYears
from costcompare.owning import Before, makes_needless, money_years, warmer_degf


@cache
def demo() -> Case:
    return read_case(example_path("demo"))


def year(winter: float, summer: float, *, fixed: float = 10.0) -> YearBill:
    """A bill of the same amount in each month from October to March, and in each other one."""
    months = tuple(
        MonthBill(month, 0.0, (), usd - fixed, fixed, 0.0)
        for month in range(1, 13)
        for usd in (winter if month in (10, 11, 12, 1, 2, 3) else summer,)
    )
    energy = sum(month.energy_usd for month in months)
    return YearBill(months, energy, 12 * fixed, 0.0, energy + 12 * fixed)


NOW, WARMER, NEW, NEW_WARMER = year(300, 80), year(400, 85), year(150, 90), year(180, 95)
BEFORE = Before(NOW, WARMER)


def owned(case: Case, number: int = 1, warmth: str = AS_WANTED) -> MoneyYears:
    bill = NEW_WARMER if warmth == AS_WANTED else NEW
    money = money_years(case, case.options[number], warmth, bill, BEFORE)  # type: ignore[arg-type]
    assert money is not None
    return money


def with_money(**changes: object) -> Case:
    case = demo()
    return replace(case, money=replace(case.money, **changes))  # type: ignore[arg-type]


def test_every_saving_is_a_bill_less_a_bill() -> None:
    money = owned(demo())
    assert money.first_year_saving_usd == pytest.approx(2280.0 - 1650.0)
    assert money.same_warmth_saving_usd == pytest.approx(2910.0 - 1650.0)
    assert money.warmth_worth_usd == pytest.approx(630.0)
    # October to March 120 a month, April -15.
    assert money.waiting_a_winter_usd == pytest.approx(6 * 120.0 - 15.0)


def test_the_life_cycle_costs_differ_by_the_net_savings() -> None:
    for number in range(len(demo().options)):
        years = owned(demo(), number).over_the_years
        assert years is not None
        net = owned(demo(), number).net_savings_usd
        assert years.today_life_cycle_cost_usd - years.life_cycle_cost_usd == pytest.approx(net)
        assert years.nominal_net_savings_usd == pytest.approx(net)
        parts = years.energy_savings_usd - years.maintenance_usd - years.replacements_usd
        parts += years.avoided_replacements_usd + years.residual_usd - years.net_cost_usd
        assert parts == pytest.approx(net)


def test_unknown_money_changes_no_figure() -> None:
    hoped = Incentive("hoped for", 5000.0, "unknown")
    with_it, without = (owned(with_money(incentives=those)) for those in ((hoped,), ()))
    assert with_it.possible_incentives_usd == 5000.0
    assert replace(with_it, incentives=(), possible_incentives_usd=0.0) == without


def test_a_credit_that_ended_with_2025_gives_nothing_in_2026_and_says_so() -> None:
    credit = Incentive(
        "a tax credit", 2000.0, "confirmed", expires=date(2025, 12, 31), kind="tax credit",
        tax_owed=5000.0,
    )  # fmt: skip
    money = owned(with_money(incentives=(credit,), installed_on=date(2026, 1, 1)))
    assert money.incentives_usd == money.possible_incentives_usd == 0.0
    (line,) = money.incentives
    assert line.reason == "ended on 2025-12-31, before the installation on 2026-01-01"
    in_time = owned(with_money(incentives=(credit,), installed_on=date(2025, 12, 31)))
    assert in_time.incentives_usd == 2000.0


def test_the_old_furnace_counts_where_it_goes_and_can_be_switched_off() -> None:
    old = OldSystemFacts(5.0, 4500.0, 15.0, counted=True)
    case = with_money(old_system=old)
    needless = {option.name: makes_needless(case, option) for option in case.options}
    assert [name for name, goes in needless.items() if not goes] == [
        option.name for option in case.options if option.kind == "improve"
    ]
    number = next(n for n, option in enumerate(case.options) if needless[option.name])
    counted, plain = owned(case, number), owned(demo(), number)
    assert counted.net_savings_usd > plain.net_savings_usd
    assert counted.over_the_years is not None
    assert counted.over_the_years.old_system is not None
    off = with_money(old_system=replace(old, counted=False))
    assert owned(off, number) == plain
    named = with_money(old_system=replace(old, options=(case.options[0].name,)))
    assert makes_needless(named, case.options[0])
    assert not makes_needless(named, case.options[number])


def test_moving_before_the_end() -> None:
    money = owned(with_money(move_in_years=6))
    years = money.over_the_years
    assert years is not None
    assert years.position_when_moving_usd == money.yearly_position_usd[6]
    assert years.with_residual_when_moving_usd == years.yearly_with_residual_usd[6]
    staying = owned(with_money(move_in_years=40)).over_the_years
    assert staying is not None
    assert staying.move_in_years is None


def test_a_way_to_pay_is_held_against_the_bills_of_each_month() -> None:
    way = Finance("bank", "loan", 0.0, 100, 0.0, 0.0, None, 0.0, 0.0)
    other = replace(way, name="other", options=("nothing of this name",))
    money = owned(with_money(finance=(way, other)))
    (paid,) = money.ways_to_pay
    price = money.installed_cost_usd - money.incentives_usd
    assert paid.cash_price_usd == price
    assert paid.monthly_balance_usd[0] == pytest.approx(120.0 - price / 100)
    assert paid.monthly_balance_usd[6] == pytest.approx(-15.0 - price / 100)


def test_other_growths_and_rates_lie_round_the_likely_one() -> None:
    money = owned(demo())
    facts = demo().money
    growth = [o for o in money.outlooks if o.discount_rate == facts.discount_rate]
    nets = [line.net_savings_usd for line in sorted(growth, key=lambda o: o.price_growth)]
    assert nets == sorted(nets)
    assert len(nets) == 3
    rates = [o for o in money.outlooks if o.price_growth == facts.price_growth]
    assert [o.discount_rate for o in sorted(rates, key=lambda o: o.discount_rate)] == [
        0.0,
        0.03,
        0.07,
    ]
    assert any(o.net_savings_usd == money.net_savings_usd for o in money.outlooks)


def test_today_has_no_money_as_you_live_now() -> None:
    assert money_years(demo(), None, AS_LIVED, NOW, BEFORE) is None
    wanted = money_years(demo(), None, AS_WANTED, WARMER, BEFORE)
    assert wanted is not None
    assert wanted.first_year_saving_usd == pytest.approx(2280.0 - 2910.0)
    assert wanted.over_the_years is None


def test_how_much_warmer_is_the_mean_of_day_and_night() -> None:
    """66 to 70 F by day, 62 to 66 F in the eight hours of the night."""
    assert warmer_degf(demo().home) == pytest.approx(4.0)


def test_no_factor_no_emissions() -> None:
    assert demo().money.emissions is None
    assert with_money(emissions=Emissions(0.35, "x")).money.emissions is not None
