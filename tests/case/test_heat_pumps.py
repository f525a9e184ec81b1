"""Heat pumps in a case: points of a sheet, what is filled, what is refused."""

from __future__ import annotations

from typing import Any

import pytest

from costcompare.case.facts import Case, HeatPumpUnit
from costcompare.equipment.performance import FIELD_FACTOR
from costcompare.simulation.machines import filled_points, machine_of
from costcompare.units import parse
from tests.case.cases import TWO_ROOMS, case, document, sentences

RATED = {"at": "47 F", "speed": "rated", "capacity": "12 kBtu/h", "power": "900 W"}
COLD = {"at": "5 F", "speed": "maximum", "capacity": "10 kBtu/h", "cop": 2.0}
COOL = {
    "mode": "cooling",
    "at": "95 F",
    "speed": "rated",
    "capacity": "11 kBtu/h",
    "power": "860 W",
}


def with_unit(unit: dict[str, Any], **sections: Any) -> dict[str, Any]:
    option = {
        "name": "head",
        "kind": "ductless heat pump",
        "units": [{"room": "big room", **unit}],
        "installed_cost": "5000 $",
    }
    return document(options=[option], rooms=TWO_ROOMS, **sections)


def made(unit: dict[str, Any]) -> tuple[Case, HeatPumpUnit]:
    found = case(**with_unit(unit))
    return found, found.options[0].system.heads[0]


def source(found: Case, path: str) -> str:
    return next(fact.source for fact in found.facts if fact.path == path)


def test_points_are_read_with_their_units() -> None:
    _found, unit = made({"points": [RATED, COLD, COOL]})
    rated, cold, cool = unit.points
    assert rated.capacity == pytest.approx(parse("12 kBtu/h", "capacity"))
    assert (rated.mode, rated.speed, rated.power) == ("heating", "rated", 900.0)
    assert cold.power == pytest.approx(cold.capacity / 2.0)
    assert cold.outdoor == pytest.approx(-15.0)
    assert cool.mode == "cooling"


def test_what_points_do_not_say_is_filled_and_shown() -> None:
    found, unit = made({"points": [RATED, COOL]})
    assert unit.equipment_class == "single-zone standard"
    assert unit.size == pytest.approx(parse("11 kBtu/h", "capacity"))
    assert "names no class" in source(found, "options.head.units.1.class")
    assert source(found, "options.head.units.1.size") == "the rated cooling point at 95 F"
    machine = machine_of(unit)
    assert "minimum at 17 F" in machine.filled
    assert filled_points(found.options[0].system) == {"big room": machine.filled}


def test_size_without_cooling_follows_the_heating() -> None:
    found, unit = made({"class": "single-zone cold-climate", "points": [RATED]})
    assert unit.size == pytest.approx(parse("12 kBtu/h", "capacity") / 1.15)
    assert "47 F" in source(found, "options.head.units.1.size")


def test_limits_and_line_set() -> None:
    unit = made(
        {
            "points": [RATED, COLD],
            "cut_out": "-13 F",
            "cut_in": "-9 F",
            "line_set": "40 ft",
            "points_include_defrost": True,
        }
    )[1]
    machine = machine_of(unit)
    assert machine.cut_out == pytest.approx(-25.0)
    assert machine.cut_in == pytest.approx(parse("-9 F", "temperature"))
    assert not machine.frost
    assert unit.line_set == pytest.approx(12.192)


def test_a_class_may_have_its_own_cut_out() -> None:
    unit = made({"class": "single-zone standard", "size": "1 ton", "cut_out": "10 F"})[1]
    assert machine_of(unit).cut_out == pytest.approx(parse("10 F", "temperature"))
    assert machine_of(unit).cut_in == machine_of(unit).cut_out


def test_the_field_factor() -> None:
    usual = case(**with_unit({"points": [RATED]}))
    assert usual.options[0].system.field_factor == FIELD_FACTOR == usual.today.field_factor
    assert "80 to 95 %" in source(usual, "equipment.field_factor")
    stated = case(**with_unit({"points": [RATED]}, equipment={"field_factor": "80 %"}))
    assert stated.options[0].system.field_factor == 0.8
    assert source(stated, "equipment.field_factor") == "the case"
    assert all(fact.path != "equipment.field_factor" for fact in case().facts)  # no heat pump


