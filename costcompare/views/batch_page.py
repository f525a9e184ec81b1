"""The homes of a list, the best first: on a terminal and as a table for a spreadsheet."""

from __future__ import annotations

from collections.abc import Hashable
from typing import Any

import pandas as pd

from costcompare.batch import Ranking
from costcompare.views import numbers
from costcompare.views.report.spreadsheet import safe
from costcompare.views.terminal import Heading, Page, Points, Sentences, Table

MOST_SHOWN = 20
"""Homes on a terminal; the file holds all of them"""
MOST_FAULTS = 40

PAGE_NOTICE = (
    "Estimates from facts that were seen or guessed, not promises; savings are the bill "
    "before, as they live now, less the bill after at the warmth they want."
)


def batch_page(ranking: Ranking, *, by: str) -> Page:
    """The best homes by one ranking, and what is wrong with those that were left out."""
    table, left_out = ranking.table, ranking.left_out
    homes = len(set(table["rank_by_saving"]))
    page: list[Heading | Sentences | Points | Table] = []
    if homes:
        page += [
            Heading(f"{numbers.count(homes)} homes, ranked by {by}"),
            _rows(table.head(MOST_SHOWN)),
            Sentences(PAGE_NOTICE),
        ]
    else:
        page.append(Heading("No home could be worked out"))
    if left_out:
        said = [sentence for home in left_out for sentence in home.faults]
        more = len(said) - MOST_FAULTS
        page += [
            Heading(f"Left out: {numbers.count(len(left_out))}"),
            Points(tuple(said[:MOST_FAULTS])),
        ]
        if more > 0:
            page.append(Sentences(f"… and {numbers.count(more)} more."))
    return page


def _rows(table: pd.DataFrame) -> Table:
    columns = ("home", "option", "bill now", "bill after", "saving", "payback", "warm now", "after")
    rows = tuple(_row(line) for line in table.to_dict("records"))
    return Table(columns, rows, left=frozenset({0, 1}))


def _row(line: dict[Hashable, Any]) -> tuple[str, ...]:
    payback = line["simple_payback_years"]
    return (
        str(line["home"]),
        str(line["option"]),
        numbers.dollars(line["bill_now_usd"]),
        numbers.dollars(line["bill_after_usd"]),
        numbers.dollars(line["first_year_saving_usd"]),
        numbers.years(None if pd.isna(payback) else float(payback)),
        numbers.percent(line["warm_now_percent"] / 100.0),
        numbers.percent(line["warm_after_percent"] / 100.0),
    )


def spreadsheet(table: pd.DataFrame) -> pd.DataFrame:
    """The table as a spreadsheet may open it: money to the cent, no text that it would run."""
    sheet = table.copy()
    for column in ("home", "option"):
        sheet[column] = sheet[column].map(safe)
    for column in sheet.columns:
        if column.endswith("_usd"):
            sheet[column] = sheet[column].round(2)
        elif column.endswith(("_percent", "_years")):
            sheet[column] = sheet[column].astype("float64").round(1)
    return sheet
