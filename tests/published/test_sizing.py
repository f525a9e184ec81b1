"""Sizing against hand calculation, furnace listings, and rules of thumb of the trade.

Hand calculation: a room of three plain surfaces at constant cold; agreement within 0.01 %.
Furnace listings (read): 41.7 A per 10 kW at 240 V; conductors for 125 % of the current:
52.1, 78.1, 104.1 and 130.3 A for 10, 15, 20 and 25 kW; agreement within 0.1 A. A nameplate
of 20 kW names two circuits of 60 A; heating loads above 48 A are subdivided (National
Electrical Code 424.22).
Design heat loss of existing wood-frame houses: 10 to 22 Btu/h a square foot, leaky or cold
ones to 30 (computed for twelve houses by a second hand; weak evidence).
Facts of the trade on a made-up home: common practice, no source.
"""

from __future__ import annotations

import pytest

from costcompare.case import case_from_document, example_names
from costcompare.sizing import RoomLoad, Sizing, size
from costcompare.sizing.circuits import furnace_amps, resistance_circuit
from tests.simulation.test_degree_hours import conductance_by_hand, one_room
from tests.sizing.homes import example, loft


def made_up() -> Sizing:
    return loft()[0]


def room(name: str) -> RoomLoad:
    return next(one for one in made_up().loads[0].rooms if one.name == name)


def test_one_room_loses_its_conductance_times_the_difference() -> None:
    document = one_room() | {
        "site": {"latitude": 55.3, "longitude": -160.5, "design_temperature": "-4 F"}
    }
    sized = size(case_from_document(document))
    expected = conductance_by_hand() * (20.0 - -20.0)
    assert sized.loads[0].heat_w == pytest.approx(expected, rel=1e-4)
    assert sized.loads[0].rooms[0].heat_btu_h == pytest.approx(3.412142 * expected, rel=1e-4)


@pytest.mark.parametrize(
    ("kilowatts", "continuous", "circuits"),
    [(10, 52.1, 1), (15, 78.1, 2), (20, 104.1, 2), (25, 130.3, 3)],
)
def test_furnace_amperes(kilowatts: int, continuous: float, circuits: int) -> None:
    assert furnace_amps(10_000.0) == pytest.approx(41.7, abs=0.05)
    circuit = resistance_circuit("furnace", 1000.0 * kilowatts)
    assert circuit.circuit_amps == pytest.approx(continuous, abs=0.1)
    assert circuit.parts == circuits


@pytest.mark.parametrize("name", example_names())
def test_houses_lose_what_houses_lose(name: str) -> None:
    for load in example(name)[0].loads:
        assert 10.0 <= load.heat_btu_h_per_ft2 <= 30.0


def test_the_smallest_head_is_too_big_for_a_small_bedroom() -> None:
    assert room("small bedroom").smallest_head_is_too_big
    assert room("closed bedroom").smallest_head_is_too_big
    assert not room("open room").smallest_head_is_too_big


def test_a_loft_over_a_heated_open_room_wants_cooling_not_heat() -> None:
    loft = room("loft")
    assert loft.below_by_stairs == "open room"
    assert loft.heated_from_below
    assert loft.wants_cooling_not_heat
    assert loft.without_own_heat_degf > 60.0
    assert loft.cooling_btu_h / loft.floor_area_ft2 > 1.2 * (
        room("kitchen").cooling_btu_h / room("kitchen").floor_area_ft2
    )


def test_a_bedroom_behind_a_closed_door_needs_heat_of_its_own() -> None:
    closed, opened = room("closed bedroom"), room("small bedroom")
    assert not closed.heated_from_below
    assert closed.without_own_heat_degf < opened.without_own_heat_degf - 15.0


def test_a_head_high_up_is_flagged() -> None:
    """Its bottom at 10 ft: above 9 ft it is too high."""
    (head,) = (fit for fit in made_up().choice("One head high up").machines if fit.kind == "head")
    assert head.mounting_height_ft == pytest.approx(10.0)
    assert head.is_mounted_high
    assert head.sensor_reads_over_degf is not None
    assert 2.0 < head.sensor_reads_over_degf < 5.0
