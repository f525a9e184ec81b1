"""The sample years beside the package: as their README says, and made again the same."""

from __future__ import annotations

import re
from pathlib import Path
from typing import NamedTuple

import numpy as np
import pytest

from costcompare.weather import (
    heating_degree_days_65f,
    mean_temperature,
    read_weather,
    typical_year,
)
from costcompare.weather.plain_file import DECIMALS

FOLDER = Path(__file__).parents[2] / "weather_samples"
LARGEST = 700_000
"""[bytes]"""

ROW = re.compile(
    r"^\| (?P<file>\S+\.csv\.gz) \| [^|]+ \| (?P<station>[^|]+) \| (?P<mean>[\d.]+) F \| "
    r"(?P<degree_days>[\d,]+) \| `costcompare weather make (?P<target>\S+) "
    r"--near (?P<latitude>[-\d.]+),(?P<longitude>[-\d.]+) --seed (?P<seed>\d+)` \|$",
    re.MULTILINE,
)


class Sample(NamedTuple):
    file: str
    station: str
    mean: str
    degree_days: str
    target: str
    latitude: str
    longitude: str
    seed: str


SAMPLES = [Sample(*match) for match in ROW.findall((FOLDER / "README.md").read_text())]


def test_every_file_has_its_row() -> None:
    assert len(SAMPLES) >= 4
    assert {sample.file for sample in SAMPLES} == {path.name for path in FOLDER.glob("*.csv*")}


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda sample: sample.file)
def test_a_sample_is_as_its_row_says(sample: Sample) -> None:
    path = FOLDER / sample.file
    assert path.stat().st_size < LARGEST
    assert sample.target == sample.file
    weather = read_weather(path)
    assert weather.source == "typical"
    assert weather.station == sample.station
    assert f"{1.8 * mean_temperature(weather) + 32.0:.1f}" == sample.mean
    assert f"{heating_degree_days_65f(weather):,.0f}" == sample.degree_days


@pytest.mark.parametrize("sample", SAMPLES[:2], ids=lambda sample: sample.file)
def test_a_sample_made_again_is_the_same(sample: Sample) -> None:
    again = typical_year(float(sample.latitude), float(sample.longitude), seed=int(sample.seed))
    stored = read_weather(FOLDER / sample.file)
    assert again.table.index.equals(stored.table.index)
    assert again.note == stored.note
    for name, digits in DECIMALS.items():
        # one more of the last digit for the rounding of other machines and versions
        np.testing.assert_allclose(
            again.column(name), stored.column(name), atol=1.51 * 10.0**-digits, rtol=0.0
        )
