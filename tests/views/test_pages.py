"""What the commands print, where a figure has no meaning or must add up."""

from __future__ import annotations

from dataclasses import replace

import pytest

from costcompare.case import case_from_document
from costcompare.comparing import compare
from costcompare.comparison import AS_WANTED, Comparison, Part
from costcompare.views.pages import comparison_page, explanation_page
from costcompare.views.terminal import Table, plain_lines


@pytest.fixture(scope="module")
def comparison() -> Comparison:
    """A made-up home with one option."""
    return compare(
        case_from_document(
            {
                "format": 1,
                "title": "A made-up home",
                "site": {"latitude": 37.27, "longitude": -79.94},
                "house": {
                    "floor_area": "1400 ft2",
                    "built": 1970,
                    "foundation": "slab",
                    "people": 2,
                },
                "thermostat": {"day": "66 F", "wanted": "70 F"},
                "today": {"kind": "room heaters", "output": "12 kW"},
                "tariff": {"price": "0.13 $/kWh"},
                "options": [
                    {
                        "name": "One head",
                        "kind": "ductless heat pump",
                        "units": [
                            {
                                "class": "single-zone cold-climate",
                                "size": "15 kBtu/h",
                                "room": "living room",
                            }
                        ],
                        "installed_cost": "6000 $",
                    }
                ],
            }
        )
    )


def row(comparison: Comparison, name: str) -> list[str]:
    """The row of a choice in the table at the warmth you want."""
    tables = [block for block in comparison_page(comparison) if isinstance(block, Table)]
    return list(next(cells for cells in tables[1].rows if cells[0] == name))


def test_the_price_is_less_confirmed_incentives(comparison: Comparison) -> None:
    choice = comparison.choice("One head", AS_WANTED)
    assert choice.money is not None
    changed = changed_money(comparison, incentives_usd=1500.0)
    assert row(comparison, "One head")[5] == "$6,000"
    assert row(changed, "One head")[5] == "$4,500"


def test_a_payback_that_does_not_come_says_so(comparison: Comparison) -> None:
    never = changed_money(comparison, discounted_payback_years=None)
    assert row(never, "One head")[6] == "not in 15 years"
    soon = changed_money(comparison, discounted_payback_years=3.21)
    assert row(soon, "One head")[6] == "3.2 years"


def test_today_has_no_price_and_no_payback(comparison: Comparison) -> None:
    assert row(comparison, "Today’s system")[5:] == ["–", "–", "–"]


def test_a_house_that_nobody_wants_warm_has_no_warm_hours(comparison: Comparison) -> None:
    empty = replace(
        comparison,
        choices=tuple(
            replace(
                choice,
                rooms=tuple(
                    replace(room, wanted_hours=0, comfort_hours=0, winter_mean_degf=float("nan"))
                    for room in choice.rooms
                ),
            )
            for choice in comparison.choices
        ),
    )
    assert row(empty, "One head")[4] == "–"
    assert "nan" not in "\n".join(plain_lines(comparison_page(empty)))


def test_cents_that_do_not_add_up_by_themselves_are_shared_out(comparison: Comparison) -> None:
    thirds = tuple(Part(name, 1.0, 10.0 / 3.0) for name in ("floor", "cooling", "taxes"))
    page = explanation_page(replace(comparison, explanation=thirds))
    table = next(block for block in page if isinstance(block, Table))
    assert sorted(cells[2] for cells in table.rows) == ["$10.00", "$3.33", "$3.33", "$3.34"]


def changed_money(comparison: Comparison, **changes: float | None) -> Comparison:
    """The comparison with other money for every option."""
    return replace(
        comparison,
        choices=tuple(
            choice
            if choice.money is None or choice.is_today
            else replace(choice, money=replace(choice.money, **changes))
            for choice in comparison.choices
        ),
    )
