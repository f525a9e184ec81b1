"""One home with one system over one year."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from costcompare.case.facts import Home, System
from costcompare.simulation import exhaust, schedules
from costcompare.simulation.chains import ChainBuilder, reduce
from costcompare.simulation.draws import draws_of, hours_of_machines
from costcompare.simulation.leakage import air_network, door_network
from costcompare.simulation.loop import run_year
from costcompare.simulation.machines import Weathered
from costcompare.simulation.network import Drive, Model, Record, Year
from costcompare.simulation.plant import (
    Ducted,
    Emitter,
    contiguous,
    duct_network,
    ducted_of,
    emitter_arrays,
    emitters_of,
)
from costcompare.simulation.results import DuctHours, HourlyResult, LoadHours
from costcompare.simulation.spaces import (
    Space,
    Surroundings,
    add_space_surfaces,
    spaces_of,
    vent_flow,
)
from costcompare.simulation.state import memory
from costcompare.simulation.surfaces import (
    QUICK_CONTENTS,
    TWIN,
    Sky,
    add_room_surfaces,
    add_twin_surfaces,
    ceiling_factors,
    partitions,
    roof_temperature,
)
from costcompare.weather import Sun, Weather, sun_on, through_glass

Floats = NDArray[np.float64]

STEP = 3600.0  # [s]
WARM_UP_DAYS = 21
"""Days at the end of the year run ahead of it, so that nothing starts cold (judgement)"""
AIRING_BELOW_COOLING = 1.0
"""[K] below the cooling setpoint at which windows are opened (judgement)"""


@dataclass(frozen=True)
class Environment:
    """A year of weather with its sun worked out once for all runs on it."""

    weather: Weather
    sun: Sun


class WeatherKey:
    """A weather table as a cache key: the object itself."""

    def __init__(self, weather: Weather) -> None:
        self.weather = weather

    def __hash__(self) -> int:
        return id(self.weather)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, WeatherKey) and other.weather is self.weather


@lru_cache(maxsize=16)
def _sun(key: WeatherKey) -> Sun:
    return sun_on(key.weather)


def environment(weather: Weather) -> Environment:
    """The weather with its sun; the sun of a table is worked out once."""
    return Environment(weather, _sun(WeatherKey(weather)))


@dataclass(frozen=True)
class _Assembly:
    nodes: dict[str, int]
    spaces: tuple[Space, ...]
    emitters: tuple[Emitter, ...]
    ducted: Ducted
    record: Record
    cooling: float
    """Cooling setpoint [degC]"""


def simulate_home(
    home: Home, system: System, weather: Weather, setpoints: schedules.Setpoints
) -> HourlyResult:
    """Run a home with a system through a year of weather.

    Returns temperatures, electricity and loads hour by hour; see HourlyResult for units.
    """
    around = environment(weather)
    assembly = _run(home, system, around, setpoints)
    return _result(home, assembly, around)


def _run(
    home: Home, system: System, around: Environment, setpoints: schedules.Setpoints
) -> _Assembly:
    weather, hours = around.weather, len(around.weather.table)
    outdoor, index = weather.column("temperature_degc"), _index(weather)
    spaces = spaces_of(home, system)
    nodes = {room.name: n for n, room in enumerate(home.rooms)}
    nodes |= {space.name: len(home.rooms) + n for n, space in enumerate(spaces)}
    doubled = _duct_space(system, spaces)
    if doubled is not None:
        nodes[TWIN + doubled.name] = len(home.rooms) + len(spaces)
    builder = ChainBuilder(STEP)
    seen = Sky(outdoor, weather.column("sky_temperature_degc"), around.sun.walls, around.sun.roof)
    surroundings = Surroundings(
        outdoor,
        weather.column("wind_speed_m_s"),
        roof_temperature(home.house.constructions.roof, seen),
        builder.boundary(outdoor),
        builder.boundary(np.full(hours, float(outdoor.mean()))),
    )
    factors = ceiling_factors(home, system)
    add_room_surfaces(builder, home, nodes, seen, surroundings, factors)
    for space in spaces:
        add_space_surfaces(builder, home, space, nodes[space.name], surroundings, twin_sign=0.0)
    if doubled is not None:
        twin = nodes[TWIN + doubled.name]
        add_twin_surfaces(builder, home, doubled.name, twin, nodes, factors)
        add_space_surfaces(builder, home, doubled, twin, surroundings, twin_sign=1.0)
    storage = _storage(home, spaces, doubled)
    chains = builder.arrays()
    reduction = reduce(chains, storage, partitions(home, nodes), len(home.rooms))
    ducts = duct_network(home, system, nodes, nodes.get(TWIN + doubled.name, -1) if doubled else -1)
    root = home.rooms[ducts.return_room].name
    pressure = float(weather.column("pressure_pa").mean())
    boots_open = system.old_ducts_left_open
    air = air_network(home, nodes, storage, pressure, root, boots_open=boots_open)
    weathered = Weathered(
        outdoor,
        weather.column("relative_humidity"),
        schedules.local_hours(index, home.site.time_zone),
        altitude=weather.elevation if home.site.elevation is None else home.site.elevation,
    )
    emitters = emitters_of(home, system, setpoints, weathered)
    ducted = ducted_of(system, setpoints, weathered)
    year = _year(home, builder, surroundings, around, spaces, doubled, setpoints)
    record = _empty_record(hours, len(nodes), len(emitters), len(home.rooms))
    model = Model(chains, reduction, air, door_network(home, nodes), ducts)
    drive = Drive(
        contiguous(ducted.plant),
        emitter_arrays(emitters, nodes, setpoints.cooling, hours),
        year,
    )
    groups = drive.emitters.group_heat.shape[1]
    run_year(model, drive, record, memory(model, len(emitters), groups))
    return _Assembly(nodes, spaces, emitters, ducted, record, setpoints.cooling)


def _index(weather: Weather) -> pd.DatetimeIndex:
    index = weather.table.index
    assert isinstance(index, pd.DatetimeIndex)
    return index


def _duct_space(system: System, spaces: tuple[Space, ...]) -> Space | None:
    """The space round the ducts that gets a twin, None where no heated duct runs outside."""
    heated = system.furnace_output > 0.0 or system.ducted_unit is not None
    if system.ducts is None or system.blower is None or not heated:
        return None
    return next((space for space in spaces if space.name == system.ducts.location), None)


def _storage(home: Home, spaces: tuple[Space, ...], doubled: Space | None) -> Floats:
    """Capacity of each air node over the time step [W/K]."""
    quick = QUICK_CONTENTS if home.house.contents == "ordinary" else 1.0
    capacity = [1207.0 * room.volume * quick for room in home.rooms]
    capacity += [space.capacity for space in spaces]
    if doubled is not None:
        capacity.append(doubled.capacity)
    return np.array(capacity) / STEP


def _year(
    home: Home,
    builder: ChainBuilder,
    surroundings: Surroundings,
    around: Environment,
    spaces: tuple[Space, ...],
    doubled: Space | None,
    setpoints: schedules.Setpoints,
) -> Year:
    hours = surroundings.outdoor.shape[0]
    rooms = len(home.rooms)
    index = _index(around.weather)
    gains, fire = schedules.inside_gains(home, index), exhaust.fire_heat(home, index)
    radiant = gains * schedules.RADIANT_SHARE + fire * exhaust.FIRE_RADIANT_SHARE
    sun = _sun_gains(home, around.sun)
    vented = [*spaces] + ([doubled] if doubled is not None else [])
    vents = np.zeros((hours, rooms + len(vented)))
    for number, space in enumerate(vented):
        vents[:, rooms + number] = vent_flow(home, space, surroundings.wind)
    warm_up = np.arange(hours - 24 * WARM_UP_DAYS, hours)
    return Year(
        order=np.concatenate([warm_up, np.arange(hours)]).astype(np.int64),
        recorded_from=warm_up.shape[0],
        outdoor=surroundings.outdoor,
        wind=surroundings.wind,
        boundary=np.ascontiguousarray(np.stack(builder.columns, axis=1)),
        vent_flow=vents,
        convective=np.ascontiguousarray(gains + fire - radiant),
        radiant=np.ascontiguousarray(radiant),
        sun=np.ascontiguousarray(sun),
        extraction=np.ascontiguousarray(exhaust.extraction(home, index)),
        airing_above=np.full(hours, setpoints.cooling - AIRING_BELOW_COOLING),
    )


def _sun_gains(home: Home, sun: Sun) -> Floats:
    """Sun through the glass of each room [W], shape (hours, rooms)."""
    windows = home.house.windows
    passed = through_glass(sun, windows.panes) * windows.solar_gain * windows.shading
    areas = np.array(
        [
            [room.windows.get(way, 0.0) for room in home.rooms]
            for way in ("north", "east", "south", "west")
        ]
    )
    result: Floats = passed @ areas
    return result


def _empty_record(hours: int, nodes: int, emitters: int, rooms: int) -> Record:
    return Record(
        air=np.zeros((hours, nodes)),
        emitted=np.zeros((hours, emitters)),
        main=np.zeros(hours),
        strips=np.zeros(hours),
        blower=np.zeros(hours),
        run=np.zeros(hours),
        duct=np.zeros((hours, 6)),
        load=np.zeros((hours, 4)),
        unmet=np.zeros((hours, rooms)),
        imbalance=np.zeros(hours),
        turnover=np.zeros(hours),
    )


def _result(home: Home, assembly: _Assembly, around: Environment) -> HourlyResult:
    record, rooms = assembly.record, len(home.rooms)
    index = _index(around.weather)
    outdoor = around.weather.column("temperature_degc")
    draws = draws_of(assembly.emitters, assembly.ducted, record, outdoor)
    electricity, hot_water = schedules.other_use(home, index)
    gains = schedules.inside_gains(home, index) + exhaust.fire_heat(home, index)
    given = np.zeros((len(index), rooms))
    for number, emitter in enumerate(assembly.emitters):
        given[:, assembly.nodes[emitter.room]] += record.emitted[:, number]
    ducted_heat = np.maximum(record.main, 0.0) + record.strips
    fan_heat = np.where(record.main >= 0.0, record.blower, 0.0)
    return HourlyResult(
        index=index,
        room_names=tuple(room.name for room in home.rooms),
        outdoor_temperature=outdoor,
        room_temperature=record.air[:, :rooms],
        space_temperature={
            space.name: record.air[:, assembly.nodes[space.name]] for space in assembly.spaces
        },
        heating=draws.heating,
        backup=draws.backup,
        cooling=draws.cooling,
        fan=draws.fan,
        standby=draws.standby,
        other_use=electricity + hot_water,
        equipment_heat=np.maximum(record.emitted, 0.0).sum(axis=1) + ducted_heat + fan_heat,
        room_heat=given,
        unmet_heat=record.unmet,
        run_fraction=record.run,
        ducts=_duct_hours(assembly),
        loads=LoadHours(
            walls_and_glass=record.load[:, 0],
            floor=record.load[:, 1],
            air_leaking=record.load[:, 3],
            sun=_sun_gains(home, around.sun).sum(axis=1),
            inside_gains=gains.sum(axis=1),
            stored=record.load[:, 2],
        ),
        energy_balance_error=float(
            np.abs(record.imbalance).sum() / max(np.abs(record.turnover).sum(), 1.0)
        ),
        machines=hours_of_machines(
            assembly.emitters, assembly.ducted, record, assembly.nodes, assembly.cooling
        ),
    )


def _duct_hours(assembly: _Assembly) -> DuctHours | None:
    if assembly.ducted.unit is None and not assembly.ducted.plant.heat_most.any():
        return None
    return DuctHours(*(assembly.record.duct[:, n] for n in range(6)))
