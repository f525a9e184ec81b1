"""The line under a document's title: where, which choice, which day."""

from __future__ import annotations

from datetime import date

from costcompare.views import numbers
from costcompare.views.report.catalogue import Catalogue


def subtitle(where: str, made_on: date | None, words: Catalogue) -> str:
    """What is there of the two, with a dot between them."""
    parts = [where]
    if made_on is not None:
        written = f"{numbers.day_and_month(made_on.month, made_on.day)}, {made_on.year}"
        parts.append(words.made_on.format(written))
    return " · ".join(part for part in parts if part)
