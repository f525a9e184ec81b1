"""Maps of machines against published tables, ratios and studies.

Sources and agreement reached:

- ANSI/RESNET HERS Addendum 82, means of a regional list of cold-climate machines: the table
  that follows from them for 12,000 Btu/h and a COP of 3.9 at 47 F, worked out apart from this
  program; every printed digit, at 47, 17 and 5 F, between them, and at part load.
- A manufacturer's extended table of a single-speed ducted split of the 2.5 ton class, 18 points
  at 70 F indoors, through its own points at 47, 17 and 5 F without frost: capacity and power
  each within 2.5 % from -10 to 60 F; at 65 F, where the program holds the map of 62 F, the
  capacity is 5.8 % and the power 2.7 % below the table.
- Laboratory points of a 12,000 Btu/h ductless machine, from memory (no report was at hand): a
  band of plausibility, 12 % either way. It is no proof, and no table was tuned to it.
- The classes over two climates' temperature bins, worked out apart from this program: within
  0.03 of the seasonal COP.
- An ideal cycle with R-32, evaporating 3 K below the outdoor air and condensing 5 K above the
  room (CoolProp): no map ever lies above it.
- Seasonal COPs of 17 single-zone machines, laboratory and calculation, of the Swedish Energy
  Agency: 2.8 to 4.1 at a mild coast, 2.8 to 3.5 inland (and 2.3 to 2.6 in the north, which is
  colder than any place tried here).
"""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest
from CoolProp.CoolProp import PropsSI
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray

from costcompare import typical_year
from costcompare.equipment import (
    Capability,
    Machine,
    MapPoint,
    class_names,
    draw,
    heating_year,
    machine,
    map_from_points,
)
from costcompare.equipment.machine import NEVER, W_PER_KBTU_H, Speed, celsius

Floats = NDArray[np.float64]
BTU_H = W_PER_KBTU_H / 1000.0
DRY, HUMID = 0.3, 0.85
SINGLE_ZONE = ("single-zone cold-climate", "single-zone standard")


def at(fahrenheit: float, speed: Speed, btu_h: float, cop: float) -> MapPoint:
    return MapPoint(celsius(fahrenheit), speed, btu_h * BTU_H, btu_h * BTU_H / cop)


def capability(unit: Machine, fahrenheit: float, humidity: float = DRY) -> Capability:
    """On the map alone: no field factor, 70 F indoors, at sea level."""
    there = np.array([celsius(fahrenheit)])
    return heating_year(unit, there, np.full(1, humidity), field_factor=1.0)


ONE_POINT = map_from_points([at(47, "rated", 12000, 3.9)], like="single-zone standard")


@pytest.mark.parametrize(
    ("fahrenheit", "capacities", "cops"),
    [
        (47, (3595, 12000, 13216), (5.017, 3.900, 3.662)),
        (17, (3451, 8268, 10120), (3.263, 2.887, 2.604)),
        (5, (2813, 8659, 8764), (2.583, 2.237, 2.237)),
        (35, (3537, 10507, 11977), (4.147, 3.512, 3.220)),
        (25, (3489, 9263, 10946), (3.610, 3.171, 2.871)),
        (10, (3079, 8496, 9329), (2.862, 2.462, 2.389)),
    ],
)
def test_a_map_from_one_point(
    fahrenheit: float, capacities: tuple[float, ...], cops: tuple[float, ...]
) -> None:
    found = capability(ONE_POINT, fahrenheit)
    assert found.capacity[0] / BTU_H == pytest.approx(capacities, abs=0.6)
    assert found.capacity[0] / found.power[0] == pytest.approx(cops, abs=6e-4)


@pytest.mark.parametrize(
    ("fahrenheit", "load", "cop"),
    [
        (47, 1500, 4.2858),
        (47, 3000, 4.8091),
        (47, 6000, 4.6971),
        (35, 6000, 3.9225),
        (35, 9000, 3.6493),
        (17, 6000, 3.0639),
        (17, 9000, 2.7749),
        (5, 6000, 2.3944),
        (5, 8764, 2.2370),
    ],
)
def test_part_load_on_that_map(fahrenheit: float, load: float, cop: float) -> None:
    """With a degradation coefficient of 0.25; no frost. 9,000 at 5 F is capped at 8,764."""
    found = capability(ONE_POINT, fahrenheit)
    standard = Capability(
        found.capacity, found.power, 0.25, cut_out=found.cut_out, not_rated=found.not_rated
    )
    asked = np.minimum(np.array([load * BTU_H]), found.most)
    assert asked[0] / draw(standard, asked)[0] == pytest.approx(cop, abs=6e-5)


