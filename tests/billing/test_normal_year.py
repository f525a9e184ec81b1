"""The range of a normal year holds the true use as often as it says."""

from __future__ import annotations

import numpy as np

from costcompare.billing.degree_days import fit
from costcompare.billing.normal_year import year_use
from tests.billing.synthetic_year import TEMPERATURES, bills, shifted, uses

TRUE_KWH = 15024.5390


def test_nine_in_ten_years_lie_in_the_range() -> None:
    chance = np.random.default_rng(20251)
    clean, year = np.array(uses()), shifted(-1.5)
    inside = 0
    for _ in range(300):
        line = fit(bills(clean * (1.0 + chance.normal(0.0, 0.03, 12))), TEMPERATURES)
        use = year_use(line, year)
        # A year to come scatters about its line as the bills did.
        scatter = clean * chance.normal(0.0, 0.03, 12)
        inside += use.low_kwh <= TRUE_KWH + scatter.sum() <= use.high_kwh
    assert 0.85 <= inside / 300 <= 0.98
