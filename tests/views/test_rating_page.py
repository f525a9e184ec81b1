"""What rate prints."""

from __future__ import annotations

from importlib import resources

from costcompare.equipment.ratings import Ratings, rate_file
from costcompare.views.rating_page import rating_page
from costcompare.views.terminal import plain_lines


def page(ratings: Ratings) -> str:
    return "\n".join(plain_lines(rating_page(ratings)))


def test_ratings_with_their_sums_and_doubts() -> None:
    path = str(resources.files("costcompare") / "data" / "rating_example.toml")
    ratings = rate_file(path)
    shown = page(ratings)
    assert "A wall head of 12 kBtu/h (invented)" in shown
    assert "HSPF2, bin by bin" in shown
    for rating in (ratings.hspf2, ratings.seer2):
        assert rating is not None
        assert f"{rating.value:.2f} Btu/Wh" in shown
        assert all(note in shown for note in rating.notes)
    assert "from memory" in shown
    assert "It says little about a bill" in shown


def test_what_has_no_points_is_not_shown() -> None:
    path = str(resources.files("costcompare") / "data" / "rating_example.toml")
    whole = rate_file(path)
    alone = Ratings(1, whole.title, None, whole.seer2, None)
    assert "HSPF2" not in page(alone)
    assert "SCOP" not in page(alone)
