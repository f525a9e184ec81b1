"""What ``benchmark`` prints: figures, how they grow, and the machine, as blocks for a terminal."""

from __future__ import annotations

from costcompare.benchmark import Benchmark
from costcompare.simulation import LANES
from costcompare.views import numbers
from costcompare.views.terminal import Heading, Page, Sentences, Table


def benchmark_page(found: Benchmark) -> Page:
    """The ratios first, then house-years a second, then growth, then the machine."""
    ensembles = tuple(
        (numbers.count(e.members), str(e.threads), f"{e.house_years_per_second:.1f}")
        for e in found.ensembles
    )
    growth = tuple((g.what, str(g.count), f"{g.milliseconds:.1f}") for g in found.growth)
    return [
        Heading(found.title),
        Table(("figure", "value"), _figures(found)),
        Heading("Many homes"),
        Table(("homes", "threads", "house-years a second"), ensembles, frozenset()),
        Heading("One year of each choice, on one core"),
        Table(("choice", "rooms", "ms"), growth),
        Heading("Measured on"),
        Sentences(_machine(found)),
    ]


def _figures(found: Benchmark) -> tuple[tuple[str, str], ...]:
    days = found.integrated_days
    return (
        ("one home, one year, one core", f"{found.milliseconds_a_year:.1f} ms"),
        ("an hour of it in the compiled loop", f"{found.microseconds_an_hour:.2f} µs"),
        (
            f"the same, {LANES} homes side by side",
            f"{found.microseconds_an_hour_side_by_side:.2f} µs a home",
        ),
        ("faster than solve_ivp", f"{numbers.count(found.times_faster_than_solve_ivp)} times"),
        (
            f"heating against solve_ivp, {days} days of January",
            f"{found.heating_difference_to_solve_ivp:+.3%}",
        ),
        (
            "faster than a loop in Python and NumPy",
            f"{numbers.count(found.times_faster_than_numpy_loop)} times",
        ),
        ("air systems solved an hour", f"{found.solutions_an_hour:.2f}"),
        (
            "share of the core's peak, alone and side by side",
            f"{found.share_of_peak:.0%}, {found.share_of_peak_side_by_side:.0%}",
        ),
        ("house-years a second", f"{found.house_years_per_second:.0f}"),
        ("two threads against one", f"{found.thread_speedup:.2f} times"),
        ("the same digits on two threads", "yes" if found.same_digits else "no"),
        ("memory now, at most", f"{found.resident_mb:.0f} MB, {found.peak_mb:.0f} MB"),
    )


def _machine(found: Benchmark) -> str:
    one = found.machine
    return (
        f"{one.processor}, {one.cores} cores; {one.system}; Python {one.python}, "
        f"numba {one.numba}, numpy {one.numpy}."
    )
