"""The settings card: what to set in this home, each setting with what it was worked out from.

Nothing here is a rule of thumb where a year can be run instead: the strips' lockout, the old
furnace's thermostat and the night are tried in the hourly model with the family's tariff.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from costcompare.billing.clock import standard_hours
from costcompare.case.facts import Case, Option, System
from costcompare.comparing import Progress, weather_of
from costcompare.settings.bench import Bench, degf, warm_share
from costcompare.settings.card import (
    FurnaceSetting,
    HeadSetting,
    HeaterSetting,
    Night,
    NightSetting,
    SettingsCard,
    StripSetting,
)
from costcompare.simulation import HourlyResult, wanted_by_hour
from costcompare.simulation.schedules import local_hours
from costcompare.sizing import Sizing, size
from costcompare.sizing.abilities import placed_heads
from costcompare.sizing.mounting import hung_at, sensor_reads_over, winter_difference
from costcompare.sizing.results import FT
from costcompare.sizing.runs import Runs
from costcompare.summary import fahrenheit, kwh
from costcompare.thermostat import SETBACK, sweep
from costcompare.weather import Weather

MARGIN = 5.0 / 1.8
"""[K] above the balance point at which strips are locked out: for wind, recovery and a colder
house than the survey says (judgement)"""
LEAST_BELOW = 6.0 / 1.8
"""[K] below the wanted warmth above which the thermostat of a kept furnace does not stand
(judgement)"""
TRIED_BELOW = (6.0, 8.0, 10.0, 13.0)
"""[F] below the wanted warmth at which a kept furnace is tried; 10 F is an efficiency
program's advice to owners (read)"""
SAME = 0.01
"""[K] by which two settings are one"""
NO_DIFFERENCE = 20.0
"""[$ a year] below which two bills are called the same (judgement)"""
TOO_WARM = 2.0 / 1.8
"""[K] above its setting at which a machine left to choose would turn to cooling (judgement)"""
SIZING_SHARE = 0.6
"""Share of the work of a sizing with settings that the sizing is, for the bar that shows it"""
COLD_MONTHS = (11, 12, 1, 2, 3)


def settings(
    case: Case,
    option_name: str,
    *,
    weather: Weather | None = None,
    sizing: Sizing | None = None,
    progress: Progress | None = None,
) -> SettingsCard:
    """The settings card of one option.

    ``sizing`` is that of the case where it is there already; its balance point is used.
    Raises KeyError for an unknown option, WeatherError and TariffError as ``compare`` does.
    """
    option = {one.name: one for one in case.options}[option_name]
    year = weather if weather is not None else weather_of(case)
    sized = sizing or size(replace(case, options=(option,)), weather=year)
    bench = Bench(case, option, year, Runs(progress, _years(option.system)))
    wanted = bench.years([option.system])[0]
    stat = option.home.thermostat
    return SettingsCard(
        option=option.name,
        wanted_degf=degf(stat.wanted),
        has_heat_pump=_has_heat_pump(option.system),
        heads=_heads(option, year),
        too_warm_hours=_too_warm_hours(option, wanted),
        strips=_strips(bench, sized, wanted),
        furnace=_furnace(bench),
        heaters=tuple(
            HeaterSetting(one.room, degf(stat.wanted if one.setpoint is None else one.setpoint))
            for one in option.system.heaters
        ),
        night=_night(case, option, year),
    )


def sized_with_settings(
    case: Case, *, weather: Weather | None = None, progress: Progress | None = None
) -> tuple[Sizing, tuple[SettingsCard, ...]]:
    """The sizing of a case and the card of every option, on one year of weather."""
    tell = progress or (lambda _text, _share: None)
    year = weather if weather is not None else weather_of(case)
    sized = size(case, weather=year, progress=lambda text, share: tell(text, share * SIZING_SHARE))
    cards = []
    for number, option in enumerate(case.options):
        share = SIZING_SHARE + (1.0 - SIZING_SHARE) * number / len(case.options)
        tell(f"Trying settings: {option.name}", share)
        cards.append(settings(case, option.name, weather=year, sizing=sized))
    return sized, tuple(cards)


def _years(system: System) -> int:
    """How many years a card runs, without those of the night."""
    kept = bool(system.heads) and system.furnace_output > 0.0
    return 1 + (system.strip_output > 0.0) + (len(TRIED_BELOW) + 1 if kept else 0)


def _has_heat_pump(system: System) -> bool:
    return bool(system.heads) or system.ducted_unit is not None


