"""Many homes over one year at once, each reduced to its days: what ranges and fits stand on.

Every run is independent of the others and is reduced the same way on whatever thread it
happens to be, so that the digits do not depend on how many threads there are.
"""

from __future__ import annotations

import os
import threading
from collections.abc import Callable, Hashable, Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from functools import lru_cache

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from costcompare.case.facts import Home, System
from costcompare.physics.lanes import LANES
from costcompare.simulation import schedules
from costcompare.simulation.assembly import Assembly, assemble
from costcompare.simulation.clock import Same
from costcompare.simulation.draws import draws_of
from costcompare.simulation.environment import Environment, environment
from costcompare.simulation.network import Record
from costcompare.simulation.run import Beside, record_of, step_side_by_side, step_through
from costcompare.simulation.schedules import Setpoints
from costcompare.simulation.side_by_side import plan_of
from costcompare.simulation.sums import (
    DELIVERED,
    FIGURES,
    IMBALANCE,
    PEAK,
    PUT_IN,
    TURNOVER,
    UNMET,
    count_hours,
    sum_up,
)
from costcompare.weather import Weather

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]
Flags = NDArray[np.bool_]

DAYS = 365
ENOUGH = 3
"""Homes of one plan that are stepped side by side sooner than one after the other: eight beside
each other take as long as about three (measured)"""


@dataclass(frozen=True)
class Limits:
    """Between which temperatures a room counts as warm, by hour of the local day.

    Every array has the shape (24, rooms), rooms in the order of the home.
    """

    wanted: Flags
    """Hours in which somebody uses the room: no other hour is counted"""
    lowest: Floats
    """[degC] below which it is too cold"""
    highest: Floats
    """[degC] above which it is too hot"""


@dataclass(frozen=True)
class Run:
    """One home with one system at one setting of its thermostats."""

    home: Home
    system: System
    setpoints: Setpoints
    limits: Limits | None = None
    """Where the hours in which the rooms are warm are to be counted"""


@dataclass(frozen=True)
class Years:
    """What many runs over the same year come to; the first axis is the run.

    Sums by day are of the local civil day, 1 January first, in kWh; an hour that the local
    clock puts into another year belongs to the nearest day of this one.
    """

    heating: Floats
    """All electricity bought for heating, shape (runs, 365)"""
    backup: Floats
    """The resistance part of it in a heat-pump choice, shape (runs, 365)"""
    cooling: Floats
    fan: Floats
    standby: Floats
    other_use: Floats
    wanted_hours: Ints
    """Shape (runs, rooms); homes with fewer rooms than the others have zeros at the end.
    All four counts are 0 for a run without limits."""
    cold_hours: Ints
    hot_hours: Ints
    peak_kw: Floats
    """Highest hourly mean of all electricity, shape (runs,)"""
    duct_delivered: Floats
    """[kWh] from the registers over the hours of heating, shape (runs,); 0 without ducts"""
    duct_put_in: Floats
    """[kWh] into the ducts over the hours of heating, shape (runs,)"""
    unmet_heat: Floats
    """[kWh] missing to hold the setpoints, over all rooms, shape (runs,)"""
    energy_balance_error: Floats
    """As in ``HourlyResult``, over every eleventh hour, shape (runs,)"""
    month_of_day: Ints
    """0 for January, shape (365,)"""
    hourly: Floats | None = field(default=None, repr=False)
    """All electricity [kWh], shape (runs, 8760), where it was asked for"""

    @property
    def electricity(self) -> Floats:
        """All electricity bought, shape (runs, 365)."""
        return self.heating + self.cooling + self.fan + self.standby + self.other_use

    @property
    def warm_hours(self) -> Ints:
        """Wanted and neither too cold nor too hot, shape (runs, rooms)."""
        return self.wanted_hours - self.cold_hours - self.hot_hours

    def by_month(self, daily: Floats) -> Floats:
        """Sums by month of sums by day, shapes (runs, 12) and (runs, 365)."""
        months = np.zeros((daily.shape[0], 12))
        for month in range(12):
            months[:, month] = daily[:, self.month_of_day == month].sum(axis=1)
        return months


def simulate_years(
    runs: Sequence[Run],
    weather: Weather,
    *,
    hours: bool = False,
    threads: int | None = None,
    progress: Callable[[float], None] | None = None,
) -> Years:
    """Run every home through the year of weather and sum it up by day.

    ``hours`` keeps the electricity of every hour too, for tariffs that ask for the hour;
    ``threads`` is how many work at a time (None: one a processor); ``progress`` is called
    with the share that is done, 0 to 1. Raises ValueError without a run.
    """
    if not runs:
        raise ValueError("there must be at least one run")
    tell = progress or (lambda _share: None)
    rooms = max(len(run.home.rooms) for run in runs)

    def work(numbers: list[int]) -> list[_Reduced]:
        return _reduced([runs[n] for n in numbers], weather, rooms, hours=hours)

    environment(weather)  # the sun of the year, once, before several threads ask for it
    together = _together(runs)
    found: dict[int, _Reduced] = {}
    with ThreadPoolExecutor(max_workers=threads or os.cpu_count() or 1) as pool:
        for numbers, years in zip(together, pool.map(work, together), strict=True):
            found.update(zip(numbers, years, strict=True))
            tell(len(found) / len(runs))
    done = [found[n] for n in range(len(runs))]
    return _gathered(done, _calendar(Same(weather), runs[0].home.site.time_zone).month_of_day)


