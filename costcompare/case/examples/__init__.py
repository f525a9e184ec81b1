"""Example cases that come with the program. Everything in them is invented."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path


def example_names() -> tuple[str, ...]:
    """The names of the examples, the demonstration first."""
    names = sorted(path.stem for path in _folder().glob("*.toml"))
    return tuple(sorted(names, key=lambda name: (name != "demo", name)))


def example_path(name: str) -> Path:
    """The file of an example; KeyError where there is none of that name."""
    path = _folder() / f"{name}.toml"
    if name not in example_names():
        raise KeyError(name)
    return path


def _folder() -> Path:
    return Path(str(files("costcompare"))) / "case" / "examples"
