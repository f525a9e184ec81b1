"""One room whose heating can be worked out by hand."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import numpy as np
import pvlib
import pytest

import costcompare
from costcompare.case import case_from_document

SETPOINT = 20.0  # [degC] 68 F
RESISTANCE = 2.0  # [m2 K/W] of every surface
FILM_OUTSIDE, CONVECTIVE = 0.04, {"wall": 2.5, "ceiling": 5.0, "floor": 0.7}
RADIATIVE = 5.13


def one_room() -> dict[str, Any]:
    plain = {
        "layers": [{"resistance": f"{RESISTANCE} m2 K/W"}],
        "solar_absorptance": 0.0,
        "emissivity": 0.0,
    }
    return {
        "format": 1,
        "title": "One room",
        "site": {"latitude": 55.3, "longitude": -160.5},
        "house": {
            "floor_area": "48 m2",
            "storeys": 1,
            "built": 2000,
            "foundation": "slab",
            "people": 0,
            "air_changes": "0 1/h",
            "airing": "0 1/h",
            "contents": "light",
        },
        "constructions": {"wall": plain, "sloped_ceiling": plain, "floor": plain},
        "other_use": {"electricity": "0 kWh/month", "hot_water": "0 kWh/month"},
        "rooms": [
            {
                "name": "room",
                "floor_area": "48 m2",
                "ceiling_height": "2.5 m",
                "outside_walls": {"north": "8 m", "east": "6 m", "south": "8 m", "west": "6 m"},
                "windows": {},
                "below": "outdoors",
                "above": "roof",
            }
        ],
        "thermostat": {"day": "68 F", "night": "68 F", "wanted": "68 F", "cooling": "90 F"},
        "today": {"kind": "ideal"},
        "tariff": {"price": "0.10 $/kWh"},
    }


def conductance_by_hand() -> float:
    """Air to outdoors [W/K]: three surfaces that share one radiant node, solved by hand.

    Each surface: convective and radiative inside, then resistance and outside film to
    outdoors. Unknowns: the radiant node; the faces follow from it.
    """
    area = {"wall": 28.0 * 2.5, "ceiling": 48.0, "floor": 48.0}
    outward = {name: area[name] / (RESISTANCE + FILM_OUTSIDE) for name in area}
    inward = {name: CONVECTIVE[name] * area[name] for name in area}
    radiant = {name: RADIATIVE * area[name] for name in area}
    # Air at 1, outdoors at 0. Radiant balance: sum of hr A (Tr - Tf) = 0 with
    # Tf = (inward + radiant Tr) / (inward + radiant + outward).
    total = {name: inward[name] + radiant[name] + outward[name] for name in area}
    left = sum(radiant[n] * (1 - radiant[n] / total[n]) for n in area)
    right = sum(radiant[n] * inward[n] / total[n] for n in area)
    node = right / left
    faces = {n: (inward[n] + radiant[n] * node) / total[n] for n in area}
    return sum(inward[n] * (1 - faces[n]) for n in area)


def test_heating_is_conductance_times_degree_hours() -> None:
    """Within 0.5 % on a cold marine year: no sun, sky, gains or air leakage."""
    file = Path(pvlib.__file__).parent / "data" / "703165TY.csv"
    weather = costcompare.read_weather(file)
    year = costcompare.simulate(case_from_document(one_room()), weather=weather)
    outdoor = weather.column("temperature_degc")
    degree_hours = np.maximum(SETPOINT - outdoor, 0.0).sum()
    expected = conductance_by_hand() * degree_hours
    assert year.heating.sum() == pytest.approx(expected, rel=0.005)
    assert year.cooling.sum() == 0.0
