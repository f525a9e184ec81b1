"""Who stays warm: each room's air against the warmth the family wants, hour by hour.

An hour counts for a room only when somebody uses it (``Room.wanted_hours`` on the local
civil clock). Such an hour is cold when the air is further below the wanted warmth than the
band allows, hot when it is above the cooling setting by more than the band, else warm. The
wanted warmth is what the family would like, not what the thermostat is set to. A room that
is hot in summer without any cooling is counted as hot: nobody feels the reason.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from costcompare.billing.clock import WINTER, CivilHours, civil_hours, standard_hours
from costcompare.case.facts import Home
from costcompare.comparison import Day, RoomYear
from costcompare.simulation import HourlyResult, Limits

TOLERANCE = 0.01
"""[K] by which a room may miss a limit and still keep it (judgement: a room held exactly at
the limit must not fall out of it by the last digits of the solver; no thermometer shows it)"""

W_PER_KW = 1000.0


@dataclass(frozen=True)
class RoomHours:
    """What every hour is for every room: three masks of shape (hours, rooms)."""

    wanted: NDArray[np.bool_]
    cold: NDArray[np.bool_]
    """Wanted and too cold"""
    hot: NDArray[np.bool_]
    """Wanted and too hot"""

    @property
    def warm(self) -> NDArray[np.bool_]:
        """Wanted and neither too cold nor too hot."""
        return self.wanted & ~self.cold & ~self.hot


def room_hours(home: Home, result: HourlyResult) -> RoomHours:
    """Sort every hour of every room, in the order of ``result.room_names``."""
    return _sorted_hours(home, result, civil_hours(result.index, home.site.time_zone))


def room_years(
    home: Home, result: HourlyResult, hours: RoomHours | None = None
) -> tuple[RoomYear, ...]:
    """The warm, cold and hot hours of each room; the three add up to its wanted hours.

    The lowest temperature is over all hours of the year, used or not; the winter mean over
    the wanted hours of December to February (nan for a room without any). ``hours`` spares
    the sorting of the hours where it is done already.
    """
    hours = hours or room_hours(home, result)
    winter = np.isin(civil_hours(result.index, home.site.time_zone).month, WINTER)
    counted = [mask.sum(axis=0) for mask in (hours.warm, hours.cold, hours.hot, hours.wanted)]
    coldest, unmet = result.room_temperature.min(axis=0), result.unmet_heat.sum(axis=0)
    rooms = []
    for place, name in enumerate(result.room_names):
        in_winter = result.room_temperature[winter & hours.wanted[:, place], place]
        winter_mean = float(in_winter.mean()) if in_winter.size else float("nan")
        lowest = float(coldest[place])
        warm, cold, hot, wanted = (int(count[place]) for count in counted)
        rooms.append(
            RoomYear(
                name=name,
                comfort_hours=warm,
                cold_hours=cold,
                hot_hours=hot,
                wanted_hours=wanted,
                minimum_temperature_degf=float(_degf(lowest)),
                minimum_temperature_degc=lowest,
                unmet_heat_kwh=float(unmet[place]) / W_PER_KW,
                winter_mean_degf=float(_degf(winter_mean)),
                winter_mean_degc=winter_mean,
            )
        )
    return tuple(rooms)


def warm_share_by_month(
    home: Home, result: HourlyResult, hours: RoomHours | None = None
) -> tuple[float, ...]:
    """Share of the wanted room-hours that are warm, January first; nan where none is wanted.

    ``hours`` as for :func:`room_years`.
    """
    clock = civil_hours(result.index, home.site.time_zone)
    hours = hours or room_hours(home, result)
    wanted = np.bincount(clock.month, weights=hours.wanted.sum(axis=1), minlength=12)
    warm = np.bincount(clock.month, weights=hours.warm.sum(axis=1), minlength=12)
    share = np.full(12, np.nan)
    np.divide(warm, wanted, out=share, where=wanted > 0.0)
    return tuple(share.tolist())


def mean_by_month_and_hour(result: HourlyResult) -> dict[str, tuple[tuple[float, ...], ...]]:
    """For each room 12 months by 24 hours of mean air temperature [degF], standard time."""
    clock = standard_hours(result.index)
    slot = clock.month * 24 + clock.hour
    count = np.bincount(slot, minlength=288)
    means = {}
    for place, name in enumerate(result.room_names):
        total = np.bincount(slot, weights=result.room_temperature[:, place], minlength=288)
        table = _degf(total / count).reshape(12, 24)
        means[name] = tuple(tuple(row) for row in table.tolist())
    return means


def coldest_day(result: HourlyResult) -> Day:
    """The day of standard time with the lowest mean outdoor temperature, hour by hour."""
    midnights = np.flatnonzero(standard_hours(result.index).hour == 0)
    starts = midnights[midnights + 24 <= len(result.index)]
    daily = result.outdoor_temperature[starts[:, np.newaxis] + np.arange(24)].mean(axis=1)
    start = int(starts[int(np.argmin(daily))])
    day = slice(start, start + 24)
    stamp = result.index[start]
    rooms = {
        name: tuple(_degf(result.room_temperature[day, place]).tolist())
        for place, name in enumerate(result.room_names)
    }
    return Day(
        month=int(stamp.month),
        day=int(stamp.day),
        outdoor_degf=tuple(_degf(result.outdoor_temperature[day]).tolist()),
        rooms_degf=rooms,
        power_kw=tuple((result.electricity[day] / W_PER_KW).tolist()),
    )


def comfort_limits(home: Home) -> Limits:
    """When each room is wanted, and between which temperatures it then counts as warm."""
    stat = home.thermostat
    wanted = np.array([room.wanted_hours for room in home.rooms], dtype=bool).T
    by_hour = np.where(stat.night_hours, stat.wanted_night, stat.wanted)
    lowest = by_hour - home.comfort.below - TOLERANCE
    return Limits(
        wanted=wanted,
        lowest=np.repeat(lowest[:, np.newaxis], len(home.rooms), axis=1),
        highest=np.full(wanted.shape, stat.cooling + home.comfort.above + TOLERANCE),
    )


def _sorted_hours(home: Home, result: HourlyResult, clock: CivilHours) -> RoomHours:
    limits, air = comfort_limits(home), result.room_temperature
    place = {room.name: number for number, room in enumerate(home.rooms)}
    rooms = [place[name] for name in result.room_names]
    wanted = limits.wanted[:, rooms][clock.hour]
    cold = wanted & (air < limits.lowest[:, rooms][clock.hour])
    hot = wanted & (air > limits.highest[:, rooms][clock.hour])
    return RoomHours(wanted, cold, hot)


def _degf(degc: float | NDArray[np.float64]) -> NDArray[np.float64]:
    """Degrees Fahrenheit of degrees Celsius; exact by definition of the scales."""
    return np.asarray(degc) * 1.8 + 32.0
