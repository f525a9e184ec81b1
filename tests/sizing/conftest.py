"""The made-up home, sized once."""

from __future__ import annotations

import pytest

from costcompare.case.facts import Case
from costcompare.sizing import Sizing
from costcompare.weather import Weather
from tests.sizing.homes import loft, loft_weather, with_loft


@pytest.fixture(scope="session")
def case() -> Case:
    return with_loft()


@pytest.fixture(scope="session")
def weather() -> Weather:
    return loft_weather()


@pytest.fixture(scope="session")
def sized() -> Sizing:
    return loft()[0]
