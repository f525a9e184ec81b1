"""A commented case file from the few facts that somebody can say on the telephone."""

from __future__ import annotations

import json
import tomllib
from dataclasses import dataclass

from costcompare.case.read import case_from_document
from costcompare.case.values import nearest, shown
from costcompare.errors import CaseError, Fault

STAND_IN = "  # stands in: change it"
"""Comment on a value that was not given"""


@dataclass(frozen=True)
class Asked:
    """One fact that a new case is made from."""

    path: str
    """Where it stands in the case"""
    unit: str
    """Unit of a bare number; empty for plain numbers and words"""
    usual: str
    """What stands in where nothing is given (judgement)"""
    is_text: bool = True


FACTS = {
    "title": Asked("title", "", "A home"),
    "latitude": Asked("site.latitude", "", "38.90", is_text=False),
    "longitude": Asked("site.longitude", "", "-78.50", is_text=False),
    "floor_area": Asked("house.floor_area", "ft2", "1700 ft2"),
    "storeys": Asked("house.storeys", "", "1", is_text=False),
    "bedrooms": Asked("house.bedrooms", "", "3", is_text=False),
    "built": Asked("house.built", "", "1972", is_text=False),
    "foundation": Asked("house.foundation", "", "vented crawlspace"),
    "people": Asked("house.people", "", "3", is_text=False),
    "thermostat": Asked("thermostat.day", "F", "66 F"),
    "wanted": Asked("thermostat.wanted", "F", "70 F"),
    "furnace": Asked("today.output", "kW", "20 kW"),
    "ducts": Asked("today.ducts.location", "", "crawlspace"),
    "price": Asked("tariff.price", "$/kWh", "0.14 $/kWh"),
}
"""The facts by the names under which they are given"""

_TEXT = """\
# A case for costcompare. Text values carry their units: "68 F", "R-19", "1200 cfm".
# Any value may be a table instead:
#   floor_area = {{ likely = "1850 ft2", low = "1800 ft2", high = "1900 ft2", known = "measured" }}
# What is left out is filled from the years, the condition and the place, and shown as guessed.
# "costcompare check" says how everything was understood.
format = 1
title = {title}

[site]  # the nearest weather station is found from these; west is negative
latitude = {latitude}
longitude = {longitude}
# elevation = "2100 ft"
# time_zone = "America/New_York"

[house]
floor_area = {floor_area}
storeys = {storeys}
bedrooms = {bedrooms}
built = {built}
foundation = {foundation}
# vented crawlspace, closed crawlspace, basement or slab
people = {people}
# air_leakage_at_50_pa = "2300 cfm"  # from a blower-door test
# wall_insulation = "R-11"
# attic_insulation = "R-19"
# floor_insulation = "R-0"
# window_panes = 2

# [other_use]  # electricity that is not heating or cooling
# electricity = "500 kWh/month"
# hot_water = "250 kWh/month"

[thermostat]
day = {thermostat}
# night = "62 F"
wanted = {wanted}
# the warmth they would like

[today]
kind = "electric furnace"
output = {furnace}

[today.ducts]
location = {ducts}
# condition = "old, never sealed"
# or: fallen or open branch; average; sealed and tested

# [[options]]
# name = "Seal and wrap the ducts"
# kind = "improve"
# set = {{ "today.ducts.condition" = "sealed and tested" }}
# installed_cost = "2000 $"

# [[options]]
# name = "One head in the living room, furnace kept"
# kind = "ductless heat pump"
# units = [
#   {{ class = "single-zone cold-climate", size = "15 kBtu/h", room = "living room" }},
# ]
# backup = {{ kind = "keep furnace", setpoint = "60 F" }}
# installed_cost = "6000 $"

[tariff]
price = {price}
# customer_charge = "12.50 $/month"
# tax = "3 %"
"""


_DUCTS_BY_FOUNDATION = {"basement": "basement", "slab": "attic"}


def new_case(**facts: object) -> str:
    """The text of a case from some of :data:`FACTS`, commented, with stand-ins for the rest.

    A bare number takes the unit that people here use (ft2, F, kW, $/kWh). Raises
    :class:`~costcompare.errors.CaseError` where the facts would not make a case.
    """
    faults = [
        Fault(name, "is not a fact of a new case", "", nearest(name, list(FACTS)))
        for name in facts
        if name not in FACTS
    ]
    given = {name: value for name, value in facts.items() if value is not None}
    written = {}
    for name, asked in FACTS.items():
        if name in given:
            written[name] = _written(name, given[name], asked, faults=faults)
        else:
            written[name] = _stand_in(name, asked, given)
    if faults:
        raise CaseError(faults)
    text = _TEXT.format(**written)
    case_from_document(tomllib.loads(text))
    return text


def _stand_in(name: str, asked: Asked, given: dict[str, object]) -> str:
    usual = asked.usual
    if name == "ducts":
        usual = _DUCTS_BY_FOUNDATION.get(str(given.get("foundation")), usual)
    if name == "wanted" and "thermostat" in given:
        return _written("thermostat", given["thermostat"], asked, faults=[]) + STAND_IN
    return (json.dumps(usual) if asked.is_text else usual) + STAND_IN


def _written(name: str, value: object, asked: Asked, *, faults: list[Fault]) -> str:
    """A fact as it stands in the file."""
    text = str(value).strip()
    number = _number(text)
    if asked.is_text:
        if number is not None and asked.unit:
            text = f"{text} {asked.unit}"
        return json.dumps(text, ensure_ascii=True)
    if number is None:
        faults.append(Fault(name, "must be a number", shown(value), f"for example {asked.usual}"))
        return "0"
    return f"{number:.0f}" if number.is_integer() and "." not in asked.usual else repr(number)


def _number(text: str) -> float | None:
    try:
        number = float(text)
    except ValueError:
        return None
    return number if abs(number) < 1e12 else None
