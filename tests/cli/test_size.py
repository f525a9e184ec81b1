"""``costcompare size``: what it prints, what it writes, and that every field is documented."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest

from costcompare.bill_heat_loss import BillHeatLoss
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
    document: dict[str, Any] = as_document(sizing)
    return {**document, "settings": as_document(cards), "heat_loss_by_bills": None}


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


def test_the_loss_by_the_bills_stands_beside_that_by_the_survey(
    run: Run, home: str, document: dict[str, Any], tmp_path: Path
) -> None:
    assert "The case holds no real bills" in " ".join(run("size", home).stdout.split())
    path = tmp_path / "with_bills.toml"
    rows = "".join(
        f"\n[[bills]]\nfrom = {begins}\nto = {ends}\nkwh = {kwh}\n"
        for begins, ends, kwh in (
            ("2025-05-01", "2025-06-01", 1000),
            ("2025-12-18", "2026-01-19", 9000),
        )
    )
    path.write_text(Path(home).read_text(encoding="utf-8") + rows, encoding="utf-8")
    result = run("size", str(path), "--json", "sizes.json")
    assert result.exit_code == 0, result.stderr
    written = json.loads(Path("sizes.json").read_text(encoding="utf-8"))
    loss = written.pop("heat_loss_by_bills")
    # The machines are held against the survey, bills or none.
    assert written == {key: value for key, value in document.items() if key in written}
    assert loss["survey_btu_h"] == written["loads"][0]["heat_btu_h"]
    assert loss["fitted_btu_h"]["low"] > loss["survey_btu_h"]
    assert loss["verdict"] == "more by the bills"
    shown = " ".join(result.stdout.split())
    assert "The same loss by the bills" in shown
    assert f"{round(100 * loss['disagreement'])} % more by the bills" in shown
    assert "held against the loss by the survey" in shown


def test_every_field_is_documented_and_no_other() -> None:
    kinds = (Sizing, SettingsCard, BillHeatLoss)
    known = {name for kind in kinds for name in field_names(kind)}
    known |= {"settings", "heat_loss_by_bills"}
    rows = re.findall(r"^\| ((?:`\w+`(?:, )?)+) \|", PAGE, re.MULTILINE)
    documented = {name for row in rows for name in re.findall(r"`(\w+)`", row)}
    cautions = set(field_names(Caution))
    assert known - documented - cautions - {"low", "likely", "high"} == set()
    assert documented - known == set()
