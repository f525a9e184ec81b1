"""A case, sized: loads, rooms for heads, machines, circuits."""

from __future__ import annotations

from functools import partial

from costcompare.case.facts import Case, Home
from costcompare.comparing import TODAY, Progress, weather_of
from costcompare.simulation import setpoints_as_lived, simulate_home
from costcompare.sizing.advice import cautions, questions
from costcompare.sizing.capability import outdoors_of, smallest_head
from costcompare.sizing.choices import Candidate, choice_fit, jobs_of, years_of
from costcompare.sizing.design_weather import winter_wind
from costcompare.sizing.needs import Need, need_of, years_of_need
from costcompare.sizing.ranking import ranking
from costcompare.sizing.results import DesignConditions, HomeLoad, Sizing
from costcompare.sizing.room_loads import home_load
from costcompare.sizing.runs import Runs
from costcompare.summary import fahrenheit
from costcompare.weather import Weather, design_temperature

MPH = 2.2369363
"""[mile/h] in a metre a second"""


def size(case: Case, *, weather: Weather | None = None, progress: Progress | None = None) -> Sizing:
    """Loads of a home and its rooms, and every choice's machines against them.

    ``weather`` replaces the year that the case asks for. Raises WeatherError where that year
    cannot be had.
    """
    year = weather if weather is not None else weather_of(case)
    design = design_outdoors(case, year)
    everyone = candidates(case)
    homes = _distinct([one.home for one in everyone])
    runs = Runs(progress, sum(years_of_need(home) for home in homes) + 2 * len(everyone))
    needs = [need_of(home, year, design, runs) for home in homes]
    own = [needs[homes.index(one.home)] for one in everyone]
    lived = partial(simulate_home, case.home, case.today, year, setpoints_as_lived(case.home))
    jobs = [jobs_of(one, need, year) for one, need in zip(everyone, own, strict=True)]
    as_lived, *rest = runs.all(
        "Sizing each choice", [lived, *(job for each in jobs for job in each.values())]
    )
    results = iter(rest)
    done = [
        years_of(one, {name: next(results) for name in each})
        for one, each in zip(everyone, jobs, strict=True)
    ]
    today = (case.today, done[0].wanted)
    fits = tuple(
        choice_fit(one, need, years, year, today)
        for one, need, years in zip(everyone, own, done, strict=True)
    )
    return Sizing(
        format=1,
        title=case.title,
        design=_conditions(case, year, needs[0]),
        loads=tuple(_load(need, everyone, year) for need in needs),
        ranking=ranking(needs[0], as_lived),
        choices=fits,
        questions=questions(fits),
        cautions=cautions(everyone),
    )


def design_outdoors(case: Case, weather: Weather) -> float:
    """The heating design temperature [degC]: stated, else the 1 % hour of the year."""
    stated = case.home.site.design_temperature
    return design_temperature(weather) if stated is None else stated


def candidates(case: Case) -> tuple[Candidate, ...]:
    """Today and every option, as they are to be sized."""
    today = Candidate(TODAY, case.today.kind, case.home, case.today, is_today=True)
    options = (Candidate(o.name, o.kind, o.home, o.system, is_today=False) for o in case.options)
    return (today, *options)


def _distinct(homes: list[Home]) -> list[Home]:
    """The homes without repeats, in their order."""
    found: list[Home] = []
    for home in homes:
        if home not in found:
            found.append(home)
    return found


def _load(need: Need, everyone: tuple[Candidate, ...], weather: Weather) -> HomeLoad:
    names = tuple(one.name for one in everyone if one.home == need.home)
    return home_load(need, names, smallest_head(need.home, outdoors_of(need.home, weather)))


def _conditions(case: Case, weather: Weather, need: Need) -> DesignConditions:
    outdoor = weather.column("temperature_degc")[need.hot_hours]
    day = weather.table.index[need.hot_hours.start]
    stat = case.home.thermostat
    return DesignConditions(
        outdoor_degf=fahrenheit(need.design),
        outdoor_degc=need.design,
        outdoor_is_estimated=case.home.site.design_temperature is None,
        indoor_degf=fahrenheit(stat.wanted),
        indoor_degc=stat.wanted,
        wind_mph=winter_wind(weather) * MPH,
        hot_month=int(day.month),
        hot_day=int(day.day),
        hot_hour_degf=fahrenheit(float(outdoor.max())),
        cooling_degf=fahrenheit(stat.cooling),
    )
