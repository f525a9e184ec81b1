"""Small homes for the cautions: one that calls for almost none, changed one fact at a time."""

from __future__ import annotations

import json
from copy import deepcopy
from functools import cache
from typing import Any

from costcompare import compare, typical_year
from costcompare.case import case_from_document
from costcompare.comparison import Caution
from costcompare.weather import Weather

CALM: dict[str, Any] = {
    "site": {"latitude": 44.5, "longitude": -73.2},
    "house": {
        "floor_area": "1400 ft2",
        "built": 2016,
        "foundation": "slab",
        "people": 2,
        "air_leakage_at_50_pa": "1300 cfm",
    },
    "thermostat": {"day": "68 F"},
    "today": {"kind": "room heaters", "output": "20 kW"},
    "tariff": {"price": "0.13 $/kWh"},
}
"""A new house on a slab with a heater in every room, and nothing proposed"""
ON_DUCTS: dict[str, Any] = {
    "house": {"foundation": "vented crawlspace"},
    "crawlspace": {"vents": "open", "ground_cover": True, "water_pipes": True},
    "today": {
        "kind": "electric furnace",
        "output": "20 kW",
        "ducts": {"condition": "old, never sealed"},
    },
}
"""What makes it a house with a furnace and leaky ducts in its crawlspace"""


def improve(**changes: Any) -> dict[str, Any]:
    """An option that changes facts; double underscores stand for dots."""
    settings = {key.replace("__", "."): value for key, value in changes.items()}
    return {"name": "Better", "kind": "improve", "set": settings, "installed_cost": "1000 $"}


def heat_pump(kind: str = "ductless heat pump", **more: Any) -> dict[str, Any]:
    """An option with a heat pump."""
    unit = {"class": "ducted variable", "size": "36 kBtu/h"}
    if kind == "ductless heat pump":
        unit = {"class": "single-zone cold-climate", "size": "18 kBtu/h", "room": "living room"}
    return {"name": "Pump", "kind": kind, "units": [unit], "installed_cost": "9000 $", **more}


HEATERS: dict[str, Any] = {"name": "Heaters", "kind": "room heaters", "installed_cost": "3000 $"}


def cautions_of(
    *options: dict[str, Any], ducted: bool = True, **sections: Any
) -> dict[str, Caution]:
    """By topic, the cautions of the calm house with sections changed."""
    made = deepcopy(CALM)
    for change in (ON_DUCTS if ducted else {}, sections):
        for name, section in change.items():
            made[name] = {**made.get(name, {}), **section} if isinstance(section, dict) else section
    if ducted and "today" in sections:
        made["today"] = {**ON_DUCTS["today"], **sections["today"]}
    made["options"] = list(options)
    return _cautions(json.dumps(made))


@cache
def _cautions(document: str) -> dict[str, Caution]:
    found = compare(case_from_document(json.loads(document)), weather=_weather()).cautions
    by_topic = {caution.topic: caution for caution in found}
    assert len(by_topic) == len(found)
    return by_topic


@cache
def _weather() -> Weather:
    return typical_year(44.5, -73.2)
