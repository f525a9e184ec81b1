"""The envelope test cells of ASHRAE Standard 140 as case documents.

Source: ASHRAE Standard 140-2020/2023, cases 600 and 900, as a public library that follows
the standard states them: geometry, layers, gains and setpoints were read there; "ideal,
purely convective, air-temperature control" is from memory. The window is derived below
from the glass and the gap of the specification by EN 673 and EN 410 (from memory), so
that no coefficient is chosen to meet a range.
"""

from __future__ import annotations

from typing import Any

STEFAN_BOLTZMANN = 5.670374e-8  # [W/(m2 K4)]
FILMS = 0.13 + 0.04  # [m2 K/W] ISO 6946

GLASS = {"thickness": 0.003048, "conductivity": 1.0, "emissivity": 0.84}  # [m], [W/(m K)]
GAP, AIR_CONDUCTIVITY, GAP_TEMPERATURE = 0.012, 0.0241, 283.15  # [m], [W/(m K)], [K]
TRANSMITTANCE, REFLECTANCE = 0.834, 0.075  # solar, one pane at normal incidence


def window() -> tuple[float, float]:
    """U-factor [W/(m2 K)] and solar heat gain coefficient of the double window."""
    exchange = 1.0 / (2.0 / GLASS["emissivity"] - 1.0)
    radiation = 4.0 * STEFAN_BOLTZMANN * GAP_TEMPERATURE**3 * exchange
    gap = 1.0 / (radiation + AIR_CONDUCTIVITY / GAP)
    panes = 2.0 * GLASS["thickness"] / GLASS["conductivity"]
    u = 1.0 / (FILMS + panes + gap)
    absorptance = 1.0 - TRANSMITTANCE - REFLECTANCE
    between = 1.0 - REFLECTANCE**2
    passed = TRANSMITTANCE**2 / between
    outer = absorptance * (1.0 + TRANSMITTANCE * REFLECTANCE / between)
    inner = absorptance * TRANSMITTANCE / between
    inward = outer * u * 0.04 + inner * u * (0.04 + gap)
    return u, passed + inward


def layer(thickness: float, conductivity: float, density: float, heat: float) -> dict[str, str]:
    return {
        "thickness": f"{thickness} m",
        "conductivity": f"{conductivity} W/m/K",
        "density": f"{density} kg/m3",
        "heat_capacity": f"{heat} J/kg/K",
    }


LIGHT_WALL = [
    layer(0.009, 0.14, 530, 900),
    layer(0.066, 0.04, 12, 840),
    layer(0.012, 0.16, 950, 840),
]
HEAVY_WALL = [
    layer(0.009, 0.14, 530, 900),
    layer(0.0615, 0.04, 10, 1400),
    layer(0.100, 0.51, 1400, 1000),
]
ROOF = [
    layer(0.019, 0.14, 530, 900),
    layer(0.1118, 0.04, 12, 840),
    layer(0.010, 0.16, 950, 840),
]
LIGHT_FLOOR = [{"resistance": f"{1.003 / 0.04} m2 K/W"}, layer(0.025, 0.14, 650, 1200)]
HEAVY_FLOOR = [{"resistance": f"{1.007 / 0.04} m2 K/W"}, layer(0.080, 1.13, 1400, 1000)]


def document(*, heavy: bool = False) -> dict[str, Any]:
    """Case 600 (or 900), with ideal heating and cooling."""
    u, solar_gain = window()
    faces = {"solar_absorptance": 0.6, "emissivity": 0.9}
    return {
        "format": 1,
        "title": "Envelope test cell",
        "site": {
            "latitude": 39.83,
            "longitude": -104.65,
            "elevation": "1650 m",
            "time_zone": "America/Denver",
        },
        "house": {
            "floor_area": "48 m2",
            "storeys": 1,
            "built": 2000,
            "foundation": "slab",
            "people": 0,
            "air_changes": "0.5 1/h",
            "airing": "0 1/h",
            "contents": "light",
            "window_u_factor": f"{u} W/m2/K",
            "window_solar_gain": solar_gain,
            "window_panes": 2,
            "window_shading": 1.0,
        },
        "constructions": {
            "wall": {"layers": HEAVY_WALL if heavy else LIGHT_WALL, **faces},
            "sloped_ceiling": {"layers": ROOF, **faces},
            "floor": {"layers": HEAVY_FLOOR if heavy else LIGHT_FLOOR, **faces},
        },
        "other_use": {
            "electricity": "146 kWh/month",
            "hot_water": "0 kWh/month",
            "share_to_rooms": 1.0,
            "profile": "flat",
        },
        "rooms": [
            {
                "name": "cell",
                "floor_area": "48 m2",
                "ceiling_height": "2.7 m",
                "outside_walls": {"north": "8 m", "east": "6 m", "south": "8 m", "west": "6 m"},
                "windows": {"south": "12 m2"},
                "below": "outdoors",
                "above": "roof",
            }
        ],
        "thermostat": {"day": "20 C", "night": "20 C", "wanted": "20 C", "cooling": "27 C"},
        "today": {"kind": "ideal"},
        "tariff": {"price": "0.10 $/kWh"},
    }
