"""A whole case, sized."""

from __future__ import annotations

import json
from typing import Any

import pytest

from costcompare.case import case_from_document
from costcompare.comparison import as_document
from costcompare.sizing import MachineFit, Sizing, size
from costcompare.weather import Weather
from tests.sizing.homes import document, example, with_loft


def head(sized: Sizing, name: str) -> MachineFit:
    return next(fit for fit in sized.choice(name).machines if fit.kind == "head")


def test_today_comes_first_and_options_follow(sized: Sizing) -> None:
    names = ["Today", "One head high up", "Head and furnace", "Ducted with strips"]
    assert [fit.name for fit in sized.choices] == names
    assert sized.loads[0].choices == tuple(names)
    with pytest.raises(KeyError):
        sized.choice("Nothing of the kind")


def test_the_design_temperature_is_stated(sized: Sizing) -> None:
    assert sized.design.outdoor_degf == pytest.approx(14.0)
    assert not sized.design.outdoor_is_estimated


def test_without_one_it_is_the_1_percent_hour_and_said_to_be_estimated(weather: Weather) -> None:
    site = {key: document()["site"][key] for key in ("latitude", "longitude", "time_zone")}
    estimated = size(with_loft(site=site, options=[]), weather=weather)
    assert estimated.design.outdoor_is_estimated
    assert (weather.column("temperature_degc") < estimated.design.outdoor_degc).mean() < 0.0101


def test_a_head_is_held_against_its_room_and_those_open_to_it(sized: Sizing) -> None:
    fit = head(sized, "One head high up")
    rooms = {room.name: room for room in sized.loads[0].rooms}
    assert set(fit.heats) == {"open room", "kitchen", "loft", "small bedroom"}
    assert fit.load_btu_h == pytest.approx(sum(rooms[name].heat_btu_h for name in fit.heats))
    assert fit.coverage == pytest.approx(fit.maximum_at_design_btu_h / fit.load_btu_h)
    assert fit.below_minimum_hours is not None
    assert fit.heating_hours is not None
    assert 0 < fit.below_minimum_hours < fit.heating_hours < 8760


def test_at_the_balance_point_the_most_meets_the_load(sized: Sizing) -> None:
    """All heat pumps of the ducted option: capacity and load lines cross there."""
    fit = sized.choice("Ducted with strips")
    assert fit.balance_degf is not None
    assert fit.heat_pump_coverage is not None
    assert fit.heat_pump_coverage < 1.0
    assert 14.0 < fit.balance_degf < 40.0
    assert fit.load_btu_h > sized.loads[0].heat_btu_h  # the ducts lose some of it


def test_a_furnace_that_falls_short_is_still_given_its_load() -> None:
    small = with_loft(today={**document()["today"], "output": "2 kW"}, options=[])
    fit = size(small).choice("Today")
    assert fit.machines[0].coverage is not None
    assert fit.machines[0].coverage < 0.8
    assert fit.load_btu_h > 10_000.0


def test_a_better_home_is_a_load_of_its_own() -> None:
    option = {
        "name": "Insulate",
        "kind": "improve",
        "set": {"house.wall_insulation": "R-20", "house.attic_insulation": "R-60"},
        "installed_cost": "3000 $",
    }
    sized = size(with_loft(options=[option]))
    before, after = sized.loads
    assert before.choices == ("Today",)
    assert after.choices == ("Insulate",)
    assert after.heat_btu_h < before.heat_btu_h


def test_heads_on_one_outdoor_unit() -> None:
    sized = example("wrong_settings")[0]
    fits = sized.choice("One outdoor unit, three heads").machines
    (shared,) = (fit for fit in fits if fit.kind == "shared outdoor unit")
    heads = [fit for fit in fits if fit.kind == "head"]
    assert len(heads) == 3
    together = sum(fit.maximum_at_design_btu_h for fit in heads)
    assert together == pytest.approx(shared.maximum_at_design_btu_h, rel=0.02)
    assert {room for fit in heads for room in fit.heats} == set(shared.heats)
    for fit in heads:  # at its minimum the outdoor unit serves one head alone
        assert fit.minimum_at_47f_btu_h == pytest.approx(shared.minimum_at_47f_btu_h)
    assert shared.below_minimum_hours is not None


def test_a_locked_out_compressor_gives_nothing() -> None:
    sized = example("wrong_settings")[0].choice("Today")
    (pump,) = (fit for fit in sized.machines if fit.kind == "ducted heat pump")
    assert pump.single_speed
    assert pump.stops_below_degf == pytest.approx(35.0)
    assert pump.maximum_at_design_btu_h == 0.0
    assert sized.balance_degf == pytest.approx(35.0, abs=0.1)


@pytest.mark.parametrize(
    "changes",
    [
        {"site": {"latitude": 25.8, "longitude": -80.3}},  # warmer than 47 F at its coldest
        {"site": {"latitude": 64.8, "longitude": -147.9}},  # colder than any machine runs
        {"thermostat": {"day": "50 F", "wanted": "50 F", "cooling": "90 F"}},
    ],
    ids=["hot", "arctic", "cool rooms"],
)
def test_odd_places_are_sized_too(changes: dict[str, Any]) -> None:
    small = document() | changes
    small["options"] = small["options"][:1]
    sized = size(case_from_document(small))
    written = json.dumps(as_document(sized), allow_nan=False)
    assert "Infinity" not in written
    assert sized.loads[0].heat_w >= 0.0


def test_the_same_case_gives_the_same_sizing(sized: Sizing, weather: Weather) -> None:
    again = size(with_loft(), weather=weather)
    assert as_document(again) == as_document(sized)
