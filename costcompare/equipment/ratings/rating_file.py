"""A file of test points, read and rated: docs/ratings.md explains every key."""

from __future__ import annotations

import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal, TypeVar, cast

from costcompare.equipment.ratings.cooling_season import Cooling, seer2
from costcompare.equipment.ratings.european_season import ScopRating, scop
from costcompare.equipment.ratings.heating_season import (
    Heating,
    demand_defrost_credit,
    hspf2,
)
from costcompare.equipment.ratings.points import (
    IdlePower,
    RatingPoint,
    ScopPoint,
    ScopPoints,
    SingleSpeedCooling,
    SingleSpeedHeating,
    TwoStageCooling,
    TwoStageHeating,
    VariableSpeedCooling,
    VariableSpeedHeating,
)
from costcompare.equipment.ratings.season import BTU_PER_WH, SeasonalRating
from costcompare.equipment.ratings.table_reader import TableReader
from costcompare.errors import Fault, InputError

HEATING: Mapping[str, tuple[type[Any], tuple[str, ...], tuple[str, ...]]] = {
    "single speed": (SingleSpeedHeating, ("H1", "H2", "H3"), ("H4",)),
    "two stage": (TwoStageHeating, ("H01", "H11", "H12", "H21", "H22", "H31", "H32"), ("H42",)),
    "variable speed": (
        VariableSpeedHeating,
        ("H01", "H11", "H1N", "H2V", "H32"),
        ("H12", "H22", "H42"),
    ),
}
"""Machine, needed and optional points by kind"""
COOLING: Mapping[str, tuple[type[Any], tuple[str, ...]]] = {
    "single speed": (SingleSpeedCooling, ("A", "B")),
    "two stage": (TwoStageCooling, ("A2", "B2", "B1", "F1")),
    "variable speed": (VariableSpeedCooling, ("A2", "B2", "EV", "B1", "F1")),
}
LARGEST = 1_000_000
"""[bytes] no rating file is larger"""


@dataclass(frozen=True)
class Ratings:
    """What a file of test points is worth; None for what it holds no points of."""

    format: int
    title: str
    hspf2: SeasonalRating | None
    seer2: SeasonalRating | None
    scop: ScopRating | None


def rate_file(path: str | Path) -> Ratings:
    """The ratings of the machine in a file; InputError with every fault of it."""
    return rate(_document(Path(path)))


def rate(document: Mapping[str, Any]) -> Ratings:
    """The ratings of the machine in a document; InputError with every fault of it."""
    faults: list[Fault] = []
    top = TableReader(document, "", faults)
    top.number("format", 1, 1)
    top.has("title")
    title = document.get("title", "A machine")
    if not isinstance(title, str) or not title.isprintable():
        top.fault("title", "must be one line of text in quotes", title)
    factor = top.number("btu_per_wh", 3.4, 3.42)
    sections = {key: top.inner(key) for key in ("heating", "cooling", "scop")}
    if not any(key in document for key in sections):
        top.fault("heating", "is needed, or cooling, or scop", "", "[heating] with its points")
    cooling = _cooling(sections["cooling"]) if sections["cooling"] else None
    heating = (
        _heating(sections["heating"], cooling, "cooling" in document)
        if sections["heating"]
        else None
    )
    european = _scop(sections["scop"]) if sections["scop"] else None
    top.finish()
    if faults:
        raise InputError(faults)
    result = Ratings(
        format=1,
        title=title.strip(),
        hspf2=None
        if heating is None
        else _worked_out(
            "heating.points", lambda: hspf2(*heating, btu_per_wh=factor or BTU_PER_WH), faults
        ),
        seer2=None
        if cooling is None
        else _worked_out("cooling.points", lambda: seer2(cooling), faults),
        scop=None
        if european is None
        else _worked_out("scop.points", lambda: scop(*european), faults),
    )
    if faults:
        raise InputError(faults)
    return result


R = TypeVar("R")


def _worked_out(path: str, rating: Callable[[], R], faults: list[Fault]) -> R | None:
    """A rating; points whose lines lead nowhere are a fault of theirs."""
    try:
        return rating()
    except (ValueError, ZeroDivisionError) as error:
        faults.append(Fault(path, f"make no machine: {error}"))
        return None


