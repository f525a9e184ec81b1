"""A year of hours summed up in one pass: by day, and as single figures."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from costcompare.physics.compiled import compiled_whole
from costcompare.simulation.network import Record

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]
Flags = NDArray[np.bool_]

W_PER_KW = 1000.0

PEAK, DELIVERED, PUT_IN, UNMET, IMBALANCE, TURNOVER = range(6)
"""Places of the figures of :func:`sum_up`"""
FIGURES = 6


@compiled_whole
def sum_up(
    flows: tuple[Floats, ...],
    record: Record,
    day: Ints,
    daily: Floats,
    electricity: Floats,
    figures: Floats,
) -> None:
    """Add up ``flows`` by day and what the record holds.

    ``flows`` [W] by hour, the second a part of the first; ``daily`` gets their sums [kWh], shape
    (flows, days), ``electricity`` the sum of all but the second [kWh] by hour; ``figures`` its
    highest hour [kW], the heat out of the registers and into the ducts over the hours of heating
    [kWh], the heat that was missing in all rooms [kWh], and absolute imbalance and heat put in [W].
    """
    for h in range(day.shape[0]):
        together = 0.0
        for k in range(len(flows)):
            energy = flows[k][h] / W_PER_KW
            daily[k, day[h]] += energy
            if k != 1:
                together += energy
        electricity[h] = together
        figures[PEAK] = max(figures[PEAK], together)
        heats = record.main[h] > 0.0 or record.strips[h] > 0.0
        for j in range(record.emitted.shape[1]):
            heats = heats or record.emitted[h, j] > 0.0
        if heats:
            delivered = record.duct[h, 0] / W_PER_KW
            lost = record.duct[h, 1] + record.duct[h, 2] + record.duct[h, 3]
            figures[DELIVERED] += delivered
            figures[PUT_IN] += delivered + lost / W_PER_KW
        for room in range(record.unmet.shape[1]):
            figures[UNMET] += record.unmet[h, room] / W_PER_KW
        figures[IMBALANCE] += abs(record.imbalance[h])
        figures[TURNOVER] += abs(record.turnover[h])


@compiled_whole
def count_hours(
    wanted: Flags, lowest: Floats, highest: Floats, air: Floats, clock: Ints, counts: Ints
) -> None:
    """Add wanted, cold and hot hours of each room to ``counts``, shape (3, rooms)."""
    for h in range(clock.shape[0]):
        hour = clock[h]
        for room in range(wanted.shape[1]):
            if wanted[hour, room]:
                counts[0, room] += 1
                if air[h, room] < lowest[hour, room]:
                    counts[1, room] += 1
                elif air[h, room] > highest[hour, room]:
                    counts[2, room] += 1
