"""The figures of a benchmark, measured side by side in one run."""

from __future__ import annotations

import time
import tomllib
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path

import numpy as np

from costcompare.benchmark.integrated import integrate, passive
from costcompare.benchmark.machine import Computer, computer, memory_mb, peak_flops
from costcompare.benchmark.plain_loop import plain_loop
from costcompare.case import read_case
from costcompare.case.facts import Case, Home
from costcompare.case.new import new_case
from costcompare.case.read import case_from_document
from costcompare.comfort import comfort_limits
from costcompare.comparing import setpoints, weather_of
from costcompare.comparison import AS_LIVED
from costcompare.simulation import LANES, Run, Years, simulate_years
from costcompare.simulation.ahead import ahead_of
from costcompare.simulation.assembly import Assembly, assemble, surfaces_of
from costcompare.simulation.environment import Environment, environment
from costcompare.simulation.run import step_side_by_side, step_through
from costcompare.simulation.surfaces import partitions

Progress = Callable[[str, float], None]

BEST_OF = 5
INTEGRATED_DAYS, SETTLING_DAYS = 5, 2
"""Days from 1 January that the integrator runs, and how many of them before heat is compared"""
PLAIN_HOURS = 48
BEDROOMS = (1, 2, 4, 6, 8)
FIRST_AREA, AREA_A_BEDROOM = 700, 330
"""[ft2] of homes laid out to see how time goes with rooms (judgement)"""
SPREAD = 0.2
"""Members of an ensemble differ: their air leakage lies within this share of the case's"""


@dataclass(frozen=True)
class Ensemble:
    """Many homes at once."""

    members: int
    threads: int
    house_years_per_second: float


@dataclass(frozen=True)
class Growth:
    """How the time of one house-year goes with the home."""

    what: str
    count: int
    milliseconds: float


@dataclass(frozen=True)
class Benchmark:
    """Everything that was measured; seconds are of the processor but for house-years a second."""

    title: str
    machine: Computer
    rooms: int
    surfaces: int
    modes: int
    milliseconds_a_year: float
    """One home over one year on one core, from facts to sums by day, best of five"""
    microseconds_an_hour: float
    """Of the compiled loop alone"""
    microseconds_an_hour_side_by_side: float
    """Of one of as many homes as are stepped together, with putting them side by side"""
    integrated_days: int
    times_faster_than_solve_ivp: float
    heating_difference_to_solve_ivp: float
    """Relative, over the days that both ran"""
    times_faster_than_numpy_loop: float
    solutions_an_hour: float
    """How often the small system of the air is solved, in the stretch of the plain loop"""
    gigaflops: float
    """Multiplications and additions that the loop needs, a second"""
    share_of_peak: float
    """Of what the core was measured to do at its best"""
    share_of_peak_side_by_side: float
    house_years_per_second: float
    """With the most members, on all cores"""
    thread_speedup: float
    """From one thread to two, with the most members"""
    same_digits: bool
    """Whether one thread and all threads gave the same figures to the last digit"""
    ensembles: tuple[Ensemble, ...]
    growth: tuple[Growth, ...]
    resident_mb: float
    peak_mb: float


