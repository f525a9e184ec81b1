"""Air through the vents of a crawlspace, and the moisture it carries."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from costcompare.physics.compiled import compiled

Floats = NDArray[np.float64]

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


BARE_SOIL_EXCHANGE = 5.0e-4
"""[m/s] volume of saturated air that a square metre of bare soil gives off: about 0.1 kg of
water a m2 and day where the air lacks 3 g/m3 (judgement; from memory: measured under houses 0.05
to 0.4)"""
COVERED_SHARE = 0.02
"""Of it, past the laps and edges of a ground cover (judgement)"""


@compiled
def follow_vapour(
    outdoor: Floats,
    saturated: Floats,
    vents: Floats,
    soil: float,
    volume: float,
    inside: Floats,
) -> None:
    """Vapour pressure of the air under the floor [Pa], hour by hour, into ``inside``.

    ``outdoor`` [Pa] comes in by the ``vents`` [m3/s]; ``soil`` [m3/s] is the saturated air
    that the ground gives off at the crawlspace's own temperature; ``volume`` [m3]. What is
    over saturation condenses. Wood that takes up moisture, and air from ducts and rooms, are
    left out. The step is implicit, one hour.

    Source: a balance of vapour (derived); the rule as a whole is judgement.
    """
    kept = volume / 3600.0
    before = min(outdoor[0], saturated[0])
    for h in range(outdoor.shape[0]):
        brought = kept * before + vents[h] * outdoor[h] + soil * saturated[h]
        before = min(brought / (kept + vents[h] + soil), saturated[h])
        inside[h] = before
