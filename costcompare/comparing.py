"""Today and every option, each as you live now and at the warmth you want."""

from __future__ import annotations

import os
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import chain

from costcompare import comfort
from costcompare.billing.tariff import YearBill, year_bill
from costcompare.case.facts import Case, Home, Option, System
from costcompare.cautions import Seen, cautions
from costcompare.charges import charge_lines, margins, month_charges, other_tariffs, tariff_notes
from costcompare.comparison import (
    AS_LIVED,
    AS_WANTED,
    Choice,
    Comparison,
    CrawlspaceYear,
    Warmth,
)
from costcompare.explaining import explain_year, hot_water_share, year_parts
from costcompare.owning import Before, emissions_of, money_years, rows_of
from costcompare.simulation import (
    HourlyResult,
    Setpoints,
    doing_one,
    setpoints_as_lived,
    setpoints_as_wanted,
    simulate_home,
)
from costcompare.simulation.environment import environment
from costcompare.summary import (
    annual,
    assumptions,
    duct_year,
    fact_line,
    months_of,
    weather_summary,
)
from costcompare.tonight import hours_by_outdoors
from costcompare.underfloor import crawlspace_year
from costcompare.weather import Weather, read_weather, typical_year
from costcompare.weather.typical import Winter

Progress = Callable[[str, float], None]
"""Called with what has been done and the share of the work behind it, 0 to 1"""

TODAY = "Today"
"""Name of the choice that changes nothing"""


@dataclass(frozen=True)
class _Plan:
    """One run: a choice at a warmth."""

    name: str
    kind: str
    home: Home
    system: System
    warmth: Warmth
    option: Option | None


@dataclass(frozen=True)
class _Year:
    """What a plan comes to."""

    plan: _Plan
    year: HourlyResult
    bill: YearBill
    under_floor: CrawlspaceYear | None


def compare(
    case: Case, *, weather: Weather | None = None, progress: Progress | None = None
) -> Comparison:
    """Work out today and every option at both warmths.

    ``weather`` replaces the year that the case asks for. Raises WeatherError where that
    year cannot be had, TariffError where the tariff cannot price it.
    """
    tell = progress or (lambda _text, _share: None)
    tell("Looking up the weather", 0.0)
    year = weather if weather is not None else weather_of(case)
    done = _run_all(case, year, tell)
    today, _ = done[0]
    months = explain_year(case.home, today.year, today.bill, hot_water_share(case.home))
    now, *options = (
        Seen(d.plan.name, d.plan.home, d.plan.system, d.year, d.under_floor)
        for d, _ in done
        if d.plan.warmth == AS_WANTED
    )
    choices = tuple(choice for _, choice in done)
    tell("Putting it together", 1.0)
    return Comparison(
        format=1,
        title=case.title,
        weather=weather_summary(case, year),
        facts=tuple(fact_line(fact) for fact in case.facts),
        choices=choices,
        explanation=year_parts(months),
        explanation_by_month=months,
        cautions=cautions(case, now, options),
        assumptions=(*assumptions(case, year), *tariff_notes(case)),
        currency=case.tariff.currency,
        four_rows=rows_of(case, choices),
        emissions=emissions_of(case, choices),
    )


def explain(case: Case, *, weather: Weather | None = None) -> Comparison:
    """The comparison of today alone, with its explanation; options are left out."""
    return compare(replace(case, options=()), weather=weather)


def simulate(
    case: Case,
    option: str | None = None,
    *,
    warmth: Warmth = AS_LIVED,
    weather: Weather | None = None,
) -> HourlyResult:
    """The hourly year of today's system (None) or of the option of that name.

    ``HourlyResult.frame()`` gives it as a table. Raises KeyError for an unknown option.
    """
    year = weather if weather is not None else weather_of(case)
    home, system = case.home, case.today
    if option is not None:
        by_name = {o.name: o for o in case.options}
        home, system = by_name[option].home, by_name[option].system
    return simulate_home(home, system, year, setpoints(home, warmth))


def setpoints(home: Home, warmth: Warmth) -> Setpoints:
    """What the thermostats are set to at a warmth."""
    return setpoints_as_lived(home) if warmth == AS_LIVED else setpoints_as_wanted(home)


