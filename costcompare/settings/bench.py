"""Trying an option with other settings: the year at the wanted warmth, and its bill."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from costcompare.billing.tariff import year_bill
from costcompare.case.facts import Case, Option, System
from costcompare.comfort import room_years
from costcompare.settings.card import Tried
from costcompare.simulation import HourlyResult, setpoints_as_wanted, simulate_home
from costcompare.sizing.runs import Runs
from costcompare.summary import fahrenheit, kwh
from costcompare.weather import Weather


class Bench:
    """Runs an option with other settings at the wanted warmth and prices them."""

    def __init__(self, case: Case, option: Option, weather: Weather, runs: Runs) -> None:
        self.option, self._case, self._weather, self._runs = option, case, weather, runs

    def years(self, systems: Sequence[System]) -> list[HourlyResult]:
        """The years of these systems in the option's home."""
        home = self.option.home
        wanted = setpoints_as_wanted(home)
        jobs = [partial(simulate_home, home, one, self._weather, wanted) for one in systems]
        return self._runs.all(f"Trying settings: {self.option.name}", jobs)

    def tried(self, setting: float, year: HourlyResult) -> Tried:
        """A year with its bill; ``setting`` [degC]."""
        home = self.option.home
        bill = year_bill(
            self._case.tariff, year.electricity / 1000.0, year.index, home.site.time_zone
        )
        rooms = room_years(home, year)
        return Tried(
            setting_degf=degf(setting),
            bill_usd=bill.total_usd,
            backup_kwh=kwh(year.backup),
            warm_share=warm_share(
                sum(room.comfort_hours for room in rooms), sum(room.wanted_hours for room in rooms)
            ),
        )


def degf(celsius: float) -> float:
    """[degC] to [degF], free of the dust of the conversion"""
    return round(fahrenheit(celsius), 6)


def warm_share(warm: int, wanted: int) -> float:
    """Share of the wanted room-hours that are warm; all of them where none is wanted."""
    return warm / wanted if wanted else 1.0