def _together(runs: Sequence[Run]) -> list[list[int]]:
    """Numbers of the runs that look as if they could be stepped side by side."""
    alike: dict[Hashable, list[int]] = {}
    for number, run in enumerate(runs):
        alike.setdefault(_look(run.home, run.system), []).append(number)
    return [
        numbers[first : first + LANES]
        for numbers in alike.values()
        for first in range(0, len(numbers), LANES)
    ]


def _look(home: Home, system: System) -> Hashable:
    """What homes of one plan have alike, as far as it is seen from afar."""
    return (
        tuple(room.name for room in home.rooms),
        system.kind,
        system.thermostat_room,
        system.ducts.location if system.ducts else "",
        tuple(unit.room for unit in system.heads),
        tuple(heater.room for heater in system.heaters),
    )


@dataclass(frozen=True)
class _Calendar:
    day: Ints
    """Number of the local civil day of each hour"""
    hour: Ints
    """Hour of the local clock"""
    month_of_day: Ints


@dataclass(frozen=True)
class _Reduced:
    """One run: sums by day, in the order of the fields of ``Years``; counts; single figures."""

    daily: Floats
    counts: Ints
    figures: Floats
    hourly: Floats | None


@lru_cache(maxsize=16)
def _calendar(key: Same, time_zone: str) -> _Calendar:
    assert isinstance(key.item, Weather)
    index = key.item.table.index
    assert isinstance(index, pd.DatetimeIndex)
    local = index.tz_convert(time_zone).tz_localize(None)
    standard = index.tz_localize(None).to_numpy().astype("datetime64[D]")
    # Days counted along the table, so that a dropped 29 February leaves no gap.
    days = np.unique(standard)
    place = np.searchsorted(days, local.to_numpy().astype("datetime64[D]"))
    months = days.astype("datetime64[M]").astype(np.int64) % 12
    return _Calendar(
        np.minimum(place, DAYS - 1).astype(np.int64),
        local.hour.to_numpy().astype(np.int64),
        months,
    )


def _reduced(runs: list[Run], weather: Weather, rooms: int, *, hours: bool) -> list[_Reduced]:
    """A few runs, without what only an explanation asks for: no twin, no parts of the load.

    Those of one plan are stepped side by side, if they are enough. No digit hangs on that.
    """
    around = environment(weather)
    homes = [assemble(r.home, r.system, around, r.setpoints, with_twin=False) for r in runs]
    alike: dict[Hashable, list[int]] = {}
    for number, one in enumerate(homes):
        alike.setdefault((plan_of(one.shell.model), plan_of(one.drive)), []).append(number)
    found: dict[int, _Reduced] = {}
    for numbers in alike.values():
        for n, record in zip(numbers, _years([homes[n] for n in numbers]), strict=True):
            found[n] = _summed(runs[n], homes[n], record, around, rooms, hours=hours)
    return [found[n] for n in range(len(runs))]


def _years(homes: list[Assembly]) -> Iterator[Record]:
    """The years of homes of one plan; each is read before the next is asked for."""
    if len(homes) >= ENOUGH:
        beside = _paper.beside = step_side_by_side(homes, _paper.beside)
        for place in range(len(homes)):
            yield record_of(beside, place)
        return
    for one in homes:
        record = _paper.record = step_through(one, explained=False, on=_paper.record)
        yield record


def _summed(
    run: Run,
    assembly: Assembly,
    record: Record,
    around: Environment,
    rooms: int,
    *,
    hours: bool,
) -> _Reduced:
    """One run, summed up by day."""
    home = run.home
    calendar = _calendar(Same(around.weather), home.site.time_zone)
    draws = draws_of(assembly.emitters, assembly.ducted, record, around.outdoor)
    other, hot_water = schedules.other_use(home, around.index)
    used = other + hot_water
    flows = (draws.heating, draws.backup, draws.cooling, draws.fan, draws.standby, used)
    daily, figures = np.zeros((len(flows), DAYS)), np.zeros(FIGURES)
    electricity = np.zeros(around.hours)
    sum_up(flows, record, calendar.day, daily, electricity, figures)
    counts = np.zeros((3, rooms), dtype=np.int64)
    if run.limits is not None:
        counts[:, : len(home.rooms)] = _counted(run.limits, record.air, calendar)
    return _Reduced(daily, counts, figures, electricity if hours else None)


class _Paper(threading.local):
    """What a thread writes its years on, one over the other: fresh memory for each takes longer
    than writing, and longer still with several threads."""

    record: Record | None = None
    beside: Beside | None = None


_paper = _Paper()


def _counted(limits: Limits, air: Floats, calendar: _Calendar) -> Ints:
    """Wanted, cold and hot hours of each room, shape (3, rooms)."""
    counts = np.zeros((3, limits.wanted.shape[1]), dtype=np.int64)
    count_hours(limits.wanted, limits.lowest, limits.highest, air, calendar.hour, counts)
    return counts


def _gathered(done: list[_Reduced], month_of_day: Ints) -> Years:
    daily, counts, figures = (
        np.stack([getattr(one, part) for one in done], axis=1)
        for part in ("daily", "counts", "figures")
    )
    kept = [one.hourly for one in done if one.hourly is not None]
    return Years(
        *(daily[0], daily[1], daily[2], daily[3], daily[4], daily[5]),
        *(counts[0], counts[1], counts[2]),
        *(figures[PEAK], figures[DELIVERED], figures[PUT_IN], figures[UNMET]),
        figures[IMBALANCE] / np.maximum(figures[TURNOVER], 1.0),
        month_of_day,
        np.stack(kept) if kept else None,
    )
