"""Warm, cold and hot hours on years that can be counted by hand."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pandas as pd
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from costcompare.case.facts import (
    AirLeakage,
    ComfortBand,
    Construction,
    Constructions,
    Home,
    House,
    Layer,
    OtherUse,
    Room,
    Site,
    Thermostat,
    Windows,
)
from costcompare.comfort import (
    coldest_day,
    mean_by_month_and_hour,
    room_years,
    warm_share_by_month,
)
from costcompare.simulation.results import HourlyResult, LoadHours

INDEX = pd.date_range("2027-01-01", periods=8760, freq="h", tz="-05:00")
NIGHT = tuple(hour >= 22 or hour < 6 for hour in range(24))
DAY = tuple(6 <= hour < 23 for hour in range(24))
NEVER = (False,) * 24
ZEROS = np.zeros(8760)


def room(name: str, wanted_hours: tuple[bool, ...]) -> Room:
    return Room(name, 1, 20.0, 2.4, 2.4, {}, {}, "ground", "attic", wanted_hours)


def home(*rooms: Room) -> Home:
    part = Construction((Layer(2.0),))
    return Home(
        site=Site(35.6, -82.55, 640.0, "America/New_York"),
        house=House(
            floor_area=100.0,
            storeys=1,
            bedrooms=2,
            built=1970,
            foundation="slab",
            people=2.0,
            leakage=AirLeakage(None, 0.5),
            constructions=Constructions(part, part, part, part, part, part, part),
            windows=Windows(3.0, 0.6),
        ),
        rooms=rooms or (room("hall", DAY),),
        doorways=(),
        crawlspace=None,
        thermostat=Thermostat(18.0, 16.0, NIGHT, 20.0, 18.0, 25.0),
        comfort=ComfortBand(1.0, 1.0),
        other_use=OtherUse(500.0, 200.0, 0.6, 0.2),
    )


def result(*rooms: np.ndarray, names: tuple[str, ...] = ("hall",)) -> HourlyResult:
    air = np.column_stack(rooms)
    return HourlyResult(
        index=INDEX,
        room_names=names,
        outdoor_temperature=ZEROS,
        room_temperature=air,
        space_temperature={},
        heating=np.full(8760, 1500.0),
        backup=ZEROS,
        cooling=ZEROS,
        fan=np.full(8760, 250.0),
        standby=ZEROS,
        other_use=ZEROS,
        equipment_heat=ZEROS,
        room_heat=np.zeros_like(air),
        unmet_heat=np.full_like(air, 10.0),
        run_fraction=ZEROS,
        ducts=None,
        loads=LoadHours(ZEROS, ZEROS, ZEROS, ZEROS, ZEROS, ZEROS),
        energy_balance_error=0.0,
    )


def steady(degc: float) -> np.ndarray:
    return np.full(8760, degc)


@pytest.mark.parametrize(
    ("degc", "cold_a_day", "hot_a_day"),
    [
        (20.0, 0, 0),
        (19.0, 0, 0),  # exactly at the edge of the band: still warm
        (18.98, 16, 0),  # cold by day (6 to 22 h), warm in the wanted night hour 22 to 23
        (17.0, 16, 0),
        (16.98, 17, 0),
        (26.0, 0, 0),
        (26.02, 0, 17),
    ],
)
def test_the_edges_of_the_band(degc: float, cold_a_day: int, hot_a_day: int) -> None:
    hall = room_years(home(), result(steady(degc)))[0]
    assert hall.wanted_hours == 17 * 365
    assert hall.cold_hours == cold_a_day * 365
    assert hall.hot_hours == hot_a_day * 365
    assert hall.comfort_hours == hall.wanted_hours - hall.cold_hours - hall.hot_hours


def test_wanted_hours_follow_the_clock_on_the_wall() -> None:
    """Five in the morning of standard time is six, a wanted hour, while clocks are ahead."""
    early = np.where(INDEX.hour == 5, 10.0, 20.0)
    hall = room_years(home(), result(early))[0]
    # Clocks are ahead from 14 March to 6 November 2027: 238 mornings.
    assert hall.cold_hours == 238


def test_rooms_are_told_apart_by_name_not_by_order() -> None:
    house = home(room("loft", NEVER), room("hall", DAY))
    hall, loft = room_years(house, result(steady(10.0), steady(30.0), names=("hall", "loft")))
    assert (hall.name, hall.cold_hours) == ("hall", 17 * 365)
    assert (loft.name, loft.wanted_hours, loft.hot_hours) == ("loft", 0, 0)
    assert np.isnan(loft.winter_mean_degf)


def test_lowest_temperature_unmet_heat_and_winter_mean() -> None:
    air = steady(20.0)
    air[3] = 5.0  # three at night on New Year's Day: nobody is there
    months = INDEX.month.to_numpy()
    air[(months >= 6) & (months <= 8)] = 24.0
    hall = room_years(home(), result(air))[0]
    assert hall.minimum_temperature_degc == 5.0
    assert hall.minimum_temperature_degf == pytest.approx(41.0)
    assert hall.unmet_heat_kwh == pytest.approx(87.6)
    assert hall.winter_mean_degc == pytest.approx(20.0)
    assert hall.winter_mean_degf == pytest.approx(68.0)


def test_the_warm_share_of_each_month() -> None:
    cold_january = np.where(INDEX.month == 1, 10.0, 20.0)
    shares = warm_share_by_month(home(), result(cold_january))
    assert shares[0] == 0.0
    assert shares[1:] == (1.0,) * 11
    two = home(room("hall", DAY), room("den", DAY))
    half = warm_share_by_month(two, result(cold_january, steady(20.0), names=("hall", "den")))
    assert half[0] == pytest.approx(0.5)
    assert np.isnan(warm_share_by_month(home(room("hall", NEVER)), result(steady(20.0)))).all()


def test_means_by_month_and_hour_are_in_standard_time() -> None:
    air = np.where((INDEX.month == 7) & (INDEX.hour == 15), 30.0, 20.0)
    means = mean_by_month_and_hour(result(air))
    assert set(means) == {"hall"}
    assert len(means["hall"]) == 12
    assert all(len(row) == 24 for row in means["hall"])
    assert means["hall"][6][15] == pytest.approx(86.0)
    assert means["hall"][6][14] == means["hall"][0][15] == pytest.approx(68.0)


def test_the_coldest_day_is_a_whole_day() -> None:
    outdoor = steady(0.0)
    start = int(INDEX.get_loc(pd.Timestamp("2027-02-09", tz="-05:00")))
    outdoor[start : start + 24] = -10.0
    outdoor[100] = -40.0  # a single colder hour does not make a day
    day = coldest_day(replace(result(steady(20.0)), outdoor_temperature=outdoor))
    assert (day.month, day.day) == (2, 9)
    assert day.outdoor_degf == pytest.approx((14.0,) * 24)
    assert day.rooms_degf["hall"] == pytest.approx((68.0,) * 24)
    assert day.power_kw == pytest.approx((1.75,) * 24)


@settings(max_examples=20, deadline=None)
@given(seed=st.integers(0, 2**31))
def test_warm_cold_and_hot_hours_are_the_wanted_hours(seed: int) -> None:
    generator = np.random.default_rng(seed)
    house = home(room("hall", DAY), room("den", tuple(generator.random(24) < 0.5)))
    years = result(*(generator.uniform(12.0, 30.0, (2, 8760))), names=("hall", "den"))
    rooms = room_years(house, years)
    for one in rooms:
        assert one.comfort_hours + one.cold_hours + one.hot_hours == one.wanted_hours
    warm = sum(one.comfort_hours for one in rooms)
    wanted = sum(one.wanted_hours for one in rooms)
    share = warm_share_by_month(house, years)
    assert min(share) - 1e-9 <= warm / wanted <= max(share) + 1e-9
