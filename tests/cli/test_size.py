"""``costcompare size``: what it prints, what it writes, and that every field is documented."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest

from costcompare.case import read_case
from costcompare.comparison import Caution, as_document
from costcompare.settings import SettingsCard, sized_with_settings
from costcompare.sizing import Sizing
from tests.cli.conftest import Run
from tests.cli.test_documented import field_names

PAGE = (Path(__file__).parents[2] / "docs" / "sizing.md").read_text(encoding="utf-8")


@pytest.fixture(scope="module")
def document(home: str) -> dict[str, Any]:
    """The sizing of the small home, worked out without the command line."""
    sizing, cards = sized_with_settings(read_case(home))
    return {**as_document(sizing), "settings": as_document(cards)}


def test_as_json_it_is_the_sizing(run: Run, home: str, document: dict[str, Any]) -> None:
    result = run("size", home, "--json", "-")
    assert result.exit_code == 0, result.stderr
    assert json.loads(result.stdout) == document
    assert result.stderr == ""


def test_it_shows_what_it_writes(run: Run, home: str, document: dict[str, Any]) -> None:
    result = run("size", home, "--json", "sizes.json")
    assert result.exit_code == 0
    assert result.stderr == "Wrote sizes.json\n"
    assert json.loads(Path("sizes.json").read_text(encoding="utf-8")) == document
    for room in document["loads"][0]["rooms"]:
        assert f"{room['name'][0].upper()}{room['name'][1:]} (" in result.stdout
    for caution in document["cautions"]:
        assert caution["text"] in result.stdout
    assert "What to set with “Seal and wrap the ducts”" in result.stdout


def test_facts_and_weather_can_be_changed(run: Run, home: str, document: dict[str, Any]) -> None:
    made = run("weather", "make", "year.csv.gz", "--near", "47.52,-92.54")
    assert made.exit_code == 0
    cold = json.loads(run("size", home, "--weather", "year.csv.gz", "--json", "-").stdout)
    assert cold["loads"][0]["heat_w"] > document["loads"][0]["heat_w"]
    stated = run("size", home, "--set", "site.design_temperature=20 F", "--json", "-")
    design = json.loads(stated.stdout)["design"]
    assert design["outdoor_degf"] == pytest.approx(20.0)
    assert design["outdoor_is_estimated"] is False


def test_every_field_is_documented_and_no_other() -> None:
    known = {name for kind in (Sizing, SettingsCard) for name in field_names(kind)} | {"settings"}
    rows = re.findall(r"^\| ((?:`\w+`(?:, )?)+) \|", PAGE, re.MULTILINE)
    documented = {name for row in rows for name in re.findall(r"`(\w+)`", row)}
    cautions = set(field_names(Caution))
    assert known - documented - cautions == set()
    assert documented - known == set()
