"""Generic classes of heat pump, and the performance map of one machine of a class.

The tables lie in costcompare/data, each row with its source. No row is a brand.
"""

from __future__ import annotations

from functools import cache

import numpy as np

from costcompare.equipment.machine import (
    EXTENDED,
    SPEEDS,
    W_PER_KBTU_H,
    Array,
    Machine,
    celsius,
    rows,
)

COOLING_AT_82_F = 0.94
"""Capacity at 95 F over capacity at 82 F (RESNET HERS Addendum 82 population mean)"""
COOLING_RATED_OVER_MAX = 0.934
COOLING_EIR_RATED_OVER_MAX = 0.928
COOLING_MIN_95_OVER_82 = 0.948
COOLING_EIR_MIN_95_OVER_82 = 1.315
"""Population means of the same source"""
COOLING_MIN_SHARE = 0.25
"""Minimum cooling over nominal at 82 F (judgement)"""


@cache
def _classes() -> dict[str, dict[str, str]]:
    return {row["class"]: row for row in rows("equipment_classes.csv")}


def class_names() -> tuple[str, ...]:
    """The classes that can be simulated."""
    return tuple(_classes())


def rated_heating(nominal: float, *, ducted: bool, multi: bool = False) -> float:
    """Rated heating at 47 F [W] of a machine of nominal cooling [W], by the size table.

    ``multi``: an outdoor unit for several heads.
    """
    kind = "multi" if multi else "yes" if ducted else "no"
    listed = [r for r in rows("equipment_sizes.csv") if r["ducted"] == kind]
    sizes = np.array([float(r["nominal_cooling_kbtu_h"]) for r in listed]) * W_PER_KBTU_H
    rated = np.array([float(r["rated_heating_47_f_kbtu_h"]) for r in listed]) * W_PER_KBTU_H
    if nominal <= sizes[0]:
        return float(nominal * rated[0] / sizes[0])
    if nominal >= sizes[-1]:
        return float(nominal * rated[-1] / sizes[-1])
    return float(np.interp(nominal, sizes, rated))


def ducted_class(equipment_class: str) -> bool:
    """Whether machines of a class stand on ducts; KeyError for one that is not in the table."""
    return _classes()[equipment_class]["ducted"] == "yes"


def single_speed(equipment_class: str) -> bool:
    """Whether machines of a class know one speed alone."""
    return not _classes()[equipment_class]["eer_82_f_min"]


def machine(
    equipment_class: str,
    nominal: float,
    *,
    cut_out: float | None = None,
    cut_in: float | None = None,
) -> Machine:
    """The machine of a class at a nominal cooling capacity [W].

    ``cut_out`` and ``cut_in`` [degC] stand in for those of the class. Raises KeyError for a
    class that is not in the table.
    """
    row = _classes()[equipment_class]
    ducted = row["ducted"] == "yes"
    temperature, capacity, power = _heating_anchors(
        equipment_class,
        rated_heating(nominal, ducted=ducted, multi=equipment_class.startswith("multi-zone")),
    )
    ends = celsius(float(row["cut_out_f"])) if cut_out is None else cut_out
    cold, cooling_capacity, cooling_power = _cooling_anchors(row, nominal)
    return Machine(
        equipment_class=equipment_class,
        ducted=ducted,
        nominal=nominal,
        heating_temperature=temperature,
        heating_capacity=capacity,
        heating_power=power,
        cooling_temperature=cold,
        cooling_capacity=cooling_capacity,
        cooling_power=cooling_power,
        cycling=float(row["cycling_coefficient"]),
        cut_out=ends,
        off_power=float(row["off_w"]),
        crankcase_power=float(row["crankcase_w"]),
        pan_power=float(row["pan_w"]),
        fan_power=float(row["fan_w_per_nominal_w"] or 0.0) * nominal,
        fan_per_airflow=float(row["fan_w_per_cfm"] or 0.0) / 4.719474e-4,
        rated_down_to=float(temperature[0]) - EXTENDED,
        cut_in=max(ends, cut_in if cut_in is not None else ends),
    )


def _heating_anchors(equipment_class: str, rated: float) -> tuple[Array, Array, Array]:
    listed = [r for r in rows("equipment_points.csv") if r["class"] == equipment_class]
    anchors = sorted({float(r["temperature_f"]) for r in listed})
    capacity = np.zeros((len(anchors), 3))
    power = np.zeros((len(anchors), 3))
    for number, anchor in enumerate(anchors):
        by_speed = {r["speed"]: r for r in listed if float(r["temperature_f"]) == anchor}
        for column, speed in enumerate(SPEEDS):
            row = by_speed.get(speed, by_speed["rated"])
            capacity[number, column] = rated * float(row["capacity_ratio"])
            power[number, column] = capacity[number, column] / float(row["cop"])
    return np.array([celsius(a) for a in anchors]), capacity, power


def _cooling_anchors(row: dict[str, str], nominal: float) -> tuple[Array, Array, Array]:
    eer = 3.412142
    capacity_95 = nominal
    capacity_82 = nominal / COOLING_AT_82_F
    cop_95, cop_82 = float(row["eer_95_f"]) / eer, float(row["eer_82_f"]) / eer
    rated = np.array([capacity_82, capacity_95])
    rated_power = np.array([capacity_82 / cop_82, capacity_95 / cop_95])
    if row["eer_82_f_min"]:
        cop_min = float(row["eer_82_f_min"]) / eer
        least = COOLING_MIN_SHARE * nominal * np.array([1.0, COOLING_MIN_95_OVER_82])
        least_power = least / np.array([cop_min, cop_min / COOLING_EIR_MIN_95_OVER_82])
        most = rated / COOLING_RATED_OVER_MAX
        most_power = rated_power / COOLING_RATED_OVER_MAX / COOLING_EIR_RATED_OVER_MAX
    else:
        least, least_power, most, most_power = rated, rated_power, rated, rated_power
    temperature = np.array([celsius(82.0), celsius(95.0)])
    capacity = np.stack([least, rated, most], axis=1)
    power = np.stack([least_power, rated_power, most_power], axis=1)
    return temperature, capacity, power
