"""The main job from a case to bills, on real weather, through the public functions."""

from __future__ import annotations

import copy
from itertools import pairwise
from pathlib import Path
from typing import Any

import numpy as np
import pvlib
import pytest

import costcompare
from costcompare.case import case_from_document, example_path, override, read_document
from costcompare.comparison import AS_LIVED, AS_WANTED, Comparison

REAL_YEARS = Path(pvlib.__file__).parent / "data"
FILES = ("723170TYA.CSV", "703165TY.csv", "12839.tm2")


@pytest.fixture(scope="module")
def demo() -> dict[str, Any]:
    return read_document(example_path("demo"))


@pytest.fixture(scope="module", params=FILES)
def on_real_weather(request: pytest.FixtureRequest, demo: dict[str, Any]) -> Comparison:
    weather = costcompare.read_weather(REAL_YEARS / request.param)
    return costcompare.compare(case_from_document(demo), weather=weather)


def test_months_add_up_and_energy_closes(on_real_weather: Comparison) -> None:
    for choice in on_real_weather.choices:
        assert choice.energy_balance_error < 1e-6
        year = choice.annual
        assert np.isfinite(list(vars(year).values())).all()
        for field in ("electricity_kwh", "heating_kwh", "cooling_kwh", "bill_usd"):
            months = sum(getattr(month, field) for month in choice.monthly)
            assert months == pytest.approx(getattr(year, field), rel=1e-9, abs=1e-9)
        parts = (
            year.heating_kwh
            + year.cooling_kwh
            + year.fan_kwh
            + year.standby_kwh
            + year.other_use_kwh
        )
        assert year.electricity_kwh == pytest.approx(parts)


def test_the_explanation_adds_up_to_the_cent(on_real_weather: Comparison) -> None:
    total = sum(part.usd for part in on_real_weather.explanation)
    assert total == pytest.approx(on_real_weather.today.annual.bill_usd, abs=0.005)
    for month, parts in zip(
        on_real_weather.today.monthly, on_real_weather.explanation_by_month, strict=True
    ):
        assert sum(part.usd for part in parts.parts) == pytest.approx(month.bill_usd, abs=0.005)
        kwh = sum(part.kwh for part in parts.parts)
        assert kwh == pytest.approx(month.electricity_kwh, abs=1e-6)


def test_heads_take_less_electricity_for_heat_than_the_furnace(
    on_real_weather: Comparison,
) -> None:
    """Where the furnace needs over 300 kWh of heat, the ductless heating is below it."""
    heads = [c for c in on_real_weather.choices if c.kind == "ductless heat pump"]
    assert heads
    for choice in heads:
        today = on_real_weather.choice("Today", choice.warmth)
        if today.annual.heating_kwh > 300:
            assert choice.annual.heating_kwh < today.annual.heating_kwh


def test_new_cooling_shows_as_a_higher_summer_bill(on_real_weather: Comparison) -> None:
    today = on_real_weather.today
    assert today.annual.cooling_kwh == 0.0
    for choice in on_real_weather.choices:
        summer = sum(month.cooling_kwh for month in choice.monthly[4:9])
        if choice.annual.cooling_kwh > 50:
            assert summer > 0.5 * choice.annual.cooling_kwh
            july, before = choice.monthly[6], today.monthly[6]
            if before.heating_kwh < 1.0 and july.cooling_kwh > 20.0:
                assert july.bill_usd > before.bill_usd


@pytest.mark.parametrize("file", FILES)
def test_tighter_ducts_never_cost_more(demo: dict[str, Any], file: str) -> None:
    """Leakage of both sides scaled together: less of it, less heating."""
    weather = costcompare.read_weather(REAL_YEARS / file)
    heating = []
    for share in (1.5, 1.0, 0.5, 0.0):
        document = override(demo, f'today.ducts.supply_leakage="{15 * share} %"')
        document = override(document, f'today.ducts.return_leakage="{10 * share} %"')
        year = costcompare.simulate(case_from_document(document), weather=weather)
        heating.append(year.heating.sum())
    assert all(leaky > tight for leaky, tight in pairwise(heating)) or heating[0] < 1e6  # 1 kWh


def test_savings_are_bill_before_less_bill_after(on_real_weather: Comparison) -> None:
    lived = on_real_weather.choice("Today", AS_LIVED).annual.bill_usd
    wanted = on_real_weather.choice("Today", AS_WANTED).annual.bill_usd
    for choice in on_real_weather.choices[2:]:
        money = choice.money
        assert money is not None
        bill = choice.annual.bill_usd
        assert money.first_year_saving_usd == pytest.approx(lived - bill)
        same = wanted if choice.warmth == AS_WANTED else lived
        assert money.same_warmth_saving_usd == pytest.approx(same - bill)


SHOCK: dict[str, Any] = {
    "format": 1,
    "title": "A leaky house of the seventies",
    "site": {"latitude": 0.0, "longitude": 0.0},
    "house": {
        "floor_area": "2000 ft2",
        "storeys": 1,
        "bedrooms": 3,
        "built": 1973,
        "foundation": "vented crawlspace",
        "people": 4,
    },
    "thermostat": {"day": "60 F", "night": "60 F", "wanted": "68 F"},
    "today": {
        "kind": "electric furnace",
        "output": "20 kW",
        "ducts": {"location": "crawlspace", "condition": "old, never sealed"},
    },
    "tariff": {"price": "0.13 $/kWh", "customer_charge": "12 $/month"},
}


@pytest.mark.parametrize(
    ("latitude", "longitude", "area", "condition", "price"),
    [
        (46.97, -122.90, 2000, "fallen or open branch", 0.13),  # cool and marine
        (45.55, -122.60, 2200, "fallen or open branch", 0.15),  # cool valley
        (43.57, -116.22, 1900, "old, never sealed", 0.12),  # cold high plain
        (47.49, -117.59, 1800, "old, never sealed", 0.11),  # cold inland
    ],
)
def test_the_shock_of_the_first_winter(
    latitude: float, longitude: float, area: int, condition: str, price: float
) -> None:
    """A bill of 450 to 650 dollars in the worst month at 60 F, and bedrooms colder than that.

    Common practice, no source: what leaky houses with a 20 kW furnace and crawlspace ducts
    bring at 11 to 15 cents a kWh in a cool or cold winter.
    """
    document = copy.deepcopy(SHOCK)
    document["site"] = {"latitude": latitude, "longitude": longitude}
    document["house"]["floor_area"] = f"{area} ft2"
    document["today"]["ducts"]["condition"] = condition
    document["tariff"]["price"] = f"{price} $/kWh"
    comparison = costcompare.compare(case_from_document(document))
    today = comparison.today
    worst = max(month.bill_usd for month in today.monthly)
    assert 450 <= worst <= 650
    bedrooms = [room for room in today.rooms if "bedroom" in room.name]
    assert bedrooms
    assert min(room.winter_mean_degf for room in bedrooms) < 60.0
