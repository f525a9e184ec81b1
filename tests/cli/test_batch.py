"""``costcompare batch``: the file it writes, what it prints, what it refuses."""

from __future__ import annotations

import csv
import json
from importlib.util import find_spec
from pathlib import Path

import pandas as pd
import pytest

from costcompare.batch.results import OptionLine
from tests.cli.conftest import Run

DOCS = Path(__file__).parents[2] / "docs"


@pytest.fixture
def homes(tmp_path: Path) -> str:
    path = tmp_path / "homes.csv"
    path.write_text(
        'home,built\n"=HYPERLINK(""x"")",1966\nBirch Road 9,1988\nWrong,12\n', encoding="utf-8"
    )
    return str(path)


def test_the_file_holds_the_homes_the_best_first(run: Run, home: str, homes: str) -> None:
    result = run("batch", homes, "--like", home, "-o", "out.csv", "--json", "out.json")
    assert result.exit_code == 0, result.stderr
    text = Path("out.csv").read_text(encoding="utf-8-sig")
    rows = list(csv.DictReader(text.splitlines()))
    assert [row["rank_by_saving"] for row in rows] == ["1", "2"]
    savings = [float(row["first_year_saving_usd"]) for row in rows]
    assert savings == sorted(savings, reverse=True)
    assert {row["home"] for row in rows} == {'\'=HYPERLINK("x")', "Birch Road 9"}
    document = json.loads(Path("out.json").read_text(encoding="utf-8"))
    assert [home["home"] for home in document["left_out"]] == ["Wrong"]
    assert len(document["homes"]) == 2
    assert "homes.csv, row 4, house.built" in result.stdout
    assert "Left out: 1" in result.stdout
    again = run("batch", homes, "--like", home, "-o", "out.csv")
    assert again.exit_code == 2
    assert "add --force" in again.stderr


def test_what_concerns_the_whole_list_is_refused(run: Run, homes: str) -> None:
    assert "--like CASE" in run("batch", homes, "-o", "out.csv").stderr
    assert run("batch", "nowhere", "-o", "out.csv").exit_code == 2
    assert "must end in .csv or .parquet" in run("batch", homes, "-o", "out.xls").stderr


@pytest.mark.skipif(find_spec("pyarrow") is not None, reason="pyarrow is installed here")
def test_parquet_needs_its_package(run: Run, home: str, homes: str) -> None:
    result = run("batch", homes, "--like", home, "-o", "out.parquet")
    assert result.exit_code == 2
    assert "needs the package pyarrow" in result.stderr


@pytest.mark.skipif(find_spec("pyarrow") is None, reason="pyarrow is not installed here")
def test_parquet_holds_the_same_table(run: Run, home: str, homes: str) -> None:
    assert run("batch", homes, "--like", home, "-o", "out.parquet").exit_code == 0
    assert len(pd.read_parquet("out.parquet")) == 2


def test_every_column_of_the_file_is_documented() -> None:
    page = (DOCS / "batch.md").read_text(encoding="utf-8")
    for name in ("home", *OptionLine.__dataclass_fields__):
        assert f"`{name}`" in page, name
