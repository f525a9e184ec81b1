"""A machine's map over a year of outdoor temperatures, and what it draws at a load."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from costcompare.equipment.corrections import Installation, installation_factors, room_factors
from costcompare.equipment.machine import Array, Machine, celsius, on_line
from costcompare.equipment.part_load import frost_factors, part_load_power

FIELD_FACTOR = 0.88
"""Seasonal efficiency in homes over that of the map: range 0.80 to 0.95 (judgement, held
against published field studies); shown to the user as an assumption"""
HOLD_ABOVE = celsius(62.0)
"""[degC] the 47-17 F slope continues to 62 F and holds there (judgement)"""
COOLING_HOLD_BELOW = celsius(67.0)
COOLING_POWER_FLOOR = 0.6
"""Cooling power never falls below this share of the power at 82 F (from memory)"""
SENSIBLE_SHARE = 0.8
"""Share of cooling that lowers the temperature; the rest dries the air (judgement)"""
KELVIN = 273.15
DUST = 1e-6
"""[K] that a temperature read from text may be off"""
CONDENSING, EVAPORATING = 5.0, 3.0
"""[K] above the room and below the outdoor air: the least that a coil needs (judgement)"""
OF_IDEAL = 0.75
"""No machine comes nearer than this to the COP between these two temperatures (judgement: an
ideal cycle with a real refrigerant stays above it, no published point comes near)"""
COLD_SUPPLY, COLD_BELOW, OF_IDEAL_COLD = celsius(105.0), 10.0 / 1.8, 0.5
"""Below the coldest point: at most half of the ideal COP between supply air of 105 F [degC] and
10 F [K] below outdoors (judgement)"""


@dataclass(frozen=True)
class Capability:
    """What a machine can do in each hour, frost included, shape (hours, 3)."""

    capacity: Array
    """[W] minimum, rated, maximum; all 0 where it is cut out"""
    power: Array
    """[W], in the field: the field factor is in"""
    cycling: float
    cut_out: NDArray[np.bool_]
    """Hours in which it is off because it is too cold for it, shape (hours,)"""
    not_rated: NDArray[np.bool_]
    """Hours colder than anything that is known of it: nothing is given in them"""

    @property
    def most(self) -> Array:
        """[W] what can be asked for"""
        return self.capacity[:, 2]

    @property
    def least(self) -> Array:
        """[W] below which it cycles"""
        return self.capacity[:, 0]


@dataclass(frozen=True)
class OutdoorYear:
    """What a machine's map says of each hour's outdoor air, whatever room it warms."""

    outdoor: Array
    """[degC], shape (hours,)"""
    capacity: Array
    """[W] in a room of 70 F, frost included, shape (hours, 3)"""
    power: Array
    """[W]"""
    cut_out: NDArray[np.bool_]
    """As in :class:`Capability`"""
    not_rated: NDArray[np.bool_]


def heating_year(
    unit: Machine,
    outdoor: Array,
    relative_humidity: Array,
    *,
    room: Array | float | None = None,
    installed: Installation | None = None,
    field_factor: float = FIELD_FACTOR,
) -> Capability:
    """Heating capability for each hour.

    ``outdoor`` [degC], ``relative_humidity`` 0 to 1 (nan where unknown), shape (hours,);
    ``room`` [degC] the air that the machine warms, 70 F where it is None. Capacity and power
    are each linear between anchors. Below the cut-out, and where nothing is known of it
    any more, the machine gives nothing.
    """
    year = outdoor_year(unit, outdoor, relative_humidity)
    return in_a_home(unit, year, room=room, installed=installed, field_factor=field_factor)


def outdoor_year(unit: Machine, outdoor: Array, relative_humidity: Array) -> OutdoorYear:
    """The part of :func:`heating_year` that is the same for every room."""
    held = np.clip(outdoor, unit.rated_down_to, max(HOLD_ABOVE, unit.heating_temperature[-1]))
    capacity = np.maximum(on_line(held, unit.heating_temperature, unit.heating_capacity), 1.0)
    power = np.maximum(on_line(held, unit.heating_temperature, unit.heating_power), 0.1)
    capacity[:, 1] = np.minimum(capacity[:, 1], capacity[:, 2])
    capacity[:, 0] = np.minimum(capacity[:, 0], capacity[:, 1])
    if unit.frost:
        on_capacity, on_power = frost_factors(outdoor, relative_humidity)
        capacity, power = capacity * on_capacity[:, None], power * on_power[:, None]
    not_rated = outdoor < unit.rated_down_to - DUST
    cut_out = _stopped(outdoor, unit.cut_out, unit.cut_in)
    for shared in (capacity, power, cut_out, not_rated):
        shared.setflags(write=False)  # homes with the same machine hold them at once
    return OutdoorYear(outdoor, capacity, power, cut_out, not_rated)


def in_a_home(
    unit: Machine,
    year: OutdoorYear,
    *,
    room: Array | float | None = None,
    installed: Installation | None = None,
    field_factor: float = FIELD_FACTOR,
) -> Capability:
    """The part of :func:`heating_year` that hangs on the room and on how the machine stands."""
    indoors = np.broadcast_to(celsius(70.0) if room is None else room, year.outdoor.shape)
    warm_capacity, warm_power = room_factors(indoors)
    place_capacity, place_power = installation_factors(installed or Installation(), heating=True)
    capacity = year.capacity * (warm_capacity * place_capacity)[:, None]
    power = year.power * (warm_power * place_power)[:, None]
    power = _possible(unit, year.outdoor, indoors, (capacity, power))
    capacity[year.cut_out | year.not_rated] = 0.0
    return Capability(capacity, power / field_factor, unit.cycling, year.cut_out, year.not_rated)


def _possible(unit: Machine, outdoor: Array, room: Array, drawn: tuple[Array, Array]) -> Array:
    """Power [W] that physics allows at a capacity: no COP above the ideal, none below 1.

    Power never falls with the speed, so that a larger load never takes less.
    """
    capacity, power = drawn
    lift = np.maximum(room + CONDENSING - outdoor + EVAPORATING, 1.0)
    best = OF_IDEAL * (room + CONDENSING + KELVIN) / lift
    cold = np.maximum(COLD_SUPPLY - outdoor + COLD_BELOW, 1.0)
    best_cold = OF_IDEAL_COLD * (COLD_SUPPLY + KELVIN) / cold
    best = np.where(outdoor < unit.heating_temperature[0], np.minimum(best, best_cold), best)
    power = np.maximum(power, capacity / best[:, None])
    for faster in range(1, power.shape[1]):  # numpy's running maximum is slow along short rows
        np.maximum(power[:, faster], power[:, faster - 1], out=power[:, faster])
    return np.minimum(power, capacity, out=power)


def _stopped(outdoor: Array, cut_out: float, cut_in: float) -> NDArray[np.bool_]:
    """Hours in which a machine is cut out: from below ``cut_out`` until ``cut_in`` is reached."""
    off, on = outdoor < cut_out, outdoor >= max(cut_in, cut_out)
    decides = off | on
    last = np.maximum.accumulate(np.where(decides, np.arange(len(outdoor)), -1))
    # Before the first hour that decides it runs.
    result: NDArray[np.bool_] = np.where(last >= 0, off[np.maximum(last, 0)], False)
    return result


def cooling_year(
    unit: Machine,
    outdoor: Array,
    *,
    installed: Installation | None = None,
    field_factor: float = FIELD_FACTOR,
) -> Capability:
    """Sensible cooling capability for each hour; ``outdoor`` [degC], shape (hours,)."""
    held = np.maximum(outdoor, COOLING_HOLD_BELOW)
    capacity = np.maximum(on_line(held, unit.cooling_temperature, unit.cooling_capacity), 1.0)
    power = on_line(held, unit.cooling_temperature, unit.cooling_power)
    power = np.maximum(power, COOLING_POWER_FLOOR * unit.cooling_power[0])
    place_capacity, place_power = installation_factors(installed or Installation(), heating=False)
    capacity = np.maximum.accumulate(capacity * SENSIBLE_SHARE * place_capacity, axis=1)
    power = np.maximum.accumulate(power * place_power / field_factor, axis=1)
    never = np.zeros(outdoor.shape, dtype=bool)
    return Capability(capacity, power, unit.cycling, never, never)


def draw(capability: Capability, load: Array) -> Array:
    """Compressor (and head fan) power [W] at a load [W], shape (hours,).

    A load above what the machine can give raises ValueError: the simulation bounds it.
    """
    if np.any(load > capability.most * (1.0 + 1e-9) + 1e-6):
        raise ValueError("a load above the machine's maximum was asked for")
    return part_load_power(load, capability.capacity, capability.power, capability.cycling)
