"""The lines of a comparison's bills add up, and can be worked out again from their amounts."""

from __future__ import annotations

from functools import cache
from typing import Any

import pytest

from costcompare.comparing import compare
from costcompare.comparison import AS_LIVED, Choice, Comparison
from tests.case.cases import TWO_ROOMS, case

PEAK = {"name": "peak", "hours": "14-19", "days": "weekdays", "price": "0.3 $/kWh"}
TARIFF: dict[str, Any] = {
    "name": "here",
    "customer_charge": "9 $/month",
    "demand": [{"price": "3 $/kW"}],
    "riders": [{"name": "fuel", "per_kwh": "0.004 $/kWh"}],
    "tax": "5 %",
}
OTHER: dict[str, Any] = {"name": "there", "price": "0.1 $/kWh", "periods": [PEAK]}


@cache
def comparison() -> Comparison:
    heads = {
        "name": "one head",
        "kind": "ductless heat pump",
        "units": [{"class": "single-zone cold-climate", "size": "15 kBtu/h", "room": "big room"}],
        "installed_cost": "5000 $",
    }
    return compare(case(rooms=TWO_ROOMS, tariff=TARIFF, other_tariffs=[OTHER], options=[heads]))


def usd(choice: Choice) -> float:
    return sum(line.usd for line in choice.bill_lines)


def test_the_lines_of_every_choice_add_up_to_its_bill() -> None:
    for choice in comparison().choices:
        assert usd(choice) == pytest.approx(choice.annual.bill_usd)
        energy = sum(line.kwh or 0.0 for line in choice.bill_lines)
        assert energy == pytest.approx(choice.annual.electricity_kwh)


def test_every_line_of_a_month_is_its_amount_times_its_price() -> None:
    months = comparison().today.bill_lines_by_month
    assert [month.month for month in months] == list(range(1, 13))
    for month, shown in zip(months, comparison().today.monthly, strict=True):
        assert sum(line.usd for line in month.lines) == pytest.approx(shown.bill_usd)
        for line in month.lines:
            assert line.amount is not None
            assert line.price is not None
            assert line.usd == pytest.approx(line.amount * line.price)
        kinds = [line.kind for line in month.lines]
        assert kinds == ["energy", "demand", "riders", "fixed", "taxes"]
    assert all(choice.bill_lines_by_month == () for choice in comparison().choices[1:])


def test_the_next_kwh_costs_energy_rider_tax_and_a_little_demand() -> None:
    for month in comparison().today.monthly:
        assert month.next_kwh_usd is not None
        assert 1.05 * 0.129 < month.next_kwh_usd < 1.05 * (0.129 + 3.0 / 24.0)


def test_every_choice_is_billed_under_the_other_tariff_too() -> None:
    for choice in comparison().choices:
        (other,) = choice.other_tariffs
        assert other.tariff == "there"
        assert sum(other.monthly_bill_usd) == pytest.approx(other.bill_usd)
        assert sum(line.usd for line in other.bill_lines) == pytest.approx(other.bill_usd)
        assert [line.line for line in other.bill_lines] == ["peak", "all energy", "customer charge"]


def test_demand_is_a_part_of_the_explanation_and_an_assumption() -> None:
    parts = {part.part: part.usd for part in comparison().explanation}
    lines = {line.kind: line.usd for line in comparison().today.bill_lines}
    assert parts["demand charges"] == pytest.approx(lines["demand"])
    assert sum(parts.values()) == pytest.approx(comparison().today.annual.bill_usd)
    (note,) = [text for text in comparison().assumptions if "Demand" in text]
    assert "“here”" in note
    assert "comes out low" in note


def test_a_saving_is_a_bill_before_less_a_bill_after() -> None:
    choice = comparison().choice("one head", AS_LIVED)
    assert choice.money is not None
    saving = usd(comparison().today) - usd(choice)
    assert choice.money.first_year_saving_usd == pytest.approx(saving)
