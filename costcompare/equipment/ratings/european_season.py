"""SCOP: EN 14825, sections 7 to 9 and annexes."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from costcompare.equipment.ratings.bins import ScopSeason, scop_season
from costcompare.equipment.ratings.points import IdlePower, ScopPoint, ScopPoints

ZERO_LOAD = 16.0
"""[degC] outdoors at which the load is nothing: EN 14825"""
CYCLING_AIR, CYCLING_WATER = 0.25, 0.9
"""Degradation coefficients where none was measured: EN 14825"""


@dataclass(frozen=True)
class ScopBin:
    """One bin of the season."""

    outdoor_degc: float
    hours: float
    load_w: float
    capacity_w: float
    backup_w: float
    """[W] of resistance heat"""
    cop: float
    """Cycling included; 0 where the machine does not run"""


@dataclass(frozen=True)
class ScopRating:
    """SCOP with what it was made of."""

    name: str
    climate: str
    value: float
    """SCOP, with what the machine takes while it does not heat"""
    while_heating: float
    """SCOPon, heating alone"""
    heat_kwh: float
    """of the season, over the bins"""
    compressor_kwh: float
    backup_kwh: float
    idle_kwh: float
    bins: tuple[ScopBin, ...]
    notes: tuple[str, ...]

    def __float__(self) -> float:
        return self.value


def scop(points: ScopPoints, climate: str = "average") -> ScopRating:
    """SCOP of a machine in a climate: average, warmer or colder.

    The COP of each test is degraded for cycling where the machine gives more than the load,
    then capacity and COP are interpolated between tests (EN 14825); above the warmest test
    their last slope goes on, below the coldest the machine is off. Raises KeyError for
    another climate, ValueError for less than two points.
    """
    if len(points.points) < 2:
        raise ValueError("SCOP needs at least two test points")
    season = scop_season(climate, points.medium)
    tests = sorted(points.points)
    degraded = [
        ScopPoint(t.outdoor, t.capacity, _with_cycling(points, t, _load(points, season, t.outdoor)))
        for t in tests
    ]
    bins = tuple(_bin(points, season, degraded, place=place) for place in season.bins)
    heat = sum(b.hours * b.load_w for b in bins)
    backup = sum(b.hours * b.backup_w for b in bins)
    compressor = sum(b.hours * (b.load_w - b.backup_w) / b.cop for b in bins if b.cop > 0.0)
    on = heat / (compressor + backup)
    yearly = points.design_load * season.equivalent_hours
    idle = _idle(points.idle, season)
    return ScopRating(
        name="SCOP",
        climate=climate,
        value=yearly / (yearly / on + idle),
        while_heating=on,
        heat_kwh=heat / 1000.0,
        compressor_kwh=compressor / 1000.0,
        backup_kwh=backup / 1000.0,
        idle_kwh=idle / 1000.0,
        bins=bins,
        notes=_notes(season, points.idle),
    )


def _notes(season: ScopSeason, idle: IdlePower) -> tuple[str, ...]:
    if season.confirmed or idle == IdlePower():
        return ()
    return (f"The equivalent hours of the {season.climate} climate are from memory.",)


def _idle(idle: IdlePower, season: ScopSeason) -> float:
    """[Wh] of the year while not heating: EN 14825 section 9."""
    return (
        idle.thermostat_off * season.thermostat_off_hours
        + idle.standby * season.standby_hours
        + idle.crankcase * season.crankcase_hours
        + idle.off * season.off_hours
    )


def _load(points: ScopPoints, season: ScopSeason, outdoor: float) -> float:
    return points.design_load * (outdoor - ZERO_LOAD) / (season.design - ZERO_LOAD)


def _with_cycling(points: ScopPoints, test: ScopPoint, load: float) -> float:
    """The COP at the load: EN 14825 sections for part load of air and water units."""
    share = max(load, 0.0) / test.capacity
    if share >= 1.0:
        return test.cop
    if points.medium == "air":
        coefficient = CYCLING_AIR if points.cycling is None else points.cycling
        return test.cop * (1.0 - coefficient * (1.0 - share))
    coefficient = CYCLING_WATER if points.cycling is None else points.cycling
    return test.cop * share / (coefficient * share + 1.0 - coefficient)


def _bin(
    points: ScopPoints,
    season: ScopSeason,
    tests: list[ScopPoint],
    *,
    place: tuple[float, float],
) -> ScopBin:
    outdoor, hours = place
    load = _load(points, season, outdoor)
    if outdoor < tests[0].outdoor:
        return ScopBin(outdoor, hours, load, 0.0, load, 0.0)
    cold, warm = next(
        ((a, b) for a, b in pairwise(tests) if outdoor <= b.outdoor), (tests[-2], tests[-1])
    )
    share = (outdoor - cold.outdoor) / (warm.outdoor - cold.outdoor)
    capacity = cold.capacity + share * (warm.capacity - cold.capacity)
    cop = cold.cop + share * (warm.cop - cold.cop)
    return ScopBin(outdoor, hours, load, capacity, max(load - capacity, 0.0), cop)
