"""``costcompare verify``: what it prints, what it writes, what it refuses."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from costcompare.billing.second_winter import SecondWinter
from tests.cli.conftest import Run
from tests.cli.test_documented import field_names

PAGE = (Path(__file__).parents[2] / "docs" / "bills.md").read_text(encoding="utf-8")
DEMO = ("verify", "--before", "demo", "--after", "demo", "--temperatures", "demo")
MISSING = ("None", "nan ")


def test_it_shows_what_it_writes(run: Run) -> None:
    result = run(*DEMO, "--json", "check.json")
    assert result.exit_code == 0, result.stderr
    written = json.loads(Path("check.json").read_text(encoding="utf-8"))
    assert written["is_shown"] is True
    for name in ("measured_kwh", "expected_kwh", "saving_kwh", "low_kwh", "high_kwh"):
        assert f"{10 * int(written[name] / 10 + 0.5):,} kWh" in result.stdout
    assert "Dear family," in result.stdout
    assert "Expected at the sale" not in result.stdout
    assert json.loads(run(*DEMO, "--json", "-").stdout) == written


def test_a_saved_comparison_is_held_against_it(run: Run, home: str) -> None:
    saved = run("compare", home, "--members", "0", "--json", "sale.json")
    assert saved.exit_code == 0, saved.stderr
    choices = json.loads(Path("sale.json").read_text(encoding="utf-8"))["choices"]
    expected = choices[0]["annual"]["electricity_kwh"] - choices[2]["annual"]["electricity_kwh"]
    result = run(*DEMO, "--promise", "sale.json", "--json", "check.json")
    assert result.exit_code == 0, result.stderr
    written = json.loads(Path("check.json").read_text(encoding="utf-8"))
    assert written["promise"]["saving_kwh"] == pytest.approx(expected)
    assert "Expected at the sale with “Seal and wrap the ducts”, as you live now" in result.stdout
    with_case = run(*DEMO, home, "--promise", "sale.json")
    assert "Washington" in with_case.stdout or "In a normal year (" in with_case.stdout
    for word in MISSING:
        assert word not in result.stdout


def test_a_case_alone_is_compared_anew(run: Run, home: str) -> None:
    result = run(*DEMO, home, "--warmer-by", "3 F")
    assert result.exit_code == 0, result.stderr
    assert "at the warmth you want: about" in result.stdout


def test_habits_are_taken_out(run: Run) -> None:
    result = run(*DEMO, "--warmer-by", "4 F", "--car", "50 kWh/month", "--json", "check.json")
    written = json.loads(Path("check.json").read_text(encoding="utf-8"))
    assert written["car_kwh"] == pytest.approx(600.0, rel=0.01)
    assert written["warmer_kwh"] > 1000.0
    assert "Lived in as before" in result.stdout


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--warmer-by", "warm", "--car", "big"), "--car: must be"),
        (("--promise", "no.json"), "no.json: cannot be read"),
        (("nowhere.toml",), "nowhere.toml: no such file"),
    ],
)
def test_what_is_refused(run: Run, words: tuple[str, ...], said: str) -> None:
    result = run(*DEMO, *words)
    assert result.exit_code == 2, result.output
    assert result.stdout == ""
    assert said in result.stderr


def test_every_field_is_documented() -> None:
    missing = {name for name in field_names(SecondWinter) if f"`{name}`" not in PAGE}
    assert not missing
