"""A list of three small homes, and the case behind it."""

from __future__ import annotations

from pathlib import Path

import pytest

from costcompare.case.new import new_case

OPTIONS = """
[[options]]
name = "Seal and wrap the ducts"
kind = "improve"
set = { "today.ducts.condition" = "sealed and tested" }
installed_cost = "2000 $"

[[options]]
name = "Insulate the floor"
kind = "improve"
set = { "house.floor_insulation" = "R-25" }
installed_cost = "90000 $"
"""

LIST = """home,built,floor_area,house.floor_insulation,today.ducts.condition
Ash Lane 4,1961,1400 ft2,R-0,"old, never sealed"
Birch Road 9,1985,1900,,average
"Cedar, the blue one",2004,1650 ft2,R-19,sealed and tested
"""


@pytest.fixture
def like(tmp_path: Path) -> Path:
    """The case that a list is given with."""
    path = tmp_path / "like.toml"
    path.write_text(new_case(title="Behind the list (invented)") + OPTIONS, encoding="utf-8")
    return path


@pytest.fixture
def homes(tmp_path: Path) -> Path:
    """A list of three homes."""
    path = tmp_path / "homes.csv"
    path.write_text(LIST, encoding="utf-8")
    return path
