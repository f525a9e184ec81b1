"""Take the pictures of the report that the documentation shows.

Run it as ``python -m tests.views.report.take_pictures``; it writes docs/pictures/. The pages
are drawn by the typesetter itself, no other program is needed.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

from costcompare.case import example_path, read_case
from costcompare.comparing import TODAY, compare, weather_of
from costcompare.ranges import with_ranges
from costcompare.settings import settings
from costcompare.sizing import size
from costcompare.thermostat import sweep
from costcompare.views.report import tried_settings
from costcompare.views.report.card_sheet import card_document
from costcompare.views.report.contractor_sheet import contractor_document
from costcompare.views.report.home_report import home_document
from costcompare.views.report.typesetting import pictures

PICTURES = Path(__file__).parents[3] / "docs" / "pictures"
DAY = date(2027, 1, 15)
DOTS = 72.0
"""[1/in] enough to read the pages, small enough for a repository"""


def take_pictures() -> None:
    """Both pages of the example home's report, the card and the first page of the sheet."""
    case = read_case(example_path("demo"))
    weather = weather_of(case)
    comparison = with_ranges(compare(case, weather=weather), case, weather=weather)
    first = case.options[0].name
    swept = sweep(case, tried_settings(case.home.thermostat.wanted), only={TODAY, first})
    report = home_document(comparison, case, option=first, sweep=swept, made_on=DAY)
    for number, picture in enumerate(pictures(report, ppi=DOTS), start=1):
        (PICTURES / f"report-{number}.png").write_bytes(picture)
    heads = next(one for one in case.options if one.kind == "ductless heat pump")
    sizing = size(replace(case, options=(heads,)))
    card = settings(case, heads.name, sizing=sizing)
    document = card_document(card, case.title, made_on=DAY)
    (PICTURES / "card.png").write_bytes(pictures(document, ppi=DOTS, pages=1)[0])
    sheet = contractor_document(
        comparison, sizing, card, installed_on=case.money.installed_on, made_on=DAY
    )
    (PICTURES / "contractor-1.png").write_bytes(pictures(sheet, ppi=DOTS)[0])


if __name__ == "__main__":
    take_pictures()
