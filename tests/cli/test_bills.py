"""``costcompare bills``: what it prints, what it writes, what it refuses."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from costcompare.billing.bill_report import BillReport
from tests.cli.conftest import Run
from tests.cli.test_documented import field_names

PAGE = (Path(__file__).parents[2] / "docs" / "bills.md").read_text(encoding="utf-8")
DEMO = ("bills", "demo", "--temperatures", "demo")


def test_it_shows_what_it_writes(run: Run) -> None:
    result = run(*DEMO, "--json", "bills.json")
    assert result.exit_code == 0, result.stderr
    written = json.loads(Path("bills.json").read_text(encoding="utf-8"))
    line = written["line"]
    assert f"Base load {line['base_kwh_per_day']:.1f} kWh a day" in result.stdout
    assert f"{line['heating_kwh_per_degf_day']:.2f} kWh for each degree a day" in result.stdout
    for bill in line["bills"]:
        assert f"{bill['begins']}  {bill['ends']}" in result.stdout
        assert f"{bill['kwh']:,.0f}" in result.stdout
    for note in written["notes"]:
        assert note["found"] in result.stdout
    assert "In a year of this weather" in result.stdout
    assert json.loads(run(*DEMO, "--json", "-").stdout) == written


def test_the_typical_year_of_a_place_is_told(run: Run) -> None:
    result = run(*DEMO, "--near", "37.27,-79.94")
    assert "a typical year of Roanoke" in result.stdout
    alone = run("bills", "demo", "--near", "37.27,-79.94")
    assert "stands for them, so the line is less sure" in alone.stdout


def test_a_weather_file_of_a_typical_year_stands_for_any(run: Run) -> None:
    assert run("weather", "make", "year.csv.gz", "--near", "37.27,-79.94").exit_code == 0
    result = run("bills", "demo", "--temperatures", "year.csv.gz")
    assert result.exit_code == 0, result.stderr
    assert "stands for them" in result.stdout


def test_bills_that_follow_no_weather(run: Run) -> None:
    rows = [f"2024-{m:02d}-01,2024-{m + 1:02d}-01,{700 + 40 * (m % 3)}" for m in range(1, 12)]
    Path("mine.csv").write_text("\n".join(["from,to,kwh", *rows]), encoding="utf-8")
    result = run("bills", "mine.csv", "--temperatures", "demo")
    assert result.exit_code == 0, result.stderr
    assert "Not weather-driven: " in result.stdout
    assert "No part of these bills is called heating" in result.stdout
    assert "In a year" not in result.stdout


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("bills", "demo"), "--temperatures: is needed"),
        (("bills", "nowhere.csv", "--temperatures", "demo"), "nowhere.csv: cannot be read"),
        (("bills", "demo", "--temperatures", "no.csv"), "no.csv: cannot be read"),
        (("bills", "demo", "--temperatures", "demo", "--near", "here"), "--near: must be"),
        (("bills", "letter.txt", "--temperatures", "demo"), "has no row of headers"),
        (("bills", "demo", "--temperatures", "letter.txt"), "is not a weather file"),
    ],
)
def test_what_is_refused(run: Run, words: tuple[str, ...], said: str) -> None:
    Path("letter.txt").write_text("Dear family,\nall is well.\n", encoding="utf-8")
    result = run(*words)
    assert result.exit_code == 2, result.output
    assert result.stdout == ""
    assert said in result.stderr


def test_every_field_is_documented() -> None:
    missing = {name for name in field_names(BillReport) if f"`{name}`" not in PAGE}
    assert not missing
