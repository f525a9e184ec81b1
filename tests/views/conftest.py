"""One real comparison and one real sweep of the example home, for everything that shows them."""

from __future__ import annotations

from dataclasses import replace

import pytest

from costcompare import units
from costcompare.case import Case, example_path, read_case
from costcompare.comparing import compare
from costcompare.comparison import Band, Comparison, DataQuality, Driver, Range
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


@pytest.fixture(scope="session")
def ranged(comparison: Comparison) -> Comparison:
    """The comparison with the same invented range in every choice."""
    driver = Driver(
        "today.ducts.supply_leakage", "how much air the ducts lose", "guessed", 420.0, 0.6
    )
    other = Driver("thermostat.day", "how warm it is kept", "seen", -210.0, 0.4)
    one = Range(
        bill_usd=Band(2870.0, 3563.0, 4388.0),
        first_year_saving_usd=Band(-162.0, 132.0, 392.0),
        same_warmth_saving_usd=Band(475.0, 634.0, 986.0),
        simple_payback_years=Band(11.65, 34.4, None),
        discounted_payback_years=Band(12.5, None, None),
        net_savings_usd=Band(-3000.0, -500.0, 900.0),
        chance_of_payback_within_life=0.23,
        warm_share=Band(0.5, 0.6, 0.7),
        drivers=(driver, other),
    )
    today = replace(
        one,
        first_year_saving_usd=None,
        simple_payback_years=None,
        chance_of_payback_within_life=None,
    )
    return replace(
        comparison,
        choices=tuple(
            replace(choice, range=today if choice.is_today else one)
            for choice in comparison.choices
        ),
        data_quality=DataQuality(1, 18, 11, 0.6, 64),
        range_note="What they hold.",
    )
