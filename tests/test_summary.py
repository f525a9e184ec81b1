"""The figures and sentences that a comparison shows beside each other."""

from __future__ import annotations

import re
from pathlib import Path

import pvlib
import pytest

from costcompare import read_case, read_weather
from costcompare.case import example_path
from costcompare.comparing import weather_of
from costcompare.summary import assumptions

PUBLISHED = Path(pvlib.__file__).parent / "data"


@pytest.mark.parametrize("file", [None, "723170TYA.CSV", "12839.tm2"])
def test_assumptions_are_whole_sentences(file: str | None) -> None:
    case = read_case(example_path("demo"))
    weather = weather_of(case) if file is None else read_weather(PUBLISHED / file)
    for line in assumptions(case, weather):
        assert line[0].isupper()
        assert line.endswith(".")
        assert not re.search(r"[a-z)]\. [a-z]", line), line
