"""Print the crawlspace of every example month by month.

``python -m tests.published.show_crawlspaces`` writes tables as docs/validation.md shows them.

Monthly means of the outdoor air, the crawlspace and each room, today as the family lives now,
and what is left of the crawlspace's warmth with each option. Not a test: what is known of
crawlspaces with leaky ducts is a band, and a weak one.
"""

# ruff: noqa: T201 - printing is what it does
from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from costcompare import read_case, simulate
from costcompare.case import example_names, example_path
from costcompare.case.facts import Case
from costcompare.comparing import weather_of
from costcompare.simulation import HourlyResult

MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"]
SPACE = "crawlspace"


def monthly(year: HourlyResult, hourly: NDArray[np.float64]) -> NDArray[np.float64]:
    """Means of the twelve months of standard time."""
    month = year.index.month.to_numpy() - 1
    return np.asarray(np.bincount(month, weights=hourly) / np.bincount(month))


def table(year: HourlyResult) -> None:
    """The months as rows; temperatures in degC, the difference in K."""
    rooms = [monthly(year, year.room_temperature[:, n]) for n in range(len(year.room_names))]
    outdoors = monthly(year, year.outdoor_temperature)
    space = monthly(year, year.space_temperature[SPACE])
    print(
        "| month | outdoors | crawlspace | above outdoors |", *map("{} |".format, year.room_names)
    )
    print("|---" * (4 + len(rooms)) + "|")
    for m, name in enumerate(MONTHS):
        values = [outdoors[m], space[m], space[m] - outdoors[m], *(room[m] for room in rooms)]
        print(f"| {name} |", *(f"{value:.1f} |" for value in values))


def winter(case: Case) -> None:
    """Each choice: crawlspace above outdoors in January, its coldest hour, hours of frost."""
    print("| choice | above outdoors in January, K | coldest hour, degC | hours below 0 degC |")
    print("|---|---|---|---|")
    weather = weather_of(case)
    for name in (None, *(option.name for option in case.options)):
        year = simulate(case, name, weather=weather)
        space = year.space_temperature[SPACE]
        above = monthly(year, space - year.outdoor_temperature)[0]
        frost = int((space < 0.0).sum())
        print(f"| {name or 'Today'} | {above:.1f} | {space.min():.1f} | {frost:,} |")


def main() -> None:
    """Every example that has a crawlspace."""
    for name in example_names():
        case = read_case(example_path(name))
        if case.home.crawlspace is None:
            continue
        print(f"\n{name}: {case.title}\n")
        table(simulate(case))
        print()
        winter(case)


if __name__ == "__main__":
    main()
