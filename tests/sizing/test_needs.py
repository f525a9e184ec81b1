"""What a home needs: steady, adding up, and never less with a colder design."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from costcompare.case.facts import Case
from costcompare.sizing import Sizing, needs
from costcompare.sizing.design_weather import standing_year, winter_wind
from costcompare.sizing.needs import Need, design_levels, need_of, years_of_need
from costcompare.sizing.runs import Runs
from costcompare.weather import Weather, mean_temperature
from tests.sizing.homes import with_loft

DESIGN = -10.0  # [degC] 14 F, as the case states


@pytest.fixture(scope="module")
def need(case: Case, weather: Weather) -> Need:
    return need_of(case.home, weather, DESIGN, Runs(None, 1))


def test_the_parts_add_up_to_the_heat_of_the_rooms(need: Need) -> None:
    assert sum(need.parts) == pytest.approx(need.at_design(), rel=1e-6)
    rooms = [need.at_design([number]) for number in range(len(need.home.rooms))]
    assert sum(rooms) == pytest.approx(need.at_design(), rel=1e-12)
    assert min(rooms) > 0.0


def test_the_stretches_are_long_enough(
    need: Need, case: Case, weather: Weather, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Within 0.01 % of stretches half as long again."""
    monkeypatch.setattr("costcompare.sizing.design_weather.STRETCH_DAYS", 30)
    longer = need_of(case.home, weather, DESIGN, Runs(None, 1))
    assert longer.at_design() == pytest.approx(need.at_design(), rel=1e-4)


def test_the_load_is_a_line_through_what_was_run(need: Need) -> None:
    levels = np.array([need.design, 0.0, need.home.thermostat.wanted])
    heat = need.heat_at(levels)
    assert heat[0] == pytest.approx(need.at_design())
    assert heat[0] > heat[1] > heat[2] == 0.0
    colder = need.heat_at(np.array([need.design - 10.0]))[0]
    assert colder > heat[0]
    middle = need.heat_at(np.array([need.design + 1.0]))[0]
    slope = (heat[0] - middle) / 1.0
    assert colder - heat[0] == pytest.approx(10.0 * slope)


@pytest.mark.parametrize(
    ("design", "wanted", "expected"),
    [
        (-10.0, 21.0, [-10.0, -0.833, 8.333]),
        (12.0, 21.0, [8.333, 10.167, 12.0]),
        (15.0, 9.0, [8.0]),
    ],
)
def test_the_temperatures_of_the_line(design: float, wanted: float, expected: list[float]) -> None:
    assert list(design_levels(design, wanted)) == pytest.approx(expected, abs=1e-3)


def test_a_year_that_stands_still_keeps_the_mean_of_the_real_one(weather: Weather) -> None:
    standing = standing_year(weather, (-20.0, 5.0))
    table = standing.weather
    assert mean_temperature(table) == pytest.approx(mean_temperature(weather), abs=1e-9)
    air = table.column("temperature_degc")
    assert list(air[standing.last_hour]) == [-20.0, 5.0]
    assert table.column("ghi_w_m2").max() == 0.0
    assert table.column("wind_speed_m_s")[0] == pytest.approx(winter_wind(weather))


def test_an_upper_room_is_kept_warm_from_below_and_a_closed_one_is_not(need: Need) -> None:
    names = [room.name for room in need.home.rooms]
    alone = dict(zip(names, need.alone, strict=True))
    assert alone["closed bedroom"] < alone["small bedroom"] < need.home.thermostat.wanted
    shut = with_loft(
        doorways=[
            {"between": ["open room", "kitchen"], "state": "open"},
            {"between": ["open room", "small bedroom"], "state": "open"},
            {"between": ["open room", "closed bedroom"], "state": "closed"},
        ]
    )
    without = need_of(shut.home, need.standing.weather, DESIGN, Runs(None, 1))
    assert without.alone[names.index("loft")] < alone["loft"] - 3.0


@pytest.mark.parametrize("above", [-3.0, -0.5, 0.0, 4.0])
def test_parts_add_up_where_it_is_hardly_cold(case: Case, weather: Weather, above: float) -> None:
    """A design temperature round the wanted warmth: little or no heat, and no more in parts."""
    mild = need_of(case.home, weather, case.home.thermostat.wanted + above, Runs(None, 1))
    assert sum(mild.parts) == pytest.approx(mild.at_design(), abs=1e-6)
    assert (mild.at_design() == 0.0) == (above >= 0.0)


def test_nobody_is_at_home(case: Case) -> None:
    still = needs.still_home(case.home)
    assert still.house.people == 0.0
    assert still.other_use.electricity == still.other_use.hot_water == 0.0
    assert replace(still, house=case.home.house, other_use=case.home.other_use) == case.home


def test_progress_counts_every_year(case: Case, weather: Weather) -> None:
    told: list[float] = []
    runs = Runs(lambda _text, share: told.append(share), years_of_need(case.home))
    need_of(case.home, weather, DESIGN, runs)
    assert told[0] == 0.0
    assert told[-1] == 1.0
    assert told == sorted(told)


def test_shown_loads_are_those_worked_out(need: Need, sized: Sizing) -> None:
    (load,) = sized.loads
    assert load.heat_w == pytest.approx(need.at_design())
    assert load.heat_btu_h == pytest.approx(need.at_design() * 3.412142)
    assert sum(room.heat_w for room in load.rooms) == pytest.approx(load.heat_w)
    assert sum(part.heat_btu_h for part in load.parts) == pytest.approx(load.heat_btu_h)
    assert load.cooling_btu_h <= sum(room.cooling_btu_h for room in load.rooms) + 1e-6
    assert [point.heat_btu_h for point in load.line] == sorted(
        (point.heat_btu_h for point in load.line), reverse=True
    )
