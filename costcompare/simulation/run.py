"""One home with one system over one year."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from costcompare.case.facts import Home, System
from costcompare.physics.lanes import LANES
from costcompare.simulation import schedules
from costcompare.simulation.ahead import Ahead, ahead_of
from costcompare.simulation.assembly import Assembly, assemble
from costcompare.simulation.draws import draws_of, hours_of_machines
from costcompare.simulation.environment import Environment, environment
from costcompare.simulation.loop import run_year, step_years
from costcompare.simulation.network import Drive, Model, Record
from costcompare.simulation.plant import Ducted
from costcompare.simulation.results import DuctHours, HourlyResult, LoadHours
from costcompare.simulation.side_by_side import side_by_side
from costcompare.simulation.state import Memory, memory, relinked
from costcompare.weather import Weather

Floats = NDArray[np.float64]


def simulate_home(
    home: Home, system: System, weather: Weather, setpoints: schedules.Setpoints
) -> HourlyResult:
    """Run a home with a system through a year of weather.

    Returns temperatures, electricity and loads hour by hour; see HourlyResult for units.
    """
    around = environment(weather)
    assembly = assemble(home, system, around, setpoints)
    return _result(home, assembly, step_through(assembly, explained=True), around)


def step_through(assembly: Assembly, *, explained: bool, on: Record | None = None) -> Record:
    """Run an assembled home through its year; ``explained`` with the parts of its load.

    ``on`` is a record that nobody reads any more: where its shapes fit, it is written over and
    given back.
    """
    model, drive = assembly.shell.model, assembly.drive
    hours, emitters = drive.emitters.heat_most.shape
    shapes = _shapes(hours, model.air.nodes, emitters, model.air.rooms, explained=explained)
    record = _written_over(on, shapes)
    run_year(model, drive, record, memory(model, drive))
    return record


class Beside(NamedTuple):
    """Homes that were stepped side by side."""

    home: StackedHome
    record: Record
    """One table a home, shape (homes, hours, ...)"""


class StackedHome(NamedTuple):
    """All that the loop reads of a home, or of several."""

    model: Model
    ahead: Ahead
    drive: Drive
    memory: Memory


def step_side_by_side(assemblies: Sequence[Assembly], on: Beside | None = None) -> Beside:
    """Run homes of one plan through their year, :data:`LANES` or fewer, without explanation.

    ``on`` are years that nobody reads any more: where their shapes fit, they are written over.
    """
    homes = [
        StackedHome(
            one.shell.model,
            ahead_of(one.shell.model, one.drive.year.wind),
            one.drive,
            memory(one.shell.model, one.drive),
        )
        for one in assemblies
    ]
    homes += [homes[-1]] * (LANES - len(homes))
    stacked = side_by_side(homes, on.home if on is not None else None)
    stacked = stacked._replace(memory=relinked(stacked.memory))
    first = homes[0]
    hours, emitters = first.drive.emitters.heat_most.shape
    air = first.model.air
    shapes = _shapes(hours, air.nodes, emitters, air.rooms, explained=False)
    record = _written_over(
        on.record if on is not None else None, tuple((LANES, *shape) for shape in shapes)
    )
    step_years(*stacked[:3], record, stacked.memory)
    return Beside(stacked, record)


def record_of(beside: Beside, home: int) -> Record:
    """The year of one of the homes."""
    return Record(*(part[home] for part in beside.record))


def _written_over(on: Record | None, shapes: tuple[tuple[int, ...], ...]) -> Record:
    """A record to write on. Every year writes all of its hours anew, but for the closing sums,
    which few hours have."""
    if on is None or any(a.shape != b for a, b in zip(on, shapes, strict=True)):
        return Record(*(np.zeros(shape) for shape in shapes))
    on.imbalance.fill(0.0)
    on.turnover.fill(0.0)
    return on


def balance_error(record: Record) -> float:
    """Sum of the absolute hourly imbalances over the sum of the heat put in."""
    return float(np.abs(record.imbalance).sum() / max(np.abs(record.turnover).sum(), 1.0))


def _shapes(
    hours: int, nodes: int, emitters: int, rooms: int, *, explained: bool
) -> tuple[tuple[int, ...], ...]:
    """Of the arrays of a record, in their order."""
    one = (hours,)
    load = (hours if explained else 0, 4)
    by_hour: dict[str, tuple[int, ...]] = {
        "air": (hours, nodes),
        "emitted": (hours, emitters),
        "duct": (hours, 6),
        "load": load,
        "unmet": (hours, rooms),
    }
    return tuple(by_hour.get(name, one) for name in Record._fields)


def _result(home: Home, assembly: Assembly, record: Record, around: Environment) -> HourlyResult:
    rooms, index, outdoor = len(home.rooms), around.index, around.outdoor
    nodes = assembly.shell.nodes
    draws = draws_of(assembly.emitters, assembly.ducted, record, outdoor)
    electricity, hot_water = schedules.other_use(home, index)
    year = assembly.drive.year
    given = np.zeros((len(index), rooms))
    for number, emitter in enumerate(assembly.emitters):
        given[:, nodes[emitter.room]] += record.emitted[:, number]
    ducted_heat = np.maximum(record.main, 0.0) + record.strips
    fan_heat = np.where(record.main >= 0.0, record.blower, 0.0)
    return HourlyResult(
        index=index,
        room_names=tuple(room.name for room in home.rooms),
        outdoor_temperature=outdoor,
        room_temperature=record.air[:, :rooms],
        space_temperature={
            space.name: record.air[:, nodes[space.name]] for space in assembly.shell.spaces
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
        ducts=_duct_hours(assembly.ducted, record),
        loads=LoadHours(
            walls_and_glass=record.load[:, 0],
            floor=record.load[:, 1],
            air_leaking=record.load[:, 3],
            sun=_weighted(year.shining, year.glass),
            inside_gains=_weighted(year.inside, year.convective + year.radiant),
            stored=record.load[:, 2],
        ),
        energy_balance_error=balance_error(record),
        machines=hours_of_machines(
            assembly.emitters, assembly.ducted, record, nodes, assembly.cooling
        ),
    )


def _weighted(kinds: Floats, shares: Floats) -> Floats:
    """What all rooms together make of what is by hour and kind, shape (hours,).

    Not by NumPy's matrix product: on long arrays that library shares the work over threads when
    they are idle, and the last digit hangs on how.
    """
    together: Floats = np.einsum("hk,k->h", kinds, shares.sum(axis=1))
    return together


def _duct_hours(ducted: Ducted, record: Record) -> DuctHours | None:
    if ducted.unit is None and not ducted.plant.heat_most.any():
        return None
    return DuctHours(*(record.duct[:, n] for n in range(6)))