def benchmark(
    case_file: Path,
    *,
    members: Sequence[int] = (1, 100, 1000),
    integrated_days: int = INTEGRATED_DAYS,
    progress: Progress | None = None,
) -> Benchmark:
    """Measure a case: today's system at the settings of today."""
    tell = progress or (lambda _text, _share: None)
    case = read_case(case_file)
    around = environment(weather_of(case))
    run = _member(case, case.home, 0)
    tell("Compiling, where nothing is compiled yet", 0.0)
    simulate_years([run], around.weather)
    assembly = assemble(case.home, case.today, around, run.setpoints, with_twin=False)
    tell("One home", 0.02)
    one = _fresh_years(case, around, BEST_OF)
    hour = min(_seconds(lambda: step_through(assembly, explained=False)) for _ in range(BEST_OF))
    hour /= len(assembly.drive.year.order)
    counted = 24 * min(SETTLING_DAYS, integrated_days - 1)
    stretch = range(24 * integrated_days)
    solve = _integrated(case, assembly, around, stretch, counted, tell)
    tell("The same hours in plain Python and NumPy", 0.5)
    plains = [plain_loop(case_file, 0, PLAIN_HOURS) for _ in range(BEST_OF)]
    plain = min(plains, key=lambda loop: loop.seconds_an_hour)
    tell("Many homes", 0.6)
    ensembles, same = _ensembles(case, around, sorted(members), tell)
    most = [e for e in ensembles if e.members == max(members)]
    by_threads = {e.threads: e.house_years_per_second for e in most}
    tell("Larger homes", 0.9)
    growth = _growth(case, around)
    chains = assembly.shell.model.chains
    operations = _operations(assembly, plain.solutions_an_hour)
    beside, peak_operations = _hour_beside(case, around), peak_flops()
    resident, peak = memory_mb()
    return Benchmark(
        title=case.title,
        machine=computer(),
        rooms=len(case.home.rooms),
        surfaces=int(np.count_nonzero(chains.face_first)),
        modes=int(np.count_nonzero(chains.decay)),
        milliseconds_a_year=1000.0 * one,
        microseconds_an_hour=1.0e6 * hour,
        microseconds_an_hour_side_by_side=1.0e6 * beside,
        integrated_days=integrated_days,
        times_faster_than_solve_ivp=solve.seconds / len(stretch) / hour,
        heating_difference_to_solve_ivp=solve.difference,
        times_faster_than_numpy_loop=plain.seconds_an_hour / hour,
        solutions_an_hour=plain.solutions_an_hour,
        gigaflops=operations / hour / 1.0e9,
        share_of_peak=operations / hour / peak_operations,
        share_of_peak_side_by_side=operations / beside / peak_operations,
        house_years_per_second=max(by_threads.values()),
        thread_speedup=by_threads[2] / by_threads[1],
        same_digits=same,
        ensembles=tuple(ensembles),
        growth=growth,
        resident_mb=resident,
        peak_mb=peak,
    )


def _seconds(work: Callable[[], object]) -> float:
    begun = time.process_time()
    work()
    return time.process_time() - begun


def _member(case: Case, home: Home, number: int) -> Run:
    """A home of its own: its air leakage differs a little from that of every other."""
    leak = home.house.leakage
    factor = 1.0 + SPREAD * np.sin(number)
    flow, changes = leak.flow_at_50_pa, leak.air_changes
    leak = replace(
        leak,
        flow_at_50_pa=None if flow is None else flow * factor,
        air_changes=None if changes is None else changes * factor,
    )
    home = replace(home, house=replace(home.house, leakage=leak))
    return Run(home, case.today, setpoints(home, AS_LIVED), comfort_limits(home))


def _fresh_years(case: Case, around: Environment, times: int) -> float:
    """Processor seconds of one home that was never seen before."""
    runs = [_member(case, case.home, 1000 + n) for n in range(times)]
    return min(_seconds(partial(simulate_years, [run], around.weather)) for run in runs)


def _hour_beside(case: Case, around: Environment) -> float:
    """Processor seconds of an hour of one of the homes that are stepped side by side."""
    runs = [_member(case, case.home, n) for n in range(LANES)]
    homes = [assemble(r.home, r.system, around, r.setpoints, with_twin=False) for r in runs]
    written = step_side_by_side(homes)
    best = min(_seconds(lambda: step_side_by_side(homes, written)) for _ in range(BEST_OF))
    return best / LANES / len(homes[0].drive.year.order)


@dataclass(frozen=True)
class _Solved:
    seconds: float
    difference: float


