"""How high a head hangs."""

from __future__ import annotations

import pytest

from costcompare.case.facts import Case
from costcompare.sizing import Sizing
from costcompare.sizing.mounting import HIGH, USUAL_HEIGHT, sensor_reads_over, winter_difference
from costcompare.weather import Weather


def test_what_the_sensor_reads_by_hand() -> None:
    """1 K/m above 1.1 m at 20 K between rooms and outdoors."""
    assert sensor_reads_over(2.1, 20.0) == pytest.approx(1.0)
    assert sensor_reads_over(None, 20.0) == pytest.approx(USUAL_HEIGHT - 1.1)
    assert sensor_reads_over(3.1, 30.0) == pytest.approx(3.0)
    assert sensor_reads_over(2.1, 0.0) == 0.0


def test_the_winter_difference(case: Case, weather: Weather) -> None:
    outdoor = weather.column("temperature_degc")
    winter = outdoor[weather.table.index.month.isin([12, 1, 2])]  # type: ignore[attr-defined]
    assert winter_difference(case.home, weather) == pytest.approx(21.111 - winter.mean(), abs=1e-3)


def test_a_high_head_is_flagged(sized: Sizing) -> None:
    flagged = {
        fit.name: machine.is_mounted_high
        for fit in sized.choices
        for machine in fit.machines
        if machine.kind == "head"
    }
    assert flagged == {"One head high up": True, "Head and furnace": False}
    assert pytest.approx(9.0 * 0.3048) == HIGH
