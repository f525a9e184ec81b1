"""The dials of the building and of its people."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from costcompare.case.facts import Construction, Crawlspace, Home, Thermostat
from costcompare.uncertainty.dials import Dial, with_resistance

LEAST_GAP = 1.0
"""[K] that the cooling setting stays above every heating setting (judgement)"""


def _leak(home: Home) -> float | None:
    leak = home.house.leakage
    return leak.flow_at_50_pa if leak.flow_at_50_pa is not None else leak.air_changes


def _turn_leak(home: Home, value: float) -> Home:
    leak = home.house.leakage
    if leak.flow_at_50_pa is not None:
        changed = replace(leak, flow_at_50_pa=value)
    else:
        changed = replace(leak, air_changes=value)
    return replace(home, house=replace(home.house, leakage=changed))


def _floor_share(home: Home) -> float | None:
    leak = home.house.leakage
    return leak.floor_share if leak.flow_at_50_pa is not None else None


def _turn_floor_share(home: Home, value: float) -> Home:
    leak = replace(home.house.leakage, floor_share=value)
    return replace(home, house=replace(home.house, leakage=leak))


def _turn_shelter(home: Home, value: float) -> Home:
    return replace(home, site=replace(home.site, shelter=round(value)))


def _constructions(home: Home, **changed: Construction) -> Home:
    both = replace(home.house.constructions, **changed)  # type: ignore[arg-type]
    return replace(home, house=replace(home.house, constructions=both))


def _turn_wall(home: Home, value: float) -> Home:
    return _constructions(home, wall=with_resistance(home.house.constructions.wall, value))


def _turn_attic(home: Home, value: float) -> Home:
    """Sloped ceilings go with the flat ones, in proportion."""
    parts = home.house.constructions
    share = value / parts.ceiling.resistance
    return _constructions(
        home,
        ceiling=with_resistance(parts.ceiling, value),
        sloped_ceiling=with_resistance(
            parts.sloped_ceiling, share * parts.sloped_ceiling.resistance
        ),
    )


def _floor(home: Home) -> Construction | None:
    """What insulates the floor: the belly of a manufactured home, nothing of a slab."""
    parts = home.house.constructions
    if home.house.foundation == "slab":
        return None
    return parts.belly if parts.belly is not None else parts.floor


def _read_floor(home: Home) -> float | None:
    floor = _floor(home)
    return None if floor is None else floor.resistance


def _turn_floor(home: Home, value: float) -> Home:
    parts = home.house.constructions
    if parts.belly is not None:
        return _constructions(home, belly=with_resistance(parts.belly, value))
    return _constructions(home, floor=with_resistance(parts.floor, value))


def _turn_windows(home: Home, **changed: float) -> Home:
    windows = replace(home.house.windows, **changed)  # type: ignore[arg-type]
    return replace(home, house=replace(home.house, windows=windows))


def _crawlspace(read: Callable[[Crawlspace], float]) -> Callable[[Home], float | None]:
    return lambda home: None if home.crawlspace is None else read(home.crawlspace)


def _turn_vents(home: Home, value: float) -> Home:
    assert home.crawlspace is not None
    return replace(home, crawlspace=replace(home.crawlspace, vent_factor=value))


def _turn_crawlspace_wall(home: Home, value: float) -> Home:
    assert home.crawlspace is not None
    wall = with_resistance(home.crawlspace.wall, value)
    return replace(home, crawlspace=replace(home.crawlspace, wall=wall))


def _used(home: Home, **changed: float) -> Home:
    return replace(home, other_use=replace(home.other_use, **changed))  # type: ignore[arg-type]


def _stat(home: Home, stat: Thermostat) -> Home:
    return replace(home, thermostat=stat)


def _turn_day(home: Home, value: float) -> Home:
    """Every heating setting moves alike: the same thermometer and the same people."""
    stat = home.thermostat
    by = value - stat.day
    return _stat(
        home,
        replace(
            stat,
            day=value,
            night=stat.night + by,
            wanted=stat.wanted + by,
            wanted_night=stat.wanted_night + by,
        ),
    )


def _turn_night(home: Home, value: float) -> Home:
    return _stat(home, replace(home.thermostat, night=home.thermostat.day + value))


def _turn_wanted(home: Home, value: float) -> Home:
    stat = home.thermostat
    by = stat.day + value - stat.wanted
    return _stat(home, replace(stat, wanted=stat.wanted + by, wanted_night=stat.wanted_night + by))


def _turn_cooling(home: Home, value: float) -> Home:
    stat = home.thermostat
    warmest = max(stat.day, stat.night, stat.wanted, stat.wanted_night)
    return _stat(home, replace(stat, cooling=max(value, warmest + LEAST_GAP)))


HOME_DIALS: tuple[Dial[Home], ...] = (
    Dial("house.air_leakage_at_50_pa", _leak, _turn_leak),
    Dial("house.floor_share", _floor_share, _turn_floor_share),
    Dial("site.shelter", lambda home: home.site.shelter, _turn_shelter, smooth=False),
    Dial(
        "house.wall_insulation", lambda home: home.house.constructions.wall.resistance, _turn_wall
    ),
    Dial(
        "house.attic_insulation",
        lambda home: home.house.constructions.ceiling.resistance,
        _turn_attic,
    ),
    Dial("house.floor_insulation", _read_floor, _turn_floor),
    Dial(
        "house.window_u_factor",
        lambda home: home.house.windows.u_factor,
        lambda home, value: _turn_windows(home, u_factor=value),
    ),
    Dial(
        "house.window_solar_gain",
        lambda home: home.house.windows.solar_gain,
        lambda home, value: _turn_windows(home, solar_gain=value),
    ),
    Dial(
        "house.window_shading",
        lambda home: home.house.windows.shading,
        lambda home, value: _turn_windows(home, shading=value),
    ),
    Dial("crawlspace.vents", _crawlspace(lambda space: space.vent_factor), _turn_vents),
    Dial(
        "crawlspace.wall",
        _crawlspace(lambda space: space.wall.resistance),
        _turn_crawlspace_wall,
    ),
    Dial(
        "other_use.electricity",
        lambda home: home.other_use.electricity,
        lambda home, value: _used(home, electricity=value),
    ),
    Dial(
        "other_use.hot_water",
        lambda home: home.other_use.hot_water,
        lambda home, value: _used(home, hot_water=value),
    ),
    Dial(
        "other_use.share_to_rooms",
        lambda home: home.other_use.share_to_rooms,
        lambda home, value: _used(home, share_to_rooms=value),
    ),
    Dial(
        "other_use.hot_water_share_to_rooms",
        lambda home: home.other_use.hot_water_share_to_rooms,
        lambda home, value: _used(home, hot_water_share_to_rooms=value),
    ),
    Dial(
        "house.people",
        lambda home: home.house.people,
        lambda home, value: replace(home, house=replace(home.house, people=value)),
    ),
    Dial("thermostat.day", lambda home: home.thermostat.day, _turn_day),
    Dial("thermostat.night", lambda home: home.thermostat.night - home.thermostat.day, _turn_night),
    Dial(
        "thermostat.wanted",
        lambda home: home.thermostat.wanted - home.thermostat.day,
        _turn_wanted,
    ),
    Dial("thermostat.cooling", lambda home: home.thermostat.cooling, _turn_cooling),
)
"""In the order in which they are turned: the thermostat's later settings follow the day's"""
