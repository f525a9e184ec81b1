"""Moist air against PsychroLib 2.5.0 (Meyer and Thevenard 2019, JOSS 4(33), 1137).

PsychroLib follows ASHRAE Handbook Fundamentals (2017), chapter 1, as ours does. Agreement
reached: saturation pressure within 1e-12 of its value, dew point within 1e-6 K, relative
humidity within 1e-9. The tolerances below are the last printed digits or 0.001 K.
"""

from __future__ import annotations

import numpy as np
import psychrolib
import pytest

from costcompare.weather.humidity import dew_point, relative_humidity, saturation_pressure

psychrolib.SetUnitSystem(psychrolib.SI)

SATURATION = [
    # [degC], [Pa]: printed by PsychroLib 2.5.0
    (-20.0, 103.2604),
    (-10.0, 259.9029),
    (0.0, 611.1536),
    (5.0, 872.4867),
    (20.0, 2338.804),
    (25.0, 3169.216),
    (50.0, 12349.86),
]


@pytest.mark.parametrize(("temperature", "pressure"), SATURATION)
def test_saturation_pressure_as_printed(temperature: float, pressure: float) -> None:
    assert saturation_pressure(temperature) == pytest.approx(pressure, rel=5e-7)


@pytest.mark.parametrize(
    ("temperature", "humidity", "dew"), [(25.0, 0.5, 13.8640), (20.0, 0.5, 9.2724)]
)
def test_dew_point_as_printed(temperature: float, humidity: float, dew: float) -> None:
    assert dew_point(temperature, humidity) == pytest.approx(dew, abs=1e-3)
    assert relative_humidity(temperature, dew) == pytest.approx(humidity, abs=1e-4)


def test_saturation_pressure_over_the_range_of_weather() -> None:
    for temperature in np.arange(-60.0, 60.0, 2.5):
        expected = psychrolib.GetSatVapPres(temperature)
        assert saturation_pressure(temperature) == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize("humidity", [0.03, 0.2, 0.5, 0.8, 0.99, 1.0])
def test_dew_point_and_back_over_the_range_of_weather(humidity: float) -> None:
    for temperature in np.arange(-40.0, 50.0, 4.5):
        expected = psychrolib.GetTDewPointFromRelHum(temperature, humidity)
        assert dew_point(temperature, humidity) == pytest.approx(expected, abs=1e-3)
        back = psychrolib.GetRelHumFromTDewPoint(temperature, expected)
        assert relative_humidity(temperature, expected) == pytest.approx(back, abs=1e-6)
