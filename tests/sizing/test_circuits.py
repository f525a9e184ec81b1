"""Circuits that come and go."""

from __future__ import annotations

from dataclasses import replace

import pytest

from costcompare.case.facts import Head, HeatPumpUnit, System
from costcompare.equipment.machine import W_PER_KBTU_H, rows
from costcompare.sizing import Sizing
from costcompare.sizing.circuits import circuits_of, heat_pump_circuit


def kbtu(size: float, equipment_class: str = "single-zone cold-climate") -> HeatPumpUnit:
    return HeatPumpUnit(equipment_class, size * W_PER_KBTU_H, "den")


@pytest.mark.parametrize(
    ("unit", "amps", "low", "high"),
    [
        (kbtu(6), 9, 15, 15),
        (kbtu(9), 9, 15, 15),
        (kbtu(12), 9, 15, 15),
        (kbtu(15), 22, 30, 35),
        (kbtu(24, "single-zone standard"), 22, 30, 35),
        (kbtu(24, "multi-zone standard"), 20, 20, 25),
        (kbtu(36, "multi-zone cold-climate"), 30, 30, 45),
        (kbtu(36, "ducted variable"), 25, 25, 40),
        (kbtu(200, "ducted variable"), 25, 25, 40),
    ],
)
def test_outdoor_units_by_size(unit: HeatPumpUnit, amps: int, low: int, high: int) -> None:
    circuit = heat_pump_circuit("unit", unit)
    assert circuit.circuit_amps == amps
    assert (circuit.breaker_low_amps, circuit.breaker_high_amps) == (low, high)


def test_every_row_has_a_source_and_says_how_it_is_known() -> None:
    for name in ("circuits.csv", "sizing_rules.csv"):
        for row in rows(name):
            assert row["source"]
            assert row["known"] in ("read in listings", "from memory", "common practice")


def test_a_furnace_goes_and_a_head_comes(sized: Sizing) -> None:
    electricity = sized.choice("One head high up").electricity
    assert electricity is not None
    (freed,), (added,) = electricity.freed, electricity.added
    assert freed.kw == 15.0
    assert freed.circuit_amps == electricity.freed_circuit_amps == pytest.approx(78.125)
    assert added.circuit_amps == electricity.added_circuit_amps == 9.0
    assert electricity.peak_after_kw < electricity.peak_before_kw


def test_what_stays_neither_goes_nor_comes(sized: Sizing) -> None:
    electricity = sized.choice("Head and furnace").electricity
    assert electricity is not None
    assert electricity.freed == ()
    assert len(electricity.added) == 1


def test_today_has_no_before_and_after(sized: Sizing) -> None:
    assert sized.choice("Today").electricity is None


def test_an_outdoor_unit_with_several_heads_is_one_circuit() -> None:
    heads = (Head("open room", 3000.0), Head("loft", 2000.0))
    unit = replace(kbtu(24, "multi-zone standard"), heads=heads)
    (circuit,) = circuits_of(System("ductless heat pump", heads=(unit,)))
    assert "open room, loft" in circuit.machine
