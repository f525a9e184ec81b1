"""Many runs at once say the same as each run alone, on any number of threads."""

from __future__ import annotations

from dataclasses import fields, replace
from functools import cache

import numpy as np
import pytest

from costcompare import typical_year
from costcompare.billing.clock import civil_hours
from costcompare.case import example_path, read_case
from costcompare.case.facts import Case
from costcompare.comfort import comfort_limits, room_years
from costcompare.simulation import (
    Run,
    Years,
    setpoints_as_lived,
    setpoints_as_wanted,
    simulate_home,
    simulate_years,
)
from costcompare.summary import duct_year
from costcompare.weather import Weather


@cache
def case() -> Case:
    return read_case(example_path("demo"))


@cache
def weather() -> Weather:
    site = case().home.site
    return typical_year(site.latitude, site.longitude, site.elevation)


@cache
def runs() -> tuple[Run, ...]:
    """Today as lived, and two options at the wanted warmth."""
    home, options = case().home, case().options[:2]
    lived = Run(home, case().today, setpoints_as_lived(home), comfort_limits(home))
    return (
        lived,
        *(
            Run(o.home, o.system, setpoints_as_wanted(o.home), comfort_limits(o.home))
            for o in options
        ),
    )


@cache
def years(threads: int, *, hours: bool = False) -> Years:
    return simulate_years(runs(), weather(), hours=hours, threads=threads)


def test_a_run_says_what_its_hourly_year_says() -> None:
    one = years(1, hours=True)
    assert one.hourly is not None
    for n, run in enumerate(runs()):
        year = simulate_home(run.home, run.system, weather(), run.setpoints)
        month = civil_hours(year.index, run.home.site.time_zone).month
        for name in ("heating", "backup", "cooling", "fan", "standby", "other_use", "electricity"):
            flow = getattr(year, name) / 1000.0
            by_month = np.bincount(month, weights=flow, minlength=12)
            assert one.by_month(getattr(one, name))[n] == pytest.approx(by_month, rel=1e-9)
        assert one.hourly[n] == pytest.approx(year.electricity / 1000.0)
        assert one.peak_kw[n] == pytest.approx(year.electricity.max() / 1000.0)
        assert one.unmet_heat[n] == pytest.approx(year.unmet_heat.sum() / 1000.0)
        rooms = room_years(run.home, year)
        assert one.wanted_hours[n].tolist() == [room.wanted_hours for room in rooms]
        assert one.warm_hours[n].tolist() == [room.comfort_hours for room in rooms]
        assert one.hot_hours[n].tolist() == [room.hot_hours for room in rooms]
        ducts = duct_year(run.home, run.system, year)
        delivered = ducts.delivered_kwh if ducts else 0.0
        assert one.duct_delivered[n] == pytest.approx(delivered)
        if ducts:
            share = one.duct_delivered[n] / one.duct_put_in[n]
            assert share == pytest.approx(ducts.delivery_effectiveness)


def test_threads_change_no_digit() -> None:
    one, two = years(1), years(3)
    for field in fields(Years):
        if field.name != "hourly":
            assert np.array_equal(getattr(one, field.name), getattr(two, field.name)), field.name
    assert one.hourly is None


def test_a_run_leaves_nothing_behind_for_the_next() -> None:
    # The second, without ducts or machines of its own, is written over the first: what it does
    # not write must be gone.
    before = runs()[0]
    floats = replace(before, system=replace(case().today, furnace_output=0.0, ducts=None))
    alone = simulate_years((floats,), weather(), threads=1)
    after = simulate_years((before, floats), weather(), threads=1)
    assert after.duct_put_in.tolist() == [pytest.approx(years(1).duct_put_in[0]), 0.0]
    for field in fields(Years):
        if field.name not in ("hourly", "month_of_day"):
            found, expected = getattr(after, field.name)[1], getattr(alone, field.name)[0]
            assert np.array_equal(found, expected), field.name


def test_days_are_of_the_local_clock_and_lose_nothing() -> None:
    one = years(1, hours=True)
    assert one.hourly is not None
    assert one.electricity.sum(axis=1) == pytest.approx(one.hourly.sum(axis=1))
    assert np.bincount(one.month_of_day).tolist() == [
        *(31, 28, 31, 30, 31, 30),
        *(31, 31, 30, 31, 30, 31),
    ]
    # Clocks go forward on 14 March 2027: that day has 23 hours, the one before 24.
    march_14 = 31 + 28 + 13
    start = 24 * march_14
    assert one.electricity[0, march_14] == pytest.approx(one.hourly[0, start : start + 23].sum())
    # In summer the day begins an hour before midnight of standard time.
    july_1 = 181
    start = 24 * july_1 - 1
    assert one.electricity[0, july_1] == pytest.approx(one.hourly[0, start : start + 24].sum())


def test_progress_ends_at_all_of_it_and_no_run_is_an_error() -> None:
    told: list[float] = []
    # The first two have the same machines and are worked out together.
    simulate_years(runs(), weather(), progress=told.append)
    assert told == [pytest.approx(2.0 / 3.0), 1.0]
    with pytest.raises(ValueError, match="at least one run"):
        simulate_years([], weather())


def test_a_run_without_limits_counts_no_hours() -> None:
    bare = Run(case().home, case().today, runs()[0].setpoints)
    one = simulate_years([bare], weather())
    assert not one.wanted_hours.any()
    assert not one.warm_hours.any()
