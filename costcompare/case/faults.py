"""From what the validation found to faults a person can act on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, get_args

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from costcompare.case.document import Document
from costcompare.case.paths import Location, described
from costcompare.case.values import nearest, shown
from costcompare.errors import Fault

_LATER = {
    "heads": "several heads on one outdoor unit are not modelled yet",
}
_LATER_INSTEAD = {
    "heads": "one unit with its own size for each head",
}
_SHAPES = {
    "model_type": "must be a table of keys and values",
    "model_attributes_type": "must be a table of keys and values",
    "dict_type": "must be a table of keys and values",
    "list_type": "must be a list",
    "too_long": "has too many rows",
}
_EXAMPLES = {
    "latitude": "for example latitude = 35.60",
    "longitude": "for example longitude = -82.55 (west is negative)",
    "floor_area": 'for example floor_area = "1850 ft2"',
    "built": "for example built = 1971",
    "foundation": 'for example foundation = "vented crawlspace"',
    "people": "for example people = 4",
    "airflow": 'for example airflow = "50 cfm"',
    "hours": 'for example hours = "7-8,18-19"',
    "day": 'for example day = "64 F"',
    "name": 'for example name = "hall"',
    "installed_cost": 'for example installed_cost = "3900 $"',
    "size": 'for example size = "12 kBtu/h"',
    "at": 'for example at = "47 F"',
    "speed": 'for example speed = "rated"',
    "capacity": 'for example capacity = "12 kBtu/h"',
    "price": 'for example price = "0.125 $/kWh"',
    "kind": 'for example kind = "improve"',
    "tariff": 'for example [tariff] with price = "0.125 $/kWh"',
    "today": 'for example [today] with kind = "electric furnace" and output = "20 kW"',
    "thermostat": 'for example [thermostat] with day = "64 F"',
}


def faults_of(error: ValidationError, document: Any) -> list[tuple[Location, Fault]]:
    """Every finding of a validation as a fault, with where it is in the document."""
    found = []
    for detail in error.errors(include_url=False):
        location = _true_location(detail["loc"], document)
        found.append((location, _fault(detail, location, document)))
    return found


def _true_location(location: Location, document: Any) -> Location:
    """Where a finding is in the document as written: a list of bills has no ``rows``."""
    if location[:2] == ("bills", "rows") and isinstance(document.get("bills"), list):
        return ("bills", *location[2:])
    return location


def _fault(detail: ErrorDetails, location: Location, document: Any) -> Fault:
    path = described(location, document) or "the case"
    key = str(location[-1]) if location else ""
    kind = detail["type"]
    given = detail.get("input")
    if kind == "case":
        parts = detail["ctx"]
        return Fault(path, parts["rule"], parts["given"], parts["instead"])
    if kind == "missing":
        return Fault(path, "is needed", "", _EXAMPLES.get(key, ""))
    if kind == "extra_forbidden":
        return _unknown_key(path, key, location)
    return Fault(path, _SHAPES.get(kind, "cannot be understood"), shown(given))


def _unknown_key(path: str, key: str, location: Location) -> Fault:
    if key in _LATER:
        return Fault(path, _LATER[key], "", _LATER_INSTEAD.get(key, ""))
    known = keys_at(location[:-1])
    guess = nearest(key, known).strip('"')
    return Fault(
        path, "is not a key of a case here", "", f"{guess}, if that is meant" if guess else ""
    )


def keys_at(location: Sequence[str | int]) -> list[str]:
    """The keys that a case knows at a location."""
    table = table_at(location)
    return [] if table is None else keys_of(table)


def keys_of(table: type[BaseModel]) -> list[str]:
    """The keys of a table as they are written."""
    return [field.alias or name for name, field in table.model_fields.items()]


def table_at(location: Sequence[str | int]) -> type[BaseModel] | None:
    """The model of the table at a location."""
    table: type[BaseModel] = Document
    for step in location:
        if isinstance(step, int):
            continue
        fields: Mapping[str, Any] = {f.alias or n: f for n, f in table.model_fields.items()}
        if step not in fields:
            return None
        inner = model_in(fields[step].annotation)
        if inner is None:
            return None
        table = inner
    return table


def model_in(annotation: Any) -> type[BaseModel] | None:
    """The table that an annotation such as ``list[RoomTable] | None`` speaks of."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    for part in get_args(annotation):
        if (found := model_in(part)) is not None:
            return found
    return None
