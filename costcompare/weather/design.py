"""What a year comes to: degree days, mean and design temperature."""

from __future__ import annotations

import numpy as np

from costcompare.weather.table import Weather

BASE_65F = 18.0 + 1.0 / 3.0
"""65 F in [degC]"""

FAHRENHEIT_PER_KELVIN = 1.8


def heating_degree_days_65f(weather: Weather) -> float:
    """Heating degree days under 65 F in a year [F day], from daily means of hours.

    From the mean of a day's highest and lowest hour, as many tables have it, the sum comes
    out up to about 3 % different.
    """
    days = weather.column("temperature_degc").reshape(-1, 24).mean(axis=1)
    return float(FAHRENHEIT_PER_KELVIN * np.sum(np.maximum(BASE_65F - days, 0.0)))


def mean_temperature(weather: Weather) -> float:
    """Mean of all hours [degC]."""
    return float(np.mean(weather.column("temperature_degc")))


def design_temperature(weather: Weather, share: float = 0.01) -> float:
    """The temperature below which ``share`` of the hours lie [degC].

    Of one year: the design temperatures of the trade come from many years and may lie lower.
    """
    if not 0.0 < share < 1.0:
        raise ValueError(f"share must lie between 0 and 1 (given: {share:g})")
    return float(np.quantile(weather.column("temperature_degc"), share))
