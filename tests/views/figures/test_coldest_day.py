"""The coldest day."""

from __future__ import annotations

from costcompare.comparison import AS_WANTED, Comparison
from costcompare.views.figures.coldest_day import coldest_day
from costcompare.views.figures.maps import ComfortLimits
from costcompare.views.wording.warmth import coldest_room_of_the_day


def test_the_lines_are_those_of_the_day(comparison: Comparison, option: str) -> None:
    figure = coldest_day(comparison, option, ComfortLimits(68.0, 79.0))
    room = coldest_room_of_the_day(comparison.today)
    now, later = comparison.today.coldest_day, comparison.choice(option, AS_WANTED).coldest_day
    assert [tuple(line.y) for line in figure.data] == [
        now.outdoor_degf,
        now.rooms_degf[room],
        now.power_kw,
        later.rooms_degf[room],
        later.power_kw,
    ]
    notes = " ".join(note.text for note in figure.layout.annotations)
    assert "too cold below 68 °F" in notes
    assert room in notes.lower()
