"""The air path of a duct system, and the steady efficiencies of the standard method.

Equations: ASHRAE Standard 152, heating (from memory; derived again by following the air
from the return grille to the register). Leaks lie at the register end of the supply and
at the air-handler end of the return. Fractions are of the blower's airflow.
"""

from __future__ import annotations

import math
from typing import NamedTuple

from costcompare.physics.compiled import compiled
from costcompare.physics.lanes import any_of, where


class AirPath(NamedTuple):
    """Temperatures along the duct system [degC]."""

    return_plenum: float
    """Before the heater, after return conduction and return leak"""
    supply_plenum: float
    """After the heater"""
    register: float
    """After supply conduction"""


@compiled
def conduction_factor(area: float, heat_capacity: float, flow: float, resistance: float) -> float:
    """Share of a temperature difference that survives a duct, exp(-A/(k Q R)).

    ``area`` [m2], ``heat_capacity`` of air [J/(m3 K)], ``flow`` [m3/s], ``resistance``
    [m2 K/W]; 1 where the duct has no area.
    """
    felt = (area > 0.0) & (flow > 0.0)
    kept = 1.0
    if any_of(felt):
        kept = where(felt, math.exp(-area / (heat_capacity * flow * resistance)), 1.0)
    return kept


@compiled
def air_path(
    room: float,
    around: float,
    rise: float,
    kept_return: float,
    return_factor: float,
    supply_factor: float,
) -> AirPath:
    """Follow the air: temperatures of plenums and register [degC].

    ``room`` and ``around`` (the ducts) [degC], ``rise`` in the heater [K], ``kept_return``
    the share of the flow that comes through the return grille, the two conduction factors.
    """
    before_leak = around + (room - around) * return_factor
    return_plenum = kept_return * before_leak + (1.0 - kept_return) * around
    supply_plenum = return_plenum + rise
    register = around + (supply_plenum - around) * supply_factor
    return AirPath(return_plenum, supply_plenum, register)


def delivery_effectiveness(  # noqa: PLR0913 - the list of inputs is the standard's
    *,
    airflow: float,
    heat_output: float,
    supply_leakage: float,
    return_leakage: float,
    supply_area: float,
    return_area: float,
    resistance: float,
    room: float,
    around: float,
    heat_capacity: float = 1207.19,
) -> float:
    """Heat that reaches the rooms over heat put into the air, the system running.

    ``airflow`` [m3/s], ``heat_output`` [W], leakages as shares of the airflow, areas [m2],
    ``resistance`` [m2 K/W] (``math.inf`` for ducts without conduction), ``room`` and
    ``around`` the ducts [degC], ``heat_capacity`` of air [J/(m3 K)].

    Source: ASHRAE Standard 152, delivery effectiveness for heating (from memory).
    """
    supply_factor = conduction_factor(supply_area, heat_capacity, airflow, resistance)
    return_factor = conduction_factor(return_area, heat_capacity, airflow, resistance)
    rise = heat_output / (heat_capacity * airflow)
    path = air_path(room, around, rise, 1.0 - return_leakage, return_factor, supply_factor)
    return (1.0 - supply_leakage) * (path.register - room) / rise


def regained_effectiveness(
    effectiveness: float,
    *,
    regain: float,
    return_leakage: float,
    return_factor: float,
    rise: float,
    difference: float,
) -> float:
    """Delivery effectiveness with what the space round the ducts gives back.

    ``regain`` is the share of lost heat that comes back (the same for supply and return),
    ``rise`` in the heater [K], ``difference`` rooms to the space round the return [K].

    Source: ASHRAE Standard 152 (from memory), the bracket for equal regain factors.
    """
    bracket = regain - regain - return_factor * ((1.0 - return_leakage) * regain - regain)
    return effectiveness + regain * (1.0 - effectiveness) - bracket * difference / rise


def load_factor(
    *,
    inflow_on: float,
    inflow_off: float,
    heat_output: float,
    effectiveness: float,
    difference: float,
    heat_capacity: float = 1207.19,
) -> float:
    """Load with the blower off over load with it on, from the air it pulls in.

    Inflows [m3/s], ``heat_output`` [W], ``effectiveness`` with regain, ``difference``
    rooms to outdoors [K]. Derived from the heat balance while running.
    """
    extra = heat_capacity * (inflow_on - inflow_off) * difference
    return 1.0 - extra / (heat_output * effectiveness)
