"""The table of the crawlspace: the figures of the result, and nothing where there is none."""

from __future__ import annotations

import pytest

from costcompare.case import case_from_document
from costcompare.comparing import compare
from costcompare.comparison import Comparison
from costcompare.views.terminal import Sentences, Table
from costcompare.views.under_floor import COLUMNS, under_the_floor


@pytest.fixture(scope="module")
def comparison() -> Comparison:
    """A made-up home on a crawlspace with one option."""
    return compare(
        case_from_document(
            {
                "site": {"latitude": 44.5, "longitude": -73.2},
                "house": {
                    "floor_area": "1400 ft2",
                    "built": 1970,
                    "foundation": "vented crawlspace",
                    "people": 2,
                },
                "thermostat": {"day": "66 F", "wanted": "70 F"},
                "today": {"output": "18 kW", "ducts": {"condition": "old, never sealed"}},
                "tariff": {"price": "0.13 $/kWh"},
                "options": [
                    {"name": "Heaters", "kind": "room heaters", "installed_cost": "6000 $"}
                ],
            }
        )
    )


def test_a_row_for_each_choice_with_the_figures_of_the_result(comparison: Comparison) -> None:
    _heading, table, below = under_the_floor(comparison.choices)
    assert isinstance(table, Table)
    assert isinstance(below, Sentences)
    assert len(table.rows) == len(comparison.choices)
    for row, choice in zip(table.rows, comparison.choices, strict=True):
        space = choice.crawlspace
        assert space is not None
        cells = dict(zip(COLUMNS, row, strict=True))
        assert cells["coldest hour"].startswith(f"{space.minimum_temperature_degf:.0f}")
        assert cells["hours below 32 °F"] == f"{space.hours_below_freezing:,}"
        assert cells["damp hours"] == f"{100 * space.damp_share:.0f} %"
        assert cells["floor in winter"] == f"{space.floor_winter_degf:.0f} °F"
    assert table.rows[0][0] == "Today’s system, as you live now"
    assert table.rows[2][0] == "Heaters"


def test_nothing_where_there_is_no_crawlspace() -> None:
    assert under_the_floor([]) == []