def _integrated(
    case: Case,
    assembly: Assembly,
    around: Environment,
    stretch: range,
    counted: int,
    tell: Progress,
) -> _Solved:
    """The integrator and the hourly model over the same days from the same start."""
    shell, drive = assembly.shell, assembly.drive
    builder = surfaces_of(case.home, case.today, around, shell.nodes, shell.spaces, None)
    network = passive(
        builder, shell.model.air.storage, partitions(case.home, shell.nodes), len(case.home.rooms)
    )
    ahead = ahead_of(shell.model, drive.year.wind)
    done = [
        integrate(
            network,
            shell.model,
            ahead,
            drive,
            hours=stretch,
            counted_from=counted,
            progress=partial(_told, tell, n),
        )
        for n in range(BEST_OF)
    ]
    # The integrator opens no windows.
    order = np.arange(len(stretch), dtype=np.uint64)
    year = drive.year._replace(order=order, recorded_from=0, airing_above=np.inf)
    ours = step_through(replace(assembly, drive=drive._replace(year=year)), explained=False)
    heating = float((ours.main + ours.strips)[counted : len(stretch)].sum()) / 1000.0
    return _Solved(min(one.seconds for one in done), heating / done[0].heating_kwh - 1.0)


def _told(tell: Progress, number: int, share: float) -> None:
    text = f"The same home by solve_ivp, {number + 1} of {BEST_OF}"
    tell(text, 0.05 + 0.45 * (number + share) / BEST_OF)


def _ensembles(
    case: Case, around: Environment, members: Sequence[int], tell: Progress
) -> tuple[list[Ensemble], bool]:
    """House-years a second on one thread and on two, best of what the time allows."""
    found, same = [], True
    for count in members:
        runs = [_member(case, case.home, n) for n in range(count)]
        years: list[Years] = []
        for threads in (1, 2):
            best = np.inf
            for _ in range(BEST_OF if count < 500 else 2):
                begun = time.perf_counter()
                result = simulate_years(runs, around.weather, threads=threads)
                best = min(best, time.perf_counter() - begun)
            years.append(result)
            found.append(Ensemble(count, threads, count / best))
            tell(f"{count} homes", 0.6 + 0.3 * len(found) / (2 * len(members)))
        same = same and np.array_equal(years[0].electricity, years[1].electricity)
    return found, same


def _growth(case: Case, around: Environment) -> tuple[Growth, ...]:
    """One house-year of each choice, and of homes with few and many rooms at the same place."""
    systems = [("today", case.home, case.today)]
    systems += [(option.name, option.home, option.system) for option in case.options]
    for bedrooms in BEDROOMS:
        laid_out = _laid_out(bedrooms)
        systems.append((f"today, number of bedrooms: {bedrooms}", laid_out.home, laid_out.today))
    found = []
    for name, home, system in systems:
        run = Run(home, system, setpoints(home, AS_LIVED))
        simulate_years([run], around.weather)
        taken = min(_seconds(partial(simulate_years, [run], around.weather)) for _ in "123")
        found.append(Growth(name, len(home.rooms), 1000.0 * taken))
    return tuple(found)


def _laid_out(bedrooms: int) -> Case:
    """A home of so many bedrooms, its rooms laid out as for any new case."""
    area = f"{FIRST_AREA + bedrooms * AREA_A_BEDROOM} ft2"
    text = new_case(bedrooms=bedrooms, floor_area=area)
    return case_from_document(tomllib.loads(text))


def _operations(assembly: Assembly, solutions: float) -> float:
    """Multiplications and additions of an hour, by counting the loops over arrays."""
    model, emitters = assembly.shell.model, len(assembly.emitters)
    chains, order = model.chains, ahead_of(model, assembly.drive.year.wind).order
    nodes, rooms = model.air.nodes, model.air.rooms
    modes, faces = np.count_nonzero(chains.decay), np.count_nonzero(chains.face_first)
    surfaces = 9 * modes + 8 * len(chains.touch_end) + 6 * faces
    surfaces += modes // 5  # the closing sum of every eleventh hour
    surfaces += 2 * (2 * rooms * nodes + rooms * rooms)
    rows, columns = np.diff(order.row_start), np.diff(order.column_start)
    eliminating = int(np.sum(rows * (3 + 2 * columns + 2 * emitters)))
    substituting = int(np.sum(1 + 2 * columns)) * (1 + emitters)
    return surfaces + solutions * (eliminating + substituting + 30 * rooms)
