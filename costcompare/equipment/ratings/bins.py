"""Bin hours and regions that the standards prescribe, from costcompare/data."""

from __future__ import annotations

import csv
from dataclasses import dataclass
from functools import cache
from importlib import resources


@dataclass(frozen=True)
class Region:
    """One climatic region of appendix M1."""

    number: int
    name: str
    zero_load: float
    """[degF] outdoors at which the load is nothing"""
    slope: float
    """Load factor of single-speed and two-stage machines"""
    slope_variable: float
    """Load factor of machines of variable speed"""
    confirmed: bool
    """False where the constants are from memory"""
    bins: tuple[tuple[float, float], ...]
    """Outdoor temperature [degF] and share of the hours"""


@dataclass(frozen=True)
class ScopSeason:
    """One climate of EN 14825."""

    climate: str
    design: float
    """[degC]"""
    equivalent_hours: float
    thermostat_off_hours: float
    standby_hours: float
    crankcase_hours: float
    off_hours: float
    confirmed: bool
    bins: tuple[tuple[float, float], ...]
    """Outdoor temperature [degC] and hours"""


def _rows(name: str) -> list[dict[str, str]]:
    text = (resources.files("costcompare") / "data" / name).read_text(encoding="utf-8")
    return list(csv.DictReader(text.splitlines()))


@cache
def regions() -> dict[int, Region]:
    """The climatic regions by number."""
    hours = _rows("hspf2_bins.csv")
    return {
        (number := int(row["region"])): Region(
            number,
            row["name"],
            float(row["zero_load_f"]),
            float(row["slope"]),
            float(row["slope_variable_speed"]),
            row["known"] == "read",
            tuple((float(h["bin_f"]), float(h[f"region_{number}"])) for h in hours),
        )
        for row in _rows("hspf2_regions.csv")
    }


@cache
def cooling_bins() -> tuple[tuple[float, float], ...]:
    """Outdoor temperature [degF] and share of the hours of the cooling season."""
    return tuple((float(row["bin_f"]), float(row["share"])) for row in _rows("seer2_bins.csv"))


@cache
def scop_season(climate: str, medium: str) -> ScopSeason:
    """The season of a climate; KeyError for one that EN 14825 does not know."""
    for row in _rows("scop_seasons.csv"):
        if row["climate"] == climate and row["medium"] == medium:
            return ScopSeason(
                climate,
                float(row["design_c"]),
                float(row["equivalent_hours"]),
                float(row["thermostat_off_hours"]),
                float(row["standby_hours"]),
                float(row["crankcase_hours"]),
                float(row["off_hours"]),
                row["known"] == "read",
                tuple(
                    (float(b["bin_c"]), float(b["hours"]))
                    for b in _rows("scop_bins.csv")
                    if b["climate"] == climate
                ),
            )
    raise KeyError(climate)