def _heads(option: Option, weather: Weather) -> tuple[HeadSetting, ...]:
    """Wanted warmth at sitting height plus what the sensor reads over it, in whole degrees."""
    difference = winter_difference(option.home, weather)
    found = []
    for head in placed_heads(option.system):
        wanted = option.home.thermostat.wanted if head.setpoint is None else head.setpoint
        over = sensor_reads_over(head.mounting_height, difference)
        found.append(
            HeadSetting(
                room=head.room,
                wanted_degf=degf(wanted),
                mounting_height_ft=hung_at(head.mounting_height) * FT,
                height_is_stated=head.mounting_height is not None,
                reads_over_degf=over * 1.8,
                set_degf=float(round(fahrenheit(wanted + over))),
            )
        )
    return tuple(found)


def _too_warm_hours(option: Option, year: HourlyResult) -> int:
    """Cold-month hours in which a room with a head is well above what is wanted."""
    heads = placed_heads(option.system)
    home = option.home
    clock = local_hours(year.index, home.site.time_zone)
    wanted, day = wanted_by_hour(home), home.thermostat.wanted
    cold = np.isin(standard_hours(year.index).month + 1, COLD_MONTHS)
    warm = np.zeros(len(year.index), dtype=bool)
    for head in heads:
        own = wanted if head.setpoint is None else wanted + head.setpoint - day
        room = year.room_temperature[:, year.room_names.index(head.room)]
        warm |= room > own[clock] + TOO_WARM
    return int((warm & cold).sum())


def _strips(bench: Bench, sized: Sizing, wanted: HourlyResult) -> StripSetting | None:
    """The strips stay off above the balance point and a margin."""
    system = bench.option.system
    if system.strip_output <= 0.0 or system.ducted_unit is None:
        return None
    balance = sized.choice(bench.option.name).balance_degf
    # Where the heat pump never falls short, the strips are for the coldest hours and failures.
    start = sized.design.outdoor_degf if balance is None else balance + MARGIN * 1.8
    lockout = float(np.ceil(start))
    celsius = (lockout - 32.0) / 1.8
    then = bench.years([replace(system, strip_lockout=celsius)])[0]
    return StripSetting(
        lockout_degf=lockout,
        balance_degf=balance,
        margin_degf=MARGIN * 1.8,
        stated_degf=None if system.strip_lockout is None else degf(system.strip_lockout),
        stated_usd=bench.tried(celsius, wanted).bill_usd,
        bill_usd=bench.tried(celsius, then).bill_usd,
        backup_kwh=kwh(then.backup),
    )


def _furnace(bench: Bench) -> FurnaceSetting | None:
    """A furnace kept beside heads stands well below them, or it does their work."""
    system, wanted = bench.option.system, bench.option.home.thermostat.wanted
    if not system.heads or system.furnace_output <= 0.0:
        return None
    stated = system.furnace_setpoint
    levels = [wanted - below / 1.8 for below in TRIED_BELOW]
    if stated is not None and all(abs(stated - level) > SAME for level in levels):
        levels.append(stated)
    levels.sort(reverse=True)
    years = bench.years([replace(system, furnace_setpoint=level) for level in levels])
    tried = [bench.tried(level, year) for level, year in zip(levels, years, strict=True)]
    allowed = [one for one in tried if one.setting_degf <= degf(wanted - LEAST_BELOW) + SAME]
    chosen = next(
        one
        for number, one in enumerate(allowed)
        if one.bill_usd - min(other.bill_usd for other in allowed[number:]) < NO_DIFFERENCE
    )
    return FurnaceSetting(
        set_degf=chosen.setting_degf,
        below_wanted_degf=degf(wanted) - chosen.setting_degf,
        stated_degf=None if stated is None else degf(stated),
        tried=tuple(tried),
    )


def _night(case: Case, option: Option, weather: Weather) -> NightSetting:
    """The year held against the year set back, at the wanted warmth."""
    wanted = option.home.thermostat.wanted
    swept = sweep(case, [wanted], only={option.name}, weather=weather)
    (choice,) = swept.choices
    held, back = choice.years
    difference = back.bill_usd - held.bill_usd
    advice: Night = "set back" if difference < 0.0 else "hold"
    if abs(difference) < NO_DIFFERENCE:
        advice = "makes no difference"
    return NightSetting(
        advice=advice,
        setback_degf=SETBACK * 1.8,
        night_hours=swept.night_hours,
        held_usd=held.bill_usd,
        set_back_usd=back.bill_usd,
        held_warm_share=warm_share(held.warm_hours, held.wanted_hours),
        set_back_warm_share=warm_share(back.warm_hours, back.wanted_hours),
        difference_usd=difference,
    )
