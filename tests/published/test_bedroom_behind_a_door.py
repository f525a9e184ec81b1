"""A bedroom without heat of its own, its door open or closed, against worked-out figures.

Main room held at 20 degC, bedroom with 60 W of gains, a partition of 25 W/K and a doorway
of 0.81 m by 2.03 m (Brown and Solvason 1962, discharge 0.6). The figures were computed by
a second hand from those equations; agreement asked for: 0.3 K.
"""

from __future__ import annotations

import numpy as np
import pytest

from costcompare.case.facts import Layer
from costcompare.physics.air import AIR_HEAT_CAPACITY
from costcompare.simulation.chains import ChainBuilder, Port, reduce
from costcompare.simulation.loop import run_year
from costcompare.simulation.network import (
    WALLS_AND_GLASS,
    Air,
    Doors,
    Drive,
    Emitters,
    Model,
    Plant,
    Record,
    Year,
)
from costcompare.simulation.plant import no_ducts
from costcompare.simulation.state import memory

HOURS = 400
MAIN, BEDROOM = 0, 1


def bedroom(conductance: float, outdoor: float, width: float) -> tuple[float, float]:
    """Steady bedroom temperature [degC] and the largest imbalance [W]."""
    builder = ChainBuilder(3600.0)
    out = builder.boundary(np.full(HOURS, outdoor))
    for room, value in ((MAIN, 100.0), (BEDROOM, conductance)):
        ends = (
            Port(boundary=out, boundary_conductance=3.0 * value),
            Port(air=room, air_conductance=3.0 * value),
        )
        builder.add((Layer(1.0 / (3.0 * value)),), 1.0, ends, WALLS_AND_GLASS)
    chains = builder.arrays(2)
    storage = np.array([50.0, 20.0])
    no_links = np.zeros(0, dtype=np.uint64)
    air = Air(
        rooms=2,
        nodes=2,
        heat_capacity=AIR_HEAT_CAPACITY,
        storage=storage,
        leak_coefficient=0.0,
        leak_exponent=0.65,
        stack=0.0,
        wind=0.0,
        wind_factor=0.0,
        constant_flow=0.0,
        share_outdoors=np.array([0.5, 0.5]),
        share_space=np.zeros(2),
        space_below=np.full(2, -1, dtype=np.int64),
        share_out=np.array([0.5, 0.5]),
        link_from=no_links,
        link_to=no_links,
        airing_flow=np.zeros(2),
    )
    doors = Doors(
        first=np.array([MAIN], dtype=np.uint64),
        second=np.array([BEDROOM], dtype=np.uint64),
        width=np.array([width]),
        height=np.array([2.03]),
        fixed=np.zeros(1),
        stairs=np.zeros(1, dtype=np.int64),
    )
    ducts = no_ducts(2, MAIN)
    ones = np.ones(HOURS)
    plant = Plant(0 * ones, 0 * ones, 0 * ones, 0 * ones, 0 * ones, 20 * ones, 90 * ones)
    emitters = Emitters(
        room=np.array([MAIN], dtype=np.uint64),
        group=np.array([-1], dtype=np.int64),
        bleed=np.zeros(1),
        group_heat=np.zeros((HOURS, 0)),
        group_cool=np.zeros((HOURS, 0)),
        heat_most=np.full((HOURS, 1), 1e6),
        cool_most=np.zeros((HOURS, 1)),
        setpoint=np.full((HOURS, 1), 20.0),
        cooling_setpoint=np.full((HOURS, 1), 90.0),
    )
    year = Year(
        order=np.arange(HOURS, dtype=np.uint64),
        recorded_from=0,
        outdoor=outdoor * ones,
        wind=0 * ones,
        brought=np.ascontiguousarray(np.stack(builder.columns, axis=1)),
        mixtures=np.eye(len(builder.columns)),
        vent_flow=np.zeros((HOURS, 0)),
        inside=np.full((HOURS, 1), 60.0),
        convective=np.array([[0.0, 1.0]]),
        radiant=np.zeros((1, 2)),
        shining=np.zeros((HOURS, 4)),
        glass=np.zeros((4, 2)),
        extraction=np.zeros((HOURS, 2)),
        airing_above=90.0,
    )
    record = Record(
        air=np.zeros((HOURS, 2)),
        emitted=np.zeros((HOURS, 1)),
        main=np.zeros(HOURS),
        strips=np.zeros(HOURS),
        blower=np.zeros(HOURS),
        run=np.zeros(HOURS),
        duct=np.zeros((HOURS, 6)),
        load=np.zeros((HOURS, 4)),
        unmet=np.zeros((HOURS, 2)),
        imbalance=np.zeros(HOURS),
        turnover=np.zeros(HOURS),
    )
    partition = [(MAIN, BEDROOM, 25.0)]
    model = Model(chains, reduce(chains, storage, partition, 2), air, doors, ducts)
    drive = Drive(plant, emitters, year)
    run_year(model, drive, record, memory(model, drive))
    return float(record.air[-1, BEDROOM]), float(np.abs(record.imbalance).max())


@pytest.mark.parametrize(
    ("conductance", "outdoor", "opened", "closed"),
    [
        (15.0, 5.0, 18.9, 15.9),
        (15.0, -5.0, 18.2, 12.1),
        (25.0, 5.0, 18.3, 13.7),
        (25.0, -5.0, 17.4, 8.7),
        (40.0, 5.0, 17.6, 11.7),
        (40.0, -5.0, 16.4, 5.5),
    ],
)
def test_bedroom_table(conductance: float, outdoor: float, opened: float, closed: float) -> None:
    with_door_open, first = bedroom(conductance, outdoor, 0.81)
    with_door_closed, second = bedroom(conductance, outdoor, 0.0)
    assert with_door_open == pytest.approx(opened, abs=0.3)
    assert with_door_closed == pytest.approx(closed, abs=0.3)
    assert max(first, second) < 1e-6
