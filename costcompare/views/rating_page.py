"""What ``rate`` prints: standard ratings of one machine, as blocks for a terminal."""

from __future__ import annotations

from costcompare.equipment.ratings import RatingBin, Ratings, ScopRating, SeasonalRating
from costcompare.views import numbers
from costcompare.views.terminal import Heading, Page, Points, Sentences, Table

NO_BILL = (
    "A rating compares machines on paper. It says little about a bill: its load is none at 55 °F, "
    "the machine stands at set speeds, and standby is left out. costcompare compare "
    "follows a machine hour by hour instead."
)


def rating_page(ratings: Ratings) -> Page:
    """Each rating with the sums behind it, then what is not confirmed, then the warning."""
    page: list[Heading | Sentences | Points | Table] = [Heading(ratings.title)]
    page.append(Table(("rating", "value", "as published", "season"), tuple(_rows(ratings))))
    for rating in (ratings.hspf2, ratings.seer2):
        if rating is not None and rating.bins:
            page += [Heading(f"{rating.name}, bin by bin"), _bins(rating.bins)]
    if ratings.scop is not None:
        page += [Heading("SCOP, what it is made of"), Sentences(_scop(ratings.scop))]
    notes = [note for rating in _all(ratings) for note in rating.notes]
    if notes:
        page += [Heading("Not confirmed"), Points(tuple(notes))]
    page.append(Sentences(NO_BILL))
    return page


def _all(ratings: Ratings) -> list[SeasonalRating | ScopRating]:
    every = (ratings.hspf2, ratings.seer2, ratings.scop)
    return [rating for rating in every if rating is not None]


def _rows(ratings: Ratings) -> list[tuple[str, str, str, str]]:
    rows = [
        (rating.name, f"{rating.value:.2f} Btu/Wh", f"{rating.label:.2f}", rating.season)
        for rating in (ratings.hspf2, ratings.seer2)
        if rating is not None
    ]
    if ratings.scop is not None:
        one = ratings.scop
        season = f"heating, {one.climate} climate"
        rows.append((one.name, f"{one.value:.2f}", f"{one.value:.1f}", season))
    return rows


def _bins(bins: tuple[RatingBin, ...]) -> Table:
    columns = ("outdoors", "share of hours", "load, Btu/h", "runs", "power, W", "resistance, W")
    rows = tuple(
        (
            numbers.degrees(one.outdoor_degf),
            f"{one.share:.1%}",
            numbers.count(one.load_btu_h),
            one.running,
            numbers.count(one.power_w),
            numbers.count(one.resistance_w),
        )
        for one in bins
    )
    return Table(columns, rows, left=frozenset({3}))


def _scop(rating: ScopRating) -> str:
    return (
        f"While heating {rating.while_heating:.2f}: {numbers.kwh(rating.heat_kwh)} of heat from "
        f"{numbers.kwh(rating.compressor_kwh)} of the machine and {numbers.kwh(rating.backup_kwh)} "
        f"of resistance heat; idle it takes {numbers.kwh(rating.idle_kwh)} a year."
    )
