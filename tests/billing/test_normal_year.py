"""The use of a year of weather: its range, and the mean of several years."""

from __future__ import annotations

import numpy as np
import pytest

from costcompare.billing.daily_temperatures import of_row
from costcompare.billing.degree_days import fit
from costcompare.billing.normal_year import year_use
from tests.billing.synthetic_year import DEGF, FIRST, TEMPERATURES, bills, degc, shifted, uses

TRUE_KWH = 15024.5390


def test_nine_in_ten_years_lie_in_the_range() -> None:
    chance = np.random.default_rng(20251)
    clean, year = np.array(uses()), shifted(-1.5)
    inside = 0
    for _ in range(300):
        line = fit(bills(clean * (1.0 + chance.normal(0.0, 0.03, 12))), TEMPERATURES)
        use = year_use(line, year)
        assert use is not None
        # A year to come scatters about its line as the bills did.
        scatter = clean * chance.normal(0.0, 0.03, 12)
        inside += use.low_kwh <= TRUE_KWH + scatter.sum() <= use.high_kwh
    assert 0.85 <= inside / 300 <= 0.98


def test_several_years_have_the_mean_of_their_uses() -> None:
    line = fit(bills(uses()), TEMPERATURES)
    warm, cold = shifted(6.0), shifted(-6.0)
    both = of_row(FIRST, np.concatenate([warm.degc, cold.degc]), "two years")
    found = [year_use(line, weather) for weather in (warm, cold, both)]
    amounts = [one.kwh for one in found if one is not None]
    assert amounts[2] == pytest.approx((amounts[0] + amounts[1]) / 2.0)
    at_mean = year_use(line, TEMPERATURES)
    assert at_mean is not None
    assert amounts[2] > at_mean.kwh


def test_less_than_a_year_has_no_year() -> None:
    line = fit(bills(uses()), TEMPERATURES)
    assert year_use(line, of_row(FIRST, degc(DEGF[:300]), "ten months")) is None
