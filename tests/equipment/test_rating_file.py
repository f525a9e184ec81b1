"""A file of test points: what it may hold, what is said of a wrong one, what is documented."""

from __future__ import annotations

import contextlib
import copy
import re
import tomllib
from dataclasses import fields
from importlib import resources
from pathlib import Path
from typing import Any

import pytest

from costcompare.equipment.ratings import (
    RatingBin,
    Ratings,
    ScopRating,
    SeasonalRating,
    rate,
    rate_file,
)
from costcompare.equipment.ratings.european_season import ScopBin
from costcompare.equipment.ratings.rating_file import COOLING, HEATING
from costcompare.errors import InputError

PAGE = (Path(__file__).parents[2] / "docs" / "ratings.md").read_text(encoding="utf-8")
EXAMPLE = resources.files("costcompare") / "data" / "rating_example.toml"


@pytest.fixture
def document() -> dict[str, Any]:
    return tomllib.loads(EXAMPLE.read_text(encoding="utf-8"))


def faults(document: dict[str, Any]) -> list[str]:
    with pytest.raises(InputError) as error:
        rate(document)
    return [fault.sentence() for fault in error.value.faults]


def test_the_example(document: dict[str, Any]) -> None:
    """The machine of the published tests; the idle power takes SCOP from 4.54 to 4.43."""
    found = rate(document)
    assert found.hspf2 is not None
    assert found.seer2 is not None
    assert found.scop is not None
    assert found.hspf2.value == pytest.approx(10.6708, abs=5e-5)
    assert found.hspf2.label == 10.65
    assert found.seer2.value == pytest.approx(26.5126, abs=5e-5)
    assert found.scop.while_heating == pytest.approx(4.5409, abs=5e-5)
    # By hand: 8 x 179 + 2 x 0 + 5 x 3851 + 2 x 3672 Wh; 4,900 kWh of heat a year.
    assert found.scop.idle_kwh == pytest.approx(28.031)
    assert found.scop.value == pytest.approx(4900 / (4900 / found.scop.while_heating + 28.031))


def test_what_is_not_confirmed_is_said(document: dict[str, Any]) -> None:
    document["heating"]["region"] = 5
    found = rate(document)
    assert found.hspf2 is not None
    assert found.hspf2.notes == ("The bin hours and load factors of region V are from memory.",)


def test_one_section_is_enough(document: dict[str, Any]) -> None:
    alone = {"cooling": document["cooling"]}
    found = rate(alone)
    assert found.hspf2 is None
    assert found.scop is None
    assert found.title == "A machine"


def test_options_reach_the_rating(document: dict[str, Any]) -> None:
    usual = rate(document).hspf2
    document["heating"] |= {
        "defrost_minutes": 90,
        "longest_defrost_minutes": 720,
        "cut_out": "0 F",
        "cut_in": "5 F",
        "cycling": 0.15,
        "limited_minimum_speed": True,
    }
    document["btu_per_wh"] = 3.413
    changed = rate(document).hspf2
    assert usual is not None
    assert changed is not None
    assert changed.defrost_credit == pytest.approx(1.03)
    by_bin = {b.outdoor_degf: b for b in changed.bins}
    assert by_bin[-3].running == "off"
    assert by_bin[-3].power_w == 0.0
    assert 0.0 < by_bin[2].power_w < {b.outdoor_degf: b for b in usual.bins}[2].power_w


def test_every_fault_at_once(document: dict[str, Any]) -> None:
    document["heating"]["region"] = 9
    document["heating"]["cycle"] = 0.2
    document["heating"]["points"]["H01"]["power"] = "5 W"
    del document["heating"]["points"]["H32"]
    document["cooling"]["points"]["A2"] = {"capacity": "12", "power": "860 W"}
    document["scop"]["climate"] = "polar"
    document["scop"]["points"].append({"at": "2 C", "capacity": "1 kW", "cop": 3.0})
    assert faults(document) == [
        'cooling.points.A2.capacity: needs a unit (kBtu/h, Btu/h, tons, kW) (given: "12").'
        ' Write for example "12 kBtu/h".',
        "heating.region: must be a number from 1 to 6 (given: 9).",
        "heating.points.H01: capacity over power must be from 0.5 to 20 (given: 293.0)."
        " Write capacity and power of the same test.",
        "heating.points.H32: is needed for this kind of machine."
        ' Write H32 = { capacity = "12 kBtu/h", power = "900 W" }.',
        "heating.cycle: is not a key here. Write cycling, if that is meant.",
        'scop.climate: must be one of: average; warmer; colder (given: "polar").',
        "scop.points: must hold each temperature once.",
    ]


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("", "heating: is needed, or cooling, or scop. Write [heating] with its points."),
        ("heating = 3", "heating: must be a table of keys and values (given: 3)."),
        (
            '[heating]\nkind = "single speed"\ncut_in = "5 F"\n[heating.points]\n'
            'H1 = { capacity = "29 kBtu/h", power = "2250 W" }\n'
            'H2 = { capacity = "22 kBtu/h", power = "2100 W" }\n'
            'H3 = { capacity = "18 kBtu/h", power = "2080 W" }',
            "heating.cooling_capacity: is needed: it sets the load.",
        ),
        (
            '[cooling]\nkind = "variable speed"\n[cooling.points]\n'
            'A2 = { capacity = "12 kBtu/h", power = "900 W" }\n'
            'B2 = { capacity = "12 kBtu/h", power = "900 W" }\n'
            'EV = { capacity = "12 kBtu/h", power = "900 W" }\n'
            'B1 = { capacity = "12 kBtu/h", power = "900 W" }\n'
            'F1 = { capacity = "12 kBtu/h", power = "900 W" }',
            "cooling.points: make no machine: low and full speed are the same",
        ),
    ],
)
def test_what_makes_no_rating(text: str, sentence: str) -> None:
    assert any(fault.startswith(sentence) for fault in faults(tomllib.loads(text)))


def test_a_file_that_cannot_be_read(tmp_path: Path) -> None:
    letter = tmp_path / "letter.toml"
    letter.write_text("Dear family,", encoding="utf-8")
    for path, rule in ((letter, "is not TOML"), (tmp_path / "no.toml", "no such file")):
        with pytest.raises(InputError, match=rule):
            rate_file(path)
    with pytest.raises(InputError, match="cannot be read"):
        rate_file(tmp_path)


@pytest.mark.parametrize("value", [None, 3, "x", [], [1], {"a": 1}, True, float("nan"), "1e400 kW"])
@pytest.mark.parametrize(
    "path",
    [
        "heating",
        "heating.points",
        "heating.points.H11",
        "heating.cycling",
        "scop.points",
        "scop.idle",
        "scop.design_load",
        "title",
    ],
)
def test_nothing_written_in_a_file_is_a_fault_of_ours(
    document: dict[str, Any], path: str, value: Any
) -> None:
    wrong = copy.deepcopy(document)
    *place, key = path.split(".")
    table = wrong
    for step in place:
        table = table[step]
    table[key] = value
    with contextlib.suppress(InputError):
        rate(wrong)


def test_every_key_and_field_is_documented() -> None:
    points = {name for _, needed, optional in HEATING.values() for name in (*needed, *optional)}
    points |= {name for _, needed in COOLING.values() for name in needed}
    named = set(re.findall(r"`(\w+)`", PAGE))
    assert points <= named
    for kind in (Ratings, SeasonalRating, RatingBin, ScopRating, ScopBin):
        assert {field.name for field in fields(kind)} <= named
    for kind in HEATING:
        assert kind in PAGE
