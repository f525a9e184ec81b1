"""One real comparison and one real sweep of the example home, for everything that shows them."""

from __future__ import annotations

import pytest

from costcompare import units
from costcompare.case import Case, example_path, read_case
from costcompare.comparing import compare
from costcompare.comparison import Comparison
from costcompare.thermostat import Sweep, sweep

SETTINGS_F = (62, 66, 70, 74)


@pytest.fixture(scope="session")
def demo() -> Case:
    return read_case(example_path("demo"))


@pytest.fixture(scope="session")
def comparison(demo: Case) -> Comparison:
    return compare(demo)


@pytest.fixture(scope="session")
def option(demo: Case) -> str:
    """The option that the tests set against today: one that cools as well."""
    return next(option.name for option in demo.options if "heat pump" in option.kind)


@pytest.fixture(scope="session")
def swept(demo: Case, comparison: Comparison, option: str) -> Sweep:
    settings = [units.parse(f"{degf} F", "temperature") for degf in SETTINGS_F]
    return sweep(demo, settings, only=(comparison.today.name, option))