@pytest.mark.parametrize(
    ("unit", "sentence"),
    [
        (
            {"size": "1 ton"},
            "options.head.units.1.class: is needed. Write for example"
            ' class = "single-zone cold-climate", or points.',
        ),
        (
            {"class": "single-zone standard"},
            'options.head.units.1.size: is needed. Write for example size = "12 kBtu/h".',
        ),
        (
            {"points": [COOL]},
            "options.head.units.1.points: must hold at least one heating point. Write for example"
            ' { at = "47 F", speed = "rated", capacity = "12 kBtu/h", cop = 3.9 }.',
        ),
        (
            {"points": [RATED, RATED]},
            "options.head.units.1.points.2: is there twice (given: rated at 47 F).",
        ),
        (
            {"points": [RATED, {**RATED, "speed": "maximum", "capacity": "11 kBtu/h"}]},
            "options.head.units.1.points.2.capacity: at 47 F the maximum speed gives less than a"
            " slower one.",
        ),
        (
            {"points": [{**RATED, "cop": 3.9}]},
            "options.head.units.1.points.1.cop: give either power or cop, not both.",
        ),
        (
            {"points": [{k: v for k, v in RATED.items() if k != "power"}]},
            "options.head.units.1.points.1.power: is needed, or cop."
            ' Write for example power = "900 W".',
        ),
        (
            {"points": [{**RATED, "power": "90 W"}]},
            "options.head.units.1.points.1.power: capacity over power must be from 0.8 to 10.8 at"
            " this temperature (given: 39.08). Write capacity and power of the same test.",
        ),
        (
            {"points": [{**RATED, "at": "95 F"}]},
            "options.head.units.1.points.1.at: must be at most 75 F for a heating point"
            ' (given: 95 F). Write mode = "cooling", if that is meant.',
        ),
        (
            {"points": [RATED, {**COOL, "at": "35 F"}]},
            "options.head.units.1.points.2.at: must be at least 50 F for a cooling point"
            " (given: 35 F).",
        ),
        (
            {"points": [{**RATED, "at": "47"}]},
            'options.head.units.1.points.1.at: needs a unit (F, C) (given: "47").'
            ' Write for example "68 F".',
        ),
        (
            {"points": [{**RATED, "speed": "fast"}]},
            "options.head.units.1.points.1.speed: must be one of: minimum; rated; maximum"
            ' (given: "fast").',
        ),
        (
            {"points": [RATED], "cut_in": "5 F"},
            "options.head.units.1.cut_in: needs cut_out beside it.",
        ),
        (
            {"points": [RATED], "cut_out": "5 F", "cut_in": "0 F"},
            "options.head.units.1.cut_in: must not be below cut_out, which is 5 F (given: 0 F).",
        ),
        (
            {"class": "single-zone standard", "size": "1 ton", "points_include_defrost": True},
            "options.head.units.1.points_include_defrost: belongs to points.",
        ),
    ],
)
def test_a_unit_that_cannot_be_is_refused(unit: dict[str, Any], sentence: str) -> None:
    assert sentences(with_unit(unit)) == [sentence]


def test_a_single_speed_machine_has_rated_points_alone() -> None:
    option = {
        "name": "central",
        "kind": "ducted heat pump",
        "units": [
            {"class": "ducted single-speed", "points": [RATED, {**RATED, "speed": "maximum"}]}
        ],
        "installed_cost": "9000 $",
    }
    found = sentences(document(options=[option]))
    assert found == [
        "options.central.units.1.points.2.speed: a single-speed machine has rated points alone"
        " (given: maximum)."
    ]


def test_all_faults_of_the_points_at_once() -> None:
    points = [
        {**RATED, "capacity": "12 W/m2"},
        {**COLD, "speed": "fastest"},
        {"at": "17 F", "speed": "rated", "capacity": "8 kBtu/h"},
    ]
    found = sentences(with_unit({"points": points, "line_set": "long"}))
    paths = {text.split(":")[0].removeprefix("options.head.units.1.") for text in found}
    assert paths == {"points.1.capacity", "points.2.speed", "points.3.power", "line_set"}
