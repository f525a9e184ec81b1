"""One contract for every machine: all classes and machines made from points."""

from __future__ import annotations

import numpy as np
import pytest

from costcompare.equipment import (
    Installation,
    Machine,
    MapPoint,
    class_names,
    cooling_year,
    draw,
    heating_year,
    machine,
    map_from_points,
    standby_power,
)
from costcompare.equipment.machine import W_PER_KBTU_H, celsius

SHEET = (
    MapPoint(celsius(47), "rated", 3600.0, 900.0),
    MapPoint(celsius(47), "min", 900.0, 160.0),
    MapPoint(celsius(5), "max", 3400.0, 1700.0),
    MapPoint(celsius(95), "rated", 3500.0, 1000.0, "cooling"),
)
MACHINES: dict[str, Machine] = {
    **{name: machine(name, 12.0 * W_PER_KBTU_H) for name in class_names()},
    "from points": map_from_points(SHEET, like="single-zone cold-climate", cut_in=celsius(0)),
    "from one point": map_from_points(SHEET[:1], like="ducted variable"),
    "one speed from points": map_from_points(SHEET[:1], like="ducted single-speed"),
}
OUTDOOR = np.linspace(-45.0, 25.0, 600)
HUMIDITY = np.linspace(0.1, 1.0, 600)
ROOM = np.linspace(10.0, 30.0, 600)


@pytest.fixture(params=MACHINES, ids=list(MACHINES))
def unit(request: pytest.FixtureRequest) -> Machine:
    return MACHINES[request.param]


def test_no_load_means_standby_only(unit: Machine) -> None:
    year = heating_year(unit, OUTDOOR, HUMIDITY)
    still = np.ones(OUTDOOR.shape, dtype=bool)
    assert (draw(year, np.zeros(OUTDOOR.shape)) == 0.0).all()
    standby = standby_power(unit, still, ~still, OUTDOOR)
    assert (standby >= unit.off_power).all()
    assert (standby <= unit.off_power + unit.crankcase_power).all()


@pytest.mark.parametrize("share", [0.02, 0.3, 0.7, 1.0])
def test_output_within_capacity_and_all_finite(unit: Machine, share: float) -> None:
    placed = Installation(line_set=30.0, altitude=2000.0)
    for year in (
        heating_year(unit, OUTDOOR, HUMIDITY, room=ROOM, installed=placed),
        cooling_year(unit, OUTDOOR + 15.0, installed=placed),
    ):
        assert np.isfinite(year.capacity).all()
        assert np.isfinite(year.power).all()
        assert (year.power > 0.0).all()
        power = draw(year, share * year.most)
        assert np.isfinite(power).all()
        assert (power >= 0.0).all()
        assert (power <= year.power[:, 2] * (1.0 + 1e-9)).all()
        with pytest.raises(ValueError, match="above the machine's maximum"):
            draw(year, year.most + 1.0)


def test_more_load_never_takes_less(unit: Machine) -> None:
    year = heating_year(unit, OUTDOOR, HUMIDITY, room=ROOM)
    cold = cooling_year(unit, OUTDOOR + 15.0)
    for capability in (year, cold):
        powers = [draw(capability, share * capability.most) for share in np.linspace(0, 1, 41)]
        assert (np.diff(powers, axis=0) >= -1e-9).all()


def test_nothing_is_given_where_nothing_is_known(unit: Machine) -> None:
    year = heating_year(unit, OUTDOOR, HUMIDITY)
    assert (year.most[year.not_rated | year.cut_out] == 0.0).all()
    assert (year.most[~(year.not_rated | year.cut_out)] > 0.0).all()
    assert year.not_rated[0]  # -45 degC is colder than any map here
    assert (OUTDOOR[year.not_rated] < unit.heating_temperature[0]).all()
