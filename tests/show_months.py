"""Hold the hourly model against an integrator, month by month: ``python -m tests.show_months``.

Not a test, since it takes minutes. `costcompare benchmark` does the same over some days of
January; here every month has its days, because hours in which the furnace comes and goes are
those where a step of an hour has the most to leave out. docs/performance.md keeps the figures.
"""

# ruff: noqa: T201 - printing is what it does
from __future__ import annotations

import argparse
from dataclasses import replace

import numpy as np

from costcompare import read_case
from costcompare.benchmark.integrated import integrate, passive
from costcompare.case import example_path
from costcompare.comparing import setpoints, weather_of
from costcompare.comparison import AS_LIVED
from costcompare.simulation.ahead import ahead_of
from costcompare.simulation.assembly import assemble, surfaces_of
from costcompare.simulation.environment import environment
from costcompare.simulation.run import step_through
from costcompare.simulation.surfaces import partitions

FIRST_HOURS = tuple(24 * day for day in (4, 35, 63, 94, 124, 155, 185, 216, 247, 277, 308, 338))
"""The fifth day of each month"""


def main() -> None:
    """Print heat of both over the same days of each month."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--days", type=int, default=8, help="of each month")
    parser.add_argument("--settling", type=int, default=3, help="days before heat is counted")
    parser.add_argument("--months", type=int, nargs="+", default=range(1, 13), help="1 to 12")
    asked = parser.parse_args()
    case = read_case(example_path("demo"))
    around = environment(weather_of(case))
    assembly = assemble(
        case.home, case.today, around, setpoints(case.home, AS_LIVED), with_twin=False
    )
    shell, year = assembly.shell, assembly.drive.year
    builder = surfaces_of(case.home, case.today, around, shell.nodes, shell.spaces, None)
    network = passive(
        builder, shell.model.air.storage, partitions(case.home, shell.nodes), len(case.home.rooms)
    )
    # The integrator opens no windows.
    year = year._replace(airing_above=np.inf)
    print("month   hourly kWh   integrated kWh   difference")
    sums = [0.0, 0.0]
    for month in asked.months:
        first = FIRST_HOURS[month - 1]
        hours = range(first, first + 24 * asked.days)
        counted = first + 24 * asked.settling
        other = integrate(
            network,
            shell.model,
            ahead_of(shell.model, year.wind),
            assembly.drive,
            hours=hours,
            counted_from=counted,
            progress=lambda _share: None,
        ).heating_kwh
        own_year = year._replace(order=np.array(hours, dtype=np.uint64), recorded_from=0)
        drive = assembly.drive._replace(year=own_year)
        record = step_through(replace(assembly, drive=drive), explained=False)
        own = float((record.main + record.strips)[counted : hours.stop].sum()) / 1000.0
        sums = [sums[0] + own, sums[1] + other]
        apart = f"{own / other - 1.0:+.2%}" if other > 0.0 else ""
        print(f"{month:5} {own:12.1f} {other:16.1f} {apart:>12}", flush=True)
    print(f"{'all':>5} {sums[0]:12.1f} {sums[1]:16.1f} {sums[0] / sums[1] - 1.0:+12.2%}")


if __name__ == "__main__":
    main()
