"""docs/weather.md names every column and every line on top of a file, and its numbers hold."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from costcompare.weather import read_weather, stations
from costcompare.weather.draft import REQUIRED
from costcompare.weather.files import FORMATS
from costcompare.weather.made_air import WIND_PERSISTENCE, WIND_SHAPE
from costcompare.weather.plain_file import OFFSET, PLACE
from costcompare.weather.sun import diffuse_response
from costcompare.weather.table import COLUMNS
from costcompare.weather.typical import LAPSE_RATE, WINTER_SHIFT

from .making import sentences

PAGE = (Path(__file__).parents[2] / "docs" / "weather.md").read_text()


@pytest.mark.parametrize("name", [*COLUMNS, *PLACE, *REQUIRED, OFFSET, "time", "note", "source"])
def test_every_name_is_explained(name: str) -> None:
    assert f"`{name}`" in PAGE


@pytest.mark.parametrize("name", list(COLUMNS))
def test_the_limits_are_those_of_the_program(name: str) -> None:
    low, high = COLUMNS[name]
    (row,) = (line for line in PAGE.splitlines() if line.startswith(f"| `{name}`"))
    assert row.endswith(f"| {low:,.0f} to {high:,.0f} |")


@pytest.mark.parametrize("kind", list(FORMATS))
def test_every_format_is_named(kind: str) -> None:
    assert kind in PAGE


def test_the_numbers_are_those_of_the_program() -> None:
    words = " ".join(PAGE.split())
    assert f"{len(stations.all_stations()):,} stations" in words
    assert f"Beyond {stations.FARTHEST / 1000.0:.0f} km" in words
    assert f"counts as {stations.METRES_PER_METRE_OF_HEIGHT:.0f} m of distance" in words
    assert f"{-1000.0 * LAPSE_RATE:.1f} K for 1,000 m" in words
    assert f"October to April by {WINTER_SHIFT['mild']:.1f} K" in words
    assert f"(shape {WIND_SHAPE})" in words
    assert f"(correlation {WIND_PERSISTENCE})" in words
    panes = ", ".join(f"{diffuse_response(number):.2f}" for number in (1, 2, 3))
    assert f"({panes} for one, two, three panes)" in words


def test_the_example_is_read_as_a_plain_csv(tmp_path: Path) -> None:
    (example,) = re.findall(r"```\n(# latitude.*?)```", PAGE, flags=re.DOTALL)
    path = tmp_path / "example.csv"
    path.write_text(example)
    assert sentences(path) == [
        "example.csv: time: must hold every hour of one year, 29 February left out "
        "(given: 1 rows; a year has 8,760)."
    ]


def test_the_samples_page_points_here() -> None:
    folder = Path(__file__).parents[2] / "weather_samples"
    assert "docs/weather.md" in (folder / "README.md").read_text()
    assert read_weather(folder / "cool-marine.csv.gz").note.endswith("not 30-year normals")
