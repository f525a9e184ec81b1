"""The bill and the warm hours at each thermostat setting, held all day or set back at night."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass

import numpy as np
import pandas as pd

from costcompare.billing.tariff import year_bill
from costcompare.case.facts import Case, Home, System
from costcompare.comfort import comfort_limits
from costcompare.comparing import TODAY, Progress, weather_of
from costcompare.simulation import Run, Setpoints, Years, doing_many, simulate_years, wanted_by_hour
from costcompare.weather import Weather

SETBACK = 6.0 / 1.8
"""[K] how much lower the night is in the set-back years (common practice, no source)"""


@dataclass(frozen=True)
class SettingYear:
    """One choice at one setting."""

    setting_degf: float
    """Day setting; every thermostat, head and heater of the home is set to it"""
    held: bool
    """True: the same day and night; False: lower at night by ``setback_k`` of the sweep"""
    bill_usd: float
    worst_month_usd: float
    worst_month: int
    electricity_kwh: float
    warm_hours: int
    """Wanted room-hours that are warm against the warmth the family wants"""
    wanted_hours: int


@dataclass(frozen=True)
class SweepChoice:
    """One choice at every setting."""

    name: str
    is_today: bool
    years: tuple[SettingYear, ...]
    """Every setting held, then every setting with the night setback"""

    def at(self, setting_degf: float, *, held: bool = True) -> SettingYear:
        """The year at a setting; KeyError when it was not swept."""
        for year in self.years:
            if abs(year.setting_degf - setting_degf) < 1e-6 and year.held == held:
                return year
        raise KeyError(setting_degf)

    def one_degree_usd(self, setting_degf: float) -> float | None:
        """What one more degree F costs a year at a setting, from its neighbours; None at an end."""
        held = {y.setting_degf: y.bill_usd for y in self.years if y.held}
        above = [s for s in held if s > setting_degf + 1e-6]
        below = [s for s in held if s < setting_degf - 1e-6]
        if not above or not below:
            return None
        high, low = min(above), max(below)
        return (held[high] - held[low]) / (high - low)


@dataclass(frozen=True)
class Sweep:
    """Today and the options at every setting."""

    settings_degf: tuple[float, ...]
    setback_degf: float
    """How much lower the night is in the set-back years, as a difference [F]"""
    night_hours: str
    wanted_degf: float
    choices: tuple[SweepChoice, ...]
    """Today first, then the options in their order"""
    fitted_bills: int = 0
    """Real bills that the house was fitted to; 0 where it is as it was said to be"""


def sweep(
    case: Case,
    settings_degc: Sequence[float],
    *,
    only: Collection[str] | None = None,
    weather: Weather | None = None,
    progress: Progress | None = None,
) -> Sweep:
    """Today and every option at each setting [degC], held and set back at night.

    Every thermostat, head and heater follows the setting, those with settings of their own
    by as much as the house; a furnace kept as backup stays no higher than its own.
    ``only`` names the choices to try, where not all are wanted: a page that shows one
    option need not wait for the others. Raises WeatherError and TariffError as ``compare``
    does.
    """
    tell = progress or (lambda _text, _share: None)
    year = weather if weather is not None else weather_of(case)
    choices = [(TODAY, True, case.home, case.today)]
    choices += [(option.name, False, option.home, option.system) for option in case.options]
    choices = [choice for choice in choices if only is None or choice[0] in only]
    settings = [
        _Setting(home, system, setting, held)
        for _name, _is_today, home, system in choices
        for held in (True, False)
        for setting in settings_degc
    ]
    words = "Trying thermostat settings"
    tell(doing_many(words), 0.0)
    found = simulate_years(
        [setting.run() for setting in settings],
        year,
        hours=True,
        progress=lambda share: tell(words, share),
    )
    years = [_setting_year(case, year, found, n, one) for n, one in enumerate(settings)]
    count = 2 * len(settings_degc)
    stat = case.home.thermostat
    return Sweep(
        settings_degf=tuple(_degf(setting) for setting in settings_degc),
        setback_degf=SETBACK * 1.8,
        night_hours=_hours_text(stat.night_hours),
        wanted_degf=_degf(stat.wanted),
        choices=tuple(
            SweepChoice(name, is_today, tuple(years[n * count : (n + 1) * count]))
            for n, (name, is_today, _home, _system) in enumerate(choices)
        ),
    )


@dataclass(frozen=True)
class _Setting:
    """One choice at one setting [degC]."""

    home: Home
    system: System
    setting: float
    held: bool

    def run(self) -> Run:
        home, night = self.home, self.setting if self.held else self.setting - SETBACK
        house = np.where(np.array(home.thermostat.night_hours), night, self.setting).astype(float)
        setpoints = Setpoints(house, home.thermostat.cooling, wanted_by_hour(home))
        return Run(home, self.system, setpoints, comfort_limits(home))


def _degf(celsius: float) -> float:
    """[degC] to [degF], free of the dust of the conversion"""
    return round(celsius * 1.8 + 32.0, 6)


def _setting_year(
    case: Case, weather: Weather, years: Years, number: int, one: _Setting
) -> SettingYear:
    assert years.hourly is not None
    index = weather.table.index
    assert isinstance(index, pd.DatetimeIndex)
    electricity = years.hourly[number]
    bill = year_bill(case.tariff, electricity, index, one.home.site.time_zone)
    worst = max(bill.months, key=lambda month: month.total_usd)
    return SettingYear(
        setting_degf=_degf(one.setting),
        held=one.held,
        bill_usd=bill.total_usd,
        worst_month_usd=worst.total_usd,
        worst_month=worst.month,
        electricity_kwh=float(electricity.sum()),
        warm_hours=int(years.warm_hours[number].sum()),
        wanted_hours=int(years.wanted_hours[number].sum()),
    )


def _hours_text(flags: tuple[bool, ...]) -> str:
    """The night of 24 flags as ``22-6``; several stretches are joined by commas."""
    starts = [h for h in range(24) if flags[h] and not flags[h - 1]]
    if not starts:
        return "0-24" if flags[0] else ""
    parts = []
    for start in starts:
        end = start
        while flags[end % 24] and end - start < 24:
            end += 1
        parts.append(f"{start}-{end % 24}")
    return ",".join(parts)
