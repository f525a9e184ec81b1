"""Cautions about what old houses are made of."""

from __future__ import annotations

from typing import Any

import pytest

from .homes import cautions_of, heat_pump, improve

SEAL = improve(today__ducts__condition="sealed and tested")
ATTIC = improve(house__attic_insulation="R-60")
WINDOWS = improve(house__window_panes=3)


@pytest.mark.parametrize(
    ("topic", "option", "last_year"),
    [
        ("Asbestos", SEAL, 1985),
        ("Vermiculite", ATTIC, 1990),
        ("Lead paint", WINDOWS, 1977),
        ("Lead paint", heat_pump(), 1977),
    ],
)
def test_by_year_and_by_what_is_touched(topic: str, option: dict[str, Any], last_year: int) -> None:
    def built(year: int) -> dict[str, Any]:
        return {"built": year, "foundation": "vented crawlspace"}

    assert f"built in {last_year}" in cautions_of(option, house=built(last_year))[topic].because
    assert topic not in cautions_of(option, house=built(last_year + 1))
    assert topic not in cautions_of(house=built(1950))


def test_each_speaks_of_its_own_work_alone() -> None:
    old = {"built": 1950, "foundation": "vented crawlspace"}
    assert {"Vermiculite", "Lead paint"}.isdisjoint(cautions_of(SEAL, house=old))
    assert {"Asbestos", "Lead paint"}.isdisjoint(cautions_of(ATTIC, house=old))
    assert {"Asbestos", "Vermiculite"}.isdisjoint(cautions_of(WINDOWS, house=old))
