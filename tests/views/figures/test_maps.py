"""The maps of months and hours."""

from __future__ import annotations

from dataclasses import replace

from costcompare.comparison import AS_WANTED, Choice, Comparison
from costcompare.views.figures.maps import ComfortLimits, bands, room_maps

LIMITS = ComfortLimits(cold_below=68.0, hot_above=79.0)


def test_the_key_says_where_each_colour_begins() -> None:
    assert [band.words for band in bands(LIMITS)] == [
        "below 61 °F",
        "61 °F to 65 °F",
        "65 °F to 68 °F",
        "as warm as you want",
        "above 79 °F",
    ]
    assert len({band.colour for band in bands(LIMITS)}) == 5


def test_every_room_has_a_map_now_and_one_afterwards(comparison: Comparison, option: str) -> None:
    figure = room_maps(comparison, option, LIMITS)
    rooms = [room.name for room in comparison.today.rooms]
    assert len(figure.data) == 2 * len(rooms)
    titles = [note.text.lower() for note in figure.layout.annotations]
    assert titles == [f"{room}, {when}" for room in rooms for when in ("now", "after")]


def test_a_temperature_falls_into_the_band_that_the_key_names(
    comparison: Comparison, option: str
) -> None:
    room = comparison.today.rooms[0].name
    temperatures = (60.9, 61.0, 64.9, 65.1, 67.9, 68.0, 79.0, 80.0)
    hours = (*temperatures, *(70.0,) * 16)
    maps = {
        name: (hours,) * 12 if name == room else hours_of
        for name, hours_of in comparison.today.mean_degf_by_month_and_hour.items()
    }
    changed = replace(
        comparison,
        choices=(
            replace(comparison.today, mean_degf_by_month_and_hour=maps),
            *comparison.choices[1:],
        ),
    )
    shown = room_maps(changed, option, LIMITS).data[0].z[0][: len(temperatures)]
    assert list(shown) == [0, 1, 1, 2, 2, 3, 3, 4]


def test_the_second_map_is_of_the_choice_at_the_wanted_warmth(
    comparison: Comparison, option: str
) -> None:
    room = comparison.today.rooms[0].name
    later = comparison.choice(option, AS_WANTED).mean_degf_by_month_and_hour[room]
    warm = sum(LIMITS.cold_below <= value <= LIMITS.hot_above for row in later for value in row)
    shown = room_maps(comparison, option, LIMITS).data[1].z
    assert sum(value == 3 for row in shown for value in row) == warm


def test_a_name_is_never_markup(comparison: Comparison, option: str) -> None:
    first = comparison.today.rooms[0].name

    def renamed(choice: Choice) -> Choice:
        maps = {
            "<b>den</b>" if name == first else name: hours
            for name, hours in choice.mean_degf_by_month_and_hour.items()
        }
        return replace(choice, mean_degf_by_month_and_hour=maps)

    changed = replace(comparison, choices=tuple(map(renamed, comparison.choices)))
    titles = [note.text for note in room_maps(changed, option, LIMITS).layout.annotations]
    assert titles[0] == "&lt;b&gt;den&lt;/b&gt;, now"