def test_what_was_filled_is_named() -> None:
    assert set(ONE_POINT.filled) == {
        "minimum at 47 F",
        "maximum at 47 F",
        "minimum at 17 F",
        "rated at 17 F",
        "maximum at 17 F",
        "minimum at 5 F",
        "rated at 5 F",
        "maximum at 5 F",
        "all of cooling",
    }


TABLE_F = (65, 60, 55, 50, 47, 45, 40, 35, 30, 25, 20, 17, 15, 10, 5, 0, -5, -10)
TABLE_KBTU_H = (
    *(36.53, 34.53, 32.53, 30.4, 29.0, 28.1, 26.1, 24.1, 22.6),
    *(20.9, 19.2, 18.2, 17.5, 15.7, 13.9, 12.1, 10.3, 8.5),
)
TABLE_KW = (
    *(2.40, 2.36, 2.32, 2.27, 2.25, 2.23, 2.19, 2.14, 2.20),
    *(2.15, 2.11, 2.08, 2.06, 2.01, 1.97, 1.92, 1.87, 1.83),
)


def table_point(fahrenheit: int) -> MapPoint:
    row = TABLE_F.index(fahrenheit)
    return MapPoint(
        celsius(fahrenheit), "rated", TABLE_KBTU_H[row] * W_PER_KBTU_H, TABLE_KW[row] * 1000.0
    )


def deviations(anchors: tuple[int, ...]) -> dict[int, tuple[float, float]]:
    """Map over table less 1, capacity and power, at every point of the table."""
    unit = map_from_points(
        [table_point(anchor) for anchor in anchors],
        like="ducted single-speed",
        cut_out=celsius(-40),
        frost=False,
    )
    found = {}
    for fahrenheit, kbtu_h, kw in zip(TABLE_F, TABLE_KBTU_H, TABLE_KW, strict=True):
        one = capability(unit, fahrenheit)
        found[fahrenheit] = (
            float(one.capacity[0, 1]) / (kbtu_h * W_PER_KBTU_H) - 1.0,
            float(one.power[0, 1]) / (kw * 1000.0) - 1.0,
        )
    return found


def test_the_extended_table_of_a_single_speed_machine() -> None:
    for fahrenheit, (capacity, power) in deviations((47, 17, 5)).items():
        if fahrenheit <= 60:
            assert abs(capacity) < 0.03, fahrenheit
            assert abs(power) < 0.03, fahrenheit


def test_above_62_f_the_map_is_held() -> None:
    """The table goes on rising to 65 F: the program gives less there, never more."""
    capacity, power = deviations((47, 17, 5))[65]
    assert -0.06 < capacity < 0.0
    assert abs(power) < 0.03


def test_the_point_at_5_f_helps_in_the_cold() -> None:
    """Power at 5 and 10 F within 0.3 % with it, 1.5 to 2.2 % too high without it."""
    with_it, without = deviations((47, 17, 5)), deviations((47, 17))
    for fahrenheit in (5, 10):
        assert abs(with_it[fahrenheit][1]) < 0.003
        assert 0.015 < without[fahrenheit][1] < 0.022
    for fahrenheit in (0, -5, -10):  # further from 17 F than the map is carried on
        assert max(abs(part) for part in with_it[fahrenheit]) < 0.005
        assert without[fahrenheit][0] == -1.0


IDEAL_REFRIGERANT = "R32"


@cache
def ideal_cop(outdoor: float, room: float) -> float:
    """COP of an ideal cycle, evaporating 3 K below outdoors, condensing 5 K above the room.

    Saturated vapour and liquid, isentropic compression, throttling at constant enthalpy;
    temperatures in [degC]. CoolProp's R-32.
    """
    cold, warm = outdoor - 3.0 + 273.15, room + 5.0 + 273.15
    suction = PropsSI("H", "T", cold, "Q", 1, IDEAL_REFRIGERANT)
    entropy = PropsSI("S", "T", cold, "Q", 1, IDEAL_REFRIGERANT)
    pressure = PropsSI("P", "T", warm, "Q", 0, IDEAL_REFRIGERANT)
    discharge = PropsSI("H", "P", pressure, "S", entropy, IDEAL_REFRIGERANT)
    liquid = PropsSI("H", "T", warm, "Q", 0, IDEAL_REFRIGERANT)
    return float((discharge - liquid) / (discharge - suction))


