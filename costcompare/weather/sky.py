"""How cold the sky looks from the ground, and how cloudy it is.

The effective sky temperature is that of a black body which sends down as much heat as the
sky does.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

KELVIN = 273.15
STEFAN_BOLTZMANN = 5.670374419e-8
"""[W/(m2 K4)], CODATA 2018"""

LOWEST_EMISSIVITY = 0.4
"""Floor of the clear-sky emissivity in very dry cold air, outside the measured range
(judgement)"""

CLOUD_BASE = 2000.0
"""[m] height above ground of the base of clouds one cannot see through (judgement)"""

CLOUD_SCALE = 8200.0
"""[m] height over which a cloud's pull on the sky temperature falls to 1/e; Martin and Berdahl
1984 (from memory)"""

OPAQUE_SHARE = 0.88
"""Clouds one cannot see through as a share of all clouds: 0.86 and 0.95 in the TMY3 years of
Greensboro NC and Sand Point AK, 0.86 in the TMY2 year of Miami FL"""


def clear_sky_emissivity(
    dew_point: ArrayLike, hour: ArrayLike, pressure: ArrayLike = 101_325.0
) -> np.ndarray:
    """Emissivity of a cloudless sky from dew point [degC], hour since midnight, pressure [Pa].

    Berdahl and Martin (1984), "Emissivity of clear skies", Solar Energy 32(5), 663-664:
    0.711 + 0.56 (Td/100) + 0.73 (Td/100)^2, and from Martin and Berdahl (1984) the terms for
    the time of day, 0.013 cos(2 pi t / 24), and the pressure, 0.00012 (p - 1000 hPa). The last
    two are quoted from memory. Fitted for dew points from about -13 to 24 degC; below the
    turning point of the parabola at -38.4 degC the dew point is held there.
    """
    tenths = np.maximum(np.asarray(dew_point, dtype=float), -38.4) / 100.0
    of_day = 0.013 * np.cos(2.0 * np.pi * np.asarray(hour, dtype=float) / 24.0)
    of_height = 1.2e-4 * (np.asarray(pressure, dtype=float) / 100.0 - 1000.0)
    emissivity = 0.711 + 0.56 * tenths + 0.73 * tenths**2 + of_day + of_height
    return np.asarray(np.clip(emissivity, LOWEST_EMISSIVITY, 1.0))


def cloudy_sky_emissivity(clear: ArrayLike, cloud: ArrayLike) -> np.ndarray:
    """Emissivity with clouds that one cannot see through over a share of the sky (0 to 1).

    Martin and Berdahl (1984), "Characteristics of infrared sky radiation in the United
    States", Solar Energy 33(3/4), 321-336: clear + (1 - clear) x cover x exp(-h / 8.2 km), with
    the base of the clouds at :data:`CLOUD_BASE` (from memory).
    """
    below = np.asarray(clear, dtype=float)
    cover = np.clip(np.asarray(cloud, dtype=float), 0.0, 1.0)
    return np.asarray(below + (1.0 - below) * cover * np.exp(-CLOUD_BASE / CLOUD_SCALE))


def sky_temperature(
    temperature: ArrayLike,
    dew_point: ArrayLike,
    cloud: ArrayLike,
    *,
    hour: ArrayLike = 6.0,
    pressure: ArrayLike = 101_325.0,
) -> np.ndarray:
    """Effective sky temperature [degC] of air at ``temperature`` [degC].

    ``dew_point`` [degC], ``cloud`` the share of the sky under clouds one cannot see through,
    ``hour`` since midnight (6 leaves the time of day out), ``pressure`` [Pa].
    """
    clear = clear_sky_emissivity(dew_point, hour, pressure)
    emissivity = cloudy_sky_emissivity(clear, cloud)
    kelvin = np.asarray(temperature, dtype=float) + KELVIN
    return np.asarray(kelvin * emissivity**0.25 - KELVIN)


def sky_temperature_from_infrared(infrared: ArrayLike) -> np.ndarray:
    """Effective sky temperature [degC] from the heat that the sky sends down [W/m2]."""
    flux = np.maximum(np.asarray(infrared, dtype=float), 0.0)
    return np.asarray((flux / STEFAN_BOLTZMANN) ** 0.25 - KELVIN)


def cloud_from_clearness(clearness: ArrayLike) -> np.ndarray:
    """Cloud cover (share) from sun as a share of cloudless sun.

    Kasten and Czeplak (1980), Solar Energy 24, 177-189, turned round: sun / cloudless sun =
    1 - 0.75 (cover)^3.4.
    """
    missing = np.clip(1.0 - np.asarray(clearness, dtype=float), 0.0, 0.75)
    return np.asarray((missing / 0.75) ** (1.0 / 3.4))
