"""Moist air; the published check is tests/published/test_psychrometrics.py."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from costcompare.weather.humidity import dew_point, relative_humidity, saturation_pressure


def test_pressure_doubles_about_every_eleven_degrees() -> None:
    assert saturation_pressure(21.0) / saturation_pressure(10.0) == pytest.approx(2.0, rel=0.05)


def test_outside_its_range_the_pressure_is_not_known() -> None:
    assert np.isnan(saturation_pressure([-101.0, 201.0])).all()


@given(st.floats(-60.0, 55.0), st.floats(0.01, 1.0))
def test_there_and_back(temperature: float, humidity: float) -> None:
    dew = dew_point(temperature, humidity)
    assert dew <= temperature
    assert relative_humidity(temperature, dew) == pytest.approx(humidity, rel=1e-6)


def test_a_dew_point_above_the_temperature_is_saturation() -> None:
    assert relative_humidity(10.0, 12.0) == 1.0


def test_dry_air_has_a_floor() -> None:
    assert dew_point(20.0, 0.0) == dew_point(20.0, 1e-4)


def test_arrays_of_any_shape() -> None:
    assert dew_point(np.full((3, 2), 20.0), 0.5).shape == (3, 2)
