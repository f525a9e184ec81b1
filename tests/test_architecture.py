"""How the package is built: what may import what, how large things may be, what is public."""

from __future__ import annotations

import ast
import re
import subprocess
import sys
import tomllib
from collections.abc import Iterator
from importlib.metadata import packages_distributions
from pathlib import Path

import pytest

import costcompare

ROOT = Path(__file__).parent.parent
PACKAGE = ROOT / "costcompare"
MODULES = sorted(PACKAGE.rglob("*.py"))
TESTS = sorted((ROOT / "tests").rglob("*.py"))
LONGEST_FILE, LONGEST_FUNCTION = 500, 60
"""[lines]"""
DRAWERS = {"utils", "util", "helpers", "helper", "common", "misc"}
"""Names that say nothing of what lies in a module"""
PHYSICS = {"numpy", "numba", "math", "typing", "collections", "costcompare", "__future__"}
"""What a kernel may import"""
PARTS = {
    "pydantic_core": "pydantic",
    "flask": "dash",
    "werkzeug": "dash",
    "llvmlite": "numba",
}
"""Come with another library, which decides their version"""
COMPILED = PHYSICS | {"hashlib", "os", "sys", "tempfile", "pathlib"}
"""And what the module may import that keeps the compiled code"""
LANES = PHYSICS | {"llvmlite", "operator"}
"""And what the module may that tells the compiler of numbers side by side"""


def name_of(path: Path) -> str:
    return path.relative_to(ROOT).as_posix()


def tree(path: Path) -> ast.Module:
    return ast.parse(path.read_text(encoding="utf-8"))


def imported(path: Path) -> Iterator[str]:
    """Every module that a file imports, by its full name."""
    for node in ast.walk(tree(path)):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.level == 0:
            yield node.module or ""


def roots(path: Path) -> set[str]:
    return {name.split(".")[0] for name in imported(path)}


def test_imports_go_one_way() -> None:
    """The contracts of pyproject.toml: layers, each module of the package in one of them."""
    command = [sys.executable, "-c", "from importlinter.cli import lint_imports_command as c; c()"]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    assert "0 broken" in done.stdout


def test_one_module_knows_the_unit_library() -> None:
    assert [name_of(path) for path in MODULES if "pint" in roots(path)] == ["costcompare/units.py"]


def test_the_page_alone_knows_dash() -> None:
    users = [path for path in MODULES if {"dash", "dash_mantine_components"} & roots(path)]
    page = PACKAGE / "views" / "dashboard"
    assert [name_of(path) for path in users if page not in path.parents] == []


@pytest.mark.parametrize("path", sorted((PACKAGE / "physics").glob("*.py")), ids=name_of)
def test_physics_imports_numbers_alone(path: Path) -> None:
    allowed = {"compiled.py": COMPILED, "lanes.py": LANES}.get(path.name, PHYSICS)
    assert roots(path) <= allowed
    own = {name for name in imported(path) if name.startswith("costcompare")}
    assert all(name.startswith("costcompare.physics") for name in own)


def declared(*extras: str) -> set[str]:
    """Distributions that pyproject.toml asks for, by their plain names."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    lines = list(project["dependencies"])
    for extra in extras:
        lines += project["optional-dependencies"][extra]
    return {plain(re.split(r"[<>=!\[ ;]", line)[0]) for line in lines}


def plain(distribution: str) -> str:
    return re.sub(r"[-_.]+", "-", distribution).lower()


def undeclared(paths: list[Path], known: set[str]) -> list[str]:
    """What files import from elsewhere that pyproject.toml does not ask for."""
    distributions = packages_distributions()
    ours = {"costcompare"} | {part for path in TESTS for part in (path.stem, path.parent.name)}
    return [
        f"{name_of(path)}: {root}"
        for path in paths
        for root in sorted(roots(path) - ours - set(sys.stdlib_module_names))
        if PARTS.get(root) not in known
        and not known & {plain(name) for name in distributions.get(root, [root])}
    ]


def test_what_is_imported_is_asked_for() -> None:
    assert undeclared(MODULES, declared()) == []
    assert undeclared(TESTS, declared("test")) == []


def test_files_stay_small() -> None:
    for path in (*MODULES, *TESTS, ROOT / "app.py"):
        lines = len(path.read_text(encoding="utf-8").splitlines())
        assert lines <= LONGEST_FILE, f"{name_of(path)}: {lines} lines"


def test_functions_stay_small() -> None:
    for path in (*MODULES, ROOT / "app.py"):
        for node in ast.walk(tree(path)):
            if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
                lines = (node.end_lineno or node.lineno) - node.lineno + 1
                assert lines <= LONGEST_FUNCTION, f"{name_of(path)}: {node.name}, {lines} lines"


def test_a_module_is_named_by_what_it_is_about() -> None:
    for path in (*MODULES, *TESTS):
        for part in (*path.relative_to(ROOT).parts[:-1], path.stem):
            assert part not in DRAWERS, name_of(path)


def test_the_public_functions_are_those_promised() -> None:
    assert costcompare.__all__ == sorted(
        ["compare", "explain", "fit", "read_case", "read_weather", "simulate", "typical_year"]
    )


IMPORT_EVERYTHING = """
import importlib, pkgutil
import costcompare
for module in pkgutil.walk_packages(costcompare.__path__, "costcompare."):
    if module.name != "costcompare.__main__":
        importlib.import_module(module.name)
for name in costcompare.__all__:
    function = getattr(costcompare, name)
    assert callable(function), name
    assert function.__doc__, name
print("all", len(costcompare.__all__))
"""


def test_public_functions_outlive_the_import_of_every_module() -> None:
    """A module of the name of a public function would take its place on the package."""
    command = [sys.executable, "-c", IMPORT_EVERYTHING]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    assert done.stdout.strip() == f"all {len(costcompare.__all__)}"


def test_an_unknown_name_is_refused_as_ever() -> None:
    name = "comparison_of_everything"
    with pytest.raises(AttributeError, match=name):
        getattr(costcompare, name)


def undocumented(path: Path) -> Iterator[str]:
    module = tree(path)
    if not ast.get_docstring(module):
        yield name_of(path)
    if path == PACKAGE / "case" / "document.py":
        return  # the tables of a case: docs/case-file.md describes every key
    for node in module.body:
        if not isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef):
            continue
        if not node.name.startswith("_") and not ast.get_docstring(node):
            yield f"{name_of(path)}: {node.name}"


def test_everything_public_says_what_it_is() -> None:
    assert [text for path in MODULES for text in undocumented(path)] == []
