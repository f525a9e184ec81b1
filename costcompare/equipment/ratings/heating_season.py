"""HSPF2: 10 CFR 430 subpart B appendix M1, section 4.2.

Each kind of machine says how it meets the load of a bin; the season adds the bins up.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import NamedTuple

from costcompare.equipment.ratings.bins import Region, regions
from costcompare.equipment.ratings.points import (
    RatingPoint,
    SingleSpeedHeating,
    TwoStageHeating,
    VariableSpeedHeating,
)
from costcompare.equipment.ratings.season import (
    BTU_H_PER_W,
    BTU_PER_WH,
    Output,
    RatingBin,
    SeasonalRating,
    efficiency_between,
    line,
    output,
    place_between,
    rounded,
)

Heating = SingleSpeedHeating | TwoStageHeating | VariableSpeedHeating

DESIGN = 5.0
"""[degF] at which the load line reaches its factor times the cooling capacity, in every
region: appendix M1 section 4.2"""
CAPACITY_SLOPE_SPLIT, CAPACITY_SLOPE_PACKAGED = 0.0204, 0.0262
"""[1/degF] of a full-speed point at 47 F that was not tested: appendix M1 section 3.6.4"""
POWER_SLOPE = 0.00455
"""[1/degF] the same of its power"""
FROST_CAPACITY, FROST_POWER, FROST_SHARE = 0.90, 0.985, 0.6
"""A full-speed point at 35 F that was not tested: on the line between 17 and 47 F times these
(appendix M1 section 3.6.4)"""
CREDIT, CREDIT_FROM, CREDIT_TO = 0.03, 90.0, 720.0
"""Demand defrost: largest credit; [min] appendix M1 section 3.9.2"""
WARM, FROST, COLD, COLDEST = 47.0, 35.0, 17.0, 5.0
"""[degF] of the tests H1, H2, H3, H4"""
MILD = 62.0
"""[degF] of the test H0"""


class _Met(NamedTuple):
    """How a load is met while the compressor may run."""

    running: str
    delivered: float
    """[Btu/h]"""
    power: float
    """[W]"""
    low: Output
    full: Output


def demand_defrost_credit(between: float, longest: float) -> float:
    """Factor on HSPF2 for demand defrost: appendix M1 section 3.9.2.

    ``between`` [min] from one defrost to the next in the frost test, 90 at least;
    ``longest`` [min] allowed by the controls, 720 at most.
    """
    tested, allowed = max(between, CREDIT_FROM), min(longest, CREDIT_TO)
    if allowed <= CREDIT_FROM:
        raise ValueError("the longest time between defrosts must be more than 90 minutes")
    return 1.0 + CREDIT * (1.0 - (min(tested, allowed) - CREDIT_FROM) / (allowed - CREDIT_FROM))


def hspf2(points: Heating, region: int = 4, *, btu_per_wh: float = BTU_PER_WH) -> SeasonalRating:
    """HSPF2 [Btu/Wh] of a machine in a climatic region, 1 to 6; labels show region 4.

    The kind of machine follows from the kind of ``points``. ``btu_per_wh`` [Btu/Wh] is the
    factor between heat and electricity. Raises KeyError for a region that is not there.
    Source: 10 CFR 430 subpart B appendix M1 section 4.2.
    """
    where = regions()[region]
    meet = _how(points)
    slope = where.slope_variable if isinstance(points, VariableSpeedHeating) else where.slope
    design = points.load_capacity * BTU_H_PER_W * slope
    bins = []
    for outdoor, share in where.bins:
        if share > 0.0:
            load = design * (where.zero_load - outdoor) / (where.zero_load - DESIGN)
            bins.append(_bin(points, meet(outdoor, load), (outdoor, share, load), btu_per_wh))
    heat = sum(b.share * b.load_btu_h for b in bins)
    power = sum(b.share * b.power_w for b in bins)
    resistance = sum(b.share * b.resistance_w for b in bins)
    value = heat / (power + resistance) * points.defrost_credit
    return SeasonalRating(
        name="HSPF2",
        value=value,
        label=rounded(value),
        season=f"heating, region {where.name}",
        heat_sum_btu_h=heat,
        power_sum_w=power,
        resistance_sum_w=resistance,
        defrost_credit=points.defrost_credit,
        bins=tuple(bins),
        notes=_notes(where),
    )


def _notes(region: Region) -> tuple[str, ...]:
    if region.confirmed:
        return ()
    return (f"The bin hours and load factors of region {region.name} are from memory.",)


def _how(points: Heating) -> Callable[[float, float], _Met]:
    if isinstance(points, SingleSpeedHeating):
        return partial(_single, points)
    if isinstance(points, TwoStageHeating):
        return partial(_two_stage, points)
    return partial(_variable, points)


def _bin(
    points: Heating, met: _Met, place: tuple[float, float, float], btu_per_wh: float
) -> RatingBin:
    """A bin with cut-out and resistance heat: what is not delivered is made by elements."""
    outdoor, share, load = place
    on = _running_share(points, outdoor, met.full, btu_per_wh)
    delivered = met.delivered * on
    return RatingBin(
        outdoor_degf=outdoor,
        share=share,
        load_btu_h=load,
        capacity_low_btu_h=met.low.capacity,
        capacity_full_btu_h=met.full.capacity,
        running=met.running if on > 0.0 else "off",
        delivered_btu_h=delivered,
        power_w=met.power * on,
        resistance_w=(load - delivered) / btu_per_wh,
    )


def _running_share(points: Heating, outdoor: float, full: Output, btu_per_wh: float) -> float:
    """1 above the cut-in, 0.5 between, 0 at the cut-out and where the COP is below 1."""
    if full.capacity < btu_per_wh * full.power:
        return 0.0
    if points.cut_out is None:
        return 1.0
    off = points.cut_out * 1.8 + 32.0
    on = off if points.cut_in is None else points.cut_in * 1.8 + 32.0
    # A temperature read from text carries dust in its last digits.
    if outdoor <= off + 1e-9:
        return 0.0
    return 0.5 if outdoor <= on + 1e-9 else 1.0


def _cycling(load: float, at: Output, coefficient: float) -> float:
    """Mean power [W] of a machine that cycles."""
    share = load / at.capacity
    return share * at.power / (1.0 - coefficient * (1.0 - share))


def _cold_and_warm(
    at: float, warm: Output, frost: Output, cold: Output, coldest: RatingPoint | None
) -> Output:
    """Full capacity of single-speed and two-stage machines: section 4.2.1, equations for Qh."""
    if COLD < at < WARM - 2.0:
        return line(at, (COLD, cold), (FROST, frost))
    if coldest is None or at > COLD:
        return line(at, (COLD, cold), (WARM, warm))
    return _below_17(at, warm, cold, output(coldest))


def _below_17(at: float, warm: Output, cold: Output, coldest: Output) -> Output:
    """With a test at 5 F: between it and 17 F, and below it with the slope from 17 to 47 F."""
    if at > COLDEST:
        return line(at, (COLDEST, coldest), (COLD, cold))
    span = WARM - COLD
    return Output(
        coldest.capacity + (warm.capacity - cold.capacity) / span * (at - COLDEST),
        coldest.power + (warm.power - cold.power) / span * (at - COLDEST),
    )


def _single(points: SingleSpeedHeating, outdoor: float, load: float) -> _Met:
    full = _cold_and_warm(
        outdoor, output(points.h1), output(points.h2), output(points.h3), points.h4
    )
    return _one_speed(load, full, points.cycling)


def _one_speed(load: float, full: Output, coefficient: float) -> _Met:
    if load >= full.capacity:
        return _Met("full", full.capacity, full.power, full, full)
    return _Met("cycling", load, _cycling(load, full, coefficient), full, full)


def _two_stage(points: TwoStageHeating, outdoor: float, load: float) -> _Met:
    low = _low_stage(points, outdoor)
    full = _cold_and_warm(
        outdoor, output(points.h12), output(points.h22), output(points.h32), points.h42
    )
    lockout = points.low_stage_above
    if lockout is not None and outdoor <= lockout * 1.8 + 32.0 + 1e-9:
        coefficient = points.cycling if points.cycling_full is None else points.cycling_full
        return _one_speed(load, full, coefficient)
    if load <= low.capacity:
        return _Met("cycling", load, _cycling(load, low, points.cycling), low, full)
    if load >= full.capacity:
        return _Met("full", full.capacity, full.power, low, full)
    share = (full.capacity - load) / (full.capacity - low.capacity)
    power = share * low.power + (1.0 - share) * full.power
    return _Met("in between", load, power, low, full)


def _low_stage(points: TwoStageHeating, at: float) -> Output:
    if at >= 40.0:
        return line(at, (WARM, output(points.h11)), (MILD, output(points.h01)))
    if at > COLD:
        return line(at, (COLD, output(points.h31)), (FROST, output(points.h21)))
    return line(at, (COLD, output(points.h31)), (WARM, output(points.h11)))


def _variable(points: VariableSpeedHeating, outdoor: float, load: float) -> _Met:
    full = _full_speed(points, outdoor)
    between = _intermediate(points, outdoor)
    low = _slowest(points, outdoor, between)
    if load <= low.capacity:
        return _Met("cycling", load, _cycling(load, low, points.cycling), low, full)
    if load >= full.capacity:
        return _Met("full", full.capacity, full.power, low, full)
    lower, upper = (low, between) if load < between.capacity else (between, full)
    return _Met("in between", load, load / efficiency_between(load, lower, upper), low, full)


def _full_at_47(points: VariableSpeedHeating) -> Output:
    """Tested, or the nominal test where it ran at that speed, or from 17 F by set slopes."""
    if points.h12 is not None:
        return output(points.h12)
    if points.nominal_at_full_speed:
        return output(points.h1n)
    cold = output(points.h32)
    slope = CAPACITY_SLOPE_PACKAGED if points.packaged else CAPACITY_SLOPE_SPLIT
    span = WARM - COLD
    return Output(cold.capacity * (1.0 + span * slope), cold.power * (1.0 + span * POWER_SLOPE))


def _full_at_35(points: VariableSpeedHeating) -> Output:
    if points.h22 is not None:
        return output(points.h22)
    warm, cold = _full_at_47(points), output(points.h32)
    return Output(
        FROST_CAPACITY * (cold.capacity + FROST_SHARE * (warm.capacity - cold.capacity)),
        FROST_POWER * (cold.power + FROST_SHARE * (warm.power - cold.power)),
    )


def _full_speed(points: VariableSpeedHeating, at: float) -> Output:
    warm, cold = _full_at_47(points), output(points.h32)
    if at >= 45.0:
        nominal, on_line = output(points.h1n), line(at, (COLD, cold), (WARM, warm))
        return Output(
            on_line.capacity * nominal.capacity / warm.capacity,
            on_line.power * nominal.power / warm.power,
        )
    return _cold_and_warm(at, warm, _full_at_35(points), cold, points.h42)


def _low_line(points: VariableSpeedHeating, at: float) -> Output:
    return line(at, (WARM, output(points.h11)), (MILD, output(points.h01)))


def _intermediate(points: VariableSpeedHeating, at: float) -> Output:
    """Through the intermediate test at 35 F, with a slope between those of low and full."""
    tested = output(points.h2v)
    low, full = _low_line(points, FROST), _full_at_35(points)
    mild, warm, cold = output(points.h01), output(points.h11), output(points.h32)

    def at_speed(which: int) -> float:
        share = place_between(tested[which], low[which], full[which])
        slow = (mild[which] - warm[which]) / (MILD - WARM)
        fast = (full[which] - cold[which]) / (FROST - COLD)
        return tested[which] + (slow * (1.0 - share) + fast * share) * (at - FROST)

    return Output(at_speed(0), at_speed(1))


def _slowest(points: VariableSpeedHeating, at: float, between: Output) -> Output:
    if not points.limited_minimum_speed or at >= WARM:
        return _low_line(points, at)
    if at < FROST:
        return between
    return line(at, (FROST, output(points.h2v)), (WARM, output(points.h11)))
