"""What the case itself states, as facts in the units people here use."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from pydantic import BaseModel
from pydantic_core import PydanticCustomError

from costcompare.case.document import Document
from costcompare.case.facts import Fact
from costcompare.case.partial import rule_at
from costcompare.case.paths import Location, described, join
from costcompare.case.spreads import Spread, Spreads
from costcompare.case.values import Measure, shown
from costcompare.errors import Fault
from costcompare.units import customary

FROM_CASE = "the case"
_UNKNOWN = Spread("seen", {})


def stated_facts(document: Document, plain: Mapping[str, Any], spreads: Spreads) -> list[Fact]:
    """One fact for every value that the case states, in the order of the document.

    The lines of listed bills are no facts of the home: they are in ``Case.bills``.
    """
    return [
        _fact(location, value, plain, spread=spreads.get(location, _UNKNOWN))
        for location, value in _leaves(document, ())
        if location[:2] != ("bills", "rows")
    ]


def _leaves(table: BaseModel, at: Location) -> Iterator[tuple[Location, Any]]:
    for name, field in type(table).model_fields.items():
        value = getattr(table, name)
        if name in table.model_fields_set and value is not None:
            yield from _inner(value, (*at, field.alias or name))


def _inner(value: Any, at: Location) -> Iterator[tuple[Location, Any]]:
    if isinstance(value, BaseModel):
        yield from _leaves(value, at)
    elif isinstance(value, list) and value and isinstance(value[0], BaseModel):
        for index, row in enumerate(value):
            yield from _leaves(row, (*at, index))
    elif isinstance(value, dict) and at[-1] != "set":
        for key, item in value.items():
            yield (*at, key), item
    else:
        yield at, value


def _fact(location: Location, value: Any, plain: Mapping[str, Any], *, spread: Spread) -> Fact:
    path = described(location, plain)
    rule = rule_at(location)
    if isinstance(rule, Measure):
        number, unit = customary(value, rule.kind)
        low, high = (_bound(rule, spread, which) for which in ("low", "high"))
        return Fact(path, float(f"{number:.6g}"), unit, spread.known, FROM_CASE, low, high)
    if isinstance(value, bool | int | float):
        low, high = (spread.bounds.get("low"), spread.bounds.get("high"))
        return Fact(path, value, "", spread.known, FROM_CASE, low, high)
    return Fact(path, _text(location, value, plain), "", spread.known, FROM_CASE)


def _bound(rule: Measure, spread: Spread, which: Any) -> float | None:
    if which not in spread.bounds:
        return None
    number, _ = customary(rule.read(spread.bounds[which]), rule.kind)
    return float(f"{number:.6g}")


def _text(location: Location, value: Any, plain: Mapping[str, Any]) -> str:
    """A value that is not a number, in the words of the case."""
    place: Any = plain
    for step in location:
        place = place[step]
    if isinstance(place, dict):
        return ", ".join(f"{key} {item}" for key, item in place.items())
    if isinstance(place, list):
        return ", ".join(map(str, place))
    return str(place) if place is not None else str(value)


def spread_faults(plain: Mapping[str, Any], spreads: Spreads) -> list[tuple[Location, Fault]]:
    """What is wrong with the low and high values of a case."""
    found: list[tuple[Location, Fault]] = []
    for location, spread in spreads.items():
        if location[0] == "options" and "set" in location:
            continue  # what a set makes is checked where it is carried out
        path = described(location, plain)
        rule = rule_at(location)
        if rule is None:
            fault = Fault(path, "cannot be a table with a likely value", "", "the value alone")
            found.append((location, fault))
            continue
        numbers: dict[str, float] = {}
        for which, given in (("likely", _at(plain, location)), *spread.bounds.items()):
            try:
                read = rule.read(given)
            except PydanticCustomError as error:
                if which != "likely":  # a bad likely value is reported by the validation
                    parts = error.context or {}
                    fault = Fault(join([path, which]).replace('"', ""), **parts)
                    found.append((location, fault))
                continue
            if isinstance(read, int | float) and not isinstance(read, bool):
                numbers[which] = read
            elif which != "likely":
                fault = Fault(path, "only a number can have low and high", shown(given))
                found.append((location, fault))
        order = [numbers[w] for w in ("low", "likely", "high") if w in numbers]
        if order != sorted(order):
            rule_text = "low must not be above likely, nor likely above high"
            found.append((location, Fault(path, rule_text, _written(spread))))
    return found


def _at(plain: Any, location: Location) -> Any:
    for step in location:
        plain = plain[step]
    return plain


def _written(spread: Spread) -> str:
    return ", ".join(f"{which} {shown(value)}" for which, value in spread.bounds.items())
