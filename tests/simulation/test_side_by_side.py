"""Homes that are stepped side by side come out to the last digit as each does alone."""

from __future__ import annotations

from dataclasses import fields, replace
from functools import cache

import numpy as np
import pytest

from costcompare.case import example_path, read_case
from costcompare.case.facts import Case, Home, System
from costcompare.comfort import comfort_limits
from costcompare.comparing import weather_of
from costcompare.simulation import (
    LANES,
    Run,
    Years,
    setpoints_as_lived,
    setpoints_as_wanted,
    simulate_years,
)
from costcompare.simulation.assembly import assemble
from costcompare.simulation.ensembles import ENOUGH
from costcompare.simulation.environment import environment
from costcompare.simulation.run import record_of, step_side_by_side, step_through
from costcompare.simulation.side_by_side import plan_of
from costcompare.weather import Weather


@cache
def case(name: str) -> Case:
    return read_case(example_path(name))


@cache
def weather(name: str) -> Weather:
    return weather_of(case(name))


CHOICES = [
    (name, number) for name in ("demo", "wood_heat", "summer_peak") for number in (-1, 0, 1, 2, 3)
]
"""Examples with the numbers of their choices, -1 for today"""


def choice(name: str, number: int) -> tuple[Home, System]:
    found = case(name)
    if number < 0:
        return found.home, found.today
    option = found.options[number % len(found.options)]
    return option.home, option.system


def leaking(home: Home, factor: float) -> Home:
    """The home with as many times the air that leaks through it."""
    leak = home.house.leakage
    flow = None if leak.flow_at_50_pa is None else factor * leak.flow_at_50_pa
    changes = None if leak.air_changes is None else factor * leak.air_changes
    leakage = replace(leak, flow_at_50_pa=flow, air_changes=changes)
    return replace(home, house=replace(home.house, leakage=leakage))


def neighbours(home: Home, system: System) -> list[Run]:
    """Homes that differ as much as homes of one plan can: tight and open, cold and warm, with
    half a machine and a whole one."""
    found = []
    for number in range(LANES):
        one = leaking(home, 0.2 + 0.5 * number)
        held = setpoints_as_wanted(one) if number % 2 else setpoints_as_lived(one)
        held = replace(held, house=held.house - 1.5 * number + 4.0)
        output = system.furnace_output * (0.5 if number % 3 else 1.0)
        machines = replace(system, furnace_output=output)
        found.append(Run(one, machines, held, comfort_limits(one)))
    return found


@pytest.mark.parametrize(("name", "number"), CHOICES)
def test_no_digit_hangs_on_the_neighbours(name: str, number: int) -> None:
    around = environment(weather(name))
    homes = [
        assemble(run.home, run.system, around, run.setpoints, with_twin=False)
        for run in neighbours(*choice(name, number))
    ]
    assert len({(plan_of(one.shell.model), plan_of(one.drive)) for one in homes}) == 1
    beside = step_side_by_side(homes)
    heats = []
    for place, one in enumerate(homes):
        alone, found = step_through(one, explained=False), record_of(beside, place)
        for part in alone._fields:
            assert np.array_equal(getattr(found, part), getattr(alone, part)), part
        heats.append(float(alone.air.mean()))
    assert len(set(heats)) == LANES  # eight homes indeed, not one eight times


def same(found: Years, expected: Years, row: int) -> None:
    for one in fields(Years):
        if one.name not in ("hourly", "month_of_day"):
            of_run, alone = getattr(found, one.name)[row], getattr(expected, one.name)[0]
            assert np.array_equal(of_run, alone), one.name


def test_homes_of_several_plans_find_their_places_again() -> None:
    # Three plans in turn, more than a block of the first, fewer than are worth a block of the last.
    first, second = choice("demo", -1), choice("demo", 3)
    runs = [
        run for pair in zip(neighbours(*first), neighbours(*second), strict=True) for run in pair
    ]
    runs.insert(5, replace(runs[0], home=leaking(runs[0].home, 3.0)))
    bare = replace(case("demo").today, furnace_output=0.0, ducts=None)
    runs.insert(9, replace(runs[0], system=bare))
    years = simulate_years(runs, weather("demo"))
    for row in (0, 1, 5, 9, len(runs) - 1):
        same(years, simulate_years([runs[row]], weather("demo")), row)


def test_a_block_that_is_not_full_says_the_same() -> None:
    runs = neighbours(*choice("demo", -1))[:ENOUGH]
    years = simulate_years(runs, weather("demo"))
    for row, run in enumerate(runs):
        same(years, simulate_years([run], weather("demo")), row)


def test_a_block_leaves_nothing_behind_for_the_next() -> None:
    around = environment(weather("demo"))

    def homes(number: int) -> list[Run]:
        return neighbours(*choice("demo", number))

    def assembled(runs: list[Run]) -> list[object]:
        return [assemble(r.home, r.system, around, r.setpoints, with_twin=False) for r in runs]

    before, after = assembled(homes(-1)), assembled(homes(-1)[::-1])
    fresh = step_side_by_side(after)  # type: ignore[arg-type]
    over = step_side_by_side(after, step_side_by_side(before))  # type: ignore[arg-type]
    for written, expected in zip(over.record, fresh.record, strict=True):
        assert np.array_equal(written, expected)


def test_homes_with_another_number_of_rooms_or_surfaces_are_of_another_plan() -> None:
    around = environment(weather("demo"))
    home, system = choice("demo", -1)
    held = setpoints_as_lived(home)

    def plan(one: Home) -> object:
        assembled = assemble(one, system, around, held, with_twin=False)
        return plan_of(assembled.shell.model), plan_of(assembled.drive)

    fewer = replace(home, crawlspace=None)
    assert plan(leaking(home, 2.0)) == plan(home)
    assert plan(fewer) != plan(home)