def _heating(
    table: TableReader, cooling: Cooling | None, cooling_there: bool
) -> tuple[Heating, int] | None:
    kind = table.words("kind", tuple(HEATING))
    region = table.number("region", 1, 6)
    if region is not None and region != int(region):
        table.fault("region", "must be a whole number from 1 to 6", region)
    values: dict[str, Any] = {
        "cooling_capacity": _load(table, cooling, cooling_there),
        "cut_out": table.measure("cut_out", "temperature"),
        "cut_in": table.measure("cut_in", "temperature"),
        "cycling": table.number("cycling", 0.0, 0.5),
    }
    if values["cut_in"] is not None and values["cut_out"] is None:
        table.fault("cut_in", "needs cut_out beside it")
    elif values["cut_in"] is not None and values["cut_in"] < values["cut_out"]:
        table.fault("cut_in", "must not be below cut_out")
    if table.has("defrost_minutes") or table.has("longest_defrost_minutes"):
        between = table.number("defrost_minutes", 1, 720, needed=True)
        longest = table.number("longest_defrost_minutes", 91, 720, needed=True)
        if between is not None and longest is not None:
            values["defrost_credit"] = demand_defrost_credit(between, longest)
    if kind == "two stage":
        values["cycling_full"] = table.number("cycling_full", 0.0, 0.5)
        values["low_stage_above"] = table.measure("low_stage_above", "temperature")
    if kind == "variable speed":
        for key in ("nominal_at_full_speed", "packaged", "limited_minimum_speed"):
            values[key] = table.flag(key, False)
    needed, optional = HEATING[kind][1:] if kind else ((), ())
    points = _points(table, needed, optional)
    table.finish()
    if kind is None or any(points.get(name) is None for name in needed):
        return None
    return _made(HEATING[kind][0], {**values, **points}), int(region or 4)


def _load(table: TableReader, cooling: Cooling | None, cooling_there: bool) -> float | None:
    """The cooling capacity at 95 F, which sets the load: stated, or of the cooling points."""
    stated = table.positive("cooling_capacity", "capacity")
    if stated is not None or "cooling_capacity" in table.table:
        return stated
    if cooling is None and not cooling_there:
        instead = 'for example cooling_capacity = "12 kBtu/h", or [cooling] with its points'
        table.fault("cooling_capacity", "is needed: it sets the load", "", instead)
    if cooling is None:
        return None
    full = cooling.a if isinstance(cooling, SingleSpeedCooling) else cooling.a2
    return full.capacity


def _cooling(table: TableReader) -> Cooling | None:
    kind = table.words("kind", tuple(COOLING))
    values: dict[str, Any] = {"cycling": table.number("cycling", 0.0, 0.5)}
    if kind == "variable speed":
        values["heat_pump"] = table.flag("heat_pump", True)
    needed = COOLING[kind][1] if kind else ()
    points = _points(table, needed, ())
    table.finish()
    if kind is None or any(points.get(name) is None for name in needed):
        return None
    return cast(Cooling, _made(COOLING[kind][0], {**values, **points}))


def _points(
    table: TableReader, needed: tuple[str, ...], optional: tuple[str, ...]
) -> dict[str, RatingPoint | None]:
    """The test points by name; what a kind of machine does not have is no key there."""
    inner = table.inner("points", needed=True)
    if inner is None or not needed:
        return {}
    found = {name: inner.point(name, needed=name in needed) for name in (*needed, *optional)}
    inner.finish()
    return found


def _made(machine: type[Any], values: Mapping[str, Any]) -> Any:
    """The machine of what was read; what was left out keeps the default of the standard."""
    return machine(**{key.lower(): value for key, value in values.items() if value is not None})


def _scop(table: TableReader) -> tuple[ScopPoints, str] | None:
    climate = table.words("climate", ("average", "warmer", "colder"), "average")
    medium = table.words("medium", ("air", "water"), "air")
    load = table.positive("design_load", "output", needed=True)
    cycling = table.number("cycling", 0.0, 1.0)
    rows = table.rows("points")
    points = [point for row in rows if (point := _scop_point(row)) is not None]
    if rows and len(rows) < 2:
        table.fault("points", "must hold at least two points")
    if len({point.outdoor for point in points}) < len(points):
        table.fault("points", "must hold each temperature once")
    idle = table.inner("idle")
    power = IdlePower()
    if idle is not None:
        names = ("thermostat_off", "standby", "crankcase", "off")
        power = IdlePower(**{name: idle.measure(name, "power") or 0.0 for name in names})
        idle.finish()
    table.finish()
    if load is None or climate is None or medium is None:
        return None
    made = ScopPoints(
        design_load=load,
        points=tuple(points),
        medium=cast(Literal["air", "water"], medium),
        cycling=cycling,
        idle=power,
    )
    return made, climate


def _scop_point(row: TableReader) -> ScopPoint | None:
    outdoor = row.measure("at", "temperature", needed=True)
    capacity = row.positive("capacity", "capacity", needed=True)
    cop = row.number("cop", 0.5, 20.0, needed=True)
    row.finish()
    if outdoor is None or capacity is None or cop is None:
        return None
    return ScopPoint(outdoor, capacity, cop)


def _document(path: Path) -> dict[str, Any]:
    """The tables of a TOML file."""
    try:
        if path.stat().st_size > LARGEST:
            raise InputError([Fault(path.name, "is too large for a rating file")])
        return tomllib.loads(path.read_bytes().decode("utf-8-sig"))
    except FileNotFoundError:
        rule, instead = "no such file", "the path of a file of test points"
        raise InputError([Fault(str(path), rule, "", instead)]) from None
    except OSError as error:
        raise InputError([Fault(str(path), f"cannot be read: {error.strerror}")]) from None
    except UnicodeDecodeError:
        raise InputError([Fault(path.name, "must be text in UTF-8")]) from None
    except (ValueError, RecursionError) as error:
        raise InputError([Fault(path.name, f"is not TOML: {str(error)[:200]}")]) from None
