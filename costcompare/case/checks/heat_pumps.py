"""Checks of one heat pump: what it needs, and points that a machine can have."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from costcompare.case.document import PointTable, UnitTable
from costcompare.errors import Fault
from costcompare.units import customary, parse

SAME = 0.5
"""[K] within which two points count as one temperature"""
ORDER = ("minimum", "rated", "maximum")
HEATING_LIMIT = parse("75 F", "temperature")
COOLING_LIMIT = parse("50 F", "temperature")
LEAST_COP = 0.8
"""Below this a point gives less heat than a heater would (judgement)"""
OF_IDEAL = 0.75
"""No machine comes nearer to the ideal COP between outdoors less 3 K and 70 F plus 5 K"""
MOST_COOLING_COP = 15.0
"""(judgement)"""


def degrees(celsius: float) -> str:
    """A temperature [degC] as people write it, to a tenth of a degree."""
    number, unit = customary(celsius, "temperature")
    return f"{round(number, 1) + 0.0:g} {unit}"


def unit_faults(unit: UnitTable, at: str) -> Iterator[Fault]:
    """Everything about one unit that does not fit together."""
    stated = unit.model_fields_set
    if "points" not in stated and "equipment_class" not in stated:
        instead = 'for example class = "single-zone cold-climate", or points'
        yield Fault(f"{at}.class", "is needed", "", instead)
    if "points" not in stated and "size" not in stated:
        yield Fault(f"{at}.size", "is needed", "", 'for example size = "12 kBtu/h"')
    if unit.points_include_defrost is not None and "points" not in stated:
        yield Fault(f"{at}.points_include_defrost", "belongs to points")
    if unit.cut_in is not None and unit.cut_out is None and "cut_out" not in stated:
        yield Fault(f"{at}.cut_in", "needs cut_out beside it")
    if unit.cut_in is not None and unit.cut_out is not None and unit.cut_in < unit.cut_out:
        rule = f"must not be below cut_out, which is {degrees(unit.cut_out)}"
        yield Fault(f"{at}.cut_in", rule, degrees(unit.cut_in))
    yield from _heads(unit, at)
    if unit.points is None:
        return
    if not any(_mode(point) == "heating" for point in unit.points):
        instead = 'for example { at = "47 F", speed = "rated", capacity = "12 kBtu/h", cop = 3.9 }'
        yield Fault(f"{at}.points", "must hold at least one heating point", "", instead)
    for number, point in enumerate(unit.points, 1):
        yield from _point(point, f"{at}.points.{number}", unit)
    yield from _together(unit.points, f"{at}.points")


LEAST_CONNECTED, MOST_CONNECTED = 0.5, 1.5
"""Sum of the heads' sizes over that of the outdoor unit (from memory of catalogues)"""


def _heads(unit: UnitTable, at: str) -> Iterator[Fault]:
    """Several heads belong to a multi-zone class, within what one outdoor unit can carry."""
    multi = (unit.equipment_class or "").startswith("multi-zone")
    if multi and not unit.heads:
        instead = 'for example heads = [{ room = "hall", size = "9 kBtu/h" }, ...]'
        yield Fault(f"{at}.heads", "is needed for a multi-zone class", "", instead)
        return
    if not unit.heads:
        return
    if not multi:
        yield Fault(f"{at}.heads", "belongs to a multi-zone class", str(unit.equipment_class))
    if unit.room is not None:
        yield Fault(f"{at}.room", "stands with each head of a multi-zone unit", unit.room)
    if unit.size:
        ratio = sum(head.size or 0.0 for head in unit.heads) / unit.size
        if not LEAST_CONNECTED <= ratio <= MOST_CONNECTED:
            rule = "the heads together must be 0.5 to 1.5 times the outdoor unit"
            yield Fault(f"{at}.heads", rule, f"{ratio:.2f} times")


def _mode(point: PointTable) -> str:
    return point.mode or "heating"


def _point(point: PointTable, at: str, unit: UnitTable) -> Iterator[Fault]:
    both = {"power", "cop"} & point.model_fields_set
    if not both:
        yield Fault(f"{at}.power", "is needed, or cop", "", 'for example power = "900 W"')
    if len(both) == 2:
        yield Fault(f"{at}.cop", "give either power or cop, not both")
    if unit.equipment_class == "ducted single-speed" and point.speed not in ("rated", None):
        yield Fault(f"{at}.speed", "a single-speed machine has rated points alone", point.speed)
    if point.at is None:
        return
    shown = degrees(point.at)
    if _mode(point) == "heating" and point.at > HEATING_LIMIT:
        instead = 'mode = "cooling", if that is meant'
        yield Fault(f"{at}.at", "must be at most 75 F for a heating point", shown, instead)
    elif _mode(point) == "cooling" and point.at < COOLING_LIMIT:
        yield Fault(f"{at}.at", "must be at least 50 F for a cooling point", shown)
    else:
        yield from _efficiency(point, at)


def _efficiency(point: PointTable, at: str) -> Iterator[Fault]:
    """A COP that no machine has is a slip of the pen: a wrong unit or a swapped column."""
    cop = point.cop
    if cop is None and point.power is not None and point.capacity is not None:
        cop = point.capacity / point.power
    if cop is None:
        return
    most = _most(point)
    if not LEAST_COP <= cop <= most:
        rule = f"capacity over power must be from {LEAST_COP:g} to {most:.1f} at this temperature"
        key = "cop" if point.cop is not None else "power"
        yield Fault(f"{at}.{key}", rule, f"{cop:.2f}", "capacity and power of the same test")


def _most(point: PointTable) -> float:
    if _mode(point) == "cooling":
        return MOST_COOLING_COP
    warm = parse("70 F", "temperature") + 5.0 + 273.15
    lift = max(warm - (point.at - 3.0 + 273.15), 1.0)
    return OF_IDEAL * warm / lift


def _together(points: Sequence[PointTable], path: str) -> Iterator[Fault]:
    """The same point twice, and a faster speed that gives less than a slower one."""
    for number, point in enumerate(points, 1):
        for earlier in points[: number - 1]:
            if None in (point.at, earlier.at, point.speed, earlier.speed):
                continue
            if _mode(point) != _mode(earlier) or abs(point.at - earlier.at) > SAME:
                continue
            shown = degrees(point.at)
            if point.speed == earlier.speed:
                yield Fault(f"{path}.{number}", "is there twice", f"{point.speed} at {shown}")
            elif not _in_order(point, earlier):
                rule = (
                    f"at {shown} the {_faster(point, earlier)} speed gives less than a slower one"
                )
                yield Fault(f"{path}.{number}.capacity", rule)


def _faster(one: PointTable, other: PointTable) -> str:
    return max(one.speed, other.speed, key=ORDER.index)


def _in_order(one: PointTable, other: PointTable) -> bool:
    if one.capacity is None or other.capacity is None:
        return True
    slow, fast = sorted((one, other), key=lambda point: ORDER.index(point.speed))
    return slow.capacity <= fast.capacity
