"""A made-up home for the tests of sizing: an open room with a loft, and two small bedrooms."""

from __future__ import annotations

from functools import cache
from typing import Any

from costcompare.case import case_from_document, example_path, read_case
from costcompare.case.facts import Case
from costcompare.comparing import weather_of
from costcompare.settings import SettingsCard, sized_with_settings
from costcompare.sizing import Sizing
from costcompare.weather import Weather

Both = tuple[Sizing, tuple[SettingsCard, ...]]


@cache
def loft_weather() -> Weather:
    """The year of the made-up home, one object for all tests: its sun is worked out once."""
    return weather_of(with_loft())


@cache
def loft() -> Both:
    """The made-up home with its cards, worked out once for all tests."""
    return sized_with_settings(with_loft(), weather=loft_weather())


@cache
def example(name: str) -> Both:
    """An example home with its cards, worked out once for all tests."""
    return sized_with_settings(read_case(example_path(name)))


def with_loft(**changes: Any) -> Case:
    """The home; ``changes`` replace tables of its document."""
    return case_from_document(document() | changes)


def document() -> dict[str, Any]:
    return {
        "format": 1,
        "title": "A made-up home with a loft",
        "site": {
            "latitude": 37.27,
            "longitude": -79.94,
            "time_zone": "America/New_York",
            "design_temperature": "14 F",
        },
        "house": {
            "floor_area": "1000 ft2",
            "storeys": 2,
            "built": 1985,
            "foundation": "vented crawlspace",
            "people": 2,
            "air_leakage_at_50_pa": "1300 cfm",
            "wall_insulation": "R-13",
            "attic_insulation": "R-38",
            "floor_insulation": "R-19",
            "window_panes": 2,
        },
        "rooms": [
            {
                "name": "open room",
                "storey": 1,
                "floor_area": "400 ft2",
                "ceiling_height": {"low": "8 ft", "high": "15 ft"},
                "outside_walls": {"south": "25 ft", "west": "16 ft"},
                "windows": {"south": "50 ft2", "west": "12 ft2"},
                "below": "crawlspace",
                "above": "roof",
                "wanted_hours": "6-22",
            },
            {
                "name": "kitchen",
                "storey": 1,
                "floor_area": "200 ft2",
                "ceiling_height": "8 ft",
                "outside_walls": {"north": "20 ft"},
                "windows": {"north": "16 ft2"},
                "below": "crawlspace",
                "above": "loft",
                "wanted_hours": "6-21",
            },
            {
                "name": "loft",
                "storey": 2,
                "floor_area": "200 ft2",
                "ceiling_height": "7 ft",
                "outside_walls": {"north": "20 ft"},
                "windows": {"north": "12 ft2"},
                "below": "kitchen",
                "above": "roof",
                "wanted_hours": "21-7",
            },
            {
                "name": "small bedroom",
                "storey": 1,
                "floor_area": "100 ft2",
                "ceiling_height": "8 ft",
                "outside_walls": {"north": "10 ft"},
                "windows": {"north": "8 ft2"},
                "below": "crawlspace",
                "above": "attic",
                "wanted_hours": "21-7",
            },
            {
                "name": "closed bedroom",
                "storey": 1,
                "floor_area": "100 ft2",
                "ceiling_height": "8 ft",
                "outside_walls": {"north": "10 ft", "east": "10 ft"},
                "windows": {"north": "8 ft2", "east": "8 ft2"},
                "below": "crawlspace",
                "above": "attic",
                "wanted_hours": "21-7",
            },
        ],
        "doorways": [
            {"between": ["open room", "kitchen"], "state": "open"},
            {"between": ["open room", "loft"], "state": "loft"},
            {"between": ["open room", "small bedroom"], "state": "open"},
            {"between": ["open room", "closed bedroom"], "state": "closed"},
        ],
        "thermostat": {"day": "66 F", "wanted": "70 F", "cooling": "76 F"},
        "today": {
            "kind": "electric furnace",
            "output": "15 kW",
            "thermostat_room": "open room",
        },
        "tariff": {"price": "0.13 $/kWh"},
        "options": [
            {
                "name": "One head high up",
                "kind": "ductless heat pump",
                "units": [
                    {
                        "class": "single-zone cold-climate",
                        "size": "12 kBtu/h",
                        "room": "open room",
                        "mounting_height": "10 ft",
                    }
                ],
                "installed_cost": "5000 $",
            },
            {
                "name": "Head and furnace",
                "kind": "ductless heat pump",
                "units": [
                    {
                        "class": "single-zone cold-climate",
                        "size": "12 kBtu/h",
                        "room": "open room",
                        "mounting_height": "7 ft",
                    }
                ],
                "backup": {"kind": "keep furnace"},
                "installed_cost": "5500 $",
            },
            {
                "name": "Ducted with strips",
                "kind": "ducted heat pump",
                "units": [{"class": "ducted variable", "size": "18 kBtu/h"}],
                "backup": {"kind": "strips", "size": "10 kW"},
                "installed_cost": "9000 $",
            },
        ],
    }
