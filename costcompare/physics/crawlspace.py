"""Air through the vents of a crawlspace."""

from __future__ import annotations

from costcompare.physics.compiled import compiled

OPEN_VENT_AREA = 0.019
"""Vent area per metre of perimeter [m2/m] of the trade's 1/150 of the floor area for a
house of 1,500 ft2 (common practice, no source)."""

WIND_SHIELDING = (0.10, 0.10, 0.05, 0.02, 0.02)
"""Factor by shelter class 1 to 5: ISO 13370:2017 gives 0.10 exposed, 0.05 average, 0.02
sheltered (from memory)."""


@compiled
def vent_flow(area_per_metre: float, shielding: float, wind: float, perimeter: float) -> float:
    """Outdoor air through the vents [m3/s].

    ``area_per_metre`` [m2/m] vent area on a metre of perimeter, ``shielding`` factor,
    ``wind`` [m/s] at 10 m, ``perimeter`` [m]; half the perimeter takes air in.

    Source: ISO 13370:2017 suspended floors, heat flow 1450 eps v f_w P/2 [W/K] over the
    heat capacity of air (from memory).
    """
    return 1450.0 * area_per_metre * wind * shielding * perimeter / 2.0 / 1207.19
