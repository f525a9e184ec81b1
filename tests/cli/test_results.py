"""What commands print and write for a home that can be used."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest

from costcompare.case import example_names, read_case
from costcompare.case.new import FACTS
from costcompare.comparing import compare
from costcompare.comparison import as_document
from tests.cli.conftest import Run

PLAIN = ("--members", "0")
"""No ranges: they have tests of their own"""


@pytest.fixture(scope="module")
def document(home: str) -> dict[str, Any]:
    """The result of the small home, worked out without the command line."""
    result: dict[str, Any] = as_document(compare(read_case(home)))
    return result


def test_compare_as_json_is_the_comparison(run: Run, home: str, document: dict[str, Any]) -> None:
    result = run("compare", home, *PLAIN, "--json", "-")
    assert result.exit_code == 0
    assert json.loads(result.stdout) == document
    assert result.stderr == ""


def test_compare_shows_what_it_writes(run: Run, home: str, document: dict[str, Any]) -> None:
    result = run("compare", home, *PLAIN, "--json", "result.json")
    assert result.exit_code == 0
    assert result.stderr == "Wrote result.json\n"
    written = json.loads(Path("result.json").read_text(encoding="utf-8"))
    assert written == document
    shown = result.stdout
    for choice in document["choices"]:
        bill = choice["annual"]["bill_usd"]
        assert f"${10 * int(bill / 10 + 0.5):,}" in shown
    for heading in (
        "What each choice costs to run, as you live now",
        "What each choice costs to run, at the warmth you want",
        "Which rooms stay warm",
        "Look out for",
        "What we assumed",
        "How sure we are",
        "Estimate, not a guarantee",
        "without a range",
        document["weather"]["station"],
    ):
        assert heading in shown
    for room in document["choices"][0]["rooms"]:
        assert room["name"] in shown
    for caution in document["cautions"]:
        assert caution["text"] in shown


def test_compare_gives_ranges(run: Run, home: str, document: dict[str, Any]) -> None:
    result = run("compare", home, "--members", "4", "--json", "result.json")
    assert result.exit_code == 0, result.stderr
    written = json.loads(Path("result.json").read_text(encoding="utf-8"))
    for choice, plain in zip(written["choices"], document["choices"], strict=True):
        bill = choice["range"]["bill_usd"]
        assert bill["low"] <= bill["likely"] <= bill["high"]
        assert {**choice, "range": None} == plain
    assert written["data_quality"]["members"] == 4
    assert written["range_note"] in result.stdout
    drivers = written["choices"][0]["range"]["drivers"]
    assert drivers[0]["words"] in result.stdout
    assert sum(driver["share"] for driver in drivers) <= 1.0


def test_an_override_changes_the_answer(run: Run, home: str, document: dict[str, Any]) -> None:
    result = run("compare", home, *PLAIN, "--set", "thermostat.day=60 F", "--json", "-")
    colder = json.loads(result.stdout)["choices"][0]["annual"]["bill_usd"]
    assert colder < document["choices"][0]["annual"]["bill_usd"]


def test_an_incentive_that_has_ended_is_shown_with_its_reason(run: Run, home: str) -> None:
    ended = '{ name = "tax credit", amount = "900 $", status = "confirmed", expires = 2025-12-31 }'
    words = ["--set", "money.installed_on=2026-01-01", "--set", f"money.incentives=[{ended}]"]
    result = run("compare", home, *PLAIN, *words, "--json", "result.json")
    assert result.exit_code == 0, result.stderr
    written = json.loads(Path("result.json").read_text(encoding="utf-8"))
    assert written["choices"][-1]["money"]["incentives_usd"] == 0.0
    assert "ended on 2025-12-31, before the installation on 2026-01-01" in result.stdout
    assert re.search(r"tax credit +– +\$900 +no ", result.stdout)


def test_an_hour_at_a_temperature_outdoors_and_three_winters(run: Run, home: str) -> None:
    result = run("compare", home, "--outdoors", "30 F", "--winters", "--json", "result.json")
    assert result.exit_code == 0, result.stderr
    assert "At 30 °F outside an hour of heating costs" in result.stdout
    assert "mild winter" in result.stdout
    winters = json.loads(Path("result.json").read_text(encoding="utf-8"))["winters"]
    assert [one["winter"] for one in winters] == ["mild", "typical", "cold"]
    wrong = run("compare", home, "--outdoors", "cold")
    assert wrong.exit_code == 2
    assert "--outdoors: must be a temperature" in wrong.stderr


def test_a_weather_file_changes_the_answer(run: Run, home: str, document: dict[str, Any]) -> None:
    made = run("weather", "make", "year.csv.gz", "--near", "47.52,-92.54")
    assert made.exit_code == 0
    result = run("compare", home, *PLAIN, "--weather", "year.csv.gz", "--json", "-")
    cold = json.loads(result.stdout)
    assert cold["weather"]["station"] != document["weather"]["station"]
    assert cold["choices"][0]["annual"]["bill_usd"] > document["choices"][0]["annual"]["bill_usd"]


def test_explain_adds_up_to_the_bill_to_the_cent(
    run: Run, home: str, document: dict[str, Any]
) -> None:
    result = run("explain", home)
    assert result.exit_code == 0
    tables = re.split(r"\n(?=Where )", result.stdout)[1:]
    assert len(tables) == 2
    bill = document["choices"][0]["annual"]["bill_usd"]
    worst = max(month["bill_usd"] for month in document["choices"][0]["monthly"])
    for table, total in zip(tables, (bill, worst), strict=True):
        cents = [
            int(re.sub(r"[$.,]", "", amount).replace("\N{MINUS SIGN}", "-"))
            for amount in re.findall(r"(\N{MINUS SIGN}?\$[\d,]+\.\d\d)$", table, re.MULTILINE)
        ]
        *parts, last = cents
        assert sum(parts) == last
        assert last == pytest.approx(100 * total, abs=0.51)


def test_explain_as_json_holds_today_alone(run: Run, home: str, document: dict[str, Any]) -> None:
    written = json.loads(run("explain", home, "--json", "-").stdout)
    assert written["explanation"] == document["explanation"]
    assert {choice["is_today"] for choice in written["choices"]} == {True}


def test_thermostat_shows_every_setting_of_every_choice(run: Run, home: str) -> None:
    words = ["thermostat", home, "--from", "62 F", "--to", "70F", "--step", "4 F"]
    result = run(*words, "--json", "sweep.json")
    assert result.exit_code == 0
    sweep = json.loads(Path("sweep.json").read_text(encoding="utf-8"))
    assert sweep["settings_degf"] == pytest.approx([62.0, 66.0, 70.0])
    assert [choice["is_today"] for choice in sweep["choices"]] == [True, False]
    for choice in sweep["choices"]:
        held = [year for year in choice["years"] if year["held"]]
        bills = [year["bill_usd"] for year in held]
        assert bills == sorted(bills)
        assert choice["name"] in result.stdout
        for year in choice["years"]:
            assert f"${10 * int(year['bill_usd'] / 10 + 0.5):,}" in result.stdout
    for setting in ("62 °F", "66 °F", "70 °F"):
        assert result.stdout.count(f"{setting} ") >= 2


@pytest.mark.parametrize("name", example_names())
def test_check_shows_every_fact_of_an_example(run: Run, name: str) -> None:
    result = run("check", name, "--json", "facts.json")
    assert result.exit_code == 0
    written = json.loads(Path("facts.json").read_text(encoding="utf-8"))
    assert written["facts"]
    shown = [line.split("  ")[0] for line in result.stdout.splitlines()]
    for fact in written["facts"]:
        assert any(fact["path"].endswith(name) for name in shown if name), fact["path"]
        assert fact["known"] in ("measured", "seen", "guessed")
        assert fact["source"] in result.stdout
    assert "2,027" not in result.stdout


def test_check_shows_what_was_changed(run: Run, home: str) -> None:
    result = run("check", home, "--set", "house.floor_area=2222 ft2")
    assert "2,222 ft2" in result.stdout


def test_a_new_case_can_be_checked_and_holds_what_was_said(run: Run) -> None:
    words = ["--floor-area", "2345 ft2", "--built", "1959", "--foundation", "basement"]
    result = run("new", "home.toml", *words, "--price", "0.2 $/kWh")
    assert result.exit_code == 0
    assert result.stderr == "Wrote home.toml\n"
    for shown in ("2,345 ft2", "1959", "basement", "0.2 $/kWh"):
        assert shown in result.stdout
    assert run("check", "home.toml").stdout == result.stdout


def test_a_new_case_on_standard_output_is_the_file(run: Run) -> None:
    run("new", "home.toml", "--people", "5")
    result = run("new", "-", "--people", "5")
    assert result.stdout == Path("home.toml").read_text(encoding="utf-8")
    assert result.stderr == ""


def test_new_takes_every_fact_of_a_new_case(run: Run) -> None:
    written = run("new", "--help").stdout
    for name in FACTS:
        assert f"--{name.replace('_', '-')} " in written


def test_force_overwrites(run: Run) -> None:
    Path("home.toml").write_text("mine", encoding="utf-8")
    assert run("new", "home.toml", "--force").exit_code == 0
    assert "format = 1" in Path("home.toml").read_text(encoding="utf-8")


def test_stations_by_words_and_by_place(run: Run) -> None:
    by_words = json.loads(run("weather", "stations", "roanoke", "va", "--json", "-").stdout)
    assert [station["station"] for station in by_words] == ["Roanoke Regional Ap, VA"]
    by_place = json.loads(
        run("weather", "stations", "--near", "37.27,-79.94", "--json", "-").stdout
    )
    assert by_place == by_words
    assert "TMY3" in run("weather", "stations", "roanoke").stdout


def test_a_year_is_made_and_described(run: Run) -> None:
    made = run("weather", "make", "year.csv", "--near", "37.27,-79.94", "--elevation", "1150 ft")
    assert made.exit_code == 0
    assert made.stderr == "Wrote year.csv\n"
    assert "not 30-year normals" in made.stdout
    read = run("weather", "show", "year.csv", "--json", "-")
    year = json.loads(read.stdout)
    assert year["elevation_ft"] == pytest.approx(1150.0, abs=1.0)
    assert [month["month"] for month in year["months"]] == list(range(1, 13))
    assert f"{year['heating_degree_days_65f']:,.0f} heating degree days" in made.stdout


def test_rate_shows_what_it_writes(run: Run) -> None:
    result = run("rate", "demo", "--json", "ratings.json")
    assert result.exit_code == 0
    written = json.loads(Path("ratings.json").read_text(encoding="utf-8"))
    for name in ("hspf2", "seer2", "scop"):
        assert f"{written[name]['value']:.2f}" in result.stdout
    assert written["hspf2"]["name"] in result.stdout
    assert "It says little about a bill" in result.stdout
    assert run("rate", "demo", "--json", "-").stdout.startswith("{")
