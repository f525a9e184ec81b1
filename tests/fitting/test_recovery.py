"""A small version of the recovery table of docs/validation.md."""

from __future__ import annotations

from scipy.stats import binom

from tests.fitting.conftest import Home
from tests.fitting.recovery import recovered

HOUSES = 12


def test_eight_of_ten_ranges_hold_the_truth(fitted_home: Home) -> None:
    rows = recovered(fitted_home.case, fitted_home.weather, HOUSES)
    assert [row.houses for row in rows] == [HOUSES] * 3
    # The seed is fixed, so this is no game of chance: so few would be 1 in 1,000 at 80 %.
    least = int(binom.ppf(0.001, HOUSES, 0.8))
    assert all(row.held >= least for row in rows)
    assert all(row.width < row.width_before for row in rows)
    assert rows[2].width < rows[0].width
    assert rows[2].off < 0.05
