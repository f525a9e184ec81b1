"""Rows of prices and of money in the form, and what of them the form leaves as it stands."""

from __future__ import annotations

from typing import Any

import pytest

from costcompare.case import case_from_document
from costcompare.case.partial import rule_at
from costcompare.errors import CaseError
from costcompare.views.dashboard.pieces import texts
from costcompare.views.dashboard.visit.answers import value_at
from costcompare.views.dashboard.visit.deeds import new_visit
from costcompare.views.dashboard.visit.doors import Desk
from costcompare.views.dashboard.visit.form import visit_form
from costcompare.views.dashboard.visit.money_rows import MOST_ROWS, ROW_KINDS, with_row_added

Doc = dict[str, Any]

RARE: Doc = {
    "tariff": {
        "name": "with everything (invented)",
        "currency": "€",
        "daily_charge": "0.30 $/day",
        "price": "0.20 $/kWh",
        "periods": [
            {"name": "peak", "months": "10-3", "hours": "17-20", "price": "0.40 $/kWh"},
        ],
        "holidays": ["usual six"],
        "holidays_observed": "nearest weekday",
        "demand": [{"name": "demand", "price": "3 $/kW", "hours": "14-19", "ratchet": "50 %"}],
        "riders": [{"name": "city", "share": "2 %", "on": ["energy", "fixed"]}],
        "minimum_bill": "10 $/month",
        "minimum_counts": ["energy", "fixed"],
        "export": {"netting": "month", "price": "0.05 $/kWh"},
        "taxes": [{"name": "state", "share": "3 %", "on": ["energy"]}],
        "proration": "30 days",
        "rounding": "lines",
        "changes": [{"from": "2027-07-01", "price": "0.22 $/kWh"}],
    },
    "money": {
        "installed_on": "2027-03-01",
        "inflation": "2 %",
        "move_in_years": 7,
        "incentives": [
            {
                "name": "rebate",
                "share": "20 %",
                "cap": "900 $",
                "status": "confirmed",
                "not_with": ["credit"],
                "checked_on": "2027-01-05",
            },
            {"name": "credit", "amount": "400 $", "kind": "tax credit", "status": "unknown"},
        ],
        "finance": [
            {"name": "bank", "kind": "loan", "rate": "7 %", "term": "8 year", "dealer_fee": "3 %"}
        ],
        "old_system": {"remaining_life": "6 year", "replacement_cost": "3500 $", "counted": True},
        "emissions": {"factor": "0.30 kg/kWh", "source": "the supplier (invented)"},
    },
}
"""Every kind of key that a tariff and money can have beside those of the examples"""


@pytest.fixture
def rare(opened: Doc) -> Doc:
    document = {**opened, **RARE}
    case_from_document(document)
    return document


def changed(desk: Desk, document: Doc, **edit: Any) -> Doc:
    answer = desk.change({"document": document, "edit": edit})
    assert answer["faults"] == []
    found: Doc = answer["document"]
    return found


def test_every_field_of_a_row_is_a_key_of_a_case() -> None:
    for kind in ROW_KINDS.values():
        row = (*kind.at, 0) if kind.is_list else kind.at
        for key, label, _hint in kind.asks:
            assert rule_at((*row, key)) is not None, (kind.at, key)
            assert label


@pytest.mark.parametrize("name", ROW_KINDS)
def test_a_new_row_makes_a_case_and_can_be_taken_away_again(name: str, desk: Desk) -> None:
    kind = ROW_KINDS[name]
    document = new_visit()
    added = changed(desk, document, do="add row", text=name)
    row = (*kind.at, 0) if kind.is_list else kind.at
    assert value_at(added, row) is not None
    words = " ".join(texts(visit_form(added, case_from_document(added))))
    assert kind.asks[0][1] in words
    do, at = ("remove row", [*row]) if kind.is_list else ("forget", [*kind.at])
    without = changed(desk, added, do=do, at=at)
    assert not value_at(without, kind.at)


def test_figures_of_a_new_row_are_guesses_until_somebody_answers(desk: Desk) -> None:
    document = changed(desk, new_visit(), do="add row", text="incentive")
    facts = {fact.path: fact for fact in case_from_document(document).facts}
    assert facts["money.incentives.rebate.amount"].known == "guessed"
    at = ["money", "incentives", 0, "amount"]
    told = changed(desk, document, do="say", at=at, text="750", known="seen")
    facts = {fact.path: fact for fact in case_from_document(told).facts}
    assert facts["money.incentives.rebate.amount"].known == "seen"
    for kind in ROW_KINDS.values():
        figures = [
            value for value in kind.fresh.values() if isinstance(value, str) and value[:1].isdigit()
        ]
        assert figures in ([], ["17-20"])  # hours are shown as they stand


def test_rows_have_names_of_their_own_and_an_end(opened: Doc) -> None:
    case = case_from_document(opened)
    document = opened
    for _row in range(MOST_ROWS - len(opened["money"].get("incentives", []))):
        document = with_row_added(document, case, "incentive")
    names = [row["name"] for row in document["money"]["incentives"]]
    assert len(set(names)) == MOST_ROWS
    with pytest.raises(CaseError, match="12 rows at most"):
        with_row_added(document, case, "incentive")
    with pytest.raises(CaseError, match="cannot be understood"):
        with_row_added(document, case, "a pony")


def test_one_of_three_amounts_takes_the_place_of_the_others(desk: Desk, rare: Doc) -> None:
    monthly = changed(desk, rare, do="say", at=["tariff", "riders", 0, "per_month"], text="4")
    (rider,) = monthly["tariff"]["riders"]
    assert rider["per_month"] == "4 $/month"
    assert "share" not in rider
    paid = changed(desk, rare, do="say", at=["money", "incentives", 0, "amount"], text="700")
    assert "share" not in paid["money"]["incentives"][0]


def test_prices_are_answered_with_the_unit_of_their_label(desk: Desk, rare: Doc) -> None:
    for at, text, value in (
        (["tariff", "periods", 0, "price"], "0.5", "0.5 $/kWh"),
        (["tariff", "demand", 0, "price"], "6", "6 $/kW"),
        (["money", "finance", 0, "term"], "12", "12 year"),
        (["money", "old_system", "remaining_life"], "9", "9 year"),
        (["money", "emissions", "factor"], "0.2", "0.2 kg/kWh"),
    ):
        answered = changed(desk, rare, do="say", at=at, text=text)
        assert str(value_at(answered, tuple(at))).removesuffix("s") == value


def test_what_the_form_does_not_show_outlives_it(desk: Desk, rare: Doc) -> None:
    document = changed(desk, rare, do="say", at=["thermostat", "day"], text="65")
    document = changed(desk, document, do="say", at=["money", "inflation"], text="3")
    saved = desk.save({"document": document})
    again = desk.open({"text": saved["text"], "name": saved["name"]})["document"]
    assert again["tariff"] == RARE["tariff"]
    assert again["money"] == {**RARE["money"], "inflation": "3 %"}


def test_seasons_are_named_and_kept(desk: Desk, opened: Doc) -> None:
    tier = [{"price": "0.12 $/kWh"}]
    seasons = [
        {"name": "summer", "months": "6-9", "tiers": tier},
        {"name": "rest", "months": "10-5", "tiers": tier},
    ]
    document = {**opened, "tariff": {"name": "seasons (invented)", "seasons": seasons}}
    form = desk.form({"document": document})["form"]
    assert "This tariff has seasons" in " ".join(texts(form))
    document = changed(desk, document, do="say", at=["tariff", "tax"], text="2")
    assert document["tariff"]["seasons"] == seasons
