"""A milder or colder winter moves the air and the sky from October to April, nothing else."""

from __future__ import annotations

import numpy as np
import pytest

from costcompare.weather import heating_degree_days_65f, typical_year, with_winter


def test_the_winter_alone_is_moved() -> None:
    year = typical_year(37.3, -79.9)
    mild = with_winter(year, 1.4)
    month = year.table.index.month.to_numpy()
    winter = np.isin(month, (10, 11, 12, 1, 2, 3, 4))
    for name in ("temperature_degc", "sky_temperature_degc"):
        change = mild.column(name) - year.column(name)
        assert change[winter] == pytest.approx(1.4)
        assert change[~winter] == pytest.approx(0.0)
    for name in ("relative_humidity", "wind_speed_m_s", "ghi_w_m2"):
        assert np.array_equal(mild.column(name), year.column(name))
    assert heating_degree_days_65f(mild) < heating_degree_days_65f(year)


def test_it_is_as_mild_as_the_mild_year_that_can_be_asked_for() -> None:
    asked = typical_year(37.3, -79.9, winter="mild")
    moved = with_winter(typical_year(37.3, -79.9), 1.4)
    assert moved.column("temperature_degc") == pytest.approx(asked.column("temperature_degc"))
    # The made sky follows humidity too: the moved one is close to it.
    sky = moved.column("sky_temperature_degc") - asked.column("sky_temperature_degc")
    assert np.abs(sky).mean() < 0.3
    assert np.abs(sky).max() < 1.0


def test_no_change_is_the_year_itself() -> None:
    year = typical_year(37.3, -79.9)
    assert with_winter(year, 0.0) is year
