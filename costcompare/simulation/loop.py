"""The year, hour by hour: the only loop over time, compiled as a whole."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from costcompare.physics.air import half_fan_inflow
from costcompare.physics.compiled import compiled_inside, compiled_whole
from costcompare.physics.lanes import opposite, where
from costcompare.simulation.ahead import Ahead, ahead_of
from costcompare.simulation.airflows import DuctLimits, Outside, natural_flow
from costcompare.simulation.balance import duct_terms
from costcompare.simulation.hour import missed_by, settle_hour, state_at
from costcompare.simulation.lane_arrays import as_lanes, put_row
from costcompare.simulation.network import Drive, Emitters, Model, Record, Year
from costcompare.simulation.recording import find_unmet, write_hour, write_sums
from costcompare.simulation.state import Conditions, Demand, Memory
from costcompare.simulation.surface_step import (
    surface_content,
    surfaces_finish,
    surfaces_forward,
)

Floats = NDArray[np.float64]

SUMMED = np.uint64(11)
"""Where nobody asks for the loads, every hour of this number gets its closing sum: in turn all
hours of the day"""
AIRING_MARGIN = 2.0
"""[K] that it must be cooler outside before windows are opened (judgement)"""


@compiled_inside
def _group_demand(h: int, emitters: Emitters, m: Memory) -> None:
    """What groups of heads may do this hour: one mode for all, chosen by the last temperatures."""
    for g in range(m.caps.shape[0]):
        cold, hot = 0.0, 0.0
        for j in range(emitters.room.shape[0]):
            if emitters.group[j] == g:
                air = m.node[emitters.room[j]]
                cold += max(emitters.setpoint[h, j] - air, 0.0)
                hot += max(air - emitters.cooling_setpoint[h, j], 0.0)
        cooling = (hot > cold) & (emitters.group_cool[h, g] > 0.0)
        m.caps[g] = where(cooling, emitters.group_cool[h, g], emitters.group_heat[h, g])
        bleeds = opposite(cooling) & (m.running[g] > 0.0)
        for j in range(emitters.room.shape[0]):
            if emitters.group[j] == g:
                m.bounds[j, 0] = where(cooling, m.bounds[j, 0], 0.0)
                m.bounds[j, 1] = where(cooling, 0.0, m.bounds[j, 1])
                through = min(emitters.bleed[j], m.bounds[j, 1])
                m.resting[j] = where(bleeds, through, m.resting[j])


@compiled_inside
def _demand(h: int, drive: Drive, warm: float, m: Memory) -> Demand:
    """Setpoints and limits of an hour; the ducted machine cools where it was too warm."""
    plant, emitters = drive.plant, drive.emitters
    for j in range(emitters.room.shape[0]):
        m.bounds[j, 0] = -emitters.cool_most[h, j]
        m.bounds[j, 1] = emitters.heat_most[h, j]
        m.resting[j] = 0.0
    _group_demand(h, emitters, m)
    middle = 0.5 * (plant.setpoint[h] + plant.cooling_setpoint[h])
    cooling = (warm > middle) & (plant.cool_most[h] > 0.0)
    one = 1.0 + 0.0 * warm
    return Demand(
        DuctLimits(
            where(cooling, plant.cool_least[h], plant.heat_least[h]),
            where(cooling, plant.cool_most[h], plant.heat_most[h]),
            where(cooling, 0.0, plant.strips[h]),
            where(cooling, -one, one),
        ),
        where(cooling, plant.cooling_setpoint[h], plant.setpoint[h]),
        emitters.room,
        emitters.setpoint[h],
        emitters.cooling_setpoint[h],
        m.bounds,
        m.resting,
        emitters.group,
        m.caps,
    )


@compiled_inside
def _remember_groups(emitters: Emitters, m: Memory) -> None:
    """Heat that each group gave beyond what its resting heads let through [W]."""
    for g in range(m.running.shape[0]):
        m.running[g] = 0.0
        for j in range(emitters.room.shape[0]):
            if emitters.group[j] == g:
                m.running[g] += max(m.work.heat[j] - m.resting[j], 0.0)


@compiled_inside
def _add_product(columns: Floats, vector: Floats, sign: float, total: Floats) -> None:
    """Add ``sign`` times each column times its number to ``total``: no sum waits for another.

    Four columns are taken in one turn, so that the sums are fetched and put back once for them.
    """
    fours = columns.shape[0] // 4 * 4
    for k in range(0, fours, 4):
        first, second, third, fourth = columns[k], columns[k + 1], columns[k + 2], columns[k + 3]
        a, b = sign * vector[k], sign * vector[k + 1]
        c, d = sign * vector[k + 2], sign * vector[k + 3]
        for i in range(first.shape[0]):
            total[i] += (a * first[i] + b * second[i]) + (c * third[i] + d * fourth[i])
    for k in range(fours, columns.shape[0]):
        column, value = columns[k], sign * vector[k]
        for i in range(column.shape[0]):
            total[i] += value * column[i]


@compiled_inside
def _copy(source: Floats, target: Floats) -> None:
    for i in range(source.shape[0]):
        target[i] = source[i]


@compiled_inside
def _sum(values: Floats) -> float:
    total = 0.0
    for i in range(values.shape[0]):
        total += values[i]
    return total


@compiled_inside
def _mean(values: Floats, count: int) -> float:
    total = 0.0
    for i in range(count):
        total += values[i]
    return total / count


@compiled_inside
def _mix(kinds: Floats, mixtures: Floats, into: Floats) -> None:
    """The mixtures of what an hour brings."""
    for column in range(into.shape[0]):
        into[column] = 0.0
    _add_product(mixtures, kinds, 1.0, into)


@compiled_inside
def _gather(h: int, model: Model, year: Year, m: Memory, dark: bool) -> None:
    """Everything known about the hour's heat, onto the air nodes, into ``m.into_air``.

    ``dark`` without any sun, in the hour before as well; ``m.sun`` holds what there is.
    """
    air, inside = model.air, year.inside[h]
    for i in range(air.nodes):
        m.into_air[i] = air.storage[i] * m.node[i]
    _mix(inside, year.radiant, m.into_radiant)
    for k in range(inside.shape[0]):
        share, value = year.convective[k], inside[k]
        for i in range(share.shape[0]):
            m.into_air[i] += value * share[i]
    _mix(year.brought[h], year.mixtures, m.boundary)
    surfaces_forward(model.chains, m.boundary, m.sun, m, dark)
    _add_product(model.reduction.to_air, m.into_radiant, -1.0, m.into_air)


@compiled_inside
def _advance(model: Model, conditions: Conditions, m: Memory) -> None:
    """Take over the temperatures that the hour has settled on."""
    reduction = model.reduction
    _copy(m.node, m.node_before)
    _copy(m.work.temperature, m.node)
    if model.ducts.twin >= 0:
        m.node[model.ducts.twin] = _twin(model, conditions, m)
    _copy(m.into_radiant, m.through_radiant)
    _add_product(reduction.radiant_air, m.node, -1.0, m.through_radiant)
    for i in range(model.air.rooms):
        m.radiant[i] = 0.0
    _add_product(reduction.radiant_inverse, m.through_radiant, 1.0, m.radiant)
    surfaces_finish(model.chains, m)


@compiled_inside
def _twin(model: Model, conditions: Conditions, m: Memory) -> float:
    """Temperature of the duct space as it would be without ducts [degC].

    It feels rooms and spaces, and nobody feels it, so it comes after them.
    """
    air, twin, outside = model.air, model.ducts.twin, conditions.outside
    still = half_fan_inflow(conditions.natural, conditions.extraction)
    inflow = half_fan_inflow(
        outside.vents[twin - air.rooms], conditions.ahead.taken_from[twin] * still
    )
    vented = air.heat_capacity * inflow
    total: float = conditions.right[twin] + vented * outside.temperature
    for i in range(air.nodes):
        if i != twin:
            total -= conditions.matrix[twin, i] * m.node[i]
    own: float = conditions.matrix[twin, twin] + vented
    return total / own


def run_year(model: Model, drive: Drive, record: Record, m: Memory) -> None:
    """Step through the year and write every hour into ``record``.

    A record without rows for the load leaves out what only an explanation asks for, and closes
    the sum of every eleventh hour.
    """
    step_year(model, ahead_of(model, drive.year.wind), drive, record, m)


@compiled_whole
def step_year(model: Model, ahead: Ahead, drive: Drive, record: Record, m: Memory) -> None:
    """The hours of :func:`run_year`."""
    _step(model, ahead, drive, record, m)


@compiled_inside
def _step(model: Model, ahead: Ahead, drive: Drive, record: Record, m: Memory) -> None:
    air, year = model.air, drive.year
    exact, shone = 0.0, False
    for position in range(year.order.shape[0]):
        h = year.order[position]
        outdoor = year.outdoor[h]
        shines = _sum(year.shining[h]) > 0.0
        if shines or shone:
            _mix(year.shining[h], year.glass, m.sun)
        explained = record.load.size > 0
        summed = explained or h % SUMMED == 0
        _gather(h, model, year, m, not shines and not shone)
        shone = shines
        warm = _mean(m.node, air.rooms)
        airs = (warm > year.airing_above) & (outdoor < warm - AIRING_MARGIN)
        airing = where(airs, 1.0, 0.0 * warm)
        conditions = Conditions(
            ahead,
            model.reduction.air,
            m.into_air,
            Outside(outdoor, year.vent_flow[h]),
            natural_flow(air, warm - outdoor, ahead.by_wind[h]),
            year.extraction[h],
            _sum(year.extraction[h]),
            airing,
        )
        demand = _demand(h, drive, warm, m)
        # What went on in the last hour goes on in this one: a guess that saves trials.
        for i in range(air.rooms):
            m.work.previous[i] = 2.0 * m.node[i] - m.node_before[i]
        control = settle_hour(exact, conditions, demand, model, m.work)
        exact = control - missed_by(demand, model, m.work)
        _remember_groups(drive.emitters, m)
        m.content[0] = surface_content(model.chains, m) if summed else 0.0
        _advance(model, conditions, m)
        if position >= year.recorded_from:
            state = state_at(control, demand, model, ahead)
            write_hour(h, state, m, record)
            duct_terms(air, model.ducts, state, m.node, m.duct)
            if summed:
                gains = _sum(m.sun)
                for k in range(year.inside.shape[1]):
                    shares = _sum(year.convective[k]) + _sum(year.radiant[k])
                    gains += year.inside[h, k] * shares
                write_sums(h, model, state, conditions, gains, m, record, explained)
            put_row(record.duct, h, m.duct)
            find_unmet(demand, model.ducts, control, conditions, m)
            put_row(record.unmet, h, m.unmet)


@compiled_whole
def step_years(model: Model, ahead: Ahead, drive: Drive, record: Record, m: Memory) -> None:
    """The hours of :func:`run_year` for several homes side by side."""
    _step(as_lanes(model), as_lanes(ahead), as_lanes(drive), record, as_lanes(m))
