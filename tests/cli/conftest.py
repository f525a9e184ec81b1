"""A small home on disk, and the commands run on it."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from costcompare.case.new import new_case
from costcompare.cli import app

Run = Callable[..., Result]

OPTION = """
[[options]]
name = "Seal and wrap the ducts"
kind = "improve"
set = { "today.ducts.condition" = "sealed and tested" }
installed_cost = "2000 $"
"""


@pytest.fixture
def run(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Run:
    """Run a command in an empty folder, its two outputs kept apart."""
    monkeypatch.chdir(tmp_path)

    def command(*words: str) -> Result:
        return CliRunner().invoke(app, list(words))

    return command


@pytest.fixture(scope="session")
def home(tmp_path_factory: pytest.TempPathFactory) -> str:
    """The path of a small case with one option."""
    path = tmp_path_factory.mktemp("case") / "home.toml"
    path.write_text(new_case(title="A small home (invented)") + OPTION, encoding="utf-8")
    return str(path)
