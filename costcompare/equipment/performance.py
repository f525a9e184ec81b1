"""A machine's map over a year of outdoor temperatures, and what it draws at a load."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from costcompare.equipment.classes import Machine, celsius
from costcompare.equipment.part_load import frost_factors, part_load_power

Array = NDArray[np.float64]

FIELD_FACTOR = 0.88
"""Seasonal efficiency in homes over that of the map: range 0.80 to 0.95 (judgement, held
against published field studies); shown to the user as an assumption"""
HOLD_ABOVE = celsius(62.0)
"""[degC] the 47-17 F slope continues to 62 F and holds there (judgement)"""
NOT_RATED_BELOW = 15.0 / 1.8
"""[K] below the coldest anchor the map is not extended further (judgement)"""
COOLING_HOLD_BELOW = celsius(67.0)
COOLING_POWER_FLOOR = 0.6
"""Cooling power never falls below this share of the power at 82 F (from memory)"""
SENSIBLE_SHARE = 0.8
"""Share of cooling that lowers the temperature; the rest dries the air (judgement)"""


@dataclass(frozen=True)
class Capability:
    """What a machine can do in each hour, frost included, shape (hours, 3)."""

    capacity: Array
    """[W] minimum, rated, maximum; all 0 where it is cut out"""
    power: Array
    """[W], in the field: the field factor is in"""
    cycling: float

    @property
    def most(self) -> Array:
        """[W] what can be asked for"""
        return self.capacity[:, 2]

    @property
    def least(self) -> Array:
        """[W] below which it cycles"""
        return self.capacity[:, 0]


def _at(temperature: Array, anchors: Array, values: Array) -> Array:
    """Piecewise linear in temperature, continued with the end slopes; shape (hours, 3)."""
    segment = np.clip(np.searchsorted(anchors, temperature) - 1, 0, len(anchors) - 2)
    start, end = anchors[segment], anchors[segment + 1]
    position = ((temperature - start) / (end - start))[:, None]
    result: Array = values[segment] + position * (values[segment + 1] - values[segment])
    return result


def heating_year(
    unit: Machine, outdoor: Array, relative_humidity: Array, *, field_factor: float = FIELD_FACTOR
) -> Capability:
    """Heating capability for each hour.

    ``outdoor`` [degC], ``relative_humidity`` 0 to 1, shape (hours,). Capacity and power
    are each linear between anchors. Below the cut-out, and more than 15 F below the
    coldest anchor, the machine gives nothing.
    """
    coldest = unit.heating_temperature[0]
    held = np.clip(outdoor, coldest - NOT_RATED_BELOW, HOLD_ABOVE)
    capacity = np.maximum(_at(held, unit.heating_temperature, unit.heating_capacity), 1.0)
    power = np.maximum(_at(held, unit.heating_temperature, unit.heating_power), 0.1)
    capacity[:, 1] = np.minimum(capacity[:, 1], capacity[:, 2])
    capacity[:, 0] = np.minimum(capacity[:, 0], capacity[:, 1])
    on_capacity, on_power = frost_factors(outdoor, relative_humidity)
    capacity *= on_capacity[:, None]
    power *= on_power[:, None]
    power = np.minimum(power, capacity)  # COP never below 1
    off = (outdoor < unit.cut_out) | (outdoor < coldest - NOT_RATED_BELOW)
    capacity[off] = 0.0
    return Capability(capacity, power / field_factor, unit.cycling)


def cooling_year(
    unit: Machine, outdoor: Array, *, field_factor: float = FIELD_FACTOR
) -> Capability:
    """Sensible cooling capability for each hour; ``outdoor`` [degC], shape (hours,)."""
    held = np.maximum(outdoor, COOLING_HOLD_BELOW)
    capacity = np.maximum(_at(held, unit.cooling_temperature, unit.cooling_capacity), 1.0)
    power = _at(held, unit.cooling_temperature, unit.cooling_power)
    power = np.maximum(power, COOLING_POWER_FLOOR * unit.cooling_power[0])
    return Capability(capacity * SENSIBLE_SHARE, power / field_factor, unit.cycling)


def draw(capability: Capability, load: Array) -> Array:
    """Compressor (and head fan) power [W] at a load [W], shape (hours,).

    A load above what the machine can give raises ValueError: the simulation bounds it.
    """
    if np.any(load > capability.most * (1.0 + 1e-9) + 1e-6):
        raise ValueError("a load above the machine's maximum was asked for")
    return part_load_power(load, capability.capacity, capability.power, capability.cycling)
