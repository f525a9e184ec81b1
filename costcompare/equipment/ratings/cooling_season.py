"""SEER2: 10 CFR 430 subpart B appendix M1, section 4.1."""

from __future__ import annotations

from costcompare.equipment.ratings.bins import cooling_bins
from costcompare.equipment.ratings.points import (
    SingleSpeedCooling,
    TwoStageCooling,
    VariableSpeedCooling,
)
from costcompare.equipment.ratings.season import (
    BTU_H_PER_W,
    Output,
    RatingBin,
    SeasonalRating,
    efficiency_between,
    line,
    output,
    place_between,
    rounded,
)

Cooling = SingleSpeedCooling | TwoStageCooling | VariableSpeedCooling

ZERO_LOAD, DESIGN = 65.0, 95.0
"""[degF] appendix M1 section 4.1"""
OVERSIZED = 1.1
"""The load at 95 F is the capacity there over this: appendix M1 section 4.1"""
HEAT_PUMP = 0.93
"""Load factor of variable-speed heat pumps: appendix M1 section 4.1.4, value from memory"""
HEAT_PUMP_NOTE = "The load factor 0.93 of variable-speed heat pumps is from memory."
FRESH, MILD, BETWEEN, HOT = 67.0, 82.0, 87.0, 95.0
"""[degF] of the tests F, B, E, A"""


def seer2(points: Cooling) -> SeasonalRating:
    """SEER2 [Btu/Wh] of a machine; the kind follows from the kind of ``points``.

    Single-speed machines are taken to have a fan of one speed: section 4.1.1, half load at
    82 F. Others are followed through the bins: sections 4.1.3 and 4.1.4.
    """
    if isinstance(points, SingleSpeedCooling):
        return _half_load(points)
    full_at_95 = points.a2.capacity * BTU_H_PER_W
    factor = HEAT_PUMP if isinstance(points, VariableSpeedCooling) and points.heat_pump else 1.0
    bins = []
    for outdoor, share in cooling_bins():
        load = (outdoor - ZERO_LOAD) / (DESIGN - ZERO_LOAD) * full_at_95 / OVERSIZED * factor
        if isinstance(points, TwoStageCooling):
            bins.append(_two_stage(points, outdoor, share, load=load))
        else:
            bins.append(_variable(points, outdoor, share, load=load))
    heat = sum(b.share * b.delivered_btu_h for b in bins)
    power = sum(b.share * b.power_w for b in bins)
    notes = (HEAT_PUMP_NOTE,) if factor != 1.0 else ()
    return _rating(heat / power, heat, power, bins=tuple(bins), notes=notes)


def _rating(
    value: float,
    heat: float,
    power: float,
    *,
    bins: tuple[RatingBin, ...],
    notes: tuple[str, ...] = (),
) -> SeasonalRating:
    return SeasonalRating(
        name="SEER2",
        value=value,
        label=rounded(value),
        season="cooling, all regions",
        heat_sum_btu_h=heat,
        power_sum_w=power,
        resistance_sum_w=0.0,
        defrost_credit=1.0,
        bins=bins,
        notes=notes,
    )


def _half_load(points: SingleSpeedCooling) -> SeasonalRating:
    """Section 4.1.1: the efficiency at 82 F times the part-load factor at half load."""
    at = output(points.b)
    factor = 1.0 - 0.5 * points.cycling
    heat, power = 0.5 * at.capacity, 0.5 * at.power / factor
    return _rating(heat / power, heat, power, bins=())


def _cycling(load: float, low: Output, coefficient: float) -> float:
    share = load / low.capacity
    return share * low.power / (1.0 - coefficient * (1.0 - share))


def _low_and_full(
    points: TwoStageCooling | VariableSpeedCooling, at: float
) -> tuple[Output, Output]:
    low = line(at, (FRESH, output(points.f1)), (MILD, output(points.b1)))
    full = line(at, (MILD, output(points.b2)), (HOT, output(points.a2)))
    return low, full


def _two_stage(points: TwoStageCooling, outdoor: float, share: float, *, load: float) -> RatingBin:
    low, full = _low_and_full(points, outdoor)
    running, delivered = "in between", load
    if load <= low.capacity:
        running, power = "cycling", _cycling(load, low, points.cycling)
    elif load >= full.capacity:
        running, delivered, power = "full", full.capacity, full.power
    else:
        part = (full.capacity - load) / (full.capacity - low.capacity)
        power = part * low.power + (1.0 - part) * full.power
    return _bin(outdoor, share, load, low=low, full=full, met=(running, delivered, power))


def _variable(
    points: VariableSpeedCooling, outdoor: float, share: float, *, load: float
) -> RatingBin:
    low, full = _low_and_full(points, outdoor)
    between = _intermediate(points, outdoor)
    running, delivered = "in between", load
    if load <= low.capacity:
        running, power = "cycling", _cycling(load, low, points.cycling)
    elif load >= full.capacity:
        running, delivered, power = "full", full.capacity, full.power
    elif load < between.capacity:
        power = load / efficiency_between(load, low, between)
    else:
        power = load / efficiency_between(load, between, full)
    return _bin(outdoor, share, load, low=low, full=full, met=(running, delivered, power))


def _intermediate(points: VariableSpeedCooling, at: float) -> Output:
    """Through the intermediate test at 87 F, with a slope between those of low and full."""
    tested = output(points.ev)
    low, full = _low_and_full(points, BETWEEN)
    fresh, slow = output(points.f1), output(points.b1)
    mild, hot = output(points.b2), output(points.a2)

    def at_speed(which: int) -> float:
        share = place_between(tested[which], low[which], full[which])
        on_low = (slow[which] - fresh[which]) / (MILD - FRESH)
        on_full = (hot[which] - mild[which]) / (HOT - MILD)
        return tested[which] + (on_low * (1.0 - share) + on_full * share) * (at - BETWEEN)

    return Output(at_speed(0), at_speed(1))


def _bin(
    outdoor: float,
    share: float,
    load: float,
    *,
    low: Output,
    full: Output,
    met: tuple[str, float, float],
) -> RatingBin:
    running, delivered, power = met
    return RatingBin(
        outdoor_degf=outdoor,
        share=share,
        load_btu_h=load,
        capacity_low_btu_h=low.capacity,
        capacity_full_btu_h=full.capacity,
        running=running,
        delivered_btu_h=delivered,
        power_w=power,
        resistance_w=0.0,
    )
