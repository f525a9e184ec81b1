"""Take the pictures of the report that the documentation shows.

Run it as ``python -m tests.views.report.take_pictures``; it writes docs/pictures/. The pages
are drawn by the typesetter itself, no other program is needed.
"""

from __future__ import annotations

from datetime import date
from pathlib import Path

from costcompare.case import example_path, read_case
from costcompare.comparing import TODAY, compare
from costcompare.thermostat import sweep
from costcompare.views.report import tried_settings
from costcompare.views.report.home_report import home_report
from costcompare.views.report.pdf import pictures

PICTURES = Path(__file__).parents[3] / "docs" / "pictures"
DAY = date(2027, 1, 15)


def take_pictures() -> None:
    """Both pages of the example home's report."""
    case = read_case(example_path("demo"))
    option = case.options[0].name
    swept = sweep(case, tried_settings(case.home.thermostat.wanted), only={TODAY, option})
    document = home_report(compare(case), case, option=option, sweep=swept, made_on=DAY)
    for number, picture in enumerate(pictures(document), start=1):
        (PICTURES / f"report-{number}.png").write_bytes(picture)


if __name__ == "__main__":
    take_pictures()
