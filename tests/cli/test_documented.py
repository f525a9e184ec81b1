"""Every command, every option and every field of a result is documented, and nothing else."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from pathlib import Path
from types import UnionType
from typing import Any, get_args, get_type_hints

import pytest

from costcompare.case.facts import Fact
from costcompare.comparison import Comparison
from costcompare.thermostat import Sweep
from costcompare.weather.months import StationYear, WeatherYear
from tests.cli.conftest import Run
from tests.cli.test_commands import COMMANDS

DOCS = Path(__file__).parents[2] / "docs"
COMMANDS_PAGE = (DOCS / "commands.md").read_text(encoding="utf-8")
RESULTS_PAGE = (DOCS / "results.md").read_text(encoding="utf-8")


def field_names(kind: Any) -> Iterator[str]:
    """The names of all fields of a frozen result and of what it holds."""
    if is_dataclass(kind) and isinstance(kind, type):
        hints = get_type_hints(kind)
        for one in fields(kind):
            yield one.name
            yield from field_names(hints[one.name])
    elif get_args(kind) or isinstance(kind, UnionType):
        for inner in get_args(kind):
            yield from field_names(inner)


@pytest.mark.parametrize("kind", [Comparison, Sweep, Fact, WeatherYear, StationYear])
def test_every_field_of_a_result_is_documented(kind: type) -> None:
    names = set(field_names(kind))
    assert len(names) > 5
    missing = {name for name in names if f"`{name}`" not in RESULTS_PAGE}
    assert not missing


def test_no_field_is_documented_that_is_not_there() -> None:
    kinds = (Comparison, Sweep, Fact, WeatherYear, StationYear)
    known = {name for kind in kinds for name in field_names(kind)}
    rows = re.findall(r"^\| ((?:`\w+`(?:, )?)+) \|", RESULTS_PAGE, re.MULTILINE)
    documented = {name for row in rows for name in re.findall(r"`(\w+)`", row)}
    assert len(documented) > 60
    assert documented <= known


@pytest.mark.parametrize("name", COMMANDS)
def test_every_command_has_a_section_with_its_example(name: str) -> None:
    section = COMMANDS_PAGE.split(f"## costcompare {name}\n", 1)[1].split("\n## ", 1)[0]
    example = str(COMMANDS[name].epilog).removeprefix("Example: ")
    assert f"```\n{example}\n```" in section
    for parameter in COMMANDS[name].params:
        option = next((text for text in parameter.opts if text.startswith("--")), "")
        if option not in ("", "--help"):
            assert option in COMMANDS_PAGE, option


def test_every_section_is_a_command() -> None:
    sections = re.findall(r"^## costcompare (.+)$", COMMANDS_PAGE, re.MULTILINE)
    assert sections == list(COMMANDS)


def test_every_example_names_options_that_exist(run: Run) -> None:
    examples = re.findall(r"^```\ncostcompare (.+)\n```", COMMANDS_PAGE, re.MULTILINE)
    assert len(examples) >= len(COMMANDS)
    for example in examples:
        name = next(name for name in COMMANDS if example.startswith(name))
        known = run(*name.split(), "--help").stdout
        for option in re.findall(r"--[\w-]+", example):
            assert option in known