def weather_of(case: Case) -> Weather:
    """The year of weather that a case asks for."""
    wish, site = case.weather, case.home.site
    if wish.source != "typical" and wish.file is not None:
        path = wish.file
        if case.directory is not None and not path.is_absolute():
            path = case.directory / path
        return replace(read_weather(path), source=wish.source)
    return _typical(site.latitude, site.longitude, site.elevation, wish.winter, wish.calendar_year)


@lru_cache(maxsize=16)
def _typical(
    latitude: float,
    longitude: float,
    elevation: float | None,
    winter: Winter,
    calendar_year: int,
) -> Weather:
    """The same made year for all cases at a place: its sun is worked out once."""
    return typical_year(latitude, longitude, elevation, winter=winter, calendar_year=calendar_year)


def _plans(case: Case) -> list[_Plan]:
    today = [
        _Plan(TODAY, case.today.kind, case.home, case.today, warmth, None)
        for warmth in (AS_LIVED, AS_WANTED)
    ]
    options = [
        _Plan(option.name, option.kind, option.home, option.system, warmth, option)
        for option in case.options
        for warmth in (AS_LIVED, AS_WANTED)
    ]
    return today + options


def _run_all(case: Case, weather: Weather, tell: Progress) -> list[tuple[_Year, Choice]]:
    """Run every plan; the compiled year frees the interpreter, so threads share the cores."""
    plans = _plans(case)
    tell(doing_one("Stepping through the year"), 0.0)
    environment(weather)  # the sun of the year, once, before several threads ask for it
    done: list[tuple[_Year, Choice]] = []
    with ThreadPoolExecutor(max_workers=os.cpu_count() or 1) as pool:
        # Today at both warmths comes first: all else is counted against its bills.
        today = list(pool.map(lambda plan: _run(case, plan, weather), plans[:2]))
        before = Before(today[0].bill, today[1].bill)

        def run_and_tell(plan: _Plan) -> tuple[_Year, Choice]:
            year = _run(case, plan, weather)
            return year, _choice(case, year, before)

        options = pool.map(run_and_tell, plans[2:])
        for year, choice in chain(((year, _choice(case, year, before)) for year in today), options):
            done.append((year, choice))
            tell(f"{year.plan.name}, {year.plan.warmth}", len(done) / len(plans))
    return done


def _run(case: Case, plan: _Plan, weather: Weather) -> _Year:
    year = simulate_home(plan.home, plan.system, weather, setpoints(plan.home, plan.warmth))
    bill = year_bill(case.tariff, year.electricity / 1000.0, year.index, case.home.site.time_zone)
    return _Year(plan, year, bill, crawlspace_year(plan.home, plan.system, year, weather))


def _choice(case: Case, done: _Year, before: Before) -> Choice:
    plan, year = done.plan, done.year
    is_first = plan.option is None and plan.warmth == AS_LIVED
    zone, hours = case.home.site.time_zone, comfort.room_hours(plan.home, year)
    return Choice(
        name=plan.name,
        kind=plan.kind,
        warmth=plan.warmth,
        is_today=plan.option is None,
        annual=annual(year, done.bill),
        monthly=months_of(year, done.bill, zone, margins(case, year)),
        rooms=comfort.room_years(plan.home, year, hours),
        ducts=duct_year(plan.home, plan.system, year),
        crawlspace=done.under_floor,
        energy_balance_error=year.energy_balance_error,
        money=money_years(case, plan.option, plan.warmth, done.bill, before),
        range=None,
        coldest_day=comfort.coldest_day(year),
        warm_hours_by_month=comfort.warm_share_by_month(plan.home, year, hours),
        mean_degf_by_month_and_hour=comfort.mean_by_month_and_hour(year),
        hours_by_outdoors=hours_by_outdoors(year, case.tariff, done.bill, zone),
        bill_lines=charge_lines(done.bill.lines),
        bill_lines_by_month=month_charges(done.bill) if is_first else (),
        other_tariffs=other_tariffs(case, year),
    )
