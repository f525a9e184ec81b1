"""Blocks of a tariff and incentives."""

from __future__ import annotations

from typing import Any

import pytest

from costcompare.case import case_from_document
from costcompare.errors import CaseError
from costcompare.views.dashboard.visit.deeds import new_visit
from costcompare.views.dashboard.visit.prices import (
    has_blocks,
    with_block_added,
    with_one_price,
)

Doc = dict[str, Any]


def test_one_price_becomes_blocks_and_one_again() -> None:
    one = new_visit()
    assert not has_blocks(one)
    two = with_block_added(one)
    three = with_block_added(two)
    assert [tier.get("up_to") for tier in three["tariff"]["tiers"]] == [
        "800 kWh/month",
        "1600 kWh/month",
        None,
    ]
    for document in (two, three):
        assert has_blocks(document)
        case_from_document(document)
    assert with_one_price(three) == one


def test_blocks_have_an_end() -> None:
    document = new_visit()
    for _ in range(5):
        document = with_block_added(document)
    with pytest.raises(CaseError, match="blocks at most"):
        with_block_added(document)
