"""Degree days, mean and design temperature."""

from __future__ import annotations

import numpy as np
import pandas as pd
import pytest

from costcompare.weather.design import (
    design_temperature,
    heating_degree_days_65f,
    mean_temperature,
)
from costcompare.weather.table import HOURS, Weather, checked


def year(frame: pd.DataFrame, temperature: np.ndarray | float) -> Weather:
    return checked(
        frame.assign(temperature_degc=temperature),
        latitude=48.8,
        longitude=-122.5,
        elevation=45.0,
        source="file",
        station="made.csv",
    )


def test_an_even_year_at_50_f(plain_frame: pd.DataFrame) -> None:
    weather = year(plain_frame, 10.0)
    assert heating_degree_days_65f(weather) == pytest.approx(15.0 * 365)
    assert mean_temperature(weather) == pytest.approx(10.0)
    assert design_temperature(weather) == pytest.approx(10.0)


def test_warm_days_take_nothing_back(plain_frame: pd.DataFrame) -> None:
    day = np.arange(HOURS) // 24
    weather = year(plain_frame, np.where(day < 100, 10.0, 30.0))
    assert heating_degree_days_65f(weather) == pytest.approx(15.0 * 100)


def test_degree_days_take_the_mean_of_the_day(plain_frame: pd.DataFrame) -> None:
    # 12 hours at 0 and 12 at 40 degC: the day's mean, 20 degC, needs no heating
    weather = year(plain_frame, np.where(np.arange(HOURS) % 24 < 12, 0.0, 40.0))
    assert heating_degree_days_65f(weather) == 0.0


def test_one_hour_in_a_hundred_is_colder_than_the_design_temperature(
    plain_frame: pd.DataFrame,
) -> None:
    temperature = np.linspace(-20.0, 30.0, HOURS)
    weather = year(plain_frame, temperature)
    assert (temperature < design_temperature(weather)).mean() == pytest.approx(0.01, abs=2e-4)
    assert design_temperature(weather, 0.5) == pytest.approx(5.0)


@pytest.mark.parametrize("share", [0.0, 1.0, -1.0])
def test_the_share_must_be_one(plain_frame: pd.DataFrame, share: float) -> None:
    with pytest.raises(ValueError, match="share must lie between 0 and 1"):
        design_temperature(year(plain_frame, 10.0), share)
