"""From a home, a system and a year to the arrays that the hourly loop reads."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from costcompare.case.facts import Home, System
from costcompare.simulation import exhaust, schedules
from costcompare.simulation.chains import ChainBuilder, reduce
from costcompare.simulation.clock import Same
from costcompare.simulation.environment import Environment, through_windows
from costcompare.simulation.leakage import air_network, door_network
from costcompare.simulation.machines import Weathered
from costcompare.simulation.network import Drive, Model, Year
from costcompare.simulation.plant import (
    Ducted,
    Emitter,
    contiguous,
    duct_network,
    ducted_of,
    emitter_arrays,
    emitters_of,
)
from costcompare.simulation.spaces import (
    Space,
    Surroundings,
    add_space_surfaces,
    spaces_of,
    vent_flow,
)
from costcompare.simulation.surfaces import (
    QUICK_CONTENTS,
    TWIN,
    add_room_surfaces,
    add_twin_surfaces,
    ceiling_factors,
    partitions,
    roof_temperature,
)

Floats = NDArray[np.float64]

STEP = 3600.0  # [s]
WARM_UP_DAYS = 10
"""Days at the end of the year run ahead of it, so that nothing starts cold. Ten leave a year's
heating of the examples within 0.003 % of what ninety do, its first day's within 0.2 % (measured)"""
AIRING_BELOW_COOLING = 1.0
"""[K] below the cooling setpoint at which windows are opened (judgement)"""

AIRING_ABOVE_HEATING = 1.0
"""[K] above the highest heating setpoint that it must be as well (judgement)"""


@dataclass(frozen=True)
class Shell:
    """A home with its ducts in a year of weather, but for machines and thermostats."""

    nodes: dict[str, int]
    """Air nodes by room and space; the twin of the duct space is the last"""
    spaces: tuple[Space, ...]
    model: Model
    year: Year
    """Without windows opened"""


@dataclass(frozen=True)
class Assembly:
    """One home with one system at one setting of its thermostats, ready to be stepped."""

    shell: Shell
    emitters: tuple[Emitter, ...]
    ducted: Ducted
    drive: Drive
    cooling: float
    """Cooling setpoint [degC]"""


def assemble(
    home: Home,
    system: System,
    around: Environment,
    setpoints: schedules.Setpoints,
    *,
    with_twin: bool = True,
) -> Assembly:
    """The arrays of a home. Without the twin nobody can tell what the ducts give back."""
    shell = _shell(Same(home), Same(system), Same(around), with_twin)
    weathered = Weathered(
        around.outdoor,
        around.humidity,
        schedules.local_hours(around.index, home.site.time_zone),
        altitude=around.weather.elevation if home.site.elevation is None else home.site.elevation,
    )
    emitters = emitters_of(home, system, setpoints, weathered)
    ducted = ducted_of(system, setpoints, weathered)
    # Nobody opens windows against a heating system that is set as warm as this.
    opened = max(
        setpoints.cooling - AIRING_BELOW_COOLING,
        float(setpoints.house.max()) + AIRING_ABOVE_HEATING,
    )
    drive = Drive(
        contiguous(ducted.plant),
        emitter_arrays(emitters, shell.nodes, setpoints.cooling, around.hours),
        shell.year._replace(airing_above=opened),
    )
    return Assembly(shell, emitters, ducted, drive, setpoints.cooling)


@lru_cache(maxsize=8)
def _shell(home: Same, system: Same, around: Same, with_twin: bool) -> Shell:
    """The shell of these very objects: the settings of a sweep share it."""
    assert isinstance(home.item, Home)
    assert isinstance(system.item, System)
    assert isinstance(around.item, Environment)
    return shell_of(home.item, system.item, around.item, with_twin=with_twin)


def shell_of(home: Home, system: System, around: Environment, *, with_twin: bool) -> Shell:
    """The home with its ducts as arrays."""
    spaces = spaces_of(home, system)
    nodes = {room.name: n for n, room in enumerate(home.rooms)}
    nodes |= {space.name: len(home.rooms) + n for n, space in enumerate(spaces)}
    doubled = duct_space(system, spaces) if with_twin else None
    if doubled is not None:
        nodes[TWIN + doubled.name] = len(home.rooms) + len(spaces)
    builder = surfaces_of(home, system, around, nodes, spaces, doubled)
    storage = storage_of(home, spaces, doubled)
    chains = builder.arrays(len(nodes))
    reduction = reduce(chains, storage, partitions(home, nodes), len(home.rooms))
    ducts = duct_network(home, system, nodes, nodes.get(TWIN + doubled.name, -1) if doubled else -1)
    root = home.rooms[ducts.return_room].name
    boots_open = system.old_ducts_left_open
    air = air_network(home, nodes, storage, around.pressure, root, boots_open=boots_open)
    model = Model(chains, reduction, air, door_network(home, nodes), ducts)
    vented = [*spaces] + ([doubled] if doubled is not None else [])
    year = _year(home, around, np.ascontiguousarray(np.array(builder.columns).T), vented)
    return Shell(nodes, spaces, model, year)


