"""The documents: their links, their map, and what they say of commands, errors and numbers."""

from __future__ import annotations

import ast
import importlib
import re
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

import costcompare.errors

ROOT = Path(__file__).parent.parent
DOCS = sorted((ROOT / "docs").rglob("*.md"))
TOP = [ROOT / "README.md", ROOT / "DEVELOPERS.md", ROOT / "weather_samples" / "README.md"]
LINK = re.compile(r"\]\(([^)\s]+)\)")
CONSTANT = re.compile(r"^\| `([a-z_.0-9]+)\.([A-Z_0-9]+)` \| ([^|]+) \|", re.MULTILINE)
FORBIDDEN = ("guaranteed", "pays for itself", "will save")
"""What no document may say of money"""


def text(path: Path) -> str:
    return path.read_text(encoding="utf-8")


def name_of(path: Path) -> str:
    return path.relative_to(ROOT).as_posix()


def links(path: Path) -> Iterator[tuple[Path, str]]:
    """Files that a document links to, with the heading in them."""
    plain = re.sub(r"```.*?```", "", text(path), flags=re.DOTALL)
    for target in LINK.findall(plain):
        if "://" in target or target.startswith("mailto:"):
            continue
        file, _, heading = target.partition("#")
        yield (path.parent / file).resolve() if file else path.resolve(), heading


def headings(path: Path) -> set[str]:
    """The anchors of a document's headings."""
    found = re.findall(r"^#+ (.+)$", text(path), flags=re.MULTILINE)
    return {re.sub(r"[^a-z0-9 _-]", "", one.lower()).replace(" ", "-") for one in found}


def readme_commands() -> tuple[str, str]:
    commands = re.findall(r"^```\n(python3 [^\n]+)\n```$", text(TOP[0]), flags=re.MULTILINE)
    assert len(commands) == 2
    return commands[0], commands[1]


def test_the_readme_has_two_commands_that_point_to_things() -> None:
    start, test = readme_commands()
    for command in (start, test):
        assert command.startswith("python3 -m venv .venv && .venv/bin/pip install ")
    assert start.endswith("&& .venv/bin/python app.py")
    assert (ROOT / "app.py").is_file()
    assert test.endswith("&& .venv/bin/python -m pytest")
    extra = re.search(r'"\.\[(\w+)\]"', test)
    assert extra is not None
    assert extra[1] in project()["optional-dependencies"]


def test_the_whole_check_runs_the_readmes_own_command() -> None:
    """It takes the one line of README.md that looks like a test command."""
    script = text(ROOT / ".ci" / "run")
    pattern = re.search(r"grep -m 1 -E '([^']+)' README\.md", script)
    assert pattern is not None
    lines = [line for line in text(TOP[0]).splitlines() if re.search(pattern[1], line)]
    assert lines == [readme_commands()[1]]


@pytest.mark.parametrize("path", [*TOP, *DOCS], ids=name_of)
def test_links_lead_somewhere(path: Path) -> None:
    for target, heading in links(path):
        assert target.exists(), f"{name_of(path)} links to {target}"
        if heading:
            assert heading in headings(target), f"{name_of(path)} links to #{heading}"


def test_every_document_is_on_the_map() -> None:
    index = ROOT / "docs" / "index.md"
    mapped = {target for target, _ in links(index)}
    missing = [name_of(path) for path in DOCS if path != index and path.resolve() not in mapped]
    assert missing == []


def test_every_error_is_documented() -> None:
    page = text(ROOT / "docs" / "errors.md")
    classes = [
        node.name
        for node in ast.parse(text(Path(costcompare.errors.__file__))).body
        if isinstance(node, ast.ClassDef) and node.name != "Fault"
    ]
    assert classes
    assert [name for name in classes if f"| `{name}` |" not in page] == []


def test_every_published_check_is_documented() -> None:
    page = text(ROOT / "docs" / "validation.md")
    files = sorted((ROOT / "tests" / "published").glob("*.py"))
    assert [path.name for path in files if path.name not in page] == []
    named = set(re.findall(r"`(\w+\.py)`", page))
    assert named <= {path.name for path in files}


def test_constants_in_the_model_are_those_of_the_code() -> None:
    rows = CONSTANT.findall(text(ROOT / "docs" / "model.md"))
    assert len(rows) > 50
    for module, name, written in rows:
        value = getattr(importlib.import_module(f"costcompare.{module}"), name)
        assert float(value) == pytest.approx(float(written), rel=1e-9), f"{module}.{name}"


def test_names_in_the_nomenclature_are_those_of_the_code() -> None:
    sources = "\n".join(text(path) for path in sorted((ROOT / "costcompare").rglob("*.py")))
    words = set(re.findall(r"\w+", sources))
    for line in text(ROOT / "docs" / "nomenclature.md").splitlines():
        cells = line.split("|")
        if len(cells) == 6:
            for name in re.findall(r"`(\w+)`", cells[2]):
                assert name in words, line


@pytest.mark.parametrize("path", [*TOP, *DOCS], ids=name_of)
def test_nothing_is_promised(path: Path) -> None:
    plain = text(path).lower()
    for word in FORBIDDEN:
        assert word not in plain, f"{name_of(path)} says {word!r}"


def project() -> dict[str, dict[str, list[str]]]:
    found: dict[str, dict[str, list[str]]] = tomllib.loads(text(ROOT / "pyproject.toml"))["project"]
    return found