COLD_TO_MILD = np.arange(-35.0, 66.0, 2.5)
ROOMS = (60.0, 70.0, 76.0)


def below_the_ideal(unit: Machine) -> None:
    outdoor = np.array([celsius(t) for t in COLD_TO_MILD])
    for room in ROOMS:
        found = heating_year(
            unit, outdoor, np.full(outdoor.shape, DRY), room=celsius(room), field_factor=1.0
        )
        for hour, temperature in enumerate(outdoor):
            most = float((found.capacity[hour] / found.power[hour]).max())
            assert most < ideal_cop(float(temperature), celsius(room))


@pytest.mark.parametrize("name", class_names())
def test_no_class_beats_the_ideal_cycle(name: str) -> None:
    below_the_ideal(machine(name, 12.0 * W_PER_KBTU_H))


@given(
    temperatures=st.lists(st.integers(-20, 60), min_size=1, max_size=4, unique=True),
    speeds=st.lists(st.sampled_from(["min", "rated", "max"]), min_size=4, max_size=4),
    capacities=st.lists(st.floats(2000.0, 40000.0), min_size=4, max_size=4),
    cops=st.lists(st.floats(1.0, 14.0), min_size=4, max_size=4),
)
@settings(max_examples=40, derandomize=True, deadline=None)
def test_no_points_beat_the_ideal_cycle(
    temperatures: list[int], speeds: list[Speed], capacities: list[float], cops: list[float]
) -> None:
    rows = zip(temperatures, speeds, capacities, cops, strict=False)
    below_the_ideal(map_from_points([at(*row) for row in rows], like="single-zone cold-climate"))


LABORATORY = (
    (60, 0.20, 6.7),
    (60, 0.50, 5.0),
    (47, 0.20, 5.3),
    (47, 0.40, 4.6),
    (47, 0.72, 3.9),
    (47, 1.00, 3.15),
    (40, 0.38, 4.05),
    (35, 0.37, 3.75),
    (30, 0.36, 3.5),
    (25, 0.82, 2.6),
    (17, 0.18, 3.3),
    (17, 0.40, 2.9),
    (17, 0.76, 2.35),
    (5, 0.38, 2.3),
    (5, 0.66, 2.05),
    (-5, 0.58, 1.85),
    (-13, 0.50, 1.65),
)
"""Outdoors [F], load over the maximum at 47 F, COP; dry coil; from memory"""
BAND = 0.12


def laboratory_ratios() -> dict[tuple[float, float], float]:
    """COP of the class over that from memory; loads beyond the map at its maximum."""
    unit = machine("single-zone cold-climate", 12.0 * W_PER_KBTU_H)
    most_at_47 = capability(unit, 47).most
    ratios = {}
    for fahrenheit, load, cop in LABORATORY:
        one = capability(unit, fahrenheit)
        asked = np.minimum(load * most_at_47, one.most)
        ratios[fahrenheit, load] = float(asked[0] / draw(one, asked)[0]) / cop
    return ratios


def test_laboratory_points_from_memory_are_met_but_for_one() -> None:
    """16 of 17 within the band, 5 % high on the mean; at 60 F and half speed 13 % high.

    Nothing was tuned to them, and the field factor (12 % off) is not in these figures.
    """
    ratios = laboratory_ratios()
    outside = {place for place, ratio in ratios.items() if abs(ratio - 1.0) > BAND}
    assert outside == {(60, 0.5)}
    assert ratios[60, 0.5] == pytest.approx(1.13, abs=0.01)
    assert np.mean(list(ratios.values())) == pytest.approx(1.05, abs=0.02)


MARINE = (
    *((62, 1500), (57, 1550), (52, 1500), (47, 1400), (42, 1150), (37, 750), (32, 320)),
    *((27, 110), (22, 35), (17, 12)),
)
INLAND = (
    *((62, 750), (57, 720), (52, 680), (47, 620), (42, 640), (37, 760), (32, 900), (27, 650)),
    *((22, 430), (17, 300), (12, 210), (7, 120), (2, 70), (-3, 35), (-8, 15)),
)
"""Outdoors [F] and hours"""
ZERO_LOAD = celsius(60.0)
STANDARD_CYCLING = 0.25


