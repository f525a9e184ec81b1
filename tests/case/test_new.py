"""A new case reads back, whatever of its facts is given."""

from __future__ import annotations

import tomllib
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from costcompare.case import case_from_document, new_case
from costcompare.case.new import FACTS, STAND_IN
from costcompare.errors import CaseError

GIVEN: dict[str, Any] = {
    "title": 'A "made-up" home',
    "latitude": 44.1,
    "longitude": "-121.3",
    "floor_area": "1850 sq ft",
    "storeys": 2,
    "bedrooms": "4",
    "built": 1978,
    "foundation": "closed crawlspace",
    "people": 5,
    "thermostat": "63 F",
    "wanted": 69,
    "furnace": 20,
    "ducts": "crawlspace",
    "price": "$0.117/kWh",
}


def test_what_was_given_is_in_the_case() -> None:
    text = new_case(**GIVEN)
    assert STAND_IN not in text
    made = case_from_document(tomllib.loads(text))
    assert made.title == 'A "made-up" home'
    assert made.home.site.latitude == 44.1
    assert made.home.house.floor_area == pytest.approx(1850 * 0.3048**2)
    assert (made.home.house.storeys, made.home.house.bedrooms) == (2, 4)
    assert made.home.thermostat.wanted == pytest.approx((69 - 32) / 1.8)
    assert made.today.furnace_output == 20000.0
    assert made.tariff.tiers[0].price == 0.117


@settings(max_examples=25, deadline=None)
@given(names=st.sets(st.sampled_from(sorted(GIVEN))))
def test_what_was_not_given_stands_in_and_says_so(names: set[str]) -> None:
    given_facts = {name: GIVEN[name] for name in names}
    # Ducts and foundation go together.
    if "foundation" in names or "ducts" in names:
        given_facts.update(foundation=GIVEN["foundation"], ducts=GIVEN["ducts"])
    text = new_case(**given_facts)
    assert text.count(STAND_IN) == len(FACTS) - len(given_facts)
    assert case_from_document(tomllib.loads(text)).home.rooms


@pytest.mark.parametrize(
    "foundation", ["vented crawlspace", "closed crawlspace", "basement", "slab"]
)
def test_ducts_stand_in_where_the_house_has_room_for_them(foundation: str) -> None:
    assert new_case(foundation=foundation)


@pytest.mark.parametrize("commented", ["elevation", "wall_insulation", "[[options]]", "set", "tax"])
def test_further_facts_are_shown_as_comments(commented: str) -> None:
    assert f"# {commented}" in new_case()


def test_the_commented_lines_are_right() -> None:
    lines = [line.removeprefix("# ") for line in new_case().splitlines()]
    kept = [
        line for line in lines if "=" in line.split("#")[0] or line.startswith(("[", "]", "  {"))
    ]
    text = "\n".join(line for line in kept if not line.startswith("  floor_area"))
    made = case_from_document(tomllib.loads(text))
    assert len(made.options) == 2


@pytest.mark.parametrize(
    ("facts", "sentence"),
    [
        ({"florr": 3}, 'florr: is not a fact of a new case. Write "floor_area".'),
        ({"built": "old"}, 'built: must be a number (given: "old"). Write for example 1972.'),
        ({"foundation": "slap"}, "house.foundation: must be one of: vented crawlspace; closed"),
        ({"floor_area": "-1 ft2"}, "house.floor_area: must be more than 0 ft2"),
    ],
)
def test_wrong_facts_are_refused(facts: dict[str, Any], sentence: str) -> None:
    with pytest.raises(CaseError) as caught:
        new_case(**facts)
    assert str(caught.value).startswith(sentence)
