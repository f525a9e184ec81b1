"""The table of spreads: whole, sourced, and wider for what is known less well."""

from __future__ import annotations

from pathlib import Path

import pytest

from costcompare.case.defaults import rows
from costcompare.uncertainty.distributions import KINDS
from costcompare.uncertainty.home_dials import HOME_DIALS
from costcompare.uncertainty.spreads import KNOWN, fact_spreads
from costcompare.uncertainty.system_dials import SYSTEM_DIALS
from costcompare.uncertainty.uncertain_facts import PRICE_GROWTH, WINTER

FACTS = list(fact_spreads())


@pytest.mark.parametrize("fact", FACTS)
def test_every_row_is_whole_and_says_where_it_is_from(fact: str) -> None:
    row = fact_spreads()[fact]
    assert row.kind in KINDS
    assert row.words
    assert row.source
    assert row.least < row.most
    widths = [row.by_known[known][1] - row.by_known[known][0] for known in KNOWN]
    assert widths == sorted(widths)
    assert widths[0] > 0.0
    middle = 1.0 if row.scale == "relative" else 0.0
    assert all(low < middle < high for low, high in row.by_known.values())


def test_every_row_has_its_dial() -> None:
    turned = [dial.fact for dial in HOME_DIALS] + [dial.fact for dial in SYSTEM_DIALS]
    assert sorted(FACTS) == sorted([*turned, WINTER, PRICE_GROWTH])


def test_relative_and_absolute_spreads_lie_round_the_likely_value() -> None:
    leak = fact_spreads()["house.air_leakage_at_50_pa"].around(2.0, "measured")
    assert (leak.low, leak.high) == pytest.approx((1.66, 2.42))
    day = fact_spreads()["thermostat.day"].around(20.0, "seen")
    assert (day.low, day.high) == pytest.approx((20.0 - 1.9 / 1.8, 20.0 + 1.9 / 1.8))


def test_a_value_beyond_the_usual_limits_keeps_its_side_of_them() -> None:
    leak = fact_spreads()["ducts.supply_leakage"].around(0.8, "seen")
    assert (leak.likely, leak.high, leak.most) == (0.8, 0.8, 0.8)
    assert leak.low == pytest.approx(0.52)


def test_the_document_shows_every_row_as_it_is() -> None:
    page = (Path(__file__).parents[2] / "docs" / "uncertainty.md").read_text(encoding="utf-8")
    for row in rows("fact_spreads.csv"):
        spreads = [f"{row[f'{known}_low']} to {row[f'{known}_high']}" for known in KNOWN]
        cells = [f"`{row['fact']}`", row["words"], row["kind"], *spreads]
        assert f"| {' | '.join(cells)} |" in page, row["fact"]
