"""The table of spreads: how uncertain each fact is, by how it is known."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Literal, cast

from costcompare.case.defaults import rows
from costcompare.case.facts import Known
from costcompare.uncertainty.distributions import Distribution, Kind
from costcompare.units import KindName, parse

KNOWN: tuple[Known, ...] = ("measured", "seen", "guessed")
PLAIN = ("count", "factor")
"""Measures without a unit"""


@dataclass(frozen=True)
class Spread:
    """One row: the spreads of a fact and the limits it keeps."""

    fact: str
    words: str
    """What is uncertain, as a person would say it"""
    kind: Kind
    scale: Literal["relative", "absolute"]
    measure: str
    """A kind of :mod:`costcompare.units`, ``count`` or ``factor``"""
    by_known: Mapping[Known, tuple[float, float]]
    """Tenth and ninetieth percentile: factors on the likely value, or differences to it in SI"""
    least: float
    most: float
    """In SI"""
    source: str

    def around(self, likely: float, known: Known) -> Distribution:
        """The distribution of a fact whose likely value [SI] is known this well."""
        low, high = self.by_known[known]
        if self.scale == "relative":
            return self.between(low * likely, likely, high * likely)
        return self.between(likely + low, likely, likely + high)

    def between(self, low: float, likely: float, high: float) -> Distribution:
        """The distribution with these percentiles [SI], within the limits of the fact."""
        least, most = min(self.least, likely), max(self.most, likely)
        low, high = min(max(low, least), likely), max(min(high, most), likely)
        return Distribution(self.kind, likely, low, high, least, most)


@cache
def fact_spreads() -> Mapping[str, Spread]:
    """Every row by its fact, in the order of the table."""
    return {row["fact"]: _spread(row) for row in rows("fact_spreads.csv")}


def _spread(row: Mapping[str, str]) -> Spread:
    measure, relative = row["measure"], row["scale"] == "relative"
    apart = "temperature_difference" if measure == "temperature" else measure

    def number(text: str, kind: str) -> float:
        return float(text) if kind in PLAIN else parse(text, cast(KindName, kind))

    def percentile(known: Known, side: str) -> float:
        return number(row[f"{known}_{side}"], "factor" if relative else apart)

    def limit(text: str, otherwise: float) -> float:
        return number(text, measure) if text else otherwise

    return Spread(
        fact=row["fact"],
        words=row["words"],
        kind=cast(Kind, row["kind"]),
        scale="relative" if relative else "absolute",
        measure=measure,
        by_known={known: (percentile(known, "low"), percentile(known, "high")) for known in KNOWN},
        least=limit(row["least"], -math.inf),
        most=limit(row["most"], math.inf),
        source=row["source"],
    )
