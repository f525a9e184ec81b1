"""What goes into part three: the rooms, their year as maps, and the coldest day."""

from __future__ import annotations

from costcompare import units
from costcompare.case.facts import Case
from costcompare.comparison import AS_WANTED, Choice
from costcompare.views import numbers
from costcompare.views.dashboard import pieces
from costcompare.views.dashboard.filling import Filled
from costcompare.views.dashboard.filling_plan import plan_part
from costcompare.views.dashboard.pieces import node
from costcompare.views.dashboard.workbench import Worked
from costcompare.views.figures import maps, rows
from costcompare.views.figures.coldest_day import coldest_day
from costcompare.views.wording import warmth


def rooms_part(worked: Worked, name: str) -> Filled:
    """Part three: warm hours of each room, its year as a map, and the coldest day."""
    comparison = worked.comparison
    chosen = comparison.choice(name, AS_WANTED)
    limits = comfort_limits(worked.house)
    answer = warmth.rooms_answer(comparison, name)
    maps_answer = warmth.maps_answer(comparison, name)
    day_answer = warmth.coldest_day_answer(comparison, name)
    figure = maps.room_maps(comparison, name, limits)
    return {
        "answer": answer,
        "figure": answer,
        **plan_part(worked, name),
        "strips": pieces.room_list(rows.room_strips(comparison, name)),
        "hot": warmth.hot_answer(comparison, name),
        "table": _rooms_table(comparison.today, chosen),
        "maps_answer": maps_answer,
        "maps_figure": maps_answer,
        "maps": figure,
        "maps_style": {"height": f"{figure.layout.height}px"},
        "maps_key": pieces.bullet_list(
            (
                [
                    node("span", class_="swatch", style=f"background-color:{band.colour}"),
                    band.words,
                ]
                for band in maps.bands(limits)
            ),
            class_="key",
        ),
        "day_answer": day_answer,
        "day_figure": day_answer,
        "day": coldest_day(comparison, name, limits),
        "day_table": _day_table(comparison.today, chosen),
    }


def _rooms_table(today: Choice, chosen: Choice) -> pieces.Tree:
    return pieces.table(
        "Hours in use and how warm they are, now and after",
        (
            "Room",
            "In use",
            "Warm now",
            "Warm after",
            "Cold now",
            "Cold after",
            "Hot now",
            "Hot after",
            "Coldest now",
            "Coldest after",
        ),
        [
            (
                now.name,
                numbers.count(now.wanted_hours),
                numbers.count(now.comfort_hours),
                numbers.count(later.comfort_hours),
                numbers.count(now.cold_hours),
                numbers.count(later.cold_hours),
                numbers.count(now.hot_hours),
                numbers.count(later.hot_hours),
                numbers.degrees(now.minimum_temperature_degf),
                numbers.degrees(later.minimum_temperature_degf),
            )
            for now, later in zip(today.rooms, chosen.rooms, strict=True)
        ],
    )


def _day_table(today: Choice, chosen: Choice) -> pieces.Tree:
    room = warmth.coldest_room_of_the_day(today)
    now, later = today.coldest_day, chosen.coldest_day
    return pieces.table(
        f"The coldest day, {room}",
        ("Hour", "Outdoors", "Now", "After", "Power now", "Power after"),
        [
            (
                f"{hour} h",
                numbers.degrees(now.outdoor_degf[hour]),
                numbers.degrees(now.rooms_degf[room][hour]),
                numbers.degrees(later.rooms_degf[room][hour]),
                f"{numbers.ratio(now.power_kw[hour])} kW",
                f"{numbers.ratio(later.power_kw[hour])} kW",
            )
            for hour in range(24)
        ],
    )


def comfort_limits(case: Case) -> maps.ComfortLimits:
    """Between these a room counts as warm."""
    wanted, band = case.home.thermostat, case.home.comfort
    cold, _ = units.customary(wanted.wanted - band.below, "temperature")
    hot, _ = units.customary(wanted.cooling + band.above, "temperature")
    return maps.ComfortLimits(cold_below=cold, hot_above=hot)
