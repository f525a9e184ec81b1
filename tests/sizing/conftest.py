"""The made-up home, sized once."""

from __future__ import annotations

import pytest

from costcompare.case.facts import Case
from costcompare.comparing import weather_of
from costcompare.sizing import Sizing, size
from costcompare.weather import Weather
from tests.sizing.homes import with_loft


@pytest.fixture(scope="session")
def case() -> Case:
    return with_loft()


@pytest.fixture(scope="session")
def weather(case: Case) -> Weather:
    return weather_of(case)


@pytest.fixture(scope="session")
def sized(case: Case, weather: Weather) -> Sizing:
    return size(case, weather=weather)
