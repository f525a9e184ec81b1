"""Only confirmed money that is in force lowers a price."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import Any

import pytest

import costcompare
from costcompare.case import case_from_document, example_path, read_document
from costcompare.case.facts import Incentive
from costcompare.money.incentives import counted

ON = date(2027, 3, 1)


def test_a_credit_that_ended_gives_nothing_and_says_so() -> None:
    credit = Incentive("tax credit", 2000.0, "confirmed", expires=date(2025, 12, 31))
    result = counted([credit], "Two heads", date(2026, 1, 1))
    assert (result.confirmed_usd, result.possible_usd) == (0.0, 0.0)
    assert result.lines[0].counted is False
    assert result.lines[0].amount_usd == 2000.0
    assert result.lines[0].reason == ("ended on 2025-12-31, before the installation on 2026-01-01")


def test_the_last_day_still_counts() -> None:
    credit = Incentive("tax credit", 2000.0, "confirmed", expires=date(2025, 12, 31))
    assert counted([credit], "Two heads", date(2025, 12, 31)).confirmed_usd == 2000.0


@pytest.mark.parametrize("status", ["applied for", "unknown"])
def test_money_that_is_not_confirmed_never_lowers_the_price(status: str) -> None:
    rebate = Incentive("utility rebate", 1500.0, status)  # type: ignore[arg-type]
    result = counted([rebate], "Two heads", ON)
    assert (result.confirmed_usd, result.possible_usd) == (0.0, 1500.0)
    assert "not in the price" in result.lines[0].reason


def test_an_incentive_that_has_not_begun_gives_nothing() -> None:
    rebate = Incentive("state rebate", 800.0, "confirmed", starts=date(2027, 6, 1))
    result = counted([rebate], "Two heads", ON)
    assert result.confirmed_usd == result.possible_usd == 0.0
    assert result.lines[0].reason == "begins on 2027-06-01, after the installation on 2027-03-01"


def test_incentives_of_other_options_are_left_out() -> None:
    ducts = Incentive("duct rebate", 400.0, "confirmed", options=("Seal the ducts",))
    anybody = Incentive("co-op gift", 100.0, "confirmed")
    result = counted([ducts, anybody], "Two heads", ON)
    assert result.confirmed_usd == 100.0
    assert [line.name for line in result.lines] == ["co-op gift"]
    assert counted([ducts, anybody], "Seal the ducts", ON).confirmed_usd == 500.0


def test_no_incentives() -> None:
    result = counted([], "Two heads", ON)
    assert (result.confirmed_usd, result.possible_usd, result.lines) == (0.0, 0.0, ())


def incentive(**changes: Any) -> Incentive:
    facts: dict[str, Any] = {"name": "rebate", "amount": 1000.0, "status": "confirmed"}
    return Incentive(**(facts | changes))


def test_a_share_of_the_price_stops_at_its_cap() -> None:
    third = incentive(amount=0.0, share=0.3, cap=2000.0)
    assert counted([third], "x", ON, price=5000.0).confirmed_usd == pytest.approx(1500.0)
    assert counted([third], "x", ON, price=9000.0).confirmed_usd == 2000.0
    with pytest.raises(ValueError, match="needs the price"):
        counted([third], "x", ON)


@pytest.mark.parametrize(
    ("changes", "possible", "reason"),
    [
        ({"income_test": "unknown"}, 1000.0, "not known whether its limit on income is met"),
        ({"apply_before_work": True}, 1000.0, "must be applied for before the work begins"),
        ({"kind": "tax credit"}, 1000.0, "not known whether enough tax is owed"),
        ({"kind": "loan buy-down"}, 1000.0, "lowers the interest of a loan, not the price"),
        ({"income_test": "not passed"}, 0.0, "its limit on income is not met"),
        (
            {"apply_before_work": True, "applied_on": date(2027, 3, 1)},
            0.0,
            "had to be applied for before the work, and was on 2027-03-01",
        ),
        ({"kind": "tax credit", "tax_owed": 0.0}, 0.0, "no tax is owed"),
    ],
)
def test_whatever_is_open_or_lost_stays_out_of_the_price(
    changes: dict[str, Any], possible: float, reason: str
) -> None:
    result = counted([incentive(**changes)], "x", ON, price=8000.0)
    assert result.confirmed_usd == 0.0
    assert result.possible_usd == possible
    assert result.lines[0].reason.startswith(reason)


def test_applied_for_in_time_and_confirmed_counts() -> None:
    rebate = incentive(apply_before_work=True, applied_on=date(2027, 2, 1), income_test="passed")
    assert counted([rebate], "x", ON, price=8000.0).confirmed_usd == 1000.0


def test_of_two_that_exclude_each_other_the_larger_counts() -> None:
    small = incentive(name="small", amount=400.0, not_with=("large",))
    result = counted([small, incentive(name="large"), incentive(name="third")], "x", ON, price=8e3)
    assert result.confirmed_usd == 2000.0
    assert result.lines[0].reason == "cannot be added to “large”"
    assert result.lines[0].standing == "not counted"
    # One that is sure goes before a larger one that is not.
    unsure = incentive(name="large", status="unknown")
    result = counted([small, unsure], "x", ON, price=8e3)
    assert (result.confirmed_usd, result.possible_usd) == (400.0, 0.0)


def test_a_tax_credit_stops_at_the_tax_owed_and_comes_later() -> None:
    credit = incentive(kind="tax credit", tax_owed=600.0)
    result = counted([credit, incentive(name="rebate at once")], "x", ON, price=8e3)
    assert result.confirmed_usd == 1600.0
    assert result.later_usd == 600.0


def test_nobody_is_paid_more_than_the_price() -> None:
    result = counted([incentive(), incentive(name="other")], "x", ON, price=1500.0)
    assert result.confirmed_usd == 1500.0
    assert sorted(line.amount_usd for line in result.lines) == [500.0, 1000.0]
    assert any("cut to what the work costs" in line.reason for line in result.lines)


def test_who_pays_and_where_it_was_read_goes_along() -> None:
    rebate = incentive(payer="the utility", source="its page", checked_on=date(2027, 1, 9))
    line = counted([rebate], "x", ON, price=8e3).lines[0]
    assert (line.payer, line.source, line.checked_on) == ("the utility", "its page", "2027-01-09")


def test_the_program_knows_no_incentive_of_its_own() -> None:
    """Nothing in the tables that come with it, and none in a case that states none."""
    data = Path(costcompare.__file__).parent / "data"
    for table in data.glob("*.csv"):
        text = table.read_text(encoding="utf-8").lower()
        assert "rebate" not in text
        assert "tax credit" not in text
    document = read_document(example_path("demo"))
    del document["money"]["incentives"]
    assert case_from_document(document).money.incentives == ()