def duct_space(system: System, spaces: tuple[Space, ...]) -> Space | None:
    """The space round the ducts that gets a twin, None where no heated duct runs outside."""
    heated = system.furnace_output > 0.0 or system.ducted_unit is not None
    if system.ducts is None or system.blower is None or not heated:
        return None
    return next((space for space in spaces if space.name == system.ducts.location), None)


def surfaces_of(
    home: Home,
    system: System,
    around: Environment,
    nodes: dict[str, int],
    spaces: tuple[Space, ...],
    doubled: Space | None,
) -> ChainBuilder:
    """All surfaces, their boundary temperatures as mixtures of what the weather brings."""
    builder, seen = ChainBuilder(STEP), around.shares
    surroundings = Surroundings(
        roof_temperature(home.house.constructions.roof, seen),
        builder.boundary(seen.outdoor),
        builder.boundary(around.mean),
    )
    factors = ceiling_factors(home, system)
    add_room_surfaces(builder, home, nodes, seen, surroundings, factors)
    for space in spaces:
        add_space_surfaces(builder, home, space, nodes[space.name], surroundings, twin_sign=0.0)
    if doubled is not None:
        twin = nodes[TWIN + doubled.name]
        add_twin_surfaces(builder, home, doubled.name, twin, nodes, factors)
        add_space_surfaces(builder, home, doubled, twin, surroundings, twin_sign=1.0)
    return builder


def storage_of(home: Home, spaces: tuple[Space, ...], doubled: Space | None) -> Floats:
    """Capacity of each air node over the time step [W/K]."""
    quick = QUICK_CONTENTS if home.house.contents == "ordinary" else 1.0
    capacity = [1207.0 * room.volume * quick for room in home.rooms]
    capacity += [space.capacity for space in spaces]
    if doubled is not None:
        capacity.append(doubled.capacity)
    return np.array(capacity) / STEP


def _year(home: Home, around: Environment, mixtures: Floats, vented: list[Space]) -> Year:
    hours, index = around.hours, around.index
    inside, convective, radiant = _gains(home, index)
    vents = np.zeros((hours, len(vented)))
    for number, space in enumerate(vented):
        vents[:, number] = vent_flow(home, space, around.wind)
    warm_up = np.arange(hours - 24 * WARM_UP_DAYS, hours)
    return Year(
        order=np.concatenate([warm_up, np.arange(hours)]).astype(np.uint64),
        recorded_from=warm_up.shape[0],
        outdoor=around.outdoor,
        wind=around.wind,
        brought=around.mixed,
        mixtures=mixtures,
        vent_flow=vents,
        inside=inside,
        convective=convective,
        radiant=radiant,
        shining=through_windows(around, home.house.windows.panes),
        glass=_glass(home),
        extraction=exhaust.extraction(home, index),
        airing_above=np.inf,
    )


def _gains(home: Home, index: pd.DatetimeIndex) -> tuple[Floats, Floats, Floats]:
    """Gains by hour [W], and the shares of them into each room's air and onto its surfaces."""
    inside = [schedules.inside_gains(home, index)]
    shares = [schedules.shares_of_rooms(home)]
    by_radiation = [schedules.RADIANT_SHARE]
    if home.fireplace is not None:
        inside.append(exhaust.fire_heat(home.fireplace, home.site.time_zone, index))
        shares.append(np.array([room.name == home.fireplace.room for room in home.rooms], float))
        by_radiation.append(exhaust.FIRE_RADIANT_SHARE)
    radiant = np.array(shares) * np.array(by_radiation)[:, None]
    return np.stack(inside, axis=1), np.array(shares) - radiant, radiant


def _glass(home: Home) -> Floats:
    """Glass of each room by direction, by what it lets through [m2], shape (4, rooms)."""
    windows = home.house.windows
    areas = [
        [room.windows.get(way, 0.0) for room in home.rooms]
        for way in ("north", "east", "south", "west")
    ]
    return np.array(areas, dtype=float) * windows.solar_gain * windows.shading
