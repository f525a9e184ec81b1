"""What every command has: a help with an example, an exit code, and no slow imports."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Iterator
from typing import Any

import pytest
import typer

from costcompare.cli import app
from tests.cli.conftest import Run


def all_commands() -> Iterator[tuple[str, Any]]:
    top = typer.main.get_command(app)
    assert hasattr(top, "commands")
    for name, command in top.commands.items():
        for inner, leaf in getattr(command, "commands", {"": command}).items():
            yield f"{name} {inner}".strip(), leaf


COMMANDS = dict(all_commands())


def test_the_commands_are_those_of_the_documents() -> None:
    assert list(COMMANDS) == [
        "new",
        "check",
        "compare",
        "explain",
        "thermostat",
        "serve",
        "size",
        "report",
        "fit",
        "rate",
        "batch",
        "bills",
        "verify",
        "benchmark",
        "weather stations",
        "weather make",
        "weather show",
    ]


@pytest.mark.parametrize("name", COMMANDS)
def test_every_help_ends_with_an_example_of_that_command(run: Run, name: str) -> None:
    result = run(*name.split(), "--help")
    assert result.exit_code == 0
    last = result.stdout.strip().splitlines()[-1].strip()
    assert last.startswith(f"Example: costcompare {name} ")


@pytest.mark.parametrize("name", COMMANDS)
def test_every_option_has_a_help(name: str) -> None:
    for parameter in COMMANDS[name].params:
        assert parameter.help, f"{name} {parameter.name}"


def test_help_of_the_whole_names_every_command(run: Run) -> None:
    written = run("--help").stdout
    for name in COMMANDS:
        assert name.split()[0] in written
    assert "..." not in written.replace("[ARGS]...", "")


def test_help_imports_nothing_slow() -> None:
    code = (
        "import sys; import costcompare.cli as cli\n"
        "try: cli.app(['--help'])\n"
        "except SystemExit: pass\n"
        "slow = {'numpy', 'pandas', 'pvlib', 'numba', 'dash', 'plotly', 'pint', 'pydantic'}\n"
        "print(sorted(slow & set(sys.modules)), file=sys.stderr)\n"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stderr.strip() == "[]"


def test_the_version(run: Run) -> None:
    result = run("--version")
    assert result.exit_code == 0
    names = [line.split()[0] for line in result.stdout.splitlines()]
    assert names == ["costcompare", "numpy", "pandas", "numba", "pvlib", "dash"]


@pytest.mark.parametrize("words", [["bake"], ["compare"], ["check", "demo", "--bake"], ["weather"]])
def test_wrong_usage_ends_with_two(run: Run, words: list[str]) -> None:
    result = run(*words)
    assert result.exit_code == 2
    assert "Usage:" in result.stderr


def test_it_runs_as_a_module() -> None:
    done = subprocess.run(
        [sys.executable, "-m", "costcompare", "check", "no-such-home.toml"],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 2
    assert done.stdout == ""
    assert "no-such-home.toml: no such file" in done.stderr
    assert "Traceback" not in done.stderr


def test_a_reader_that_stops_early_is_no_error_of_ours() -> None:
    listing = subprocess.Popen(
        [sys.executable, "-m", "costcompare", "check", "demo"],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )
    assert listing.stdout is not None
    assert listing.stderr is not None
    assert listing.stdout.readline().strip() == "The long house in the foothills (invented)"
    listing.stdout.close()
    assert "Traceback" not in listing.stderr.read()
    listing.stderr.close()
    assert listing.wait() in (0, 1)
