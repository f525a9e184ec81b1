"""Every dial of a system reads back what it was turned to and leaves all else alone."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest

from costcompare.case import example_path, read_case
from costcompare.case.facts import System, UnitPoint
from costcompare.uncertainty.dials import Dial
from costcompare.uncertainty.system_dials import SYSTEM_DIALS

BY_FACT = {dial.fact: dial for dial in SYSTEM_DIALS}


@cache
def ducted() -> System:
    """A ducted heat pump: it has all that the dials turn."""
    return read_case(example_path("demo")).options[1].system


@pytest.mark.parametrize("dial", SYSTEM_DIALS, ids=lambda dial: dial.fact)
def test_a_dial_reads_what_it_was_turned_to(dial: Dial[System]) -> None:
    value = dial.read(ducted())
    assert value is not None
    turned = dial.turn(ducted(), 1.1 * value)
    if dial.fact != "equipment.capacity":
        assert dial.read(turned) == pytest.approx(1.1 * value)
    for other in SYSTEM_DIALS:
        if other.fact != dial.fact:
            assert other.read(turned) == pytest.approx(other.read(ducted())), other.fact


def test_capacity_moves_size_and_points_and_keeps_efficiency() -> None:
    unit = ducted().ducted_unit
    assert unit is not None
    point = UnitPoint("heating", 8.3, "rated", 9000.0, 2500.0)
    system = replace(ducted(), ducted_unit=replace(unit, points=(point,)))
    turned = BY_FACT["equipment.capacity"].turn(system, 1.2).ducted_unit
    assert turned is not None
    assert turned.size == pytest.approx(1.2 * unit.size)
    assert turned.points[0].capacity == pytest.approx(10800.0)
    assert turned.points[0].power == pytest.approx(3000.0)


def test_the_return_goes_with_the_supply() -> None:
    ducts = ducted().ducts
    assert ducts is not None
    turned = BY_FACT["ducts.area"].turn(ducted(), 1.25 * ducts.supply_area).ducts
    assert turned is not None
    assert turned.return_area == pytest.approx(1.25 * ducts.return_area)


def test_a_system_without_a_part_has_no_such_fact() -> None:
    bare = System("room heaters")
    assert [dial.fact for dial in SYSTEM_DIALS if dial.read(bare) is not None] == []
    ducts = ducted().ducts
    assert ducts is not None
    inside = replace(ducted(), ducts=replace(ducts, location="inside"))
    assert BY_FACT["ducts.supply_leakage"].read(inside) is None
