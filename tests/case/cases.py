"""The smallest case, for tests that change one thing in it."""

from __future__ import annotations

from copy import deepcopy
from typing import Any

from costcompare.case import Case, case_from_document
from costcompare.errors import CaseError, Fault

SMALLEST: dict[str, Any] = {
    "site": {"latitude": 35.6, "longitude": -82.5},
    "house": {
        "floor_area": "1500 ft2",
        "built": 1974,
        "foundation": "vented crawlspace",
        "people": 3,
    },
    "thermostat": {"day": "64 F"},
    "today": {"output": "15 kW", "ducts": {"location": "crawlspace"}},
    "tariff": {"price": "0.125 $/kWh"},
}
TWO_ROOMS: list[dict[str, Any]] = [
    {
        "name": "big room",
        "floor_area": "900 ft2",
        "outside_walls": {"south": "30 ft", "west": "30 ft", "north": "30 ft"},
        "windows": {"south": "60 ft2"},
        "wanted_hours": "6-22",
    },
    {
        "name": "bedroom",
        "floor_area": "600 ft2",
        "outside_walls": {"south": "20 ft", "east": "30 ft", "north": "20 ft"},
        "windows": {"east": "30 ft2"},
        "wanted_hours": "22-6",
    },
]


def document(**sections: Any) -> dict[str, Any]:
    """The smallest document with sections merged into it; None takes a section out."""
    made = deepcopy(SMALLEST)
    for name, section in sections.items():
        if section is None:
            made.pop(name, None)
        elif isinstance(section, dict) and isinstance(made.get(name), dict):
            merged = {**made[name], **deepcopy(section)}
            made[name] = {key: value for key, value in merged.items() if value is not None}
        else:
            made[name] = deepcopy(section)
    return made


def case(**sections: Any) -> Case:
    """The case of :func:`document`."""
    return case_from_document(document(**sections))


def sentences(made: Any) -> list[str]:
    """The faults of a document, as sentences; none where it is a case."""
    faults: tuple[Fault, ...] = ()
    try:
        case_from_document(made)
    except CaseError as error:
        faults = error.faults
    return [fault.sentence() for fault in faults]
