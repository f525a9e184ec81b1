"""What ``compare`` says about the crawlspace: one compact table."""

from __future__ import annotations

from collections.abc import Sequence

from costcompare.comparison import Choice, CrawlspaceYear
from costcompare.views import numbers
from costcompare.views.terminal import Heading, Sentences, Table
from costcompare.views.wording.naming import as_a_label

COLUMNS = (
    "choice",
    "coldest night",
    "coldest hour",
    "hours below 32 °F",
    "winter mean",
    "damp hours",
    "floor in winter",
)


def under_the_floor(choices: Sequence[Choice]) -> list[Heading | Table | Sentences]:
    """A row for each choice that has a crawlspace; nothing where none has."""
    found = [(choice, choice.crawlspace) for choice in choices if choice.crawlspace is not None]
    if not found:
        return []
    rows = tuple((_label(choice), *_cells(space)) for choice, space in found)
    at_risk = found[0][1].hours_outdoors_below_20f
    return [
        Heading("Under the floor, options at the warmth you want"),
        Table(COLUMNS, rows),
        Sentences(
            f"Outdoors it is below 20 °F for {numbers.hours(at_risk)} of this year: from about "
            "there water pipes in an unheated space can freeze. Damp hours are a share of the "
            "year with air above 80 % relative humidity, an index and not a forecast. The floor "
            "is the face that feet touch, from 6:00 to 22:00 in December to February."
        ),
    ]


def _label(choice: Choice) -> str:
    name = as_a_label(choice)
    return f"{name}, {choice.warmth}" if choice.is_today else name


def _cells(space: CrawlspaceYear) -> tuple[str, ...]:
    return (
        numbers.degrees(space.coldest_night_degf),
        numbers.degrees(space.minimum_temperature_degf),
        numbers.count(space.hours_below_freezing),
        numbers.degrees(space.winter_mean_degf),
        numbers.percent(space.damp_share),
        numbers.degrees(space.floor_winter_degf),
    )
