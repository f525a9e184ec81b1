"""What the house and each room need, and which rooms should get a head, in sentences."""

from __future__ import annotations

from costcompare.sizing import DesignConditions, HomeLoad, RankedRoom, RoomLoad, Sizing
from costcompare.views import numbers
from costcompare.views.wording.naming import capital, listed

NOON = 12


def conditions_answer(design: DesignConditions) -> str:
    """The cold hour and the hot day that everything is sized for."""
    cold = numbers.degrees(design.outdoor_degf)
    known = (
        "the coldest 1 % of the hours of the year used, an estimate: the design temperature of the "
        "trade comes from many years and may lie elsewhere"
        if design.outdoor_is_estimated
        else "as the case states"
    )
    day = numbers.day_and_month(design.hot_month, design.hot_day)
    warm, wind = numbers.degrees(design.indoor_degf), numbers.wind(design.wind_mph)
    return (
        f"Heat is reckoned for {cold} outdoors ({known}) with {warm} in every room, a wind of "
        f"{wind}, no sun and nobody at home. "
        f"Cooling is that of the hottest day of the year used, {day} with "
        f"{numbers.degrees(design.hot_hour_degf)} outdoors, windows shut and the rooms at "
        f"{numbers.degrees(design.cooling_degf)}; drying the air comes on top of it."
    )


def house_answer(load: HomeLoad, design: DesignConditions) -> str:
    """What the whole house loses, in parts."""
    parts = listed([f"{numbers.btu_h(part.heat_btu_h)} {_way(part.part)}" for part in load.parts])
    return (
        f"At {numbers.degrees(design.outdoor_degf)} the house loses "
        f"{_both(load.heat_btu_h, numbers.kilowatts(load.heat_w / 1000.0))}, "
        f"{numbers.heat_per_area(load.heat_btu_h_per_ft2)}: {parts}. On the hottest "
        f"day it takes {numbers.btu_h(load.cooling_btu_h)} of cooling at "
        f"{clock(load.cooling_hour)}."
    )


def changed_answer(load: HomeLoad, before: HomeLoad, design: DesignConditions) -> str:
    """What an option leaves of the loss."""
    names = listed([f"“{name}”" for name in load.choices])
    return (
        f"With {names} it loses {numbers.btu_h(load.heat_btu_h)} at "
        f"{numbers.degrees(design.outdoor_degf)}{_change(load, before)}, and takes "
        f"{numbers.btu_h(load.cooling_btu_h)} of cooling."
    )


def _change(load: HomeLoad, before: HomeLoad) -> str:
    if before.heat_btu_h <= 0.0:
        return ""
    less = 1.0 - load.heat_btu_h / before.heat_btu_h
    return f", {numbers.percent(abs(less))} {'less' if less >= 0.0 else 'more'} than now"


def room_answer(room: RoomLoad, design: DesignConditions) -> str:
    """One room with its numbers and what follows from them."""
    sentences = [_room_needs(room, design), _alone(room), _cooling(room), _smallest(room)]
    return " ".join(sentence for sentence in sentences if sentence)


def _room_needs(room: RoomLoad, design: DesignConditions) -> str:
    return (
        f"{capital(room.name)} ({numbers.square_feet(room.floor_area_ft2)}): "
        f"{_both(room.heat_btu_h, f'{numbers.count(room.heat_w)} W')} at "
        f"{numbers.degrees(design.outdoor_degf)} outdoors, "
        f"{numbers.btu_h(room.heat_at_47f_btu_h)} at {numbers.degrees(47.0)}."
    )


def _both(heat_btu_h: float, in_watts: str) -> str:
    """A heat flow in Btu an hour with watts behind it, or in watts alone."""
    written = numbers.btu_h(heat_btu_h)
    return written if numbers.in_si() else f"{written} ({in_watts})"


def _alone(room: RoomLoad) -> str:
    alone = numbers.degrees(room.without_own_heat_degf)
    if room.heated_from_below:
        return (
            f"It needs little or no heat of its own: warm air rises from the "
            f"{room.below_by_stairs}, and with the other rooms warm it stays at {alone}."
        )
    return f"Without heat of its own it falls to {alone} while the other rooms are warm."


def _cooling(room: RoomLoad) -> str:
    if room.cooling_btu_h <= 0.0:
        return ""
    warm = numbers.degrees(room.without_cooling_degf)
    most = ", the warmest of all" if room.wants_cooling_most else ""
    if room.wants_cooling_not_heat:
        most += f", as warm as the {room.below_by_stairs} or warmer: it wants cooling, not heat"
    return (
        f"On the hottest day it reaches {warm} with the windows alone{most}; cooling takes "
        f"{numbers.btu_h(room.cooling_btu_h)} at {clock(room.cooling_hour)}."
    )


def _smallest(room: RoomLoad) -> str:
    return "The smallest head is too big for this room." if room.smallest_head_is_too_big else ""


def ranking_answer(room: RankedRoom) -> str:
    """One room of the ranking, with what it was ranked by."""
    cold = numbers.degrees_of_difference(room.below_wanted_degf)
    hours = f"somebody wants it warm {room.wanted_hours_a_day} hours a day"
    if not room.wanted_hours_a_day:
        hours = "nobody uses it"
    open_to = ""
    if room.open_to:
        open_to = f" It stands open to {listed(room.open_to)}: one head may do for both."
    return (
        f"{capital(room.name)}, {numbers.count(room.score)} points: needs "
        f"{numbers.btu_h(room.heat_btu_h)}, {hours}, today {cold} below wanted in winter.{open_to}"
    )


RANKING = (
    "Points are the room’s heat loss times its hours of use times how cold it is today, 100 for "
    "the first. Load and use speak for a head of its own; the notes above say where the smallest "
    "head is too big, so that a small resistance heater or an open door serves better."
)


def smallest_note(sizing: Sizing) -> str:
    """Which head is the smallest that was held against the rooms."""
    load = sizing.loads[0]
    return (
        "The smallest head that was held against the rooms is a generic one of "
        f"{numbers.nominal(load.smallest_head_kbtu_h)} nominal. At {numbers.degrees(47.0)} it "
        f"gives at least {numbers.btu_h(load.smallest_head_minimum_btu_h)}: in a room that needs "
        "less it goes on "
        "and off. A model’s own sheet decides."
    )


def clock(hour: int) -> str:
    """An hour of the day as people say it: ``4 pm``."""
    half = "am" if hour < NOON else "pm"
    return f"{hour % NOON or NOON} {half}"


def _way(part: str) -> str:
    return {
        "walls, glass and ceilings": "through walls, glass and ceilings",
        "floor": "through the floor",
        "air leaking in": "with air that leaks in",
    }[part]
