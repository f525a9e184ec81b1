"""How the points of machines usually lie to each other: ratios of a population of listings.

The table equipment_population.csv gives one row a ratio: the capacity of a point over that of
another, and the same of the input over the output (1/COP).
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import NamedTuple, cast

import numpy as np

from costcompare.equipment.machine import SPEEDS, Array, Mode, Speed, celsius, on_line, rows

REFERENCE: dict[Mode, float] = {"heating": celsius(47.0), "cooling": celsius(95.0)}
"""[degC] at which the rated point counts as 1"""


class Place(NamedTuple):
    """Which point of a map."""

    outdoor: float
    """[degC]"""
    speed: Speed


@dataclass(frozen=True)
class Population:
    """The usual map, its rated point at the reference temperature counted as 1."""

    temperature: Array
    """[degC] rising, shape (n,)"""
    capacity: Array
    """Shape (n, 3): minimum, rated, maximum; for one speed all the same"""
    power: Array
    """Over that of the rated point at the reference temperature, shape (n, 3)"""

    def at(self, outdoor: float) -> tuple[Array, Array]:
        """Capacity and power at a temperature [degC], each shape (3,)."""
        there = np.array([outdoor])
        return (
            np.maximum(on_line(there, self.temperature, self.capacity)[0], 0.01),
            np.maximum(on_line(there, self.temperature, self.power)[0], 0.01),
        )


@cache
def population(mode: Mode, *, single_speed: bool) -> Population:
    """The population of machines with one speed or with many."""
    kind = "single" if single_speed else "variable"
    ratios = [
        row
        for row in rows("equipment_population.csv")
        if row["kind"] == kind and row["mode"] == mode
    ]
    known: dict[Place, tuple[float, float]] = {Place(REFERENCE[mode], "rated"): (1.0, 1.0)}
    while len(known) < len(ratios) + 1:
        for row in ratios:
            _spread(row, known)
    temperatures = sorted({place.outdoor for place in known})
    shape = (len(temperatures), len(SPEEDS))
    capacity, power = np.zeros(shape), np.zeros(shape)
    for number, outdoor in enumerate(temperatures):
        for column, speed in enumerate(SPEEDS):
            place = Place(outdoor, "rated" if single_speed else speed)
            output, input_per_output = known[place]
            capacity[number, column], power[number, column] = output, output * input_per_output
    return Population(np.array(temperatures), capacity, power)


def _spread(row: dict[str, str], known: dict[Place, tuple[float, float]]) -> None:
    """Carry what is known of one end of a ratio to the other end."""
    here = Place(celsius(float(row["at_f"])), cast(Speed, row["speed"]))
    base = Place(celsius(float(row["base_f"])), cast(Speed, row["base_speed"]))
    capacity, power = float(row["capacity_ratio"]), float(row["input_ratio"])
    if base in known and here not in known:
        known[here] = (known[base][0] * capacity, known[base][1] * power)
    elif here in known and base not in known:
        known[base] = (known[here][0] / capacity, known[here][1] / power)
