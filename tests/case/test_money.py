"""Money over the years as a case states it."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from .cases import case, sentences
from .cases import document as made

OPTIONS = [
    {
        "name": "Heaters",
        "kind": "room heaters",
        "installed_cost": "3000 $",
    }
]


def money(**keys: Any) -> Any:
    return case(options=OPTIONS, money=keys).money


def test_what_is_left_out() -> None:
    facts = money()
    assert facts.inflation == pytest.approx(0.025)
    assert (facts.move_in_years, facts.old_system, facts.finance) == (None, None, ())
    assert facts.emissions is None
    assert facts.incentives == ()


def test_an_incentive_with_everything() -> None:
    (rebate,) = money(
        incentives=[
            {
                "name": "rebate",
                "share": "30 %",
                "cap": "2000 $",
                "payer": "the utility",
                "kind": "tax credit",
                "status": "confirmed",
                "income_test": "passed",
                "apply_before_work": True,
                "applied_on": date(2027, 1, 10),
                "tax_owed": "900 $",
                "source": "a letter",
                "checked_on": "2027-01-02",
            }
        ]
    ).incentives
    assert (rebate.share, rebate.cap, rebate.tax_owed) == (pytest.approx(0.3), 2000.0, 900.0)
    assert (rebate.payer, rebate.kind, rebate.income_test) == (
        "the utility",
        "tax credit",
        "passed",
    )
    assert rebate.apply_before_work
    assert rebate.applied_on == date(2027, 1, 10)
    assert (rebate.source, rebate.checked_on) == ("a letter", date(2027, 1, 2))


def test_the_old_system() -> None:
    old = money(old_system={"remaining_life": "6 year", "replacement_cost": "4500 $"}).old_system
    assert (old.remaining_life, old.replacement_cost, old.life) == (6.0, 4500.0, 15.0)
    assert old.counted
    assert old.options is None
    off = {"remaining_life": "0 year", "replacement_cost": "1 $", "life": "9 year"}
    switched = money(old_system={**off, "counted": False, "options": ["Heaters"]}).old_system
    assert (switched.life, switched.counted, switched.options) == (9.0, False, ("Heaters",))


def test_ways_to_pay_and_emissions() -> None:
    facts = money(
        finance=[
            {"name": "cash", "kind": "cash"},
            {"name": "bank", "kind": "loan", "rate": "7.99 %", "term": "10 year"},
            {
                "name": "lease",
                "kind": "lease",
                "payment": "129 $/month",
                "payment_growth": "2.9 %",
                "term": "144 months",
                "buyout": "500 $",
            },
        ],
        emissions={"factor": "771 lb/MWh", "source": "a table of the agency"},
        move_in_years=7,
    )
    cash, loan, lease = facts.finance
    assert (cash.months, cash.payment) == (0, None)
    assert (loan.rate, loan.months) == (pytest.approx(0.0799), 120)
    assert (lease.months, lease.payment, lease.buyout) == (144, 129.0, 500.0)
    assert facts.emissions.factor == pytest.approx(0.34972, abs=1e-5)
    assert facts.move_in_years == 7


@pytest.mark.parametrize(
    ("keys", "sentence"),
    [
        (
            {"incentives": [{"name": "r", "status": "unknown"}]},
            'money.incentives.r.amount: is needed. Write for example amount = "1500 $", or '
            'share = "30 %" of the price.',
        ),
        (
            {"incentives": [{"name": "r", "status": "unknown", "amount": "1 $", "share": "1 %"}]},
            "money.incentives.r.share: give either amount or share, not both.",
        ),
        (
            {
                "incentives": [
                    {"name": "r", "status": "unknown", "amount": "1 $", "not_with": ["q"]}
                ]
            },
            "money.incentives.r.not_with: must be another incentive here: the case has none"
            " (given: q).",
        ),
        (
            {
                "incentives": [
                    {"name": "r", "status": "unknown", "amount": "1 $", "tax_owed": "5 $"}
                ]
            },
            "money.incentives.r.tax_owed: is for a tax credit alone (given: nothing). "
            'Write kind = "tax credit".',
        ),
        (
            {"finance": [{"name": "f", "kind": "loan", "rate": "5 %"}]},
            "money.finance.f.term: is needed for a way to pay of the kind loan. "
            'Write for example term = "10 year".',
        ),
        (
            {"finance": [{"name": "f", "kind": "cash", "rate": "5 %"}]},
            "money.finance.f.rate: does not belong to the kind cash.",
        ),
        (
            {"finance": [{"name": "f", "kind": "on-bill tariff", "term": "10 year"}]},
            "money.finance.f.payment: an on-bill tariff needs either its payment or a rate. "
            'Write for example payment = "95 $/month".',
        ),
        (
            {
                "old_system": {
                    "remaining_life": "5 year",
                    "replacement_cost": "1 $",
                    "options": ["Heater"],
                }
            },
            "money.old_system.options: must be an option of the case: Heaters (given: Heater). "
            'Write "Heaters".',
        ),
        (
            {"emissions": {"factor": "5 tons", "source": "x"}},
            "money.emissions.factor: must be an emission factor (kg/kWh, lb/MWh)"
            ' (given: "5 tons"). Write for example "0.35 kg/kWh".',
        ),
    ],
)
def test_what_does_not_fit_together_is_said(keys: dict[str, Any], sentence: str) -> None:
    assert sentences(made(options=OPTIONS, money=keys)) == [sentence]
