"""Blocks of a tariff of a case document."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from costcompare.case.paths import copied
from costcompare.errors import CaseError, Fault
from costcompare.views.dashboard.visit.answers import Doc, value_at

FIRST_BLOCK = "800 kWh/month"
"""Where a first block ends until somebody reads it off the bill (judgement: a common size)"""
MOST_BLOCKS = 6
USUAL_PRICE = "0.14 $/kWh"
"""What stands in for a price (judgement), as in a new case"""


def with_block_added(document: Mapping[str, Any]) -> Doc:
    """The document with one more block of prices; one price becomes two blocks."""
    changed: Doc = copied(document)
    tariff = _tariff(changed)
    tiers = tariff.get("tiers")
    if not isinstance(tiers, list) or not tiers:
        price = tariff.pop("price", USUAL_PRICE)
        tariff["tiers"] = [{"up_to": FIRST_BLOCK, "price": price}, {"price": price}]
        return changed
    if len(tiers) >= MOST_BLOCKS:
        raise CaseError([Fault("tariff.tiers", f"the form takes {MOST_BLOCKS} blocks at most")])
    last = tiers[-1]
    ends = [_kwh(tier.get("up_to")) for tier in tiers if isinstance(tier, Mapping)]
    tiers[-1] = {"up_to": f"{max(ends, default=0.0) + 800:g} kWh/month", "price": last.get("price")}
    tiers.append({"price": last.get("price")})
    return changed


def _kwh(text: Any) -> float:
    try:
        return float(str(text).split()[0].replace(",", ""))
    except (ValueError, IndexError):
        return 0.0


def with_one_price(document: Mapping[str, Any]) -> Doc:
    """The document with the price of the first block for every kWh."""
    changed: Doc = copied(document)
    tariff = _tariff(changed)
    tiers = tariff.pop("tiers", None)
    if isinstance(tiers, list) and tiers and isinstance(tiers[0], Mapping):
        tariff["price"] = tiers[0].get("price", USUAL_PRICE)
    return changed


def _tariff(document: Doc) -> Doc:
    tariff = document.get("tariff")
    if not isinstance(tariff, dict):
        raise CaseError([Fault("tariff", "is needed")])
    return tariff


def has_blocks(document: Mapping[str, Any]) -> bool:
    """Whether the tariff has blocks of prices."""
    tiers = value_at(document, ("tariff", "tiers"))
    return isinstance(tiers, list) and bool(tiers)
