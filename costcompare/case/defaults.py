"""What is taken where a case says nothing: sourced tables by year built and condition.

The tables are CSV files in ``costcompare/data``; every row names its source or says that
it is a judgement. Values are written with their units and parsed like those of a case.
"""

from __future__ import annotations

import csv
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import cast

from costcompare.case.facts import Layer
from costcompare.case.hours import hours_of_day
from costcompare.units import KindName, parse


@dataclass(frozen=True)
class Default:
    """One default with the words that say where it comes from."""

    text: str
    kind: str
    """A kind of :mod:`costcompare.units`, or ``words``, ``count``, ``flag``, ``hours``"""
    source: str

    @property
    def number(self) -> float:
        """The value in SI, or the plain number of a count."""
        return float(self.text) if self.kind == "count" else parse(self.text, self.measure)

    @property
    def measure(self) -> KindName:
        """The kind as :mod:`costcompare.units` knows it."""
        return cast(KindName, self.kind)

    @property
    def hours(self) -> tuple[bool, ...]:
        """24 flags of a text of hours."""
        return hours_of_day(self.text)

    @property
    def flag(self) -> bool:
        return self.text == "true"


@dataclass(frozen=True)
class DuctDefault:
    """What a condition stands for."""

    supply_leakage: float
    return_leakage: float
    """Shares of the blower's airflow"""
    resistance: float
    """Effective, with films [m2 K/W]"""
    source: str


@dataclass(frozen=True)
class WindowDefault:
    """What windows of a number of panes are taken to be."""

    u_factor: float
    """[W/(m2 K)]"""
    solar_gain: float
    source: str


@dataclass(frozen=True)
class OptionDefault:
    """How long a kind of option lasts, and what its upkeep costs."""

    life: float
    """[years]"""
    maintenance: float
    """[$ a year] on top of today's"""
    source: str


@cache
def rows(file: str) -> tuple[dict[str, str], ...]:
    """The rows of a table in ``costcompare/data``."""
    text = files("costcompare").joinpath("data", file).read_text(encoding="utf-8")
    return tuple(csv.DictReader(text.splitlines()))


def _of_year(row: dict[str, str], year: int) -> bool:
    return int(row["from_year"]) <= year <= int(row["to_year"])


def house_default(fact: str, built: int) -> Default:
    """The default of a fact for a house built in a year."""
    for row in rows("house_defaults.csv"):
        if row["fact"] == fact and _of_year(row, built):
            return Default(row["value"], row["kind"], row["source"])
    raise KeyError(fact)


def duct_default(condition: str, built: int) -> DuctDefault:
    """Leaks and insulation behind the words of a condition."""
    for row in rows("duct_conditions.csv"):
        if row["condition"] == condition and _of_year(row, built):
            return DuctDefault(
                parse(row["supply_leakage"], "fraction"),
                parse(row["return_leakage"], "fraction"),
                parse(row["resistance"], "resistance"),
                row["source"],
            )
    raise KeyError(condition)


def window_default(panes: int, built: int) -> WindowDefault:
    """U-factor and solar gain of windows by panes and year built."""
    for row in rows("window_defaults.csv"):
        if int(row["panes"]) == panes and _of_year(row, built):
            return WindowDefault(
                parse(row["u_factor"], "u_factor"), float(row["solar_gain"]), row["source"]
            )
    raise KeyError(panes)


def option_default(kind: str) -> OptionDefault:
    """Life and upkeep of a kind of option."""
    for row in rows("option_defaults.csv"):
        if row["kind"] == kind:
            return OptionDefault(
                float(row["life_years"]), float(row["maintenance_usd_per_year"]), row["source"]
            )
    raise KeyError(kind)


def material_layer(material: str, thickness: float) -> Layer:
    """A layer of a material [m] thick."""
    for row in rows("materials.csv"):
        if row["material"] == material:
            conductivity = float(row["conductivity_w_m_k"])
            mass = thickness * float(row["density_kg_m3"])
            return Layer(thickness / conductivity, mass * float(row["heat_capacity_j_kg_k"]))
    raise KeyError(material)


def time_zone_at(longitude: float) -> Default:
    """A clock for a longitude [degrees east]: right for most of the lower 48 states."""
    source = "judgement: from the longitude alone; write time_zone near a zone's border"
    for west, zone in (
        (-67.0, ""),
        (-86.5, "America/New_York"),
        (-101.5, "America/Chicago"),
        (-114.0, "America/Denver"),
        (-125.0, "America/Los_Angeles"),
    ):
        if longitude > west:
            return Default(zone or _fixed_zone(longitude), "words", source)
    return Default(_fixed_zone(longitude), "words", source)


def _fixed_zone(longitude: float) -> str:
    hours = round(longitude / 15.0)
    return "Etc/GMT" if hours == 0 else f"Etc/GMT{-hours:+d}"


def other_use_for(people: float) -> tuple[Default, Default]:
    """Electricity without hot water, and hot water, for a number of people."""
    source = (
        "judgement: all-electric homes use 400 to 900 kWh a month besides heating, "
        "200 to 350 of it hot water for three or four people"
    )
    electricity = Default(f"{200.0 + 75.0 * people:.0f} kWh/month", "energy_rate", source)
    hot_water = Default(f"{80.0 + 60.0 * people:.0f} kWh/month", "energy_rate", source)
    return electricity, hot_water
