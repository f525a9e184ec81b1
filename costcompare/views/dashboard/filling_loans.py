"""What goes into part five where something is paid by the month: payments beside the saving."""

from __future__ import annotations

from typing import Any

from costcompare.comparison import Comparison, Warmth
from costcompare.views import numbers
from costcompare.views.dashboard import pieces
from costcompare.views.figures.loans import loan_rows, loans_of
from costcompare.views.wording.ways_to_pay import way_answer


def loan_part(comparison: Comparison, name: str, at: Warmth) -> dict[str, Any]:
    """The months of the first year; hidden where nothing is paid by the month."""
    rows = loan_rows(comparison, name, at)
    if not rows:
        return {
            "loan_class": "absent",
            "loan_answer": None,
            "loan_figure": "",
            "loan_rows": None,
            "loan_table": None,
        }
    said = [way_answer(way) for way in loans_of(comparison, name, at)]
    months = [
        (numbers.month_name(month + 1), *(row.texts[month] for row in rows)) for month in range(12)
    ]
    return {
        "loan_class": "",
        "loan_answer": pieces.bullet_list(said, class_="assumptions"),
        "loan_figure": " ".join(said),
        "loan_rows": pieces.bar_rows(rows),
        "loan_table": pieces.table(
            f"The first year by month, {at}",
            ("Month", rows[0].title, *(f"{row.title}: left" for row in rows[1:])),
            months,
        ),
    }
