"""Made-up files and what is said of them, for the tests of the weather package."""

from __future__ import annotations

from pathlib import Path

import pandas as pd
import pvlib
import pytest

from costcompare.errors import WeatherError
from costcompare.weather.files import read_weather

WHEEL = Path(pvlib.__file__).parent / "data"
GREENSBORO = WHEEL / "723170TYA.CSV"
SAND_POINT = WHEEL / "703165TY.csv"
MIAMI = WHEEL / "12839.tm2"


def sentences(path: Path) -> list[str]:
    with pytest.raises(WeatherError) as caught:
        read_weather(path)
    return [fault.sentence() for fault in caught.value.faults]


def edited(path: Path, old: str, new: str) -> Path:
    text = path.read_text()
    assert old in text
    path.write_text(text.replace(old, new, 1))
    return path


def made_epw(frame: pd.DataFrame) -> str:
    """An EPW file with the values of a frame; only the fields that are read are filled."""
    lines = ["LOCATION,Madeupville,XX,USA,made,000000,48.80,-122.54,-8.0,45.0", *["-"] * 7]
    hours = pd.DatetimeIndex(frame.index)
    for hour, (temperature, humidity, wind, pressure, ghi, dni, dhi, _) in zip(
        hours, frame.to_numpy(), strict=True
    ):
        start = f"1999,{hour.month},{hour.day},{hour.hour + 1},60,?"
        air = f"{temperature:.2f},0,{100 * humidity:.0f},{pressure:.0f},0,0,300"
        sun = f"{ghi:.0f},{dni:.0f},{dhi:.0f},0,0,0,0,0"
        lines.append(f"{start},{air},{sun},{wind:.1f},5,4" + ",0" * 11)
    return "\n".join(lines) + "\n"
