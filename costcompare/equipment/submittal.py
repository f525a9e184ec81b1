"""The map of a machine from the points of its submittal sheet.

A sheet gives some points: capacity and power at a temperature and a speed. What it leaves out
is filled from how machines usually lie (population), scaled to the points that are there, and
is named as filled. Every temperature of the map then has a minimum, a rated and a maximum point.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from costcompare.equipment.classes import ducted_class, machine, rated_heating, single_speed
from costcompare.equipment.machine import (
    EXTENDED,
    NEVER,
    SPEEDS,
    Array,
    Machine,
    Mode,
    Speed,
)
from costcompare.equipment.population import REFERENCE, Population, population

NEAR = 0.5
"""[K] within which a point counts as one at a standard temperature: 47 F is 8.3 C on a sheet"""
WIDE = 30.5 / 1.8
"""[K] between published points that is wide enough to fill a standard temperature in
(judgement: 47 to 17 F is not)"""
WORDS: dict[Speed, str] = {"min": "minimum", "rated": "rated", "max": "maximum"}


@dataclass(frozen=True)
class MapPoint:
    """One published point."""

    outdoor: float
    """[degC]"""
    speed: Speed
    capacity: float
    """[W]"""
    power: float
    """[W]"""
    mode: Mode = "heating"


def map_from_points(
    points: Sequence[MapPoint],
    *,
    like: str,
    nominal: float | None = None,
    cut_out: float | None = None,
    cut_in: float | None = None,
    frost: bool = True,
) -> Machine:
    """The machine with these published points.

    ``like`` names the class whose cycling, standby and fan it has, and whether it has one
    speed; ``nominal`` [W] its nominal cooling, else the rated cooling at 95 F, else that
    of a machine with its rated heating. ``cut_out`` and ``cut_in`` [degC]: else those of
    the class, or the coldest point where that is lower. ``frost`` is False where
    the points between 17 and 47 F hold frost and defrost. Raises ValueError without a heating
    point, and for speeds that give less than slower ones at the same temperature.
    """
    heating = [point for point in points if point.mode == "heating"]
    cooling = [point for point in points if point.mode == "cooling"]
    if not heating:
        raise ValueError("a map needs at least one heating point")
    one_speed = single_speed(like)
    warm = _filled(heating, population("heating", single_speed=one_speed), "heating", one_speed)
    size = nominal or _nominal(warm, cooling, like)
    base = machine(like, size)
    coldest = min(point.outdoor for point in heating)
    ends = base.cut_out if cut_out is None else cut_out
    ends = min(ends, coldest) if cut_out is None else ends
    made = replace(
        base,
        heating_temperature=warm.temperature,
        heating_capacity=warm.capacity,
        heating_power=warm.power,
        cut_out=ends,
        cut_in=max(ends, cut_in if cut_in is not None else NEVER),
        rated_down_to=min(coldest - EXTENDED, float(warm.temperature[0])),
        frost=frost,
        filled=warm.filled,
    )
    if not cooling:
        return replace(made, filled=(*warm.filled, "all of cooling"))
    cold = _filled(cooling, population("cooling", single_speed=one_speed), "cooling", one_speed)
    return replace(
        made,
        cooling_temperature=cold.temperature,
        cooling_capacity=cold.capacity,
        cooling_power=cold.power,
        filled=(*warm.filled, *cold.filled),
    )


@dataclass(frozen=True)
class _Map:
    temperature: Array
    capacity: Array
    power: Array
    filled: tuple[str, ...]


def _nominal(warm: _Map, cooling: Sequence[MapPoint], like: str) -> float:
    """[W] the published cooling at 95 F, else from the rated heating at 47 F."""
    for point in cooling:
        if point.speed == "rated" and abs(point.outdoor - REFERENCE["cooling"]) <= NEAR:
            return point.capacity
    nearest = int(np.argmin(np.abs(warm.temperature - REFERENCE["heating"])))
    rated = float(warm.capacity[nearest, 1])
    sizes = np.geomspace(0.2, 5.0, 400) * rated
    ducted, multi = ducted_class(like), like.startswith("multi-zone")
    gives = np.array([rated_heating(float(s), ducted=ducted, multi=multi) for s in sizes])
    return float(np.interp(rated, gives, sizes))


def _filled(points: Sequence[MapPoint], usual: Population, mode: Mode, one_speed: bool) -> _Map:
    """The whole map: published points as they are, the others from the population."""
    stated: dict[float, dict[Speed, MapPoint]] = {}
    for point in points:
        outdoor = _snapped(point.outdoor, usual.temperature)
        speed: Speed = "rated" if one_speed else point.speed
        stated.setdefault(outdoor, {})[speed] = point
    factors = {outdoor: _factors(stated, outdoor, usual, one_speed) for outdoor in stated}
    temperatures = sorted({*stated, *_standard(sorted(stated), usual.temperature)})
    capacity = np.zeros((len(temperatures), len(SPEEDS)))
    power = np.zeros_like(capacity)
    filled: list[str] = []
    for number, outdoor in enumerate(temperatures):
        usual_capacity, usual_power = usual.at(outdoor)
        on_capacity, on_power = factors.get(outdoor, _between(factors, outdoor))
        capacity[number] = usual_capacity * on_capacity
        power[number] = usual_power * on_power
        there = stated.get(outdoor, {})
        published = np.zeros(len(SPEEDS), dtype=bool)
        for column, speed in enumerate(SPEEDS):
            said = there.get("rated" if one_speed else speed)
            if said is not None:
                capacity[number, column] = said.capacity
                power[number, column] = said.power
                published[column] = True
            elif not one_speed or column == 1:
                filled.append(_name(WORDS[speed], outdoor, mode))
        _put_in_order(capacity[number], power[number], published, outdoor=outdoor)
    return _Map(np.array(temperatures), capacity, power, tuple(filled))


def _snapped(outdoor: float, standard: Array) -> float:
    nearest = float(standard[np.argmin(np.abs(standard - outdoor))])
    return nearest if abs(nearest - outdoor) <= NEAR else outdoor


def _standard(stated: Sequence[float], standard: Array) -> list[float]:
    """Standard temperatures that published ones do not reach, or leave a wide gap around."""
    added = []
    for outdoor in (float(t) for t in standard):
        below = [t for t in stated if t <= outdoor]
        above = [t for t in stated if t >= outdoor]
        if not below or not above or min(above) - max(below) > WIDE:
            added.append(outdoor)
    return added


def _factors(
    stated: dict[float, dict[Speed, MapPoint]], outdoor: float, usual: Population, one_speed: bool
) -> tuple[Array, Array]:
    """How this machine lies to the usual one at a temperature with published points.

    A speed without a point there is taken from the nearest speed that has one, times how the
    two speeds of this machine lie at the nearest temperature where both are published.
    """
    capacity, power = np.ones(len(SPEEDS)), np.ones(len(SPEEDS))
    for column, speed in enumerate(SPEEDS):
        wanted: Speed = "rated" if one_speed else speed
        there = stated[outdoor]
        source = min(there, key=lambda s: (abs(SPEEDS.index(s) - column), -SPEEDS.index(s)))
        on = _factor(there[source], outdoor, usual)
        own = (1.0, 1.0)
        if source != wanted:
            own = _own_ratio(stated, outdoor, usual, speeds=(source, wanted))
        capacity[column], power[column] = on[0] * own[0], on[1] * own[1]
    return capacity, power


def _factor(point: MapPoint, outdoor: float, usual: Population) -> tuple[float, float]:
    column = SPEEDS.index(point.speed)
    capacity, power = usual.at(outdoor)
    return point.capacity / float(capacity[column]), point.power / float(power[column])


def _own_ratio(
    stated: dict[float, dict[Speed, MapPoint]],
    outdoor: float,
    usual: Population,
    *,
    speeds: tuple[Speed, Speed],
) -> tuple[float, float]:
    """Factor of the second speed over that of the first where both are published; else 1."""
    first, second = speeds
    both = [t for t, there in stated.items() if first in there and second in there]
    if not both:
        return 1.0, 1.0
    near = min(both, key=lambda t: abs(t - outdoor))
    one, other = (_factor(stated[near][speed], near, usual) for speed in speeds)
    return other[0] / one[0], other[1] / one[1]


def _between(factors: dict[float, tuple[Array, Array]], outdoor: float) -> tuple[Array, Array]:
    """Factors at a temperature without a point: linear between those with one, held outside."""
    known = sorted(factors)
    columns = range(len(SPEEDS))
    return (
        np.array([np.interp(outdoor, known, [factors[t][0][c] for t in known]) for c in columns]),
        np.array([np.interp(outdoor, known, [factors[t][1][c] for t in known]) for c in columns]),
    )


def _put_in_order(
    capacity: Array, power: Array, published: NDArray[np.bool_], *, outdoor: float
) -> None:
    """Let no filled point give more than a faster speed, nor less than a slower one.

    A filled point that does is moved to the other's capacity at its own efficiency. Raises
    ValueError where published points stand in the wrong order.
    """
    known = np.flatnonzero(published) if published.any() else np.array([1])
    if np.any(np.diff(capacity[known]) < 0.0):
        degrees = outdoor * 1.8 + 32.0
        raise ValueError(f"at {degrees:.0f} F a faster speed gives less than a slower one")
    for column in range(len(SPEEDS)):
        if published[column]:
            continue
        slower, faster = known[known < column], known[known > column]
        least = capacity[slower].max() if slower.size else 0.0
        most = capacity[faster].min() if faster.size else np.inf
        moved = min(max(capacity[column], least), most)
        power[column] *= moved / capacity[column]
        capacity[column] = moved
    # Filled points may also pass each other.
    ordered = np.maximum.accumulate(capacity)
    power *= ordered / capacity
    capacity[:] = ordered


def _name(speed: str, outdoor: float, mode: Mode) -> str:
    ending = "" if mode == "heating" else ", cooling"
    return f"{speed} at {outdoor * 1.8 + 32.0:.0f} F{ending}"