def seasonal_cop(
    unit: Machine, climate: tuple[Floats, Floats, Floats], design: float, *, size: float
) -> float:
    """Heat over electricity of a season; what the machine cannot give is made by elements.

    ``climate`` holds outdoor temperature [degC], relative humidity and hours. The load is
    linear to 60 F; at the ``design`` temperature [degC] it is what the machine gives there,
    frost included, over ``size``.
    """
    outdoor, humidity, hours = climate
    at_design = heating_year(unit, np.array([design]), np.full(1, humidity[0]), field_factor=1.0)
    slope = at_design.most[0] / size / (ZERO_LOAD - design)
    load = np.maximum(slope * (ZERO_LOAD - outdoor), 0.0)
    found = heating_year(unit, outdoor, humidity, field_factor=1.0)
    standard = Capability(
        found.capacity,
        found.power,
        STANDARD_CYCLING,
        cut_out=found.cut_out,
        not_rated=found.not_rated,
    )
    heat = np.minimum(load, standard.most)
    electricity = draw(standard, heat) + load - heat
    return float((load * hours).sum() / (electricity * hours).sum())


def of_bins(bins: tuple[tuple[int, int], ...]) -> tuple[Floats, Floats, Floats]:
    outdoor = np.array([celsius(t) for t, _ in bins])
    return outdoor, np.full(outdoor.shape, HUMID), np.array([float(h) for _, h in bins])


@pytest.mark.parametrize(
    ("name", "marine", "inland"),
    [
        ("single-zone cold-climate", (4.04, 4.33), (3.27, 3.50)),
        ("single-zone standard", (3.82, 3.91), (3.06, 3.09)),
        ("multi-zone cold-climate", (3.34, 3.32), (2.72, 2.73)),
        ("multi-zone standard", (3.12, 2.99), (2.49, 2.37)),
        ("ducted variable", (3.44, 3.45), (2.81, 2.86)),
        ("ducted single-speed", (2.70, 2.59), (2.22, 2.14)),
    ],
)
def test_seasonal_cops_of_the_classes_over_bins(
    name: str, marine: tuple[float, float], inland: tuple[float, float]
) -> None:
    """Without field factor, room at 70 F, coefficient 0.25, sized 1.0 and 1.6 times the load.

    Without cut-outs, as those figures were made.
    """
    unit = replace(machine(name, 12.0 * W_PER_KBTU_H), cut_out=NEVER, cut_in=NEVER)
    for bins, design, expected in ((MARINE, 24, marine), (INLAND, 3, inland)):
        for size, cop in zip((1.0, 1.6), expected, strict=True):
            found = seasonal_cop(unit, of_bins(bins), celsius(design), size=size)
            assert found == pytest.approx(cop, abs=0.03), (design, size)


FIELD = 0.88
COAST, INLAND_BAND = (2.8, 4.1), (2.8, 3.5)


@cache
def of_place(latitude: float, longitude: float) -> tuple[Floats, Floats, Floats]:
    weather = typical_year(latitude, longitude)
    outdoor = weather.column("temperature_degc")
    return outdoor, weather.column("relative_humidity"), np.ones(outdoor.shape)


@pytest.mark.parametrize("name", SINGLE_ZONE)
@pytest.mark.parametrize(
    ("latitude", "longitude", "low", "high"),
    [
        (46.97, -122.90, COAST[0], COAST[1]),  # cool and marine
        (47.49, -117.59, INLAND_BAND[0], INLAND_BAND[1]),  # cold inland
    ],
)
@pytest.mark.parametrize("size", [1.0, 1.6])
def test_seasonal_cops_of_single_zone_machines_lie_in_the_published_bands(
    name: str, latitude: float, longitude: float, low: float, high: float, size: float
) -> None:
    """Over generated years, field factor on, no ducts, no standby.

    Found: 3.19 to 3.63 at the coast, 2.89 to 3.30 inland. No place as cold as the Swedish
    north was tried.
    """
    climate = of_place(latitude, longitude)
    design = float(np.quantile(climate[0], 0.01))
    unit = machine(name, 12.0 * W_PER_KBTU_H)
    assert low < FIELD * seasonal_cop(unit, climate, design, size=size) < high
