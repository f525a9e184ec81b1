"""The settings card in sentences: what to set, and why."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from costcompare.settings import (
    NO_DIFFERENCE,
    FurnaceSetting,
    HeadSetting,
    HeaterSetting,
    NightSetting,
    SettingsCard,
    StripSetting,
)
from costcompare.views import numbers
from costcompare.views.wording.naming import listed, plural
from costcompare.views.wording.room_needs import clock


def card_answers(card: SettingsCard) -> tuple[str, ...]:
    """Every setting of a card, each with its reason."""
    return tuple(_answers(card))


def _answers(card: SettingsCard) -> Iterator[str]:
    yield from _heads(card.heads)
    if card.heads:
        yield _mode(card)
        yield _fan(card)
    elif card.has_heat_pump:
        yield (
            "Thermostat: heat in winter, cool in summer, never the setting that picks one by "
            "itself, and the strips’ emergency setting only when the heat pump has failed."
        )
    if card.strips is not None:
        yield _strips(card.strips)
    if card.furnace is not None:
        yield _furnace(card.furnace)
    yield from _heaters(card.heaters)
    yield _night(card.night)


def _heads(heads: Sequence[HeadSetting]) -> Iterator[str]:
    """Heads with the same setting at the same height are told together."""
    alike: dict[HeadSetting, list[str]] = {}
    for head in heads:
        alike.setdefault(replace(head, room=""), []).append(head.room)
    for head, rooms in alike.items():
        over = numbers.degrees_of_difference(head.reads_over_degf)
        known = "" if head.height_is_stated else ", the usual height,"
        yield (
            f"{plural(len(rooms), 'Head', 'Heads')} in {listed(rooms)}: "
            f"{numbers.degrees(head.set_degf)} on the remote. You want "
            f"{numbers.degrees(head.wanted_degf)} where you sit; at "
            f"{numbers.feet(head.mounting_height_ft)}{known} the air is about {over} warmer in "
            "winter. If it is too warm or too cool after two days, change by one degree."
        )


def _mode(card: SettingsCard) -> str:
    hours = numbers.hours(card.too_warm_hours)
    reason = (
        f"From November to March a room with a head is more than "
        f"{numbers.degrees_of_difference(2.0)} above its setting in {hours} "
        "of this year, from sun and people; left to choose, a head may cool then and heat the "
        "same heat back in the evening."
        if card.too_warm_hours
        else "In winter there is nothing to cool."
    )
    return f"Mode: heat, not the automatic one, until you want cooling. {reason}"


def _fan(card: SettingsCard) -> str:
    most = max(head.reads_over_degf for head in card.heads)
    return (
        "Fan: automatic or high, vanes pointing down. At a low fan the warm air stays under the "
        f"ceiling, and the head, which already reads about "
        f"{numbers.degrees_of_difference(most)} too warm, stops too soon."
    )


def _strips(strips: StripSetting) -> str:
    lockout = numbers.degrees(strips.lockout_degf)
    if strips.balance_degf is None:
        why = (
            "The heat pump covers the load down to the coldest hour of the year; the strips are "
            "for days beyond that and for a failure."
        )
    else:
        why = (
            f"The heat pump meets the load down to {numbers.degrees(strips.balance_degf)}; "
            f"{numbers.degrees_of_difference(strips.margin_degf)} are added for wind and for a "
            "house that loses more than the survey says."
        )
    stated = "never lock out" if strips.stated_degf is None else numbers.degrees(strips.stated_degf)
    change = strips.stated_usd - strips.bill_usd
    effect = (
        "makes no difference to the bill while the warmth is held; it keeps the strips from "
        "joining in on mild mornings"
        if abs(change) < numbers.YEAR_STEP
        else f"takes about {numbers.dollars_a_year(change)} a year off"
        if change > 0.0
        else f"adds about {numbers.dollars_a_year(-change)} a year"
    )
    return (
        f"Strips: locked out above {lockout} outdoors. {why} Against the setting in the case "
        f"({stated}) this {effect}; the strips then use {numbers.kwh(strips.backup_kwh)} a year."
    )


def _furnace(furnace: FurnaceSetting) -> str:
    tried = listed(
        [
            f"{numbers.degrees(one.setting_degf)}: {numbers.dollars_a_year(one.bill_usd)} "
            f"({numbers.kwh(one.backup_kwh)} of furnace, {numbers.percent(one.warm_share)} of the "
            "wanted hours warm)"
            for one in furnace.tried
        ]
    )
    return (
        f"Old furnace’s thermostat: {numbers.degrees(furnace.set_degf)}, "
        f"{numbers.degrees_of_difference(furnace.below_wanted_degf)} below the heads. The bill of "
        f"a year with it at {tried}. No colder setting saves "
        f"{numbers.dollars(NO_DIFFERENCE)} a year more."
    )


def _heaters(heaters: tuple[HeaterSetting, ...]) -> Iterator[str]:
    """Heaters with one setting are told together."""
    by_setting: dict[float, list[str]] = {}
    for heater in heaters:
        by_setting.setdefault(heater.set_degf, []).append(heater.room)
    for setting, rooms in by_setting.items():
        yield (
            f"Room heaters in {listed(rooms)}: {numbers.degrees(setting)}, no higher than the room "
            "needs; every degree there is paid at the full price of resistance heat."
        )


def _night(night: NightSetting) -> str:
    held, back = (numbers.dollars_a_year(usd) for usd in (night.held_usd, night.set_back_usd))
    lower = numbers.degrees_of_difference(night.setback_degf)
    warm = (
        f"{numbers.percent(night.held_warm_share)} of the wanted hours are warm when it is held, "
        f"{numbers.percent(night.set_back_warm_share)} when it is set back"
    )
    bills = f"Held day and night the year costs {held}, set back by {lower} ({_span(night)}) {back}"
    if night.advice == "makes no difference":
        return f"Night: hold or set back, it makes no difference. {bills}; {warm}."
    if night.advice == "hold":
        return f"Night: hold the same warmth. {bills}; {warm}."
    return f"Night: set it back if you like it cooler then. {bills}; {warm}."


def _span(night: NightSetting) -> str:
    return " and ".join(
        " to ".join(clock(int(hour) % 24) for hour in stretch.split("-"))
        for stretch in night.night_hours.split(",")
        if stretch
    )
