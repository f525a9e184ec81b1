"""Print how long the program takes on this machine: ``python -m tests.show_speed``.

Not a test, since no test may depend on the speed of a machine. The first run is a new process
with an empty folder for compiled code; the others find the code that it has left there.
docs/performance.md keeps the figures.
"""

# ruff: noqa: T201 - printing is what it does
from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from costcompare import read_case
from costcompare.case import example_path
from costcompare.comparing import compare, setpoints, weather_of
from costcompare.comparison import AS_LIVED
from costcompare.simulation import simulate_home
from costcompare.thermostat import sweep

ROOT = Path(__file__).parent.parent
TIMES = 5
"""Repetitions; the shortest is given, the one that others on the machine disturbed least"""


def command(arguments: str, cache: str) -> float:
    """Wall time of one command in a process of its own [s]."""
    environment = os.environ | {"XDG_CACHE_HOME": cache, "NO_COLOR": "1"}
    start = time.perf_counter()
    subprocess.run(
        [sys.executable, "-m", "costcompare", *arguments.split()],
        cwd=ROOT,
        env=environment,
        check=True,
        capture_output=True,
    )
    return time.perf_counter() - start


def shortest(work: Callable[[], object], times: int = TIMES) -> float:
    """Shortest wall time of several calls in this process [s]."""
    taken = []
    for _ in range(times):
        start = time.perf_counter()
        work()
        taken.append(time.perf_counter() - start)
    return min(taken)


def main() -> None:
    """Measure and print."""
    with tempfile.TemporaryDirectory() as cache:
        first = command("compare demo", cache)
        second = min(command("compare demo", cache) for _ in range(TIMES))
        turned = min(command("thermostat demo --from 60F --to 72F --step 2F", cache) for _ in "12")
        explained = min(command("explain demo", cache) for _ in "123")
    case = read_case(example_path("demo"))
    weather = weather_of(case)
    lived = setpoints(case.home, AS_LIVED)
    settings = [(setting - 32.0) / 1.8 for setting in range(60, 73, 2)]
    compare(case, weather=weather)
    rows = [
        ("`costcompare compare demo`, first run of all", first),
        ("the same again", second),
        ("`costcompare explain demo`", explained),
        ("`costcompare thermostat demo --from 60F --to 72F --step 2F`", turned),
        ("making the typical year", shortest(lambda: weather_of(case))),
        (
            "one year of one system in a running program",
            shortest(lambda: simulate_home(case.home, case.today, weather, lived)),
        ),
        ("the whole comparison (12 years)", shortest(lambda: compare(case, weather=weather))),
        (
            "a thermostat sweep (7 settings, held and set back, 6 choices: 84 years)",
            shortest(lambda: sweep(case, settings, weather=weather), 2),
        ),
    ]
    print("| what | seconds |\n|---|---|")
    for what, seconds in rows:
        print(f"| {what} | {seconds:.2f} |")


if __name__ == "__main__":
    main()
