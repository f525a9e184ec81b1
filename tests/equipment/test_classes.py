"""The generic machines: tables with sources, maps that stay inside what physics allows."""

from __future__ import annotations

import csv
from importlib import resources

import numpy as np
import pytest

from costcompare.case.facts import EQUIPMENT_CLASSES
from costcompare.equipment import class_names, cooling_year, draw, heating_year, machine
from costcompare.equipment.classes import W_PER_KBTU_H, rated_heating

FAHRENHEIT = np.arange(-40.0, 75.0, 0.5)
OUTDOOR = (FAHRENHEIT - 32.0) / 1.8
HUMID = np.full(OUTDOOR.shape, 0.8)


@pytest.mark.parametrize(
    "table", ["equipment_points.csv", "equipment_classes.csv", "equipment_sizes.csv"]
)
def test_every_row_has_a_source(table: str) -> None:
    text = (resources.files("costcompare") / "data" / table).read_text(encoding="utf-8")
    rows = list(csv.DictReader(text.splitlines()))
    assert rows
    assert all(row["source"].strip() for row in rows)
    assert all(None not in row and None not in row.values() for row in rows)


def test_every_class_that_is_modelled_is_a_class_of_the_case() -> None:
    assert set(class_names()) <= set(EQUIPMENT_CLASSES)


@pytest.mark.parametrize("name", class_names())
@pytest.mark.parametrize("kbtu", [9.0, 24.0, 36.0])
def test_heating_map(name: str, kbtu: float) -> None:
    """Finite, ordered, never a COP below 1 on the map nor above Carnot, off below cut-out."""
    unit = machine(name, kbtu * W_PER_KBTU_H)
    year = heating_year(unit, OUTDOOR, HUMID)
    assert np.isfinite(year.capacity).all()
    assert np.isfinite(year.power).all()
    assert (np.diff(year.capacity, axis=1) >= -1e-9).all()
    running = year.most > 0.0
    assert not running[unit.cut_out > OUTDOOR].any()
    assert running[unit.cut_out + 0.1 < OUTDOOR].all()
    cop = year.capacity[running] / year.power[running]
    carnot = (273.15 + 26.0) / np.maximum(26.0 - (OUTDOOR[running] - 3.0), 1.0)
    assert (cop < carnot[:, None]).all()
    assert (cop > 0.8).all()  # 1 on the map, times the field factor


@pytest.mark.parametrize("name", class_names())
def test_power_rises_with_the_load(name: str) -> None:
    unit = machine(name, 12.0 * W_PER_KBTU_H)
    outdoor = np.full(200, -5.0)
    year = heating_year(unit, outdoor, np.full(200, 0.7))
    load = np.linspace(0.0, 1.0, 200) * year.most
    power = draw(year, load)
    assert power[0] == 0.0
    assert (np.diff(power) > 0.0).all()
    assert power[-1] == pytest.approx(year.power[-1, 2])


def test_more_than_the_machine_can_give_is_refused() -> None:
    year = heating_year(machine("ducted variable", 10_000.0), np.zeros(1), np.full(1, 0.5))
    with pytest.raises(ValueError, match="above the machine's maximum"):
        draw(year, year.most * 1.01)


@pytest.mark.parametrize("name", class_names())
def test_cooling_gets_harder_with_heat(name: str) -> None:
    outdoor = np.linspace(20.0, 45.0, 50)
    year = cooling_year(machine(name, 7000.0), outdoor)
    cop = year.capacity / year.power
    assert (np.diff(cop, axis=0) <= 1e-9).all()
    assert np.isfinite(cop).all()


def test_sizes_between_listings_are_interpolated() -> None:
    """12 kBtu/h gives 13.6 and 15 gives 18.0: 13.5 lies in the middle (table)."""
    found = rated_heating(13.5 * W_PER_KBTU_H, ducted=False) / W_PER_KBTU_H
    assert found == pytest.approx((13.6 + 18.0) / 2)


def test_rated_point_of_the_table() -> None:
    """A 12 kBtu/h cold-climate head: 13.6 kBtu/h at 47 F and COP 4.0, without field factor."""
    unit = machine("single-zone cold-climate", 12.0 * W_PER_KBTU_H)
    at_47 = (47.0 - 32.0) / 1.8
    year = heating_year(unit, np.array([at_47]), np.array([0.8]), field_factor=1.0)
    assert year.capacity[0, 1] / W_PER_KBTU_H == pytest.approx(13.6)
    assert year.capacity[0, 1] / year.power[0, 1] == pytest.approx(4.0)
