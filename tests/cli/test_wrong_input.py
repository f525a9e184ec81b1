"""Wrong input: exit code 2, every reason on standard error, nothing else, no traceback."""

from __future__ import annotations

from pathlib import Path

import pytest
from typer.testing import Result

from tests.cli.conftest import Run


def refused(result: Result, *reasons: str) -> None:
    assert result.exit_code == 2, result.output
    assert result.stdout == ""
    assert "Traceback" not in result.stderr
    for reason in reasons:
        assert reason in result.stderr


CASE_COMMANDS = [
    ["check"],
    ["compare"],
    ["explain"],
    ["thermostat"],
    ["size"],
    ["serve", "--no-browser"],
]


@pytest.mark.parametrize("command", CASE_COMMANDS, ids=lambda words: words[0])
def test_a_case_that_is_not_there(run: Run, command: list[str]) -> None:
    refused(run(command[0], "nowhere.toml", *command[1:]), "nowhere.toml: no such file", "demo")


@pytest.mark.parametrize("command", CASE_COMMANDS[:5], ids=lambda words: words[0])
def test_a_file_that_is_not_toml(run: Run, command: list[str]) -> None:
    Path("letter.toml").write_text("Dear family,\n", encoding="utf-8")
    refused(run(*command, "letter.toml"), "letter.toml", "is not TOML")


def test_a_folder_is_no_case(run: Run, tmp_path: Path) -> None:
    refused(run("check", str(tmp_path)), "cannot be read")


def test_unknown_keys_and_wrong_values_all_at_once(run: Run) -> None:
    Path("home.toml").write_text(
        'format = 1\ntitel = "x"\n[house]\nfloor_area = "1850 kg"\nflor = 2\n', encoding="utf-8"
    )
    result = run("check", "home.toml")
    refused(result, "titel", "house.flor", "house.floor_area", "things are wrong:")
    count = int(result.stderr.split()[0])
    assert count == len(result.stderr.splitlines()) - 1 > 3


def test_an_override_that_does_not_fit(run: Run, home: str) -> None:
    refused(run("check", home, "--set", "house.floor_area=tall"), "house.floor_area")
    refused(run("check", home, "--set", "house"), "must be path=value")


@pytest.mark.parametrize("text", ["hello\n", "", "\x00\x01\x02", "from,to,kwh\n1,2,3\n"])
def test_a_file_that_is_not_weather(run: Run, home: str, text: str) -> None:
    Path("year.csv").write_text(text, encoding="utf-8")
    refused(run("weather", "show", "year.csv"), "year.csv")
    refused(run("compare", home, "--weather", "year.csv"), "year.csv")


def test_weather_that_is_not_there(run: Run, home: str) -> None:
    refused(run("explain", home, "--weather", "no.epw"), "no.epw: cannot be read")


def test_a_tariff_without_an_end(run: Run, home: str) -> None:
    change = 'tariff.tiers=[{ up_to = "800 kWh/month", price = "0.1 $/kWh" }]'
    refused(run("compare", home, "--set", change), "tariff")


def test_settings_that_make_no_sense(run: Run, home: str) -> None:
    refused(run("thermostat", home, "--from", "68", "--to", "cold"), "--from", "--to")
    refused(run("thermostat", home, "--from", "70F", "--to", "60F"), "must be warmer than")
    refused(run("thermostat", home, "--step", "0 F"), "--step: must be more than 0 F")
    refused(run("thermostat", home, "--step", "0.01 F"), "at most 41 settings")


def test_a_place_that_makes_no_sense(run: Run) -> None:
    make = ["weather", "make", "year.csv", "--near"]
    refused(run(*make, "here", "--elevation", "3 kg"), "--near", "--elevation")
    refused(run(*make, "0,0"), "no weather station lies within")
    refused(run(*make, "37.27,-79.94", "--winter", "warm"), "warm")
    assert not Path("year.csv").exists()
    refused(run("weather", "stations"), "needs a word or --near")
    refused(run("weather", "stations", "qqqq"), "qqqq: no station")


def test_facts_that_make_no_case(run: Run) -> None:
    refused(run("new", "home.toml", "--floor-area", "1750 kg"), "floor_area")
    assert not Path("home.toml").exists()


@pytest.mark.parametrize(
    "words",
    [
        ["new", "there"],
        ["check", "{home}", "--json", "there"],
        ["compare", "{home}", "--json", "there"],
        ["thermostat", "{home}", "--json", "there"],
        ["size", "{home}", "--json", "there"],
        ["weather", "stations", "roanoke", "--json", "there"],
        ["weather", "make", "there", "--near", "37.27,-79.94"],
    ],
    ids=lambda words: " ".join(words[:2]),
)
def test_nothing_is_overwritten(run: Run, home: str, words: list[str]) -> None:
    Path("there").write_text("mine", encoding="utf-8")
    refused(run(*(word.format(home=home) for word in words)), "there", "--force")
    assert Path("there").read_text(encoding="utf-8") == "mine"


def test_a_place_where_nothing_can_be_written(run: Run) -> None:
    result = run("weather", "stations", "roanoke", "--json", "no/such/folder.json")
    assert result.exit_code == 2
    assert "no/such/folder.json: cannot be written" in result.stderr


def test_marks_that_steer_a_terminal_are_left_out(run: Run) -> None:
    result = run("check", "a\x1b[2Jb")
    refused(result, "no such file")
    assert "\x1b" not in result.stderr


def test_a_rating_file_with_faults(run: Run) -> None:
    refused(run("rate", "machine.toml"), "machine.toml: no such file")
    Path("machine.toml").write_text(
        '[heating]\nkind = "rotary"\n[scop]\ndesign_load = "3"\n', encoding="utf-8"
    )
    refused(run("rate", "machine.toml"), "heating.kind", "scop.design_load", "scop.points")
    Path("there").write_text("mine", encoding="utf-8")
    refused(run("rate", "demo", "--json", "there"), "there", "--force")
