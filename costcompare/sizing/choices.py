"""One choice, sized: its load, its machines, its second rooms, its circuits."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import partial

import numpy as np
from numpy.typing import NDArray

from costcompare.case.facts import Home, System
from costcompare.simulation import HourlyResult, setpoints_as_wanted, simulate_home
from costcompare.sizing import rules
from costcompare.sizing.abilities import (
    LEAST_LOAD,
    Ground,
    Line,
    ducted_ability,
    head_ability,
    placed_heads,
)
from costcompare.sizing.capability import balance_point, outdoors_of
from costcompare.sizing.circuits import electricity
from costcompare.sizing.design_weather import StandingYear
from costcompare.sizing.machine_fits import machine_fits
from costcompare.sizing.mounting import winter_difference
from costcompare.sizing.needs import Need, standing_run
from costcompare.sizing.results import BTU_H, ChoiceFit
from costcompare.sizing.runs import Job
from costcompare.sizing.served import nearest_head, second_rooms, without_furnace
from costcompare.summary import fahrenheit, kwh
from costcompare.weather import Weather

Floats = NDArray[np.float64]

AMPLE_STRIPS = 60_000.0
"""[W] with which a ducted system holds its thermostat at any design temperature"""
LARGER = 3.0
"""A furnace that falls short is asked again at so many times its output"""


@dataclass(frozen=True)
class Candidate:
    """Today's system or an option, as it is to be sized."""

    name: str
    kind: str
    home: Home
    system: System
    is_today: bool


@dataclass(frozen=True)
class Years:
    """The hourly years of a candidate."""

    wanted: HourlyResult
    """At the warmth that is wanted"""
    alone: HourlyResult | None
    """Without a furnace that is kept; None where no room depends on a head"""
    ducted: HourlyResult | None
    """The ducted machine alone through the design weather, with ample strips"""


def jobs_of(candidate: Candidate, need: Need, weather: Weather) -> dict[str, Job]:
    """The years that a candidate's sizing needs, by the field of :class:`Years`."""
    home, system = candidate.home, candidate.system
    wanted = setpoints_as_wanted(home)
    jobs: dict[str, Job] = {"wanted": partial(simulate_home, home, system, weather, wanted)}
    if nearest_head(home, system) and system.furnace_output > 0.0:
        alone = without_furnace(system)
        jobs["alone"] = partial(simulate_home, home, alone, weather, wanted)
    if _is_ducted(system):
        jobs["ducted"] = partial(ducted_alone, home, system, need.standing)
    return jobs


def years_of(candidate: Candidate, done: Mapping[str, HourlyResult]) -> Years:
    """The years of the jobs that are done."""
    wanted = done["wanted"]
    depends = bool(nearest_head(candidate.home, candidate.system))
    alone = done.get("alone", wanted) if depends else None
    return Years(wanted, alone, done.get("ducted"))


def choice_fit(
    candidate: Candidate,
    need: Need,
    years: Years,
    weather: Weather,
    today: tuple[System, HourlyResult],
) -> ChoiceFit:
    """A candidate against what its home needs; ``today`` is today's system and wanted year."""
    ground = ground_of(candidate, need, years.ducted, weather)
    fits = machine_fits(ground, years.wanted)
    pumps = Pumps(ground)
    load = float(pumps.load(np.array([need.design]))[0])
    most = float(pumps.most(np.array([need.design]))[0])
    resistance = sum(f.maximum_at_design_btu_h for f in fits if f.nominal_kbtu_h is None)
    year = years.wanted
    return ChoiceFit(
        name=candidate.name,
        kind=candidate.kind,
        is_today=candidate.is_today,
        load_btu_h=load * BTU_H,
        heat_pump_at_design_btu_h=most * BTU_H,
        electric_heat_btu_h=resistance,
        heat_pump_coverage=most / load if pumps.any and load > LEAST_LOAD else None,
        balance_degf=None if (at := pumps.balance()) is None else fahrenheit(at),
        heating_kwh=kwh(year.heating),
        backup_kwh=kwh(year.backup),
        unmet_heat_kwh=kwh(year.unmet_heat),
        machines=fits,
        second_rooms=()
        if years.alone is None
        else second_rooms(need, candidate.system, years.alone),
        checks=(rules.check(rules.MAXIMUM_AT_DESIGN, most / load),)
        if len(pumps.heads) > 1 and load > LEAST_LOAD
        else (),
        electricity=None
        if candidate.is_today
        else electricity(today[0], candidate.system, today=today[1], then=year),
    )


def ground_of(
    candidate: Candidate, need: Need, ducted: HourlyResult | None, weather: Weather
) -> Ground:
    """What the machines of a candidate are held against."""
    home, outdoor = candidate.home, weather.column("temperature_degc")
    return Ground(
        system=candidate.system,
        need=need,
        duct_load=None if ducted is None else _duct_load(need, ducted),
        place=outdoors_of(home, weather),
        coldest=min(float(outdoor.min()), need.design),
        difference=winter_difference(home, weather),
    )


class Pumps:
    """All heat pumps of a choice together, against the load they meet."""

    def __init__(self, ground: Ground) -> None:
        self._ground = ground
        self.heads = placed_heads(ground.system)
        self.any = bool(self.heads) or ground.system.ducted_unit is not None

    def most(self, outdoor: Floats) -> Floats:
        """[W]"""
        ground = self._ground
        total = np.zeros(len(outdoor))
        for head in self.heads:
            total += head_ability(ground, head, outdoor).most
        if ground.system.ducted_unit is not None:
            total += ducted_ability(ground, ground.system.ducted_unit, outdoor).most
        return total

    def load(self, outdoor: Floats) -> Floats:
        """[W] of the rooms; with the ducts' losses where nothing but a ducted machine heats."""
        ground = self._ground
        if ground.duct_load is None or self.heads or ground.system.heaters:
            return ground.house_load(outdoor)
        return ground.duct_load(outdoor)

    def balance(self) -> float | None:
        """[degC] at which all of them meet the load; None without any, or where they cover it."""
        if not self.any:
            return None
        ground = self._ground
        warm = ground.need.home.thermostat.wanted
        return balance_point(self.most, self.load, warm=warm, cold=ground.coldest)


def _is_ducted(system: System) -> bool:
    heated = system.furnace_output > 0.0 or system.ducted_unit is not None
    return system.ducts is not None and system.blower is not None and heated


def ducted_alone(home: Home, system: System, standing: StandingYear) -> HourlyResult:
    """The ducted machine holds its thermostat without heads and heaters."""
    alone = replace(system, heads=(), heaters=(), furnace_setpoint=None, strip_gap=0.0)
    if alone.ducted_unit is not None:
        ample = replace(alone, strip_output=AMPLE_STRIPS, strip_lockout=None)
        return standing_run(home, ample, standing)
    year = standing_run(home, alone, standing)
    if year.unmet_heat[standing.last_hour].max() <= 0.0:
        return year
    larger = replace(alone, furnace_output=LARGER * alone.furnace_output)
    return standing_run(home, larger, standing)


def _duct_load(need: Need, ducted: HourlyResult) -> Line:
    """[W] that the machine gives into the ducts to hold its thermostat, without the blower."""
    given = (ducted.equipment_heat - ducted.fan)[need.standing.last_hour]
    known = need.outdoor
    heat = np.append(given, 0.0)
    slope = (heat[1] - heat[0]) / (known[1] - known[0])

    def line(outdoor: Floats) -> Floats:
        colder = heat[0] + (outdoor - known[0]) * slope
        result: Floats = np.where(outdoor < known[0], colder, np.interp(outdoor, known, heat))
        return result

    return line
