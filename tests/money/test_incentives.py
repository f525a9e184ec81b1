"""Only confirmed money that is in force lowers a price."""

from __future__ import annotations

from datetime import date

import pytest

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
