"""Saturation pressure, dew point and relative humidity of moist air.

ASHRAE Handbook Fundamentals (2017), chapter 1 Psychrometrics, equations 5 and 6 (Hyland and
Wexler 1983). Vectorised; temperatures in [degC], pressures in [Pa], humidity as a share.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike

KELVIN = 273.15
TRIPLE_POINT = 0.01
"""[degC]; ice below, water above"""

LOWEST, HIGHEST = -100.0, 200.0
"""[degC] range of the equations; nan outside"""

DRIEST = 1e-4
"""Relative humidity below which a dew point is no longer told apart (judgement)"""

# C1 to C7 of equation 5 (over ice) and C8 to C13 of equation 6 (over water)
_ICE = (-5.6745359e3, 6.3925247, -9.677843e-3, 6.2215701e-7, 2.0747825e-9, -9.484024e-13, 4.1635019)
_WATER = (-5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 6.5459673)


def _log_pressure(kelvin: np.ndarray) -> np.ndarray:
    """Natural logarithm of the saturation pressure [Pa] at a temperature [K]."""
    a, b, c, d, e, f, g = _ICE
    ice = a / kelvin + b + kelvin * (c + kelvin * (d + kelvin * (e + kelvin * f)))
    ice = ice + g * np.log(kelvin)
    p, q, r, s, t, u = _WATER
    water = p / kelvin + q + kelvin * (r + kelvin * (s + kelvin * t)) + u * np.log(kelvin)
    return np.asarray(np.where(kelvin <= KELVIN + TRIPLE_POINT, ice, water))


def _slope(kelvin: np.ndarray) -> np.ndarray:
    """Derivative of :func:`_log_pressure` by temperature [1/K]."""
    a, _, c, d, e, f, g = _ICE
    ice = -a / kelvin**2 + c + kelvin * (2 * d + kelvin * (3 * e + kelvin * 4 * f)) + g / kelvin
    p, _, r, s, t, u = _WATER
    water = -p / kelvin**2 + r + kelvin * (2 * s + kelvin * 3 * t) + u / kelvin
    return np.asarray(np.where(kelvin <= KELVIN + TRIPLE_POINT, ice, water))


def saturation_pressure(temperature: ArrayLike) -> np.ndarray:
    """Pressure of saturated water vapour [Pa] at a temperature [degC].

    Over ice up to 0.01 degC, over water above (equations 5 and 6); nan outside -100 to 200.
    """
    degc = np.asarray(temperature, dtype=float)
    inside = (degc >= LOWEST) & (degc <= HIGHEST)
    kelvin = np.where(inside, degc, 0.0) + KELVIN
    return np.where(inside, np.exp(_log_pressure(kelvin)), np.nan)


def relative_humidity(temperature: ArrayLike, dew_point: ArrayLike) -> np.ndarray:
    """Relative humidity (share) from temperature and dew point [degC]; at most 1."""
    return np.asarray(
        np.minimum(saturation_pressure(dew_point) / saturation_pressure(temperature), 1.0)
    )


def dew_point(temperature: ArrayLike, humidity: ArrayLike) -> np.ndarray:
    """Dew point (frost point below 0 degC) [degC] from temperature [degC] and humidity (share).

    Newton's method on the logarithm of the saturation pressure. Humidity under 0.01 % counts
    as 0.01 %, since dry air has no dew point; never above the temperature.
    """
    degc = np.asarray(temperature, dtype=float)
    share = np.clip(np.asarray(humidity, dtype=float), DRIEST, 1.0)
    degc, share = np.broadcast_arrays(degc, share)
    target = np.log(saturation_pressure(degc) * share)
    kelvin = degc + KELVIN
    # Six steps: the function is nearly straight in 1/T and the error then is below 1e-9 K.
    for _ in range(6):
        kelvin = np.maximum(
            kelvin - (_log_pressure(kelvin) - target) / _slope(kelvin), KELVIN + LOWEST
        )
    return np.asarray(np.minimum(kelvin - KELVIN, degc))
